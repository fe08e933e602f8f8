// Package flat turns a drawing into a picture: the blank as it lies on the table.
package flat

import (
	"fmt"
	"image"
	"image/color"
	"image/png"
	"io"

	"github.com/fogleman/gg"
	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"

	"gussetwright/geometry"
	"gussetwright/render/scene"
)

// MostPixels bounds the size of a picture: 100 million pixels take 400 MB.
const MostPixels = 100_000_000

// least is the width in pixels below which lines would vanish.
const least = 0.7

// painter draws one picture. scale is pixels per millimetre; origin is the upper
// left corner of the page in millimetres.
type painter struct {
	context *gg.Context
	scale   float64
	origin  geometry.Vec2
	faces   map[faceKey]font.Face
}

type faceKey struct {
	size float64
	bold bool
}

// Draw paints the whole page of the drawing at the given number of pixels per
// millimetre, on white.
func Draw(drawing scene.Drawing, scale float64) (image.Image, error) {
	if err := drawing.Check(); err != nil {
		return nil, fmt.Errorf("draw picture: %w", err)
	}
	width, height := drawing.Media.Width()*scale, drawing.Media.Height()*scale
	if !(width >= 1 && height >= 1 && width*height <= MostPixels) {
		return nil, fmt.Errorf("draw picture of %q: %.0f × %.0f pixels; choose a resolution that gives 1 to %d pixels", drawing.Title, width, height, MostPixels)
	}
	p := painter{
		context: gg.NewContext(int(width), int(height)), scale: scale,
		origin: geometry.Vec2{X: drawing.Media.Min.X, Y: drawing.Media.Max.Y},
		faces:  map[faceKey]font.Face{},
	}
	p.context.SetColor(color.White)
	p.context.Clear()
	p.context.SetLineCapButt()
	byRole := drawing.ByRole()
	for _, role := range scene.Roles() {
		for _, item := range byRole[role] {
			if err := p.paint(item); err != nil {
				return nil, fmt.Errorf("draw picture of %q: %w", drawing.Title, err)
			}
		}
	}
	return p.context.Image(), nil
}

// WritePNG paints the drawing and writes it as PNG.
func WritePNG(w io.Writer, drawing scene.Drawing, scale float64) error {
	picture, err := Draw(drawing, scale)
	if err != nil {
		return err
	}
	if err := png.Encode(w, picture); err != nil {
		return fmt.Errorf("write PNG of %q: %w", drawing.Title, err)
	}
	return nil
}

func (p *painter) paint(item scene.Item) error {
	screen := item.Layer().Style().Screen
	p.context.SetColor(color.NRGBA{screen.R, screen.G, screen.B, 255})
	switch item := item.(type) {
	case scene.Stroke:
		p.trace(item.Path)
		p.context.SetLineWidth(max(item.Width*p.scale, least))
		p.context.SetDash(p.dash(item.Dash)...)
		p.context.Stroke()
	case scene.Fill:
		p.trace(item.Path)
		p.context.Fill()
	case scene.Label:
		return p.write(item)
	}
	return nil
}

func (p *painter) dash(lengths []float64) []float64 {
	scaled := make([]float64, len(lengths))
	for i, length := range lengths {
		scaled[i] = length * p.scale
	}
	return scaled
}

// at returns the pixel of a point of the drawing.
func (p *painter) at(v geometry.Vec2) (x, y float64) {
	return (v.X - p.origin.X) * p.scale, (p.origin.Y - v.Y) * p.scale
}

// trace lays the path; arcs are short chords, finer than a pixel.
func (p *painter) trace(path geometry.Path) {
	if len(path.Vertices) == 0 {
		return
	}
	p.context.MoveTo(p.at(path.Vertices[0].Vec2))
	for i := range path.Len() {
		edge := path.Edge(i)
		if scene.Straight(edge) {
			p.context.LineTo(p.at(edge.To))
			continue
		}
		arc := edge.Arc()
		steps := 4 + int(arc.Radius*p.scale)
		for step := 1; step <= steps; step++ {
			p.context.LineTo(p.at(arc.At(float64(step) / float64(steps))))
		}
	}
	if path.Closed {
		p.context.ClosePath()
	}
}

func (p *painter) write(label scene.Label) error {
	face, err := p.face(label.Size*p.scale, label.Bold)
	if err != nil {
		return err
	}
	p.context.SetFontFace(face)
	x, y := p.at(label.At)
	p.context.Push()
	p.context.RotateAbout(-label.Turn, x, y)
	anchor := map[scene.Anchor]float64{scene.Start: 0, scene.Middle: 0.5, scene.End: 1}[label.Anchor]
	p.context.DrawStringAnchored(label.Text, x, y, anchor, 0)
	p.context.Pop()
	return nil
}

// face returns the lettering at a height in pixels.
func (p *painter) face(size float64, bold bool) (font.Face, error) {
	key := faceKey{size, bold}
	if face, known := p.faces[key]; known {
		return face, nil
	}
	data := goregular.TTF
	if bold {
		data = gobold.TTF
	}
	parsed, err := opentype.Parse(data)
	if err != nil {
		return nil, fmt.Errorf("read lettering: %w", err)
	}
	face, err := opentype.NewFace(parsed, &opentype.FaceOptions{Size: size, DPI: 72, Hinting: font.HintingNone})
	if err != nil {
		return nil, fmt.Errorf("read lettering: %w", err)
	}
	p.faces[key] = face
	return face, nil
}
