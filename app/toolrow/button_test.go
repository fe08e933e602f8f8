package toolrow

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// bench is a row over a pane of some height.
type bench struct {
	row            *row
	body           *fyne.Container
	window         fyne.Window
	measure, close *Button
	taps           int
}

func newBench(t *testing.T, width float32) *bench {
	test.NewTempApp(t)
	b := &bench{}
	b.measure = Named("Measure", theme.SearchIcon(), func() { b.taps++ })
	b.close = Sign("Close all of it", theme.CancelIcon(), func() { b.taps++ })
	b.body = New(widget.NewLabel("Pane"), []fyne.CanvasObject{b.measure, b.close})
	b.row = b.measure.row
	b.window = test.NewTempWindow(t, b.body)
	b.window.SetPadded(false)
	b.window.Resize(fyne.NewSize(width, b.body.MinSize().Height))
	return b
}

func TestWordsGiveWayToTheirIcons(t *testing.T) {
	b := newBench(t, 600)
	if b.measure.Text != "Measure" || b.close.Text != "" {
		t.Fatalf("the buttons say %q and %q", b.measure.Text, b.close.Text)
	}
	wide := b.measure.MinSize().Width
	least := b.body.MinSize()
	b.window.Resize(least)
	if b.measure.Text != "" || !b.measure.Visible() {
		t.Errorf("in the least width the button says %q", b.measure.Text)
	}
	if got := b.body.MinSize(); got != least {
		t.Errorf("the least size changes from %v to %v with the words", least, got)
	}
	if full := b.measure.fullWidth(); full != wide {
		t.Errorf("with its word the button is reckoned %g wide, it was %g", full, wide)
	}
	b.measure.SetWord("Measuring")
	b.window.Resize(fyne.NewSize(600, 40))
	if b.measure.Text != "Measuring" {
		t.Errorf("with room again the button says %q", b.measure.Text)
	}
}

func TestHintOfTheFocus(t *testing.T) {
	b := newBench(t, 600)
	b.window.Canvas().Focus(b.close)
	hint := b.row.hint
	if !hint.Visible() || hint.Text() != "Close all of it" {
		t.Fatalf("visible %v, says %q", hint.Visible(), hint.Text())
	}
	if top := hint.Position().Y; top < b.close.Position().Y+b.close.Size().Height {
		t.Errorf("the hint begins at %g, on its button", top)
	}
	if right := hint.Position().X + hint.Size().Width; right > 600 {
		t.Errorf("the hint ends at %g of 600", right)
	}
	b.window.Canvas().Focus(b.measure)
	if hint.Visible() {
		t.Error("a word that stands beside its icon is said again")
	}
}

func TestHintOfThePointer(t *testing.T) {
	b := newBench(t, 600)
	hint := b.row.hint
	b.close.MouseIn(&desktop.MouseEvent{})
	if hint.Visible() {
		t.Error("the hint comes before the pointer has rested")
	}
	b.close.rested()
	if !hint.Visible() {
		t.Fatal("the hint does not come")
	}
	test.Tap(b.close)
	if hint.Visible() || b.taps != 1 {
		t.Errorf("after a click the hint is shown: %v; %d taps", hint.Visible(), b.taps)
	}
	b.close.MouseIn(&desktop.MouseEvent{})
	b.close.MouseOut()
	b.close.rested()
	if hint.Visible() {
		t.Error("the hint comes though the pointer is gone")
	}
}
