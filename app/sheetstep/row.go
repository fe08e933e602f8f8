package sheetstep

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/app/entry"
)

// sheetRow is what a row of the ranking says.
type sheetRow struct {
	key    sheetKey
	name   string
	cells  []string // numbers, none where nothing fits
	note   string
	near   string   // the least change that gains one more up
	proof  string   // what is shown of the row when it is open, before the offers
	offers []string // changes that gain one more up
	inUse  bool
	always bool // shown also where only the best are
}

// sheetKey tells a sheet from all others.
type sheetKey struct {
	name          string
	width, height float64
	grain         string
}

// rankRow shows a sheet of the ranking. Open, it shows what can be done with it.
type rankRow struct {
	widget.BaseWidget

	row    sheetRow
	owner  *ranking
	open   bool
	ringed bool

	name, bold *entry.Text
	cells      []*canvas.Text
	note, near *entry.Text
	proof      *entry.Text
	offers     *offers
	take       *appearance.Button
	detail     *entry.Column

	bar, light, ring *canvas.Rectangle
}

func newRankRow(owner *ranking, act, take string) *rankRow {
	r := &rankRow{
		owner: owner, name: entry.NewText("", entry.Plain), bold: entry.NewText("", entry.Heading),
		note: entry.NewText("", entry.Muted), near: entry.NewText("", entry.Small), proof: entry.NewText("", entry.Small),
		bar: canvas.NewRectangle(color.Transparent), light: canvas.NewRectangle(color.Transparent), ring: canvas.NewRectangle(color.Transparent),
	}
	r.offers = newOffers(act, func(i int) { owner.change(r.row.key, i) })
	r.take = appearance.NewButton(take, func() { owner.take(r.row.key) })
	r.take.Importance = widget.HighImportance
	r.detail = entry.NewColumn(1.5, r.proof, r.offers, r.take)
	r.light.Hide()
	r.ring.Hide()
	r.bar.Hide()
	r.detail.Hide()
	r.ExtendBaseWidget(r)
	return r
}

// set shows a sheet and returns whether the row became higher or lower.
func (r *rankRow) set(row sheetRow, open bool) (grown bool) {
	width := r.Size().Width
	before := r.HeightFor(width)
	r.row, r.open = row, open
	r.name.SetText(row.name)
	r.bold.SetText(row.name)
	r.name.Hidden, r.bold.Hidden = row.inUse, !row.inUse
	r.note.SetText(row.note)
	r.near.SetText(row.near)
	r.near.Hidden = open
	r.bar.Hidden = !row.inUse
	r.detail.Hidden = !open
	if open {
		r.proof.SetText(row.proof)
		r.offers.set(row.offers)
		r.take.Hidden = row.inUse
	}
	for len(r.cells) < len(row.cells) {
		r.cells = append(r.cells, canvas.NewText("", nil))
	}
	for i, cell := range r.cells {
		cell.Hidden = i >= len(row.cells)
		if !cell.Hidden {
			cell.Text = row.cells[i]
		}
	}
	return r.HeightFor(width) != before
}

// mark shows or hides the ring of the keys.
func (r *rankRow) mark(on bool) {
	if r.ringed != on {
		r.ringed, r.ring.Hidden = on, !on
		r.ring.Refresh()
	}
}

// Tapped opens or closes the row.
func (r *rankRow) Tapped(*fyne.PointEvent) { r.owner.pick(r) }

// Cursor tells that the row can be clicked.
func (r *rankRow) Cursor() desktop.Cursor { return desktop.PointerCursor }

// MouseIn is part of desktop.Hoverable.
func (r *rankRow) MouseIn(*desktop.MouseEvent) { r.lit(true) }

// MouseMoved is part of desktop.Hoverable.
func (r *rankRow) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is part of desktop.Hoverable.
func (r *rankRow) MouseOut() { r.lit(false) }

func (r *rankRow) lit(on bool) {
	r.light.Hidden = !on
	r.light.Refresh()
}

// Objects returns what the open row offers, which can have the focus.
func (r *rankRow) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.detail} }

func (r *rankRow) padding() float32 { return r.Theme().Size(theme.SizeNamePadding) }

// words is the width of the texts of a row that is so wide.
func (r *rankRow) words(width float32) float32 { return max(width-3*r.padding(), 1) }

// nameRoom is the width of the name: beside the numbers, or above them.
func (r *rankRow) nameRoom(width float32) float32 {
	if len(r.row.cells) == 0 || r.owner.narrow(width) {
		return r.words(width)
	}
	return r.words(width) - r.owner.numbers() - r.padding()
}

func (r *rankRow) cellHeight() float32 {
	return fyne.MeasureText("Mg", r.Theme().Size(theme.SizeNameText), fyne.TextStyle{}).Height
}

// headHeight is the height of name and numbers.
func (r *rankRow) headHeight(width float32) float32 {
	height := r.shownName().HeightFor(r.nameRoom(width))
	if len(r.row.cells) > 0 && r.owner.narrow(width) {
		height += r.cellHeight()
	}
	return height
}

func (r *rankRow) shownName() *entry.Text {
	if r.row.inUse {
		return r.bold
	}
	return r.name
}

// HeightFor returns the height at a width.
func (r *rankRow) HeightFor(width float32) float32 {
	words := r.words(width)
	height := r.headHeight(width) + r.note.HeightFor(words) + 2*r.padding()
	if r.open {
		return height + r.detail.HeightFor(words) + 2*r.padding()
	}
	return height + r.near.HeightFor(words)
}

func (r *rankRow) place(size fyne.Size) {
	padding, words := r.padding(), r.words(size.Width)
	for _, box := range []*canvas.Rectangle{r.light, r.ring} {
		box.Resize(size)
	}
	r.bar.Resize(fyne.NewSize(padding*0.75, size.Height))
	left, top := 2*padding, padding
	for _, name := range []*entry.Text{r.name, r.bold} {
		name.Move(fyne.NewPos(left, top))
		name.Resize(fyne.NewSize(r.nameRoom(size.Width), name.HeightFor(r.nameRoom(size.Width))))
	}
	foot := top + r.headHeight(size.Width)
	for i, cell := range r.cells {
		line := top
		if r.owner.narrow(size.Width) {
			line = foot - r.cellHeight()
		}
		r.owner.placeCell(cell, i, line, size.Width)
	}
	top = foot
	for _, text := range []*entry.Text{r.note, r.near} {
		height := text.HeightFor(words)
		text.Move(fyne.NewPos(left, top))
		text.Resize(fyne.NewSize(words, height))
		top += height
	}
	top -= r.near.HeightFor(words)
	r.detail.Move(fyne.NewPos(left, top+padding))
	r.detail.Resize(fyne.NewSize(words, r.detail.HeightFor(words)))
	r.detail.Arrange()
}

// CreateRenderer is part of fyne.Widget.
func (r *rankRow) CreateRenderer() fyne.WidgetRenderer {
	shown := &rankRowRenderer{r}
	shown.colour()
	return shown
}

type rankRowRenderer struct{ r *rankRow }

func (s *rankRowRenderer) colour() {
	r, th, variant := s.r, s.r.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	r.light.FillColor = th.Color(theme.ColorNameHover, variant)
	r.bar.FillColor = th.Color(theme.ColorNamePrimary, variant)
	r.ring.StrokeColor, r.ring.StrokeWidth = th.Color(theme.ColorNamePrimary, variant), 1
	for _, cell := range r.cells {
		cell.TextSize, cell.TextStyle.Bold = th.Size(theme.SizeNameText), r.row.inUse
		cell.Color = th.Color(theme.ColorNameForeground, variant)
	}
}

func (s *rankRowRenderer) Layout(size fyne.Size) { s.r.place(size) }
func (s *rankRowRenderer) MinSize() fyne.Size {
	return fyne.NewSize(6*s.r.cellHeight(), s.r.HeightFor(s.r.Size().Width))
}
func (s *rankRowRenderer) Destroy() {}

func (s *rankRowRenderer) Objects() []fyne.CanvasObject {
	r := s.r
	objects := []fyne.CanvasObject{r.light, r.bar, r.ring, r.name, r.bold}
	for _, cell := range r.cells {
		objects = append(objects, cell)
	}
	return append(objects, r.note, r.near, r.detail)
}

func (s *rankRowRenderer) Refresh() {
	s.colour()
	for _, object := range s.Objects() {
		object.Refresh()
	}
	s.r.place(s.r.Size())
	canvas.Refresh(s.r)
}
