package lesson

import (
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// A button in the colour of the accent shows the focus by a line in the colour of its
// words, whose contrast to the accent is tested where the colours are.
func TestFocusCanBeSeenOnTheAccent(t *testing.T) {
	for _, look := range []string{"light", "dark"} {
		b := newBench(t, demo(t), 1024, 700).blind()
		if look == "dark" {
			b = newBench(t, demo(t), 1024, 700, dark).blind()
		}
		ringed := func() bool {
			at := fyne.CurrentApp().Driver().AbsolutePositionForObject(b.page.play)
			x, picture := int(at.X+b.page.play.Size().Width/4), b.capture()
			want := color.NRGBAModel.Convert(theme.Color(theme.ColorNameForegroundOnPrimary))
			for y := int(at.Y); y < int(at.Y+2*theme.Padding()); y++ {
				if color.NRGBAModel.Convert(picture.At(x, y)) == want {
					return true
				}
			}
			return false
		}
		without := ringed()
		b.window.Canvas().Focus(b.page.play)
		with := ringed()
		b.window.Canvas().Focus(b.line)
		if without || !with || ringed() {
			t.Errorf("%s: a line before the focus comes: %v, while it is there: %v, after it has gone: %v", look, without, with, ringed())
		}
	}
}
