package blankpane

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/render/dieline"
	"gussetwright/render/flat"
	"gussetwright/render/scene"
)

// sample shows what the lines of a role look like.
type sample struct {
	widget.BaseWidget
	role    scene.Role
	picture *canvas.Raster
	painter flat.Painter
}

// Size of a sample in pixels.
const (
	sampleWidth  = 44
	sampleHeight = 16
)

func newSample(role scene.Role) *sample {
	s := &sample{role: role}
	s.picture = canvas.NewRaster(s.paint)
	s.picture.SetMinSize(fyne.NewSize(sampleWidth, sampleHeight))
	s.ExtendBaseWidget(s)
	return s
}

// CreateRenderer is part of fyne.Widget.
func (s *sample) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(s.picture) }

// paint draws the sample in the same sizes as on the blank.
func (s *sample) paint(width, height int) image.Image {
	pixels := image.NewRGBA(image.Rect(0, 0, width, height))
	if width < 1 || height < 1 {
		return pixels
	}
	density := float64(width) / float64(max(s.Size().Width, 1))
	box := geometry.RectAt(0, 0, float64(width)/density, float64(height)/density)
	drawing := dieline.Screen{Letter: letterHeight(), Say: words.OnDrawing()}.Sample(s.role, box)
	s.painter.Begin(pixels, flat.View{Scale: density, Origin: geometry.Vec2{Y: box.Max.Y}, Pen: pen * density})
	s.painter.Draw(drawing, palettes[appearance.IsDark()], flat.AllLayers())
	return pixels
}
