package help

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/geometry"
	"gussetwright/render/dieline"
	"gussetwright/render/flat"
	"gussetwright/render/scene"
)

// sample shows what the lines of a role look like, on a piece of paper.
type sample struct {
	widget.BaseWidget

	drawing scene.Drawing
	picture *canvas.Raster
}

// The piece of paper in mm, and the lettering for which its lines are drawn.
const (
	paperWidth  = 36.0
	paperHeight = 9.0
	letter      = 5.0
)

func newSample(role scene.Role) *sample {
	s := &sample{}
	box := geometry.RectAt(0, 0, paperWidth, paperHeight)
	s.drawing = dieline.Screen{Letter: letter}.Sample(role, box.Inset(2))
	s.drawing.Media = box
	s.picture = canvas.NewRaster(s.draw)
	s.ExtendBaseWidget(s)
	return s
}

func (s *sample) draw(width, height int) image.Image {
	picture := image.NewRGBA(image.Rect(0, 0, max(width, 1), max(height, 1)))
	palette := flat.Light()
	if appearance.IsDark() {
		palette = flat.Dark()
	}
	scale := float64(width) / paperWidth
	var painter flat.Painter
	painter.Begin(picture, flat.View{Scale: scale, Origin: geometry.Vec2{X: 0, Y: paperHeight}})
	painter.Clear(palette.Paper)
	painter.Draw(s.drawing, palette, flat.AllLayers())
	return picture
}

// CreateRenderer is part of fyne.Widget.
func (s *sample) CreateRenderer() fyne.WidgetRenderer { return &sampleRenderer{s} }

type sampleRenderer struct{ s *sample }

func (r *sampleRenderer) MinSize() fyne.Size {
	height := 2.2 * theme.TextSize()
	return fyne.NewSize(height*paperWidth/paperHeight, height+2*theme.Padding())
}

// Layout keeps the shape of the paper in the upper left corner.
func (r *sampleRenderer) Layout(fyne.Size) {
	least := r.MinSize()
	r.s.picture.Move(fyne.NewPos(theme.InnerPadding(), theme.Padding()))
	r.s.picture.Resize(fyne.NewSize(least.Width, least.Height-2*theme.Padding()))
}

func (r *sampleRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.s.picture} }
func (r *sampleRenderer) Refresh()                     { r.s.picture.Refresh() }
func (r *sampleRenderer) Destroy()                     {}
