// Package flat turns a drawing into a picture: the blank as it lies on the table.
//
// Lines and letters are filled by a raster of our own. Of what was measured, the
// benchmarks tell: it takes a fraction of the time of general drawing libraries,
// since nearly all of a technical drawing is thin, straight and of few colours.
package flat

import (
	"image"
	"image/png"
	"io"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/scene"
)

// MostPixels bounds the size of a picture: 100 million pixels take 400 MB.
const MostPixels = 100_000_000

// Draw paints the whole page of the drawing at the given number of pixels per
// millimetre, on white.
func Draw(drawing scene.Drawing, scale float64) (image.Image, error) {
	return DrawOver(drawing, scale, func(*image.RGBA, View) {})
}

// DrawOver is Draw with something painted onto the white first.
func DrawOver(drawing scene.Drawing, scale float64, under func(*image.RGBA, View)) (image.Image, error) {
	if err := drawing.Check(); err != nil {
		return nil, phrase.Errorf("draw picture: %s", err)
	}
	width, height := drawing.Media.Width()*scale, drawing.Media.Height()*scale
	if !(width >= 1 && height >= 1 && width*height <= MostPixels) {
		return nil, phrase.Errorf("draw picture of %q: %.0f × %.0f pixels; choose a resolution that gives 1 to %d pixels", drawing.Title, width, height, MostPixels)
	}
	picture := image.NewRGBA(image.Rect(0, 0, int(width), int(height)))
	palette := Light()
	var painter Painter
	view := View{Scale: scale, Origin: geometry.Vec2{X: drawing.Media.Min.X, Y: drawing.Media.Max.Y}}
	painter.Begin(picture, view)
	painter.Clear(palette.Paper)
	under(picture, view)
	painter.Draw(drawing, palette, AllLayers())
	return picture, nil
}

// WritePNG paints the drawing and writes it as PNG.
func WritePNG(w io.Writer, drawing scene.Drawing, scale float64) error {
	picture, err := Draw(drawing, scale)
	if err != nil {
		return err
	}
	if err := png.Encode(w, picture); err != nil {
		return phrase.Errorf("write PNG of %q: %s", drawing.Title, err)
	}
	return nil
}
