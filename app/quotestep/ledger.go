package quotestep

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
)

// ledgerRow is a line of amounts: what they are for, how they come about, and the amounts.
type ledgerRow struct {
	name, note string
	amounts    []string
	sum        bool // stands below a rule, in bold
}

// ledger is a table of amounts, which stand right in columns.
type ledger struct {
	widget.BaseWidget

	heads []*canvas.Text
	lines []*ledgerLine
	used  int
	grow  func()
}

type ledgerLine struct {
	name, bold, note *entry.Text
	amounts          []*canvas.Text
	rule             *canvas.Rectangle
	sum              bool
}

func newLedger() *ledger {
	l := &ledger{}
	l.ExtendBaseWidget(l)
	return l
}

// OnGrow sets what is called when the height of the table has changed.
func (l *ledger) OnGrow(grow func()) { l.grow = grow }

// set shows other rows under other heads; the first head is that of the names.
func (l *ledger) set(heads []string, rows []ledgerRow) {
	width := l.Size().Width
	before := l.HeightFor(width)
	l.heads = texts(l.heads, heads)
	for len(l.lines) < len(rows) {
		l.lines = append(l.lines, &ledgerLine{
			name: entry.NewText("", entry.Small), bold: entry.NewText("", entry.Heading), note: entry.NewText("", entry.Muted),
			rule: canvas.NewRectangle(color.Transparent),
		})
	}
	l.used = len(rows)
	for i := range rows {
		l.lines[i].set(&rows[i])
	}
	if l.HeightFor(width) != before && l.grow != nil {
		l.grow()
	}
	l.Refresh()
}

func (n *ledgerLine) set(row *ledgerRow) {
	name, bold := row.name, ""
	if row.sum {
		name, bold = "", row.name
	}
	n.sum = row.sum
	n.name.SetText(name)
	n.bold.SetText(bold)
	n.note.SetText(row.note)
	n.amounts = texts(n.amounts, row.amounts)
}

// texts returns canvas texts that say what is given, those that are there first.
func texts(list []*canvas.Text, says []string) []*canvas.Text {
	for len(list) < len(says) {
		list = append(list, canvas.NewText("", nil))
	}
	list = list[:len(says)]
	for i, text := range says {
		list[i].Text = text
	}
	return list
}

func (l *ledger) padding() float32 { return l.Theme().Size(theme.SizeNamePadding) }

// columns returns the widths of the columns of amounts.
func (l *ledger) columns() []float32 {
	th := l.Theme()
	var widths []float32
	least := func(i int, text string, size fyne.ThemeSizeName, bold bool) {
		for len(widths) <= i {
			widths = append(widths, 0)
		}
		widths[i] = max(widths[i], fyne.MeasureText(text, th.Size(size), fyne.TextStyle{Bold: bold}).Width+2*l.padding())
	}
	for _, line := range l.lines[:l.used] {
		for i, amount := range line.amounts {
			least(i, amount.Text, line.size(), line.sum)
		}
	}
	for i := 1; i < len(l.heads); i++ {
		least(i-1, l.heads[i].Text, theme.SizeNameCaptionText, false)
	}
	return widths
}

func (n *ledgerLine) size() fyne.ThemeSizeName {
	if n.sum {
		return theme.SizeNameText
	}
	return theme.SizeNameCaptionText
}

// names returns the width of the names, and whether the amounts stand below them, as
// they do where there is no room beside them.
func (l *ledger) names(width float32) (room float32, below bool) {
	room = width
	for _, column := range l.columns() {
		room -= column
	}
	const least = 14 // paddings
	if room < least*l.padding() {
		return width, true
	}
	return room, false
}

func (l *ledger) headHeight() float32 {
	if len(l.heads) == 0 {
		return 0
	}
	return fyne.MeasureText("Mg", l.Theme().Size(theme.SizeNameCaptionText), fyne.TextStyle{}).Height + 0.5*l.padding()
}

func (l *ledger) lineHeight(line *ledgerLine, width float32) float32 {
	names, below := l.names(width)
	height := line.name.HeightFor(names) + line.bold.HeightFor(names) + line.note.HeightFor(names) + 0.75*l.padding()
	if below {
		height += l.amountHeight(line)
	}
	if line.sum {
		height += l.padding()
	}
	return height
}

func (l *ledger) amountHeight(line *ledgerLine) float32 {
	return fyne.MeasureText("Mg", l.Theme().Size(line.size()), fyne.TextStyle{Bold: line.sum}).Height
}

// HeightFor returns the height at a width.
func (l *ledger) HeightFor(width float32) float32 {
	if l.used == 0 {
		return 0
	}
	sum := l.headHeight()
	for _, line := range l.lines[:l.used] {
		sum += l.lineHeight(line, width)
	}
	return sum
}

// CreateRenderer is part of fyne.Widget.
func (l *ledger) CreateRenderer() fyne.WidgetRenderer {
	r := &ledgerRenderer{l}
	r.colour()
	return r
}

type ledgerRenderer struct{ l *ledger }

func (r *ledgerRenderer) colour() {
	l, th, variant := r.l, r.l.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	for _, head := range l.heads {
		head.Color, head.TextSize = th.Color(theme.ColorNamePlaceHolder, variant), th.Size(theme.SizeNameCaptionText)
	}
	for _, line := range l.lines[:l.used] {
		line.rule.FillColor = th.Color(theme.ColorNameSeparator, variant)
		for _, amount := range line.amounts {
			amount.Color, amount.TextSize, amount.TextStyle.Bold = th.Color(theme.ColorNameForeground, variant), th.Size(line.size()), line.sum
		}
	}
}

func (r *ledgerRenderer) Layout(size fyne.Size) {
	l := r.l
	columns, top := l.columns(), l.headHeight()
	names, below := l.names(size.Width)
	if len(l.heads) > 0 {
		l.heads[0].Hidden = below
		placeRight(l.heads[1:], columns, size.Width, 0)
	}
	for _, line := range l.lines[:l.used] {
		y := top
		line.rule.Hidden = !line.sum
		if line.sum {
			line.rule.Move(fyne.NewPos(0, y+0.5*l.padding()))
			line.rule.Resize(fyne.NewSize(size.Width, 1))
			y += l.padding()
		}
		if !below {
			placeRight(line.amounts, columns, size.Width, y)
		}
		for _, text := range []*entry.Text{line.name, line.bold, line.note} {
			text.Move(fyne.NewPos(0, y))
			text.Resize(fyne.NewSize(names, text.HeightFor(names)))
			y += text.HeightFor(names)
		}
		if below {
			placeRight(line.amounts, columns, size.Width, y)
		}
		top += l.lineHeight(line, size.Width)
	}
}

// placeRight puts amounts to the right ends of their columns.
func placeRight(amounts []*canvas.Text, columns []float32, width, top float32) {
	right := width
	for i := len(columns) - 1; i >= 0; i-- {
		if i < len(amounts) {
			size := amounts[i].MinSize()
			amounts[i].Move(fyne.NewPos(right-size.Width, top))
			amounts[i].Resize(size)
		}
		right -= columns[i]
	}
}

func (r *ledgerRenderer) MinSize() fyne.Size {
	least := float32(0)
	for _, column := range r.l.columns() {
		least += column
	}
	return fyne.NewSize(least, r.l.HeightFor(r.l.Size().Width))
}

func (r *ledgerRenderer) Objects() []fyne.CanvasObject {
	var objects []fyne.CanvasObject
	for _, head := range r.l.heads {
		objects = append(objects, head)
	}
	for _, line := range r.l.lines[:r.l.used] {
		objects = append(objects, line.rule, line.name, line.bold, line.note)
		for _, amount := range line.amounts {
			objects = append(objects, amount)
		}
	}
	return objects
}
func (r *ledgerRenderer) Destroy() {}

func (r *ledgerRenderer) Refresh() {
	r.colour()
	for _, object := range r.Objects() {
		object.Refresh()
	}
	r.Layout(r.l.Size())
	canvas.Refresh(r.l)
}
