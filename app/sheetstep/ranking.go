package sheetstep

import (
	"fmt"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
	"gussetwright/app/keyrelay"
	"gussetwright/app/steppage"
)

// ranked is what a ranking shows: the sheets on which blanks fit and those on which
// they do not, both with the best first, and how many more there are.
type ranked struct {
	heads      []string
	fit, fails []sheetRow
	tiny       string // names the sheets that are far too small and no rows
	more       int    // rows that are not shown
	all        bool   // nothing is left out
}

// ranking is the table of sheets. It is one stop for the tab key: the arrow keys open
// the rows one after the other, Enter takes a sheet, the space bar opens and closes.
// What an open row offers are the next stops.
type ranking struct {
	widget.BaseWidget

	takes   func(sheetKey)
	changes func(sheetKey, int)
	showAll func()
	bring   func(fyne.CanvasObject) // into view

	shown       ranked
	heads       []*canvas.Text
	column      *entry.Column
	head        *rankHead
	fitTitle    *entry.Text
	failTitle   *entry.Text
	fit, fails  *entry.Column
	tiny        *entry.Text
	toggle      *steppage.Offer
	veil        *canvas.Rectangle // over rows that are out of date
	at          sheetKey          // where the keys are
	open        sheetKey
	opened      bool // a row is open
	focused     bool
	rows        []*rankRow // those that are shown, from the top
	spareFit    []*rankRow
	spareFailed []*rankRow
	widths      []float32 // of the columns of numbers, nil when they are to be measured
	measured    float32   // size of the letters for which they were measured
	grow        func()
}

func newRanking() *ranking {
	r := &ranking{
		fitTitle: entry.NewText(lang.L("Blanks fit"), entry.Heading), failTitle: entry.NewText(lang.L("No blank fits"), entry.Heading),
		fit: entry.NewColumn(0), fails: entry.NewColumn(0), tiny: entry.NewText("", entry.Muted),
		veil: canvas.NewRectangle(color.Transparent),
	}
	r.head = newRankHead(r)
	r.toggle = steppage.NewOffer("", func() { r.showAll() })
	r.column = entry.NewColumn(1, r.fitTitle, r.head, r.fit, r.failTitle, r.fails, r.tiny, r.toggle)
	r.column.OnGrow(r.grown)
	for _, object := range []fyne.CanvasObject{r.fitTitle, r.head, r.failTitle, r.toggle, r.veil} {
		object.Hide()
	}
	r.ExtendBaseWidget(r)
	return r
}

// OnGrow sets what is called when the height of the table has changed.
func (r *ranking) OnGrow(grow func()) { r.grow = grow }

func (r *ranking) grown() {
	if r.grow != nil {
		r.grow()
	}
}

// dim shows that the rows are out of date.
func (r *ranking) dim(on bool) {
	if r.veil.Hidden == on {
		r.veil.Hidden = !on
		r.veil.Refresh()
	}
}

// set shows other sheets. The row that is open stays so where it is among them.
func (r *ranking) set(shown ranked) {
	r.shown, r.widths = shown, nil
	resized := r.setHeads(shown.heads)
	r.rows = r.rows[:0]
	resized = r.fill(r.fit, &r.spareFit, shown.fit) || resized
	resized = r.fill(r.fails, &r.spareFailed, shown.fails) || resized
	if r.rowOf(r.open) < 0 {
		r.opened = false
	}
	resized = steppage.Show(r.fitTitle, len(shown.fit) > 0 && len(shown.fails) > 0) || resized
	resized = steppage.Show(r.head, len(shown.fit) > 0) || resized
	resized = steppage.Show(r.failTitle, len(shown.fails) > 0) || resized
	r.tiny.SetText(shown.tiny)
	resized = steppage.Show(r.toggle, shown.more > 0 || shown.all) || resized
	label := fmt.Sprintf(lang.L("Show all %d sheets"), len(r.rows)+shown.more)
	if shown.all {
		label = lang.L("Show the best only")
	}
	r.toggle.SetAct(label)
	r.ringed()
	if resized {
		r.grown()
	}
	r.Refresh()
}

// fill shows sheets in a column of rows, which are used again.
func (r *ranking) fill(column *entry.Column, pool *[]*rankRow, sheets []sheetRow) (resized bool) {
	for len(*pool) < len(sheets) {
		row := newRankRow(r, lang.L("Make this change"), lang.L("Take this sheet"))
		*pool = append(*pool, row)
		column.Add(row)
		resized = true
	}
	for i, row := range *pool {
		resized = steppage.Show(row, i < len(sheets)) || resized
		if i < len(sheets) {
			resized = row.set(sheets[i], r.opened && sheets[i].key == r.open) || resized
			r.rows = append(r.rows, row)
		}
	}
	return resized
}

func (r *ranking) rowOf(key sheetKey) int {
	for i, row := range r.rows {
		if row.row.key == key {
			return i
		}
	}
	return -1
}

// pick opens a row, or closes it where it is open.
func (r *ranking) pick(row *rankRow) {
	if on := fyne.CurrentApp().Driver().CanvasForObject(r); on != nil {
		on.Focus(r)
	}
	r.openRow(row, !(r.opened && r.open == row.row.key))
}

func (r *ranking) openRow(row *rankRow, open bool) {
	r.at, r.open, r.opened = row.row.key, row.row.key, open
	for _, other := range r.rows {
		if wanted := open && other == row; other.open != wanted {
			other.set(other.row, wanted)
			other.Refresh()
		}
	}
	r.ringed()
	r.grown()
	r.bring(row)
}

// take takes a sheet, and change a change that gains one more up on it. The focus comes
// back to the table: the button that was pressed may be gone.
func (r *ranking) take(key sheetKey) {
	r.refocus()
	r.takes(key)
}

func (r *ranking) change(key sheetKey, i int) {
	r.refocus()
	r.changes(key, i)
}

func (r *ranking) refocus() {
	if on := fyne.CurrentApp().Driver().CanvasForObject(r); on != nil && on.Focused() != nil {
		on.Focus(r)
	}
}

// ringed puts the ring round the row of the keys.
func (r *ranking) ringed() {
	for i, row := range r.rows {
		row.mark(r.focused && i == max(r.rowOf(r.at), 0))
	}
}

// FocusGained is part of fyne.Focusable.
func (r *ranking) FocusGained() {
	r.focused = true
	r.ringed()
	if i := max(r.rowOf(r.at), 0); i < len(r.rows) {
		r.bring(r.rows[i])
	}
}

// FocusLost is part of fyne.Focusable.
func (r *ranking) FocusLost() {
	r.focused = false
	r.ringed()
}

// TypedRune is part of fyne.Focusable.
func (r *ranking) TypedRune(rune) {}

// TypedKey goes up and down, opens and takes.
func (r *ranking) TypedKey(key *fyne.KeyEvent) {
	if keyrelay.ToWindow(r, key) || len(r.rows) == 0 {
		return
	}
	was := max(r.rowOf(r.at), 0)
	switch key.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		r.take(r.rows[was].row.key)
	case fyne.KeySpace:
		r.openRow(r.rows[was], !r.rows[was].open)
	case fyne.KeyEscape:
		r.openRow(r.rows[was], false)
	case fyne.KeyUp, fyne.KeyDown, fyne.KeyHome, fyne.KeyEnd:
		r.openRow(r.rows[steppage.RowAfter(key.Name, was, len(r.rows))], true)
	}
}

// Objects returns what stands in the table, of which some can have the focus.
func (r *ranking) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.column} }

// HeightFor returns the height at a width.
func (r *ranking) HeightFor(width float32) float32 { return r.column.HeightFor(width) }

// Arrange puts everything in its place for the present width.
func (r *ranking) Arrange() {
	r.column.Resize(r.Size())
	r.column.Arrange()
	r.veil.Resize(r.Size())
}

// CreateRenderer is part of fyne.Widget.
func (r *ranking) CreateRenderer() fyne.WidgetRenderer {
	shown := &rankingRenderer{r}
	shown.colour()
	return shown
}

type rankingRenderer struct{ r *ranking }

// colour lets two fifths of out-of-date rows through: they can still be read.
func (s *rankingRenderer) colour() {
	ground := color.NRGBAModel.Convert(s.r.Theme().Color(theme.ColorNameBackground, fyne.CurrentApp().Settings().ThemeVariant())).(color.NRGBA)
	ground.A = 153 // of 255
	s.r.veil.FillColor = ground
}

func (s *rankingRenderer) Layout(fyne.Size) { s.r.Arrange() }
func (s *rankingRenderer) MinSize() fyne.Size {
	return fyne.NewSize(s.r.column.MinSize().Width, s.r.HeightFor(s.r.Size().Width))
}

func (s *rankingRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{s.r.column, s.r.veil}
}
func (s *rankingRenderer) Destroy() {}

func (s *rankingRenderer) Refresh() {
	s.colour()
	s.r.column.Refresh()
	s.r.veil.Refresh()
	s.r.Arrange()
	canvas.Refresh(s.r)
}
