package toolrow_test

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/toolrow"
)

func TestToolsGiveWayInOrder(t *testing.T) {
	test.NewTempApp(t)
	title := widget.NewLabel("Blank")
	first, second, third := toolrow.Quiet("First", nil, nil), toolrow.Quiet("Second", nil, nil), toolrow.Quiet("Third", nil, nil)
	row := toolrow.New(title, []fyne.CanvasObject{first, second, third},
		[]fyne.CanvasObject{title}, []fyne.CanvasObject{second})
	window := test.NewTempWindow(t, row)
	window.SetPadded(false)

	window.Resize(fyne.NewSize(600, 40))
	for _, object := range []fyne.CanvasObject{title, first, second, third} {
		if !object.Visible() {
			t.Error("a tool is hidden though there is room")
		}
	}
	if right := third.Position().X + third.Size().Width; right != 600 {
		t.Errorf("the last tool ends at %g, want 600", right)
	}
	least := row.MinSize()
	window.Resize(fyne.NewSize(least.Width+second.MinSize().Width+10, 40))
	if title.Visible() || !second.Visible() {
		t.Error("the title should have given way first")
	}
	window.Resize(least)
	if second.Visible() || !first.Visible() || !third.Visible() {
		t.Error("only what may give way should be hidden")
	}
	window.Resize(fyne.NewSize(600, 40))
	if !title.Visible() || !second.Visible() {
		t.Error("what gave way does not come back")
	}
}

// Tools that belong together, such as nearer and further, give way together.
func TestGroupGivesWayAsOne(t *testing.T) {
	test.NewTempApp(t)
	title := widget.NewLabel("Blank")
	out, in, last := toolrow.Quiet("Out", nil, nil), toolrow.Quiet("In", nil, nil), toolrow.Quiet("Last", nil, nil)
	row := toolrow.New(title, []fyne.CanvasObject{out, in, last}, []fyne.CanvasObject{title}, []fyne.CanvasObject{out, in})
	window := test.NewTempWindow(t, row)
	window.SetPadded(false)
	least := row.MinSize().Width
	seen := map[bool]bool{}
	for width := least; width < least+300; width++ {
		window.Resize(fyne.NewSize(width, 40))
		if out.Visible() != in.Visible() {
			t.Fatalf("at a width of %g only one of two is shown", width)
		}
		seen[out.Visible()] = true
	}
	if !seen[true] || !seen[false] {
		t.Error("the group is always shown, or never")
	}
}
