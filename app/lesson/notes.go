package lesson

import (
	"fmt"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
	"gussetwright/app/words"
	"gussetwright/geometry/phrase"
)

// Styles of what is read from the back of the room.
var (
	captionStyle = entry.Style{Colour: theme.ColorNameForeground, Size: theme.SizeNameSubHeadingText}
	noteStyle    = entry.Style{Colour: theme.ColorNameForeground, Size: theme.SizeNameText}
	titleStyle   = entry.Style{Colour: theme.ColorNameForeground, Size: theme.SizeNameHeadingText, Bold: true}
)

// kind is what a note is about.
type kind int

// The kinds of note, in their order on the page.
const (
	obstacle kind = iota
	caution
	tip
	check
	drawn
	kinds
)

func (k kind) label() string {
	switch k {
	case obstacle:
		return lang.L("End")
	case caution:
		return lang.L("Caution")
	case tip:
		return lang.L("Tip")
	case check:
		return lang.L("Check")
	}
	return lang.L("Drawn")
}

func (k kind) icon() fyne.Resource {
	switch k {
	case obstacle:
		return theme.NewErrorThemedResource(theme.CancelIcon())
	case caution:
		return theme.NewWarningThemedResource(theme.WarningIcon())
	case tip:
		return theme.NewPrimaryThemedResource(theme.InfoIcon())
	case check:
		return theme.NewSuccessThemedResource(theme.ConfirmIcon())
	}
	return theme.NewThemedResource(theme.DocumentCreateIcon())
}

// notesOf returns what is to be said of a stage, by kind; "" for nothing.
func (c *course) notesOf(stage int) (notes [kinds]string) {
	s := &c.Stages[stage]
	if c.stuck(stage) {
		notes[obstacle] = fmt.Sprintf(lang.L("This bag cannot be folded any further: %s."), words.Of(c.Obstacle))
		return notes
	}
	notes[caution], notes[tip], notes[check] = sentence(s.Caution), sentence(s.Tip), sentence(s.Check)
	if s.Schematic {
		notes[drawn] = lang.L("Between its two ends this motion is drawn to be understood, not reckoned.")
	}
	return notes
}

// sentence returns a phrase in the language of the user, "" for none.
func sentence(p phrase.Phrase) string {
	if p.Empty() {
		return ""
	}
	return words.Of(p)
}

// explanation is what is said of a stage: on the left what the hands do, on the right
// notes, each with a mark and a word of its own.
type explanation struct {
	widget.BaseWidget

	caption *entry.Text
	icons   [kinds]*canvas.Image
	labels  [kinds]*entry.Text
	notes   [kinds]*entry.Text
	probes  map[entry.Style]*entry.Text // never seen: to measure with

	course   *course
	measured measured
	grow     func()
}

// measured is the height that all stages have room in.
type measured struct {
	course  *course
	width   float32
	letters float32
	height  float32
}

func newExplanation() *explanation {
	e := &explanation{caption: entry.NewText("", captionStyle)}
	for k := range kinds {
		e.icons[k] = canvas.NewImageFromResource(k.icon())
		e.icons[k].FillMode = canvas.ImageFillContain
		bold := noteStyle
		bold.Bold = true
		e.labels[k] = entry.NewText(k.label(), bold)
		e.notes[k] = entry.NewText("", noteStyle)
	}
	e.probes = map[entry.Style]*entry.Text{
		captionStyle: entry.NewText("", captionStyle), noteStyle: entry.NewText("", noteStyle),
		titleStyle: entry.NewText("", titleStyle),
	}
	e.ExtendBaseWidget(e)
	return e
}

// show says what a stage is about.
func (e *explanation) show(c *course, stage int) {
	other := c != e.course
	e.course = c
	e.caption.SetText(words.Of(c.Stages[stage].Caption))
	for k, text := range c.notesOf(stage) {
		e.notes[k].SetText(text)
		for _, object := range []fyne.CanvasObject{e.icons[k], e.labels[k], e.notes[k]} {
			setVisible(object, text != "")
		}
	}
	e.place()
	if other && e.grow != nil {
		e.grow()
	}
}

func setVisible(object fyne.CanvasObject, visible bool) {
	switch {
	case visible && !object.Visible():
		object.Show()
	case !visible && object.Visible():
		object.Hide()
	}
}

// OnGrow sets what is called when the height has changed by itself.
func (e *explanation) OnGrow(grow func()) { e.grow = grow }

func (e *explanation) padding() float32 { return e.Theme().Size(theme.SizeNamePadding) }
func (e *explanation) letters() float32 { return e.Theme().Size(theme.SizeNameText) }

// columns returns the widths of the caption, of the labels and of the notes.
func (e *explanation) columns(width float32) (caption, label, note float32) {
	for _, text := range e.labels {
		label = max(label, text.OneLine())
	}
	caption = 0.42*width - 2*e.padding()
	note = width - caption - 8*e.padding() - e.iconSize() - label
	return max(caption, 1), label + 1, max(note, 1)
}

func (e *explanation) iconSize() float32 { return 1.4 * e.letters() }

// HeightFor is part of entry.Tall. It is the same for all stages, so that nothing moves
// from one to the next.
func (e *explanation) HeightFor(width float32) float32 {
	if e.course == nil || width <= 0 {
		return 0
	}
	wanted := measured{course: e.course, width: width, letters: e.letters()}
	if e.measured.height > 0 && (measured{e.measured.course, e.measured.width, e.measured.letters, 0}) == wanted {
		return e.measured.height
	}
	caption, _, note := e.columns(width)
	for stage := range e.course.Stages {
		right := float32(0)
		for _, text := range e.course.notesOf(stage) {
			right += e.noteHeight(text, note)
		}
		wanted.height = max(wanted.height, right, e.measure(words.Of(e.course.Stages[stage].Caption), captionStyle, caption))
	}
	e.measured = wanted
	return wanted.height
}

func (e *explanation) measure(text string, style entry.Style, width float32) float32 {
	e.probes[style].SetText(text)
	return e.probes[style].HeightFor(width)
}

// noteHeight is the height of a note with the space below it.
func (e *explanation) noteHeight(text string, width float32) float32 {
	if text == "" {
		return 0
	}
	return max(e.measure(text, noteStyle, width), e.iconSize()) + e.padding()
}

// place puts everything where it belongs.
func (e *explanation) place() {
	width := e.Size().Width
	if width <= 0 {
		return
	}
	caption, label, note := e.columns(width)
	put(e.caption, 0, 0, caption, e.caption.HeightFor(caption))
	x, y := caption+4*e.padding(), float32(0)
	for k := range kinds {
		if e.notes[k].Text() == "" {
			continue
		}
		tall := max(e.notes[k].HeightFor(note), e.iconSize())
		put(e.icons[k], x, y, e.iconSize(), e.iconSize())
		put(e.labels[k], x+e.iconSize()+e.padding(), y, label, tall)
		put(e.notes[k], x+e.iconSize()+4*e.padding()+label, y, note, tall)
		y += tall + e.padding()
	}
}

// put gives an object its place, on whole pixels so that letters stay sharp.
func put(object fyne.CanvasObject, x, y, width, height float32) {
	object.Move(fyne.NewPos(rounded(x), rounded(y)))
	object.Resize(fyne.NewSize(width, height))
}

// CreateRenderer is part of fyne.Widget.
func (e *explanation) CreateRenderer() fyne.WidgetRenderer { return &explanationRenderer{e} }

type explanationRenderer struct{ e *explanation }

// Layout is part of fyne.WidgetRenderer.
func (r *explanationRenderer) Layout(fyne.Size) { r.e.place() }

// MinSize is part of fyne.WidgetRenderer.
func (r *explanationRenderer) MinSize() fyne.Size {
	return fyne.NewSize(1, r.e.HeightFor(r.e.Size().Width))
}

// Destroy is part of fyne.WidgetRenderer.
func (r *explanationRenderer) Destroy() {}

// Objects is part of fyne.WidgetRenderer.
func (r *explanationRenderer) Objects() []fyne.CanvasObject {
	objects := []fyne.CanvasObject{r.e.caption}
	for k := range kinds {
		objects = append(objects, r.e.icons[k], r.e.labels[k], r.e.notes[k])
	}
	for _, probe := range r.e.probes {
		probe.Hidden = true
		objects = append(objects, probe) // so that it wears the theme of the page
	}
	return objects
}

// Refresh is part of fyne.WidgetRenderer.
func (r *explanationRenderer) Refresh() {
	for _, object := range r.Objects() {
		object.Refresh()
	}
	r.e.place()
}

// rounded returns a place or a size in whole pixels, as letters need it.
func rounded(size float32) float32 { return float32(math.Round(float64(size))) }
