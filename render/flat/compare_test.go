package flat

import (
	"image"
	"image/color"
	"math"
	"testing"

	"github.com/fogleman/gg"
	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/vector"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/render/dieline"
	"gussetwright/render/scene"
)

// pane is a picture of the usual size of the blank pane, and the bag that fits it.
const (
	paneWidth  = 900
	paneHeight = 700
	paneScale  = 1.1
	paneLetter = 11
)

func paneDrawing() (scene.Drawing, View) {
	laid := blank.Lay(bag.Default())
	drawing := dieline.OnScreen(&laid, 0, paneLetter/paneScale)
	return drawing, View{Scale: paneScale, Origin: geometry.Vec2{X: drawing.Media.Min.X, Y: drawing.Media.Max.Y}, Pen: 1.4}
}

// The three ways to paint that were to choose from, with the same drawing and the
// same line widths: our own raster, golang.org/x/image/vector and fogleman/gg.
func BenchmarkPane(b *testing.B) {
	drawing, view := paneDrawing()
	picture := image.NewRGBA(image.Rect(0, 0, paneWidth, paneHeight))
	palette := Light()
	for _, way := range []struct {
		name  string
		paint func()
	}{
		{"own", paintWith(&Painter{}, picture, drawing, view, palette)},
		{"vector", paintWith(&Painter{raster: &vectorFiller{}}, picture, drawing, view, palette)},
		{"gg", func() { paintGG(picture, drawing, view, palette) }},
	} {
		b.Run(way.name, func(b *testing.B) {
			b.ReportAllocs()
			way.paint()
			for b.Loop() {
				way.paint()
			}
		})
	}
}

func paintWith(p *Painter, picture *image.RGBA, drawing scene.Drawing, view View, palette *Palette) func() {
	return func() {
		p.Begin(picture, view)
		p.Clear(palette.Ground)
		p.Fill(palette.Paper, drawing.Trim.Path())
		p.Draw(drawing, palette, AllLayers())
	}
}

// The raster and golang.org/x/image/vector must paint the same picture from the
// same outlines, to some steps of 255: it counts in whole numbers there, so that its share
// of a long line at 45° drifts from pixel to pixel where ours stays the same.
func TestRasterAgreesWithVector(t *testing.T) {
	drawing, view := paneDrawing()
	for _, zoom := range []float64{1, 0.4, 3.7, 20} {
		view.Scale = paneScale * zoom
		view.Origin = geometry.Vec2{X: -20 / zoom, Y: 480}
		ours, theirs := image.NewRGBA(image.Rect(0, 0, 300, 200)), image.NewRGBA(image.Rect(0, 0, 300, 200))
		paintWith(&Painter{}, ours, drawing, view, Light())()
		paintWith(&Painter{raster: &vectorFiller{}}, theirs, drawing, view, Light())()
		worst, ink := 0, 0
		for i := range ours.Pix {
			difference := int(ours.Pix[i]) - int(theirs.Pix[i])
			worst = max(worst, difference, -difference)
			if ours.Pix[i] != ours.Pix[i%4] {
				ink++
			}
		}
		if worst > 26 {
			t.Errorf("zoom %g: pixels differ by up to %d of 255", zoom, worst)
		}
		if ink < 1000 {
			t.Errorf("zoom %g: only %d values painted", zoom, ink)
		}
	}
}

// vectorFiller fills by golang.org/x/image/vector.
type vectorFiller struct{ vector.Rasterizer }

func (f *vectorFiller) reset(width, height int) { f.Reset(width, height) }

func (f *vectorFiller) edge(x0, y0, x1, y1 float64) {
	if math.Min(y0, y1) > float64(f.Size().Y) || math.Max(y0, y1) < 0 {
		return
	}
	f.MoveTo(float32(x0), float32(y0))
	f.LineTo(float32(x1), float32(y1))
}

func (f *vectorFiller) fill(picture *image.RGBA, ink color.NRGBA) {
	f.Draw(picture, picture.Rect, image.NewUniform(ink), image.Point{})
	f.Reset(picture.Rect.Dx(), picture.Rect.Dy())
}

// paintGG paints by fogleman/gg, as plainly as its interface suggests.
func paintGG(picture *image.RGBA, drawing scene.Drawing, view View, palette *Palette) {
	context := gg.NewContextForRGBA(picture)
	context.SetLineCapButt()
	context.SetColor(palette.Ground)
	context.Clear()
	faces := map[float64]font.Face{}
	parsed, _ := opentype.Parse(goregular.TTF)
	trace := func(path geometry.Path) {
		context.MoveTo(view.At(path.Vertices[0].Vec2))
		for i := range path.Len() {
			edge := path.Edge(i)
			if !scene.Straight(edge) {
				for step := 1; step < 12; step++ {
					context.LineTo(view.At(edge.Arc().At(float64(step) / 12)))
				}
			}
			context.LineTo(view.At(edge.To))
		}
		if path.Closed {
			context.ClosePath()
		}
	}
	trace(drawing.Trim.Path())
	context.SetColor(palette.Paper)
	context.Fill()
	for _, role := range scene.Roles() {
		context.SetColor(palette.Ink[role])
		for _, item := range drawing.Items {
			if item.Layer() != role {
				continue
			}
			switch item := item.(type) {
			case scene.Stroke:
				trace(item.Path)
				context.SetLineWidth(max(1, item.Width/penWidth*view.Pen))
				dash := make([]float64, len(item.Dash))
				for i, length := range item.Dash {
					dash[i] = length * view.Scale
				}
				context.SetDash(dash...)
				context.Stroke()
			case scene.Fill:
				trace(item.Path)
				context.Fill()
			case scene.Label:
				size := item.Size * view.Scale
				if faces[size] == nil {
					faces[size], _ = opentype.NewFace(parsed, &opentype.FaceOptions{Size: size, DPI: 72})
				}
				context.SetFontFace(faces[size])
				x, y := view.At(item.At)
				context.Push()
				context.RotateAbout(-item.Turn, x, y)
				context.DrawStringAnchored(item.Text, x, y, []float64{0, 0.5, 1}[item.Anchor], 0)
				context.Pop()
			}
		}
	}
}
