package report

import (
	"errors"
	"fmt"
	"image"
	"image/color"
	"math"

	"golang.org/x/image/draw"

	"gussetwright/geometry"
	"gussetwright/render/flat"
	"gussetwright/render/scene"
)

// Draw paints a page on white at the given number of pixels per millimetre. It looks
// as the page does in a file, but for the colours of inks, which only come near.
//
// A page that cannot be drawn is an error, and so is a picture that has a form and no
// image, and a resolution that gives no pixel or more than flat.MostPixels.
func Draw(page Page, pixelsPerMM float64) (*image.RGBA, error) {
	if err := page.Check(); err != nil {
		return nil, fmt.Errorf("draw page: %w", err)
	}
	width, height := math.Round(page.Width*pixelsPerMM), math.Round(page.Height*pixelsPerMM)
	if !(width >= 1 && height >= 1 && width*height <= flat.MostPixels) {
		return nil, fmt.Errorf("draw page: %.0f × %.0f pixels; choose a resolution that gives 1 to %d pixels", width, height, flat.MostPixels)
	}
	picture := image.NewRGBA(image.Rect(0, 0, int(width), int(height)))
	e := easel{view: flat.View{Scale: pixelsPerMM, Origin: geometry.Vec2{Y: page.Height}}}
	e.turnTo(picture)
	e.painter.Clear(color.NRGBA{255, 255, 255, 255})
	for i, item := range page.Items {
		if err := e.draw(item); err != nil {
			return nil, fmt.Errorf("draw page: item %d: %w", i+1, err)
		}
	}
	return picture, nil
}

// easel is a picture in the making.
type easel struct {
	painter flat.Painter
	picture *image.RGBA
	view    flat.View
}

func (e *easel) draw(item Item) error {
	switch item := item.(type) {
	case Text:
		e.paint(item.Colour.or(black), scene.Label{
			Role: scene.Legend, Text: item.Text, At: item.At, Size: item.Size,
			Anchor: item.Align, Turn: item.Turn, Bold: item.Bold,
		})
	case Rule:
		e.line(item.Path(), item.Line)
	case Box:
		e.shape(Shape{item.Path(), item.Fill, item.Line})
	case Shape:
		e.shape(item)
	case Picture:
		return e.show(item)
	case Window:
		return e.look(item)
	}
	return nil
}

var black = RGB(0, 0, 0)

func (e *easel) shape(s Shape) {
	if !s.Fill.None() {
		e.painter.Fill(s.Fill.opaque(), s.Path)
	}
	e.line(s.Path, s.Line)
}

func (e *easel) line(path geometry.Path, line Line) {
	if !line.Colour.None() {
		e.paint(line.Colour, scene.Stroke{Role: scene.Legend, Path: path, Width: line.Width, Dash: line.Dash})
	}
}

// paint draws one item in one colour.
func (e *easel) paint(colour Colour, item scene.Item) {
	palette := flat.Palette{Ink: map[scene.Role]color.NRGBA{item.Layer(): colour.opaque()}}
	e.painter.Draw(scene.Drawing{Items: []scene.Item{item}}, &palette, flat.Layers(0).With(item.Layer(), true))
}

func (e *easel) show(p Picture) error {
	if p.Image == nil {
		return errors.New("a picture has a form and no image; give it an image of the form as well")
	}
	draw.CatmullRom.Scale(e.picture, e.pixels(p.Rect), p.Image, p.Image.Bounds(), draw.Over, nil)
	return nil
}

// pixels returns where a rectangle of the page lies on the picture.
func (e *easel) pixels(r geometry.Rect) image.Rectangle {
	left, top := e.view.At(geometry.Vec2{X: r.Min.X, Y: r.Max.Y})
	right, bottom := e.view.At(geometry.Vec2{X: r.Max.X, Y: r.Min.Y})
	pixel := func(v float64) int { return int(math.Round(v)) }
	return image.Rect(pixel(left), pixel(top), pixel(right), pixel(bottom))
}
