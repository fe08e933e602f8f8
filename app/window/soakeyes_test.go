//go:build linux

package window

import (
	"fmt"
	"image"
	"time"

	"fyne.io/fyne/v2"
)

// seen looks whether a part of the window changes when something is done.
func (s *soak) seen(part fyne.CanvasObject, what string, do func()) error {
	s.t.Helper()
	corner, size := s.at(part, 0, 0), part.Size()
	area := image.Rect(int(corner.X), int(corner.Y), int(corner.X+size.Width), int(corner.Y+size.Height))
	before := cut(s.picture(), area)
	do()
	const least = 200 // pixels; the pointer alone changes fewer
	count := 0
	for end := time.Now().Add(patience); time.Now().Before(end); s.pause() {
		if count = max(count, differing(before, cut(s.picture(), area))); count >= least {
			return nil
		}
	}
	return fmt.Errorf("%s: only %d pixels changed", what, count)
}

func cut(picture image.Image, area image.Rectangle) image.Image {
	return picture.(interface {
		SubImage(image.Rectangle) image.Image
	}).SubImage(area)
}

// shining returns the place of the lowest button in the primary colour at a distance from
// the left. Below the one that writes files stands what was written before, which the twin
// knows nothing of.
func (s *soak) shining(x float32) (at fyne.Position, found bool) {
	s.t.Helper()
	const least = 15 // pixels, more than any letter
	picture, run := s.picture(), 0
	for y := picture.Bounds().Max.Y - 1; y >= 0; y-- {
		if isPrimary(picture.At(int(x), y)) {
			run++
		} else {
			run = 0
		}
		if run == least {
			return fyne.NewPos(x, float32(y+least/2)), true
		}
	}
	return fyne.Position{}, false
}
