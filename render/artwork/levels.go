package artwork

import (
	"image"
	"math"

	"gussetwright/render/artwork/raster"
)

// Drawings are shown from pictures of them, made once. 8 pixels to the mm are enough
// to read small text on the face of a bag; the bounds keep a poster or a stamp within
// reason.
const (
	drawnPixels  = 8.0 // to the mm
	longestDrawn = 4000
	leastDrawn   = 256
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
	a.Levels = raster.Levels(finest)
	return nil
}
