package blankpane

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/render/dieline"
	"gussetwright/render/flat"
	"gussetwright/render/scene"
)

// sample shows what the lines of a role, or of a part on the reverse, look like on the
// paper of the bag.
type sample struct {
	widget.BaseWidget
	draw    func(dieline.Screen, geometry.Rect) scene.Drawing
	paper   color.NRGBA
	picture *canvas.Raster
	painter flat.Painter
}

// Size of a sample in pixels, at the usual text size.
const (
	sampleWidth  = 44
	sampleHeight = 16
	sampleEdge   = 3 // of paper beside the lines
)

func newSample(role scene.Role, paper color.NRGBA) *sample {
	return sampleOf(paper, func(screen dieline.Screen, box geometry.Rect) scene.Drawing { return screen.Sample(role, box) })
}

func newPartSample(part blank.GlueRole, paper color.NRGBA) *sample {
	return sampleOf(paper, func(screen dieline.Screen, box geometry.Rect) scene.Drawing { return screen.SamplePart(part, box) })
}

func sampleOf(paper color.NRGBA, draw func(dieline.Screen, geometry.Rect) scene.Drawing) *sample {
	s := &sample{paper: paper, draw: draw}
	s.picture = canvas.NewRaster(s.paint)
	s.ExtendBaseWidget(s)
	return s
}

// MinSize is part of fyne.Widget. A sample grows with the lettering, so that it shows as
// much of the dashes.
func (s *sample) MinSize() fyne.Size {
	const usual = 12 // of letterHeight
	s.ExtendBaseWidget(s)
	factor := float32(letterHeight() / usual)
	return fyne.NewSize(sampleWidth*factor, sampleHeight*factor)
}

// CreateRenderer is part of fyne.Widget.
func (s *sample) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(s.picture) }

// paint draws the sample in the same sizes and inks as on the blank.
func (s *sample) paint(width, height int) image.Image {
	pixels := image.NewRGBA(image.Rect(0, 0, width, height))
	if width < 1 || height < 1 {
		return pixels
	}
	density := float64(width) / float64(max(s.Size().Width, 1))
	box := geometry.RectAt(0, 0, float64(width)/density, float64(height)/density)
	inner := geometry.RectAt(sampleEdge, 0, box.Width()-2*sampleEdge, box.Height())
	drawing := s.draw(dieline.Screen{Letter: letterHeight(), Voice: words.DrawingVoice()}, inner)
	s.painter.Begin(pixels, flat.View{Scale: density, Origin: geometry.Vec2{Y: box.Max.Y}, Pen: pen * density})
	s.painter.Clear(s.paper)
	s.painter.Draw(drawing, barePalettes[appearance.IsDark()], flat.AllLayers())
	return pixels
}
