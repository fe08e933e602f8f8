package steps

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
	"gussetwright/app/keyrelay"
	"gussetwright/app/steady"
	"gussetwright/geometry/check"
)

// lineEntry is an entry that may stay empty: its label with the unit below it at the
// left, the line to type in at the right, and below them what is wrong. A wide one has
// its label above the line.
type lineEntry struct {
	widget.BaseWidget

	name, help string
	label      *entry.Text
	unit       *entry.Text
	line       *lineTyping
	edge       *canvas.Rectangle // while something is wrong
	message    *entry.Message
	wide       bool
	take       func(text string) (complaint string)
	gained     func(entry.Explained)
	grow       func()

	shown            string // the text that stands for the value
	fault, complaint string // about what was typed, and about the value
}

// newLineEntry returns an entry. hint stands in the line while it is empty. take takes a
// text over, or says what is wrong with it.
func newLineEntry(label, help, hint string, take func(text string) (complaint string)) *lineEntry {
	e := &lineEntry{
		name: label, help: help, label: entry.NewText(label, entry.Plain), unit: entry.NewText("", entry.Muted),
		edge: canvas.NewRectangle(color.Transparent), message: entry.NewMessage(), take: take,
	}
	e.line = &lineTyping{owner: e}
	e.line.PlaceHolder = hint
	e.line.Wrapping = fyne.TextWrap(fyne.TextTruncateClip)
	e.line.ExtendBaseWidget(e.line)
	e.edge.Hide()
	e.unit.OnGrow(e.grown)
	e.message.OnGrow(e.grown)
	e.ExtendBaseWidget(e)
	return e
}

// OnGrow sets what is called when the height of the entry has changed.
func (e *lineEntry) OnGrow(grow func()) { e.grow = grow }

func (e *lineEntry) grown() {
	if e.grow != nil {
		e.grow()
	}
}

// put shows the text of a value. What is being typed stays as long as it is the same.
func (e *lineEntry) put(text string) {
	if text != e.shown {
		e.shown = text
		e.restore()
	}
}

// complain shows what is wrong with the value, or nothing.
func (e *lineEntry) complain(text string) {
	e.complaint = text
	e.say()
}

func (e *lineEntry) say() {
	text := e.fault
	if text == "" {
		text = e.complaint
	}
	e.message.Say(check.Error, text, nil)
	if wrong := text != ""; e.edge.Hidden == wrong {
		e.edge.Hidden = !wrong
		e.edge.Refresh()
	}
}

// commit takes over what was typed; false where that cannot be read.
func (e *lineEntry) commit() bool {
	if e.line.Text == e.shown {
		e.fault = ""
		e.say()
		return true
	}
	if e.fault = e.take(e.line.Text); e.fault != "" {
		e.say()
		return false
	}
	e.restore()
	return true
}

// restore forgets what was typed.
func (e *lineEntry) restore() {
	if e.line.Text != e.shown {
		e.line.SetText(e.shown)
	}
	e.fault = ""
	e.say()
}

// Focusable returns what takes the focus.
func (e *lineEntry) Focusable() fyne.Focusable { return e.line }

// Explanation says what the entry is.
func (e *lineEntry) Explanation() (title, text string) { return e.name, e.help }

// lineWidth holds a price with its decimals, and the hint.
func (e *lineEntry) lineWidth() float32 {
	th := e.Theme()
	letters := max(fyne.MeasureText("100000.00", th.Size(theme.SizeNameText), fyne.TextStyle{}).Width,
		fyne.MeasureText(e.line.PlaceHolder, th.Size(theme.SizeNameText), fyne.TextStyle{}).Width)
	return letters + 2*th.Size(theme.SizeNameInnerPadding) + 2*th.Size(theme.SizeNameInputBorder)
}

// besides is the width of the label.
func (e *lineEntry) besides(width float32) float32 {
	if e.wide {
		return width
	}
	return max(width-e.lineWidth()-2*e.Theme().Size(theme.SizeNamePadding), 1)
}

// heights returns those of the label with its unit, and of the row with the line.
func (e *lineEntry) heights(width float32) (label, row float32) {
	left, line := e.besides(width), e.line.MinSize().Height
	label = e.label.HeightFor(left) + e.unit.HeightFor(left)
	if e.wide {
		return label, label + line
	}
	return label, max(label, line)
}

// HeightFor returns the height at a width.
func (e *lineEntry) HeightFor(width float32) float32 {
	_, row := e.heights(width)
	return row + e.message.HeightFor(width)
}

// CreateRenderer is part of fyne.Widget.
func (e *lineEntry) CreateRenderer() fyne.WidgetRenderer {
	r := &lineEntryRenderer{e}
	r.colour()
	return r
}

type lineEntryRenderer struct{ e *lineEntry }

func (r *lineEntryRenderer) colour() {
	th := r.e.Theme()
	r.e.edge.StrokeColor = th.Color(theme.ColorNameError, fyne.CurrentApp().Settings().ThemeVariant())
	r.e.edge.StrokeWidth, r.e.edge.CornerRadius = 2, th.Size(theme.SizeNameInputRadius)
}

func (r *lineEntryRenderer) Layout(size fyne.Size) {
	e := r.e
	left, lineHeight := e.besides(size.Width), e.line.MinSize().Height
	label, row := e.heights(size.Width)
	top, lineAt, lineWidth := (row-label)/2, fyne.NewPos(size.Width-e.lineWidth(), (row-lineHeight)/2), e.lineWidth()
	if e.wide {
		top, lineAt, lineWidth = 0, fyne.NewPos(0, label), size.Width
	}
	for _, text := range []*entry.Text{e.label, e.unit} {
		height := text.HeightFor(left)
		text.Move(fyne.NewPos(0, top))
		text.Resize(fyne.NewSize(left, height))
		top += height
	}
	for _, object := range []fyne.CanvasObject{e.line, e.edge} {
		object.Move(lineAt)
		object.Resize(fyne.NewSize(lineWidth, lineHeight))
	}
	e.message.Move(fyne.NewPos(0, row))
	e.message.Resize(fyne.NewSize(size.Width, e.message.HeightFor(size.Width)))
}

func (r *lineEntryRenderer) MinSize() fyne.Size {
	least := 20 * r.e.Theme().Size(theme.SizeNamePadding)
	if !r.e.wide {
		least = r.e.lineWidth() + least/4
	}
	return fyne.NewSize(least, r.e.HeightFor(r.e.Size().Width))
}

func (r *lineEntryRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.e.label, r.e.unit, r.e.line, r.e.edge, r.e.message}
}
func (r *lineEntryRenderer) Destroy() {}

func (r *lineEntryRenderer) Refresh() {
	r.colour()
	for _, object := range r.Objects() {
		object.Refresh()
	}
	r.Layout(r.e.Size())
}

// lineTyping is the line of a lineEntry. Enter and the loss of focus commit, Escape
// restores.
type lineTyping struct {
	steady.Entry
	owner *lineEntry
}

// FocusGained selects all, so that typing puts a new value in place of the old.
func (t *lineTyping) FocusGained() {
	t.Entry.FocusGained()
	t.Entry.TypedShortcut(&fyne.ShortcutSelectAll{})
	if t.owner.gained != nil {
		t.owner.gained(t.owner)
	}
}

// FocusLost commits.
func (t *lineTyping) FocusLost() {
	t.owner.commit()
	t.Entry.FocusLost()
}

// TypedKey gives the keys of an entry their meaning and hands on the rest.
func (t *lineTyping) TypedKey(key *fyne.KeyEvent) {
	if keyrelay.ToWindow(t, key) {
		return
	}
	switch key.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		t.owner.commit()
	case fyne.KeyEscape:
		t.owner.restore()
	default:
		t.Entry.TypedKey(key)
	}
}

// UndoTyping takes back a piece of what was typed. It returns false where nothing was
// typed and the document is to be undone.
func (t *lineTyping) UndoTyping() bool {
	if t.Text == t.owner.shown {
		return false
	}
	before := t.Text
	t.Entry.Undo()
	if t.Text == before {
		t.owner.restore()
	}
	return true
}

// RedoTyping does again what UndoTyping took back. It returns false where there is
// nothing and the document is to be redone.
func (t *lineTyping) RedoTyping() bool {
	before := t.Text
	t.Entry.Redo()
	return t.Text != before
}

// Commit takes over what was typed, as is to be done before saving. It returns false
// where that cannot be read.
func (t *lineTyping) Commit() bool { return t.owner.commit() }
