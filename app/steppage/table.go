package steppage

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
	"gussetwright/app/keyrelay"
)

// Row is a row to choose: a name, and a note below it.
type Row struct {
	Name   string
	Note   string
	Dim    bool // cannot be used as it is
	Chosen bool
}

// Table is a list of rows one of which can be chosen. It is one stop for the tab
// key: the arrow keys go up and down, Enter and the space bar choose.
type Table struct {
	widget.BaseWidget

	title, help string
	gained      func()                  // called, where it is not nil, with the focus
	bring       func(fyne.CanvasObject) // scrolls the row that the keys are on into view, where it is not nil
	lines       []*tableLine
	choose      func(int)
	at          int // the row that the keys are on
	over        int // the row under the pointer, or −1
	focus       bool
	light       *canvas.Rectangle // under the row at or over
	ring        *canvas.Rectangle
	grow        func()
}

// tableLine is a row as it is drawn.
type tableLine struct {
	row  Row
	name *canvas.Text
	note *entry.Text
	bar  *canvas.Rectangle // beside the chosen row
}

// NewTable returns a table without rows. choose is told which row is chosen, counted
// from 0.
func NewTable(choose func(int)) *Table {
	t := &Table{choose: choose, over: -1, light: canvas.NewRectangle(color.Transparent), ring: canvas.NewRectangle(color.Transparent)}
	t.light.Hide()
	t.ring.Hide()
	t.ExtendBaseWidget(t)
	return t
}

// WithHelp makes the table explain what it is when it gets the focus, by a title and a
// help that are translated, and bring the row that the keys are on into view. It returns
// the table.
func (t *Table) WithHelp(title, help string, b *Bench) *Table {
	t.title, t.help, t.gained, t.bring = title, help, func() { b.Explain(t) }, b.Bring
	return t
}

// Explanation says what the table is.
func (t *Table) Explanation() (title, text string) { return t.title, t.help }

// OnGrow sets what is called when the height of the table has changed.
func (t *Table) OnGrow(grow func()) { t.grow = grow }

// Set shows other rows. Only what changed is touched.
func (t *Table) Set(rows []Row) {
	resized := len(rows) != len(t.lines)
	for len(t.lines) < len(rows) {
		t.lines = append(t.lines, newTableLine())
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

func newTableLine() *tableLine {
	bar := canvas.NewRectangle(color.Transparent)
	bar.Hide()
	return &tableLine{name: canvas.NewText("", nil), note: entry.NewText("", entry.Muted), bar: bar}
}

// fill puts a row into a line.
func (t *Table) fill(line *tableLine, row *Row) {
	if line.name.Color == nil || line.row.Name != row.Name || line.row.Chosen != row.Chosen || line.row.Dim != row.Dim {
		line.name.Text = row.Name
		t.dress(line.name, row)
		line.name.Refresh()
		t.sizeName(line.name)
	}
	line.note.SetText(row.Note)
	if line.bar.Hidden == row.Chosen {
		line.bar.Hidden = !row.Chosen
		line.bar.Refresh()
	}
	line.row = *row
}

// dress gives a name its looks: bold where chosen, grey where it cannot be used.
func (t *Table) dress(name *canvas.Text, row *Row) {
	th, variant := t.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	name.TextSize = th.Size(theme.SizeNameText)
	name.TextStyle.Bold = row.Chosen
	name.Color = th.Color(theme.ColorNameForeground, variant)
	if row.Dim {
		name.Color = th.Color(theme.ColorNamePlaceHolder, variant)
	}
}

// Tapped chooses the row under the pointer.
func (t *Table) Tapped(e *fyne.PointEvent) {
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
func (t *Table) Cursor() desktop.Cursor { return desktop.PointerCursor }

// MouseIn lights up the row under the pointer.
func (t *Table) MouseIn(e *desktop.MouseEvent) { t.MouseMoved(e) }

// MouseMoved lights up the row under the pointer.
func (t *Table) MouseMoved(e *desktop.MouseEvent) {
	if over := t.rowAt(e.Position.Y); over != t.over {
		t.over = over
		t.lightUp()
	}
}

// MouseOut takes the light away.
func (t *Table) MouseOut() {
	t.over = -1
	t.lightUp()
}

// FocusGained is part of fyne.Focusable.
func (t *Table) FocusGained() {
	t.focus = true
	t.lightUp()
	if t.gained != nil {
		t.gained()
	}
}

// FocusLost is part of fyne.Focusable.
func (t *Table) FocusLost() {
	t.focus = false
	t.lightUp()
}

// TypedRune is part of fyne.Focusable.
func (t *Table) TypedRune(rune) {}

// TypedKey goes up and down and chooses.
func (t *Table) TypedKey(key *fyne.KeyEvent) {
	if keyrelay.ToWindow(t, key) || len(t.lines) == 0 {
		return
	}
	switch key.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		t.choose(t.at)
	default:
		t.at = RowAfter(key.Name, t.at, len(t.lines))
		t.lightUp()
	}
	if t.bring != nil && t.at < len(t.lines) {
		t.bring(t.lines[t.at].note)
	}
}

// lightUp puts light under the row of the pointer and a ring round that of the keys.
func (t *Table) lightUp() {
	t.light.Hidden, t.ring.Hidden = t.over < 0, !t.focus
	t.placeLight()
	t.light.Refresh()
	t.ring.Refresh()
}

func (t *Table) padding() float32 { return t.Theme().Size(theme.SizeNamePadding) }

func (t *Table) nameHeight() float32 {
	return fyne.MeasureText("Mg", t.Theme().Size(theme.SizeNameText), fyne.TextStyle{}).Height
}

func (t *Table) inset() float32 { return 2 * t.padding() }

func (t *Table) lineHeight(line *tableLine, width float32) float32 {
	return t.nameHeight() + line.note.HeightFor(width-t.inset()) + 2*t.padding()
}

func (t *Table) rowAt(y float32) int {
	top := float32(0)
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
func (t *Table) HeightFor(width float32) float32 {
	sum := float32(0)
	for _, line := range t.lines {
		sum += t.lineHeight(line, width)
	}
	return sum
}

// MinSize returns the least width and the height at the present width.
func (t *Table) MinSize() fyne.Size {
	return fyne.NewSize(6*t.nameHeight(), t.HeightFor(t.Size().Width))
}

func (t *Table) place() {
	width, top := t.Size().Width, float32(0)
	for _, line := range t.lines {
		height := t.lineHeight(line, width)
		line.bar.Move(fyne.NewPos(0, top))
		line.bar.Resize(fyne.NewSize(t.padding()*0.75, height))
		line.name.Move(fyne.NewPos(t.inset(), top+t.padding()))
		t.sizeName(line.name)
		line.note.Move(fyne.NewPos(t.inset(), top+t.padding()+t.nameHeight()))
		line.note.Resize(fyne.NewSize(width-t.inset(), line.note.HeightFor(width-t.inset())))
		top += height
	}
	t.placeLight()
}

func (t *Table) sizeName(name *canvas.Text) {
	name.Resize(fyne.NewSize(name.MinSize().Width, t.nameHeight()))
}

func (t *Table) placeLight() {
	width, top := t.Size().Width, float32(0)
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
func (t *Table) CreateRenderer() fyne.WidgetRenderer {
	r := &tableRenderer{t}
	r.colour()
	return r
}

type tableRenderer struct{ t *Table }

func (r *tableRenderer) colour() {
	t, th, variant := r.t, r.t.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	t.light.FillColor = th.Color(theme.ColorNameHover, variant)
	t.ring.StrokeColor, t.ring.StrokeWidth = th.Color(theme.ColorNamePrimary, variant), 1
	for _, line := range t.lines {
		line.bar.FillColor = th.Color(theme.ColorNamePrimary, variant)
		t.dress(line.name, &line.row)
	}
}

func (r *tableRenderer) Layout(fyne.Size)   { r.t.place() }
func (r *tableRenderer) MinSize() fyne.Size { return r.t.MinSize() }
func (r *tableRenderer) Destroy()           {}

func (r *tableRenderer) Objects() []fyne.CanvasObject {
	objects := []fyne.CanvasObject{r.t.light, r.t.ring}
	for _, line := range r.t.lines {
		objects = append(objects, line.bar, line.note, line.name)
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
