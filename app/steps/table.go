package steps

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
)

// tableRow is a row to choose: a name, numbers that stand right, and a note below.
type tableRow struct {
	cells  []string
	note   string
	dim    bool // cannot be used as it is
	chosen bool
}

// table is a list of rows one of which can be chosen. It is one stop for the tab
// key: the arrow keys go up and down, Enter and the space bar choose.
type table struct {
	widget.BaseWidget

	heads  []*canvas.Text
	lines  []*tableLine
	choose func(int)
	at     int // the row that the keys are on
	over   int // the row under the pointer, or −1
	focus  bool
	light  *canvas.Rectangle // under the row at or over
	ring   *canvas.Rectangle
	grow   func()
}

// tableLine is a row as it is drawn.
type tableLine struct {
	row   tableRow
	cells []*canvas.Text
	note  *entry.Text
	bar   *canvas.Rectangle // beside the chosen row
	top   float32           // of the cells
}

// newTable returns a table with the given heads above its columns; none for a list
// without.
func newTable(heads []string, choose func(int)) *table {
	t := &table{choose: choose, over: -1, light: canvas.NewRectangle(color.Transparent), ring: canvas.NewRectangle(color.Transparent)}
	for _, head := range heads {
		t.heads = append(t.heads, canvas.NewText(head, nil))
	}
	t.light.Hide()
	t.ring.Hide()
	t.ExtendBaseWidget(t)
	return t
}

// OnGrow sets what is called when the height of the table has changed.
func (t *table) OnGrow(grow func()) { t.grow = grow }

// set shows other rows. Only what changed is touched.
func (t *table) set(rows []tableRow) {
	resized := len(rows) != len(t.lines)
	for len(t.lines) < len(rows) {
		t.lines = append(t.lines, t.newLine())
	}
	t.lines = t.lines[:len(rows)]
	t.at = min(t.at, max(len(rows)-1, 0))
	width := t.Size().Width - t.inset()
	for i := range rows {
		line := t.lines[i]
		before := line.note.HeightFor(width)
		t.fill(line, &rows[i])
		resized = resized || line.note.HeightFor(width) != before
	}
	if resized {
		if t.grow != nil {
			t.grow()
		}
		t.Refresh()
	}
}

func (t *table) newLine() *tableLine {
	bar := canvas.NewRectangle(color.Transparent)
	bar.Hide()
	return &tableLine{note: entry.NewText("", entry.Muted), bar: bar}
}

// fill puts a row into a line.
func (t *table) fill(line *tableLine, row *tableRow) {
	for len(line.cells) < len(row.cells) {
		line.cells = append(line.cells, canvas.NewText("", nil))
	}
	moved := false
	for i, text := range row.cells {
		cell := line.cells[i]
		if cell.Text == text && line.row.chosen == row.chosen && line.row.dim == row.dim && cell.Color != nil {
			continue
		}
		moved = true
		cell.Text = text
		t.dress(cell, row)
		cell.Refresh()
	}
	line.note.SetText(row.note)
	if line.bar.Hidden == row.chosen {
		line.bar.Hidden = !row.chosen
		line.bar.Refresh()
	}
	line.row = *row
	if moved && t.Size().Width > 0 {
		t.placeCells(line)
	}
}

// dress gives a cell its looks: bold where chosen, grey where it cannot be used.
func (t *table) dress(cell *canvas.Text, row *tableRow) {
	th, variant := t.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	cell.TextSize = th.Size(theme.SizeNameText)
	cell.TextStyle.Bold = row.chosen
	cell.Color = th.Color(theme.ColorNameForeground, variant)
	if row.dim {
		cell.Color = th.Color(theme.ColorNamePlaceHolder, variant)
	}
}

// Tapped chooses the row under the pointer.
func (t *table) Tapped(e *fyne.PointEvent) {
	if canvas := fyne.CurrentApp().Driver().CanvasForObject(t); canvas != nil {
		canvas.Focus(t)
	}
	if i := t.rowAt(e.Position.Y); i >= 0 {
		t.at = i
		t.choose(i)
		t.lightUp()
	}
}

// Cursor tells that rows can be clicked.
func (t *table) Cursor() desktop.Cursor { return desktop.PointerCursor }

// MouseIn lights up the row under the pointer.
func (t *table) MouseIn(e *desktop.MouseEvent) { t.MouseMoved(e) }

// MouseMoved lights up the row under the pointer.
func (t *table) MouseMoved(e *desktop.MouseEvent) {
	if over := t.rowAt(e.Position.Y); over != t.over {
		t.over = over
		t.lightUp()
	}
}

// MouseOut takes the light away.
func (t *table) MouseOut() {
	t.over = -1
	t.lightUp()
}

// FocusGained is part of fyne.Focusable.
func (t *table) FocusGained() {
	t.focus = true
	t.lightUp()
}

// FocusLost is part of fyne.Focusable.
func (t *table) FocusLost() {
	t.focus = false
	t.lightUp()
}

// TypedRune is part of fyne.Focusable.
func (t *table) TypedRune(rune) {}

// TypedKey goes up and down and chooses.
func (t *table) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		if t.at < len(t.lines) {
			t.choose(t.at)
		}
		return
	}
	t.at = rowAfter(key.Name, t.at, len(t.lines))
	t.lightUp()
}

// lightUp puts light under the row of the pointer and a ring round that of the keys.
func (t *table) lightUp() {
	t.light.Hidden, t.ring.Hidden = t.over < 0, !t.focus
	t.placeLight()
	t.light.Refresh()
	t.ring.Refresh()
}

func (t *table) padding() float32 { return t.Theme().Size(theme.SizeNamePadding) }

func (t *table) cellHeight() float32 {
	return fyne.MeasureText("Mg", t.Theme().Size(theme.SizeNameText), fyne.TextStyle{}).Height
}

func (t *table) headHeight() float32 {
	if len(t.heads) == 0 {
		return 0
	}
	return fyne.MeasureText("Mg", t.Theme().Size(theme.SizeNameCaptionText), fyne.TextStyle{}).Height + t.padding()
}

func (t *table) inset() float32 { return 2 * t.padding() }

// narrow tells whether the numbers stand below the names, as they do not fit beside
// them.
func (t *table) narrow(width float32) bool {
	if len(t.heads) < 2 {
		return false
	}
	const least = 3 // cell heights for a column of numbers
	return t.inset()+7*t.cellHeight()+float32(len(t.heads)-1)*least*t.cellHeight() > width
}

// cellsHeight is the height of a row without its note.
func (t *table) cellsHeight(width float32) float32 {
	if t.narrow(width) {
		return 2 * t.cellHeight()
	}
	return t.cellHeight()
}

func (t *table) lineHeight(line *tableLine, width float32) float32 {
	return t.cellsHeight(width) + line.note.HeightFor(width-t.inset()) + 2*t.padding()
}

func (t *table) rowAt(y float32) int {
	top := t.headHeight()
	for i, line := range t.lines {
		height := t.lineHeight(line, t.Size().Width)
		if y >= top && y < top+height {
			return i
		}
		top += height
	}
	return -1
}

// HeightFor returns the height at a width.
func (t *table) HeightFor(width float32) float32 {
	sum := t.headHeight()
	for _, line := range t.lines {
		sum += t.lineHeight(line, width)
	}
	return sum
}

// MinSize returns the least width and the height at the present width.
func (t *table) MinSize() fyne.Size {
	return fyne.NewSize(6*t.cellHeight(), t.HeightFor(t.Size().Width))
}

func (t *table) place() {
	width, top := t.Size().Width, t.headHeight()
	for i, head := range t.heads {
		t.placeCell(head, i, 0, t.headHeight()-t.padding())
		head.Hidden = i == 0 && t.narrow(width)
	}
	for _, line := range t.lines {
		height := t.lineHeight(line, width)
		line.bar.Move(fyne.NewPos(0, top))
		line.bar.Resize(fyne.NewSize(t.padding()*0.75, height))
		line.note.Move(fyne.NewPos(t.inset(), top+t.padding()+t.cellsHeight(width)))
		line.note.Resize(fyne.NewSize(width-t.inset(), line.note.HeightFor(width-t.inset())))
		line.top = top + t.padding()
		t.placeCells(line)
		top += height
	}
	t.placeLight()
}

func (t *table) placeCells(line *tableLine) {
	for i, cell := range line.cells {
		top := line.top
		if i > 0 && t.narrow(t.Size().Width) {
			top += t.cellHeight()
		}
		t.placeCell(cell, i, top, t.cellHeight())
	}
}

// placeCell puts the name at the left and the numbers into columns of equal width
// at the right.
func (t *table) placeCell(cell *canvas.Text, column int, top, height float32) {
	width, x := cell.MinSize().Width, t.inset()
	if column > 0 {
		room := t.Size().Width - t.inset()
		if !t.narrow(t.Size().Width) {
			room *= 0.6
		}
		numbers := float32(len(t.heads) - 1)
		x = t.Size().Width - t.padding() - (numbers-float32(column))*room/numbers - width
	}
	cell.Move(fyne.NewPos(x, top))
	cell.Resize(fyne.NewSize(width, height))
}

func (t *table) placeLight() {
	width, top := t.Size().Width, t.headHeight()
	for i, line := range t.lines {
		height := t.lineHeight(line, width)
		if i == t.over {
			t.light.Move(fyne.NewPos(0, top))
			t.light.Resize(fyne.NewSize(width, height))
		}
		if i == t.at {
			t.ring.Move(fyne.NewPos(0, top))
			t.ring.Resize(fyne.NewSize(width, height))
		}
		top += height
	}
}

// CreateRenderer is part of fyne.Widget.
func (t *table) CreateRenderer() fyne.WidgetRenderer {
	r := &tableRenderer{t}
	r.colour()
	return r
}

type tableRenderer struct{ t *table }

func (r *tableRenderer) colour() {
	t, th, variant := r.t, r.t.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	t.light.FillColor = th.Color(theme.ColorNameHover, variant)
	t.ring.StrokeColor, t.ring.StrokeWidth = th.Color(theme.ColorNamePrimary, variant), 1
	for _, head := range t.heads {
		head.Color, head.TextSize = th.Color(theme.ColorNamePlaceHolder, variant), th.Size(theme.SizeNameCaptionText)
	}
	for _, line := range t.lines {
		line.bar.FillColor = th.Color(theme.ColorNamePrimary, variant)
		for _, cell := range line.cells {
			t.dress(cell, &line.row)
		}
	}
}

func (r *tableRenderer) Layout(fyne.Size)   { r.t.place() }
func (r *tableRenderer) MinSize() fyne.Size { return r.t.MinSize() }
func (r *tableRenderer) Destroy()           {}

func (r *tableRenderer) Objects() []fyne.CanvasObject {
	objects := []fyne.CanvasObject{r.t.light, r.t.ring}
	for _, head := range r.t.heads {
		objects = append(objects, head)
	}
	for _, line := range r.t.lines {
		objects = append(objects, line.bar, line.note)
		for _, cell := range line.cells {
			objects = append(objects, cell)
		}
	}
	return objects
}

func (r *tableRenderer) Refresh() {
	r.colour()
	for _, object := range r.Objects() {
		object.Refresh()
	}
	r.t.place()
	canvas.Refresh(r.t)
}
