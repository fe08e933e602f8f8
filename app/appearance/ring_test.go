package appearance

import (
	"image"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/settings"
)

// WCAG 2.2, success criteria 2.4.7 and 1.4.11: the focus can be seen, and its sign has a
// contrast of at least 3 to 1 to what is beside it (value from memory). Along the middle of
// the upper edge of a button a line of that contrast comes with the focus and goes with it.
func TestFocusOfAButtonCanBeSeen(t *testing.T) {
	importances := map[string]widget.Importance{
		"usual": widget.MediumImportance, "high": widget.HighImportance, "low": widget.LowImportance,
		"danger": widget.DangerImportance, "warning": widget.WarningImportance,
	}
	for _, look := range []settings.Appearance{settings.Light, settings.Dark} {
		for _, scale := range []float64{1, 2} {
			app := test.NewTempApp(t)
			set := settings.New(app.Preferences())
			set.SetAppearance(look)
			set.SetTextScale(scale)
			Wear(app, set)
			for name, importance := range importances {
				button := NewButton("Open", nil)
				button.Importance = importance
				window := test.NewTempWindow(t, button)
				window.Resize(fyne.NewSize(200, 100))
				before := window.Canvas().Capture()
				window.Canvas().Focus(button)
				focused := window.Canvas().Capture()
				window.Canvas().Unfocus()
				after := window.Canvas().Capture()
				if got := steepest(focused, button); got < 3 {
					t.Errorf("%v, %s: the line of the focus has a contrast of %.2f to 1, want 3", look, name, got)
				}
				for _, without := range []image.Image{before, after} {
					if got := steepest(without, button); got > 1.01 {
						t.Errorf("%v, %s: without the focus there is a line with a contrast of %.2f to 1", look, name, got)
					}
				}
			}
		}
	}
}

// steepest returns the highest contrast between pixels that follow each other from the
// upper edge of a button down to its words, at a quarter of its width.
func steepest(picture image.Image, button *Button) (most float64) {
	x, y := int(button.Position().X+button.Size().Width/4), int(button.Position().Y)+1
	for end := y + int(theme.Padding()*2); y < end; y++ {
		most = max(most, contrast(picture.At(x, y), picture.At(x, y+1)))
	}
	return most
}

// A button that cannot be pressed shows no focus, and one that is told of it does.
func TestButtonTellsOfItsFocus(t *testing.T) {
	test.NewTempApp(t)
	button, told := NewButton("Open", nil), 0
	button.OnFocus = func() { told++ }
	window := test.NewTempWindow(t, button)
	window.Canvas().Focus(button)
	if told != 1 {
		t.Errorf("told %d times", told)
	}
	button.Disable()
	if got := steepest(window.Canvas().Capture(), button); got > 1.01 {
		t.Errorf("a button that cannot be pressed has a line with a contrast of %.2f to 1", got)
	}
}
