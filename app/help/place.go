package help

import (
	"image"
	"image/color"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/render/flat"
)

// place shows on a small blank where creases of some roles are.
type place struct {
	widget.BaseWidget

	piece   blank.Piece
	roles   []blank.Role
	picture *canvas.Raster
}

func newPlace(roles []blank.Role) *place {
	laid := blank.Lay(bag.Default())
	p := &place{piece: laid.Pieces[0], roles: roles}
	p.picture = canvas.NewRaster(p.draw)
	p.ExtendBaseWidget(p)
	return p
}

// Of the drawing, in shares of its width.
const (
	faintLine = 0.004
	litLine   = 0.02
)

func (p *place) draw(width, height int) image.Image {
	picture := image.NewRGBA(image.Rect(0, 0, max(width, 1), max(height, 1)))
	palette := flat.Light()
	if appearance.IsDark() {
		palette = flat.Dark()
	}
	scale := float64(width) / p.piece.Width
	var painter flat.Painter
	painter.Begin(picture, flat.View{Scale: scale, Origin: geometry.Vec2{Y: p.piece.Height}})
	painter.Fill(palette.Paper, p.piece.Outline)
	lit, faint := rgba(theme.Color(theme.ColorNamePrimary)), rgba(theme.Color(theme.ColorNamePlaceHolder))
	for _, of := range []bool{false, true} { // what is lit lies on top
		for _, line := range p.piece.Lines {
			if slices.Contains(p.roles, line.Role) != of {
				continue
			}
			ink, share := faint, faintLine
			if of {
				ink, share = lit, litLine
			}
			path := geometry.Path{Vertices: []geometry.Vertex{{Vec2: line.From, Bulge: line.Bulge}, {Vec2: line.To}}}
			painter.Outline(ink, path, max(share*float64(width), 1))
		}
	}
	return picture
}

func rgba(c color.Color) color.NRGBA { return color.NRGBAModel.Convert(c).(color.NRGBA) }

// CreateRenderer is part of fyne.Widget.
func (p *place) CreateRenderer() fyne.WidgetRenderer { return &placeRenderer{p} }

type placeRenderer struct{ p *place }

// size is that of the picture.
func (r *placeRenderer) size() fyne.Size {
	width := 8 * theme.TextSize()
	return fyne.NewSize(width, width*float32(r.p.piece.Height/r.p.piece.Width))
}

// MinSize is part of fyne.WidgetRenderer.
func (r *placeRenderer) MinSize() fyne.Size {
	return r.size().AddWidthHeight(theme.InnerPadding(), 2*theme.InnerPadding())
}

// Layout is part of fyne.WidgetRenderer.
func (r *placeRenderer) Layout(fyne.Size) {
	r.p.picture.Move(fyne.NewPos(theme.InnerPadding(), 0))
	r.p.picture.Resize(r.size())
}

// Objects is part of fyne.WidgetRenderer.
func (r *placeRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.p.picture} }

// Refresh is part of fyne.WidgetRenderer.
func (r *placeRenderer) Refresh() { r.p.picture.Refresh() }

// Destroy is part of fyne.WidgetRenderer.
func (r *placeRenderer) Destroy() {}
