package artwork

import (
	"image"
	"math"

	"golang.org/x/image/draw"
)

// Drawings are shown from pictures of them, made once. 8 pixels to the mm are enough
// to read small text on the face of a bag; the bounds keep a poster or a stamp within
// reason.
const (
	drawnPixels  = 8.0 // to the mm
	longestDrawn = 4000
	leastDrawn   = 256
	leastLevel   = 64 // pixels of the longer side of the smallest picture
)

// draw makes the pictures of artwork that has no pixels of its own.
func (a *Art) draw(render func(width, height int) (*image.RGBA, error)) error {
	longer := max(a.Source.Size.X, a.Source.Size.Y)
	scale := min(max(longer*drawnPixels, leastDrawn), longestDrawn) / longer
	at := func(length float64) int { return max(int(math.Round(length*scale)), 1) }
	finest, err := render(at(a.Source.Size.X), at(a.Source.Size.Y))
	if err != nil {
		return err
	}
	a.Levels = halved(finest)
	return nil
}

// halved returns the picture and ever smaller ones, each pixel the mean of those it
// stands for.
func halved(finest *image.RGBA) []*image.RGBA {
	levels := []*image.RGBA{finest}
	for last := finest; max(last.Rect.Dx(), last.Rect.Dy()) >= 2*leastLevel; {
		next := image.NewRGBA(image.Rect(0, 0, max(last.Rect.Dx()/2, 1), max(last.Rect.Dy()/2, 1)))
		draw.ApproxBiLinear.Scale(next, next.Rect, last, last.Rect, draw.Src, nil)
		levels = append(levels, next)
		last = next
	}
	return levels
}
