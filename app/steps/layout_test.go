package steps

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/app/document"
	"gussetwright/app/settings"
	"gussetwright/app/steppage/pagetest"
	"gussetwright/geometry"
)

// Every step can be worked in the width that the window gives, with letters of the
// usual size and half as large again.
func TestNothingIsCutOff(t *testing.T) {
	app := test.NewTempApp(t)
	set := settings.New(app.Preferences())
	appearance.Wear(app, set)
	doc := document.New()
	for _, scale := range []float64{0.8, 1, 1.5} {
		for _, unit := range geometry.Units() {
			set.SetTextScale(scale)
			set.SetUnit(unit)
			panel := newPanel(doc, set, widget.NewLabel(""))
			window := test.NewTempWindow(t, panel)
			window.SetPadded(false)
			window.Resize(fyne.NewSize(deskWidth, deskHeight))
			for step := range stepCount {
				panel.Select(step)
				if least := panel.MinSize().Width; least > deskWidth {
					t.Errorf("step %d needs a width of %g at scale %g in %s", step, least, scale, unit)
				}
				if step != filesStep {
					inside(t, panel.page(step).Column, 0, panel.scroll.Size().Width, fmt.Sprintf("step %d at scale %g", step, scale))
				}
			}
			panel.Close()
		}
	}
}

// inside checks that everything that is seen of an object lies within a width. What
// is typed may be longer than its line, and scrolls there.
func inside(t *testing.T, object fyne.CanvasObject, left, width float32, where string) {
	t.Helper()
	if !object.Visible() {
		return
	}
	left += object.Position().X
	if right := left + object.Size().Width; object.Size().Width > 0 && (left < -0.5 || right > width+0.5) {
		t.Errorf("%s: %T goes from %g to %g of %g", where, object, left, right, width)
	}
	if text, ok := object.(*canvas.Text); ok && left+text.MinSize().Width > width+0.5 {
		t.Errorf("%s: %q ends at %g of %g", where, text.Text, left+text.MinSize().Width, width)
	}
	if _, scrolls := object.(interface{ UndoTyping() bool }); scrolls {
		return
	}
	if holder, ok := object.(fyne.Widget); ok {
		for _, inner := range test.WidgetRenderer(holder).Objects() {
			inside(t, inner, left, width, where)
		}
	}
}

// A change of text size while a step is shown gives what a new panel shows.
func TestTextSizeChanges(t *testing.T) {
	app := test.NewTempApp(t)
	set := settings.New(app.Preferences())
	appearance.Wear(app, set)
	show := func() (*Panel, fyne.Window) {
		panel := newPanel(document.New(), set, widget.NewLabel(""))
		panel.Select(sheetStep)
		window := test.NewTempWindow(t, panel)
		window.SetPadded(false)
		window.Resize(fyne.NewSize(deskWidth, deskHeight))
		return panel, window
	}
	_, window := show()
	pagetest.Markup(window)
	set.SetTextScale(1.5)
	_, fresh := show()
	if got, want := pagetest.Markup(window), pagetest.Markup(fresh); got != want {
		t.Errorf("after the change:\n%s\nfresh:\n%s", got, want)
	}
}
