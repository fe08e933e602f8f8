package toolrow

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// At every width each tool is either in the row, whole, or in the list; the list is there
// only when it holds something, and does what the tools do.
func TestNoToolIsOutOfReach(t *testing.T) {
	test.NewTempApp(t)
	done := ""
	title := widget.NewLabel("Blank")
	out := Sign("Zoom out", theme.ZoomOutIcon(), func() { done += "out " })
	in := Sign("Zoom in", theme.ZoomInIcon(), func() { done += "in " })
	legend := Quiet("Legend", nil, func() { done += "legend " })
	legend.Importance = widget.MediumImportance
	layers := Named("Layers", theme.ListIcon(), func() { done += "layers " })
	body := New(title, []fyne.CanvasObject{out, in, layers, legend},
		[]fyne.CanvasObject{title}, []fyne.CanvasObject{out, in}, []fyne.CanvasObject{legend})
	r := layers.row
	window := test.NewTempWindow(t, paneOf(body))
	window.SetPadded(false)
	counts := map[int]bool{}
	for width := body.MinSize().Width; width < 500; width += 3 {
		window.Resize(fyne.NewSize(width, 300))
		var words []string
		for _, item := range r.items() {
			words = append(words, item.Label)
		}
		for word, tool := range map[string]fyne.CanvasObject{"Zoom out": out, "Zoom in": in, "Legend": legend, "Layers": layers} {
			if tool.Visible() == slices.Contains(words, word) {
				t.Fatalf("at a width of %g %s is shown: %v, and the list holds %q", width, word, tool.Visible(), words)
			}
			if tool.Visible() && tool.Position().X < 0 {
				t.Errorf("at a width of %g %s begins at %g", width, word, tool.Position().X)
			}
		}
		if r.more.Visible() != (len(words) > 0) {
			t.Errorf("at a width of %g the button of the list is shown: %v, and the list holds %q", width, r.more.Visible(), words)
		}
		counts[len(words)] = true
	}
	if !counts[0] || !counts[2] || !counts[3] {
		t.Errorf("the list has lengths %v, want 0, 2 and 3", counts)
	}
}

// The list opens by the space bar, has the focus then, says its name when reached, and
// ticks what is on.
func TestListByKeyboard(t *testing.T) {
	test.NewTempApp(t)
	zoomed := 0
	title, stay := widget.NewLabel("Blank"), Sign("Stay", theme.HomeIcon(), nil)
	in := Sign("Zoom in", theme.ZoomInIcon(), func() { zoomed++ })
	legend := Quiet("Legend", nil, func() {})
	legend.Importance = widget.MediumImportance
	body := New(title, []fyne.CanvasObject{stay, in, legend}, []fyne.CanvasObject{title}, []fyne.CanvasObject{in}, []fyne.CanvasObject{legend})
	window := test.NewTempWindow(t, paneOf(body))
	window.SetPadded(false)
	window.Resize(fyne.NewSize(body.MinSize().Width, 300))
	more := stay.row.more
	window.Canvas().Focus(more)
	if !stay.row.hint.Visible() || stay.row.hint.Text() == "" {
		t.Error("the button of the list does not say what it is")
	}
	more.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	list, is := window.Canvas().Focused().(*widget.PopUpMenu)
	if !is || len(list.Items) != 2 {
		t.Fatalf("the focus is at %T", window.Canvas().Focused())
	}
	if items := stay.row.items(); items[0].Checked || !items[1].Checked {
		t.Errorf("ticked: %v and %v, want the legend alone", items[0].Checked, items[1].Checked)
	}
	list.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	list.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if zoomed != 1 {
		t.Errorf("the first entry did its work %d times", zoomed)
	}
	if Seen(body, in) != fyne.CanvasObject(more) || Seen(body, stay) != fyne.CanvasObject(stay) {
		t.Error("a list of a tool opens where the tool is not")
	}
}

// paneOf puts a row at the head of a pane.
func paneOf(row *fyne.Container) fyne.CanvasObject {
	return &fyne.Container{Layout: atHead{}, Objects: []fyne.CanvasObject{row}}
}

type atHead struct{}

func (atHead) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Resize(fyne.NewSize(size.Width, objects[0].MinSize().Height))
}
func (atHead) MinSize(objects []fyne.CanvasObject) fyne.Size { return objects[0].MinSize() }
