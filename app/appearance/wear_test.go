package appearance

import (
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"gussetwright/app/settings"
)

// onScreen is a window that tells when it is drawn, as those on a screen can.
type onScreen struct {
	fyne.Window
	drawing bool
}

func (w *onScreen) RunWithContext(do func()) {
	w.drawing = true
	do()
	w.drawing = false
}

func TestThemeChangesWhileAWindowIsDrawn(t *testing.T) {
	w := &onScreen{}
	drawing([]fyne.Window{w}, func() {
		if !w.drawing {
			t.Error("the graphics library does not know whose text is let go of")
		}
	})
	for _, windows := range [][]fyne.Window{nil, {test.NewTempWindow(t, nil)}} {
		done := false
		drawing(windows, func() { done = true })
		if !done {
			t.Errorf("with %d windows that are not on a screen nothing is done", len(windows))
		}
	}
}

func TestWearFollowsTheTextScale(t *testing.T) {
	app := test.NewTempApp(t)
	set := settings.New(app.Preferences())
	Wear(app, set)
	before := app.Settings().Theme().Size("text")
	set.SetTextScale(2 * set.TextScale())
	if got := app.Settings().Theme().Size("text"); got <= before {
		t.Errorf("letters are %g high, were %g", got, before)
	}
}

// What is in a window ends where the window does, with padding of another size too.
func TestContentKeepsToTheWindow(t *testing.T) {
	app := test.NewTempApp(t)
	set := settings.New(app.Preferences())
	Wear(app, set)
	content := canvas.NewRectangle(color.Black)
	window := test.NewTempWindow(t, content)
	window.Resize(fyne.NewSize(400, 300))
	for _, scale := range []float64{2, 0.8} {
		set.SetTextScale(scale)
		padding := theme.Padding()
		if want := window.Canvas().Size().SubtractWidthHeight(2*padding, 2*padding); content.Size() != want {
			t.Errorf("text %g: the content is %v large, want %v", scale, content.Size(), want)
		}
	}
}
