package steps

import (
	"image/color"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
)

// picture is a small picture of the sheet: the gripper zone, the margins, and the
// blanks as they lie.
type picture struct {
	widget.BaseWidget

	plan  sheet.Plan
	drawn bool

	paper, gripper, usable *canvas.Rectangle
	gripperName            *canvas.Text
	cells                  []*canvas.Rectangle
	numbers                []*canvas.Text
}

// mostCells bounds what is drawn; smaller pieces could not be told apart anyway.
const mostCells = 60

func newPicture() *picture {
	p := &picture{
		paper: canvas.NewRectangle(color.Transparent), gripper: canvas.NewRectangle(color.Transparent), usable: canvas.NewRectangle(color.Transparent),
		gripperName: canvas.NewText(lang.L("Gripper"), nil),
	}
	p.ExtendBaseWidget(p)
	return p
}

// set draws another plan.
func (p *picture) set(plan *sheet.Plan) {
	if p.drawn && p.plan.Sheet == plan.Sheet && p.plan.Piece == plan.Piece {
		return // everything else follows from these
	}
	p.plan, p.drawn = *plan, true
	p.Refresh()
}

// HeightFor returns the height at a width: an upright sheet gets less of the width.
func (p *picture) HeightFor(width float32) float32 {
	return width * 0.72
}

// scale returns pixels per millimetre and the lower left corner of the sheet.
func (p *picture) scale(size fyne.Size) (scale float32, left, bottom float32) {
	width, height := float32(p.plan.Sheet.Width), float32(p.plan.Sheet.Height)
	if width <= 0 || height <= 0 {
		return 0, 0, 0
	}
	const edge = 2
	scale = min((size.Width-2*edge)/width, (size.Height-2*edge)/height)
	return scale, (size.Width - width*scale) / 2, (size.Height + height*scale) / 2
}

// put lays an object over a rectangle of the sheet, which is in mm and y up.
func (p *picture) put(object fyne.CanvasObject, r geometry.Rect, size fyne.Size) {
	scale, left, bottom := p.scale(size)
	object.Move(fyne.NewPos(left+float32(r.Min.X)*scale, bottom-float32(r.Max.Y)*scale))
	object.Resize(fyne.NewSize(max(float32(r.Width())*scale, 0), max(float32(r.Height())*scale, 0)))
}

// gripperZone is the strip that the press holds.
func gripperZone(s bag.Sheet) geometry.Rect {
	if sheet.GripOf(s) == sheet.GripBottom {
		return geometry.Rect{Max: geometry.Vec2{X: s.Width, Y: s.Gripper}}
	}
	return geometry.Rect{Max: geometry.Vec2{X: s.Gripper, Y: s.Height}}
}

func (p *picture) layout(size fyne.Size) {
	s := p.plan.Sheet
	p.put(p.paper, geometry.Rect{Max: geometry.Vec2{X: s.Width, Y: s.Height}}, size)
	zone := gripperZone(s)
	p.put(p.gripper, zone, size)
	p.put(p.usable, p.plan.Usable, size)
	for i, cell := range p.cells {
		p.put(cell, p.cell(i), size)
		number := p.numbers[i]
		least := number.MinSize()
		number.Resize(least)
		number.Move(cell.Position().Add(fyne.NewPos((cell.Size().Width-least.Width)/2, (cell.Size().Height-least.Height)/2)))
		number.Hidden = least.Width > cell.Size().Width || least.Height > cell.Size().Height
	}
	p.placeGripperName(size)
}

// placeGripperName writes the name along the inner edge of the gripper zone, which
// is too narrow to hold it, in the lower left corner of the usable area.
func (p *picture) placeGripperName(size fyne.Size) {
	least := p.gripperName.MinSize()
	p.gripperName.Resize(least)
	p.gripperName.Move(p.gripper.Position().Add(fyne.NewPos(p.gripper.Size().Width+3, 0)))
	if sheet.GripOf(p.plan.Sheet) == sheet.GripBottom {
		p.gripperName.Move(p.gripper.Position().Add(fyne.NewPos(3, -least.Height)))
	}
}

func (p *picture) cell(i int) geometry.Rect {
	at, piece := p.plan.Placements[i], p.plan.Piece
	width, height := piece.Width, piece.Height
	if at.Turn == 90 {
		width, height = height, width
	}
	return geometry.Rect{Min: geometry.Vec2{X: at.X, Y: at.Y}, Max: geometry.Vec2{X: at.X + width, Y: at.Y + height}}
}

// renew brings the pool of cells to the number of blanks, and colours all.
func (p *picture) renew() {
	count := min(p.plan.Up(), mostCells)
	for len(p.cells) < count {
		p.cells = append(p.cells, canvas.NewRectangle(color.Transparent))
		p.numbers = append(p.numbers, canvas.NewText(strconv.Itoa(len(p.cells)), nil))
	}
	p.cells, p.numbers = p.cells[:count], p.numbers[:count]
	th, variant := p.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	ink := th.Color(theme.ColorNameForeground, variant)
	p.paper.FillColor, p.paper.StrokeColor, p.paper.StrokeWidth = th.Color(theme.ColorNameInputBackground, variant), ink, 1
	p.gripper.FillColor = th.Color(theme.ColorNamePlaceHolder, variant)
	p.usable.StrokeColor, p.usable.StrokeWidth = th.Color(theme.ColorNameSeparator, variant), 1
	for i, cell := range p.cells {
		cell.FillColor = th.Color(theme.ColorNameSelection, variant)
		cell.StrokeColor, cell.StrokeWidth = th.Color(theme.ColorNamePrimary, variant), 1.5
		p.numbers[i].Color, p.numbers[i].TextSize = ink, th.Size(theme.SizeNameCaptionText)
	}
	p.gripperName.Color, p.gripperName.TextSize = ink, th.Size(theme.SizeNameCaptionText)
}

// CreateRenderer is part of fyne.Widget.
func (p *picture) CreateRenderer() fyne.WidgetRenderer {
	p.renew()
	return &pictureRenderer{p}
}

type pictureRenderer struct{ p *picture }

func (r *pictureRenderer) Layout(size fyne.Size) { r.p.layout(size) }
func (r *pictureRenderer) MinSize() fyne.Size {
	return fyne.NewSize(80, r.p.HeightFor(r.p.Size().Width))
}
func (r *pictureRenderer) Destroy() {}

func (r *pictureRenderer) Objects() []fyne.CanvasObject {
	objects := []fyne.CanvasObject{r.p.paper, r.p.usable, r.p.gripper}
	for i, cell := range r.p.cells {
		objects = append(objects, cell, r.p.numbers[i])
	}
	return append(objects, r.p.gripperName)
}

func (r *pictureRenderer) Refresh() {
	r.p.renew()
	r.p.layout(r.p.Size())
	for _, object := range r.Objects() {
		object.Refresh()
	}
	canvas.Refresh(r.p)
}
