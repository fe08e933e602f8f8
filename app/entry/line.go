package entry

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/geometry/check"
)

// Line is an entry that may stay empty: its label with the unit below it at the left, the
// line to type in at the right, and below them what is wrong. A wide one has its label
// above the line.
type Line struct {
	widget.BaseWidget

	name, help string
	label      *Text
	unit       *Text
	line       *typing
	frame      *canvas.Rectangle // while something is wrong
	message    *Message
	wide       bool
	take       func(text string) (complaint string)
	onFocus    func(Explained)
	grow       func()

	shown            string // the text that stands for the value
	fault, complaint string // about what was typed, and about the value
}

// NewLine returns an entry. Label, help and hint are translated; hint stands in the line
// while it is empty. take takes a text over, or says what is wrong with it.
func NewLine(label, help, hint string, take func(text string) (complaint string)) *Line {
	l := &Line{
		name: label, help: help, label: NewText(label, Plain), unit: NewText("", Muted),
		frame: newFrame(), message: NewMessage(), take: take,
	}
	l.line = newTyping(l)
	l.line.PlaceHolder = hint
	l.unit.OnGrow(l.grown)
	l.message.OnGrow(l.grown)
	l.ExtendBaseWidget(l)
	return l
}

// NewWideLine returns an entry like NewLine, with the label above the line.
func NewWideLine(label, help, hint string, take func(text string) (complaint string)) *Line {
	l := NewLine(label, help, hint, take)
	l.wide = true
	return l
}

// OnFocus sets what is called when the entry gets the focus.
func (l *Line) OnFocus(call func(Explained)) { l.onFocus = call }

// OnGrow sets what is called when the height of the entry has changed.
func (l *Line) OnGrow(grow func()) { l.grow = grow }

func (l *Line) grown() {
	if l.grow != nil {
		l.grow()
	}
}

// SetUnit changes what stands below the label.
func (l *Line) SetUnit(text string) { l.unit.SetText(text) }

// Put shows the text of a value. What is being typed stays as long as it is the same.
func (l *Line) Put(text string) {
	if text != l.shown {
		l.shown = text
		l.restore()
	}
}

// Text returns what stands in the line.
func (l *Line) Text() string { return l.line.Text }

// Message returns what the entry complains about, or nothing.
func (l *Line) Message() string { return l.message.Text() }

// Complain shows what is wrong with the value, or nothing.
func (l *Line) Complain(text string) {
	l.complaint = text
	l.say()
}

func (l *Line) say() {
	text := l.fault
	if text == "" {
		text = l.complaint
	}
	l.message.Say(check.Error, text, nil)
	if wrong := text != ""; l.frame.Hidden == wrong {
		l.frame.Hidden = !wrong
		l.frame.Refresh()
	}
}

// Focusable returns what takes the focus.
func (l *Line) Focusable() fyne.Focusable { return l.line }

// Explanation says what the entry is.
func (l *Line) Explanation() (title, text string) { return l.name, l.help }

func (l *Line) typed() bool { return l.line.Text != l.shown }

func (l *Line) commit() bool {
	if l.fault = ""; l.typed() {
		l.fault = l.take(l.line.Text)
	}
	if l.fault != "" {
		l.say()
		return false
	}
	l.restore()
	return true
}

func (l *Line) restore() {
	if l.typed() {
		l.line.SetText(l.shown)
	}
	l.fault = ""
	l.say()
}

// Forget drops what was typed and not taken over.
func (l *Line) Forget() { l.restore() }

func (l *Line) focused() {
	if l.onFocus != nil {
		l.onFocus(l)
	}
}

// lineWidth holds a price with its decimals, and the hint.
func (l *Line) lineWidth() float32 {
	th := l.Theme()
	letters := max(fyne.MeasureText("100000.00", th.Size(theme.SizeNameText), fyne.TextStyle{}).Width,
		fyne.MeasureText(l.line.PlaceHolder, th.Size(theme.SizeNameText), fyne.TextStyle{}).Width)
	return letters + 2*th.Size(theme.SizeNameInnerPadding) + 2*th.Size(theme.SizeNameInputBorder)
}

// besides is the width of the label.
func (l *Line) besides(width float32) float32 {
	if l.wide {
		return width
	}
	return max(width-l.lineWidth()-2*l.Theme().Size(theme.SizeNamePadding), 1)
}

// heights returns those of the label with its unit, and of the row with the line.
func (l *Line) heights(width float32) (label, row float32) {
	left, line := l.besides(width), l.line.MinSize().Height
	label = l.label.HeightFor(left) + l.unit.HeightFor(left)
	if l.wide {
		return label, label + line
	}
	return label, max(label, line)
}

// HeightFor returns the height at a width.
func (l *Line) HeightFor(width float32) float32 {
	_, row := l.heights(width)
	return row + l.message.HeightFor(width)
}

// CreateRenderer is part of fyne.Widget.
func (l *Line) CreateRenderer() fyne.WidgetRenderer {
	colourFrame(l.frame, l.Theme())
	return &lineRenderer{l}
}

type lineRenderer struct{ l *Line }

func (r *lineRenderer) Layout(size fyne.Size) {
	l := r.l
	left, lineHeight := l.besides(size.Width), l.line.MinSize().Height
	label, row := l.heights(size.Width)
	top, lineAt, lineWidth := (row-label)/2, fyne.NewPos(size.Width-l.lineWidth(), (row-lineHeight)/2), l.lineWidth()
	if l.wide {
		top, lineAt, lineWidth = 0, fyne.NewPos(0, label), size.Width
	}
	for _, text := range []*Text{l.label, l.unit} {
		height := text.HeightFor(left)
		text.Move(fyne.NewPos(0, top))
		text.Resize(fyne.NewSize(left, height))
		top += height
	}
	for _, object := range []fyne.CanvasObject{l.line, l.frame} {
		object.Move(lineAt)
		object.Resize(fyne.NewSize(lineWidth, lineHeight))
	}
	l.message.Move(fyne.NewPos(0, row))
	l.message.Resize(fyne.NewSize(size.Width, l.message.HeightFor(size.Width)))
}

func (r *lineRenderer) MinSize() fyne.Size {
	least := 20 * r.l.Theme().Size(theme.SizeNamePadding)
	if !r.l.wide {
		least = r.l.lineWidth() + least/4
	}
	return fyne.NewSize(least, r.l.HeightFor(r.l.Size().Width))
}

func (r *lineRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.l.label, r.l.unit, r.l.line, r.l.frame, r.l.message}
}
func (r *lineRenderer) Destroy() {}

// Refresh takes over a change of theme.
func (r *lineRenderer) Refresh() {
	colourFrame(r.l.frame, r.l.Theme())
	for _, object := range r.Objects() {
		object.Refresh()
	}
	r.Layout(r.l.Size())
}
