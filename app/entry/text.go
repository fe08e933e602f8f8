package entry

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Style is how a Text looks, in names of the theme.
type Style struct {
	Colour fyne.ThemeColorName
	Size   fyne.ThemeSizeName
	Bold   bool
}

// The styles of text beside entries.
var (
	Plain   = Style{Colour: theme.ColorNameForeground, Size: theme.SizeNameText}
	Heading = Style{Colour: theme.ColorNameForeground, Size: theme.SizeNameText, Bold: true}
	Small   = Style{Colour: theme.ColorNameForeground, Size: theme.SizeNameCaptionText}
	Muted   = Style{Colour: theme.ColorNamePlaceHolder, Size: theme.SizeNameCaptionText}
)

// Text is text that wraps at spaces. It is far lighter than a label, since a
// hundred of them stand in a step and some change with every step of a drag.
type Text struct {
	widget.BaseWidget

	text  string
	style Style
	lines []*canvas.Text
	at    float32 // the width for which the lines were broken; 0 when they are stale
	size  float32 // of the letters for which they were broken
	asked asked   // the last height that was asked for
	words ruler   // of the letters that were measured last
	line  gauge   // of a line
	grow  func()
}

// asked keeps the number of lines for a width that is not the present one.
type asked struct {
	width, size float32
	lines       int
}

// NewText returns a text.
func NewText(text string, style Style) *Text {
	t := &Text{text: text, style: style}
	t.ExtendBaseWidget(t)
	return t
}

// Text returns the words.
func (t *Text) Text() string { return t.text }

// OnGrow sets what is called when the text takes more or fewer lines.
func (t *Text) OnGrow(grow func()) { t.grow = grow }

// SetText changes the words, and nothing where they are the same.
func (t *Text) SetText(text string) {
	if text == t.text {
		return
	}
	t.text = text
	t.at, t.asked, t.words = 0, asked{}, ruler{}
	width := t.BaseWidget.Size().Width
	if width == 0 {
		return // not shown yet
	}
	before := len(t.lines)
	t.broken(width)
	t.place()
	if len(t.lines) != before && t.grow != nil {
		t.grow()
	}
}

// HeightFor returns the height of the text at a width; none for no words.
func (t *Text) HeightFor(width float32) float32 {
	if t.text == "" {
		return 0
	}
	return float32(t.countLines(width)) * t.lineHeight()
}

// countLines leaves the lines that are shown as they are.
func (t *Text) countLines(width float32) int {
	letters := t.letters()
	if t.at == width && t.size == letters {
		return len(t.lines)
	}
	if t.asked.width != width || t.asked.size != letters {
		t.asked = asked{width, letters, len(t.ruler().lines(width))}
	}
	return t.asked.lines
}

func (t *Text) lineHeight() float32 { return t.fewLetters().Height }

// fewLetters returns the size of a line with few letters in it.
func (t *Text) fewLetters() fyne.Size { return t.line.of("Mg", t.letters(), t.textStyle()) }

func (t *Text) letters() float32 { return t.Theme().Size(t.style.Size) }

func (t *Text) textStyle() fyne.TextStyle { return fyne.TextStyle{Bold: t.style.Bold} }

func (t *Text) measure(text string) float32 {
	return fyne.MeasureText(text, t.letters(), t.textStyle()).Width
}

// ruler returns the text measured in its present letters.
func (t *Text) ruler() *ruler {
	if letters := t.letters(); t.words.letters != letters {
		t.words = measured(t.text, letters, t.measure)
	}
	return &t.words
}

// broken breaks the text into lines for a width. Lines that are there already are
// used again.
func (t *Text) broken(width float32) []*canvas.Text {
	letters := t.letters()
	if t.at == width && t.size == letters {
		return t.lines
	}
	texts := t.ruler().lines(width)
	for len(t.lines) < len(texts) {
		t.lines = append(t.lines, canvas.NewText("", nil))
	}
	t.lines = t.lines[:len(texts)]
	colour := t.Theme().Color(t.style.Colour, fyne.CurrentApp().Settings().ThemeVariant())
	for i, text := range texts {
		line := t.lines[i]
		if line.Text == text && line.TextSize == letters && line.Color == colour {
			continue
		}
		line.Text, line.TextSize, line.TextStyle, line.Color = text, letters, t.textStyle(), colour
		line.Refresh()
	}
	t.at, t.size = width, letters
	return t.lines
}

// place puts the lines below each other.
func (t *Text) place() {
	height := t.lineHeight()
	for i, line := range t.lines {
		line.Move(fyne.NewPos(0, float32(i)*height))
		line.Resize(fyne.NewSize(t.BaseWidget.Size().Width, height))
	}
}

// MinSize returns the width of a few letters and the height at the present width.
func (t *Text) MinSize() fyne.Size {
	width := t.BaseWidget.Size().Width
	if width == 0 {
		width = t.OneLine()
	}
	return fyne.NewSize(min(t.fewLetters().Width*3, t.OneLine()), t.HeightFor(width))
}

// OneLine returns the width of the text on one line.
func (t *Text) OneLine() float32 { return t.ruler().whole }

// CreateRenderer is part of fyne.Widget.
func (t *Text) CreateRenderer() fyne.WidgetRenderer { return &textRenderer{t} }

type textRenderer struct{ t *Text }

func (r *textRenderer) Layout(size fyne.Size) {
	r.t.broken(size.Width)
	r.t.place()
}
func (r *textRenderer) MinSize() fyne.Size { return r.t.MinSize() }
func (r *textRenderer) Destroy()           {}

func (r *textRenderer) Objects() []fyne.CanvasObject {
	objects := make([]fyne.CanvasObject, len(r.t.lines))
	for i, line := range r.t.lines {
		objects[i] = line
	}
	return objects
}

// Refresh takes over a change of theme.
func (r *textRenderer) Refresh() {
	r.t.at, r.t.asked = 0, asked{}
	if width := r.t.BaseWidget.Size().Width; width > 0 {
		r.t.broken(width)
		r.t.place()
	}
}
