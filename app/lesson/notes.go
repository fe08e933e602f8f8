package lesson

import (
	"fmt"
	"math"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
)

// Styles of what is read from the back of the room.
var (
	captionStyle = entry.Style{Colour: theme.ColorNameForeground, Size: theme.SizeNameSubHeadingText}
	noteStyle    = entry.Style{Colour: theme.ColorNameForeground, Size: theme.SizeNameText}
	smallStyle   = entry.Style{Colour: theme.ColorNameForeground, Size: theme.SizeNameCaptionText}
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

// notesOf returns what is to be said of a stage, by kind, with lengths in a unit; "" for
// nothing.
func (c *course) notesOf(stage int, unit geometry.Unit) (notes [kinds]string) {
	s := &c.Stages[stage]
	if c.stuck(stage) {
		notes[obstacle] = fmt.Sprintf(lang.L("This bag cannot be folded any further: %s."), words.Measured(c.Obstacle, unit))
		return notes
	}
	for kind, said := range map[kind]phrase.Phrase{caution: s.Caution, tip: s.Tip, check: s.Check} {
		if !said.Empty() {
			notes[kind] = words.Measured(said, unit)
		}
	}
	if s.Schematic {
		notes[drawn] = lang.L("Between its two ends this motion is drawn to be understood, not reckoned.")
	}
	return notes
}

// explanation is what is said of a stage: on the left what the hands do, on the right
// notes, each with a mark and a word of its own. It is written as large as it has room, but
// no smaller than the text that the user chose.
type explanation struct {
	widget.BaseWidget

	sets   [sizes]set // of which one is shown
	icons  [kinds]*canvas.Image
	probes map[entry.Style]*entry.Text // never seen: to measure with

	course   *course
	stage    int
	unit     geometry.Unit // of lengths
	size     int           // the set that is shown
	width    float32       // that there is
	tall     float32
	heights  map[written]float32
	measured measured
}

// sizes is the number of sizes in which an explanation can be written.
const sizes = 4

// styles are those of what the hands do and of the notes, the largest first.
var styles = [sizes]struct{ caption, note entry.Style }{
	{captionStyle, captionStyle}, {captionStyle, noteStyle}, {noteStyle, noteStyle}, {noteStyle, smallStyle},
}

// set is all words in one size.
type set struct {
	caption *entry.Text
	labels  [kinds]*entry.Text
	notes   [kinds]*entry.Text
}

func (s *set) objects() []fyne.CanvasObject {
	objects := []fyne.CanvasObject{s.caption}
	for k := range kinds {
		objects = append(objects, s.labels[k], s.notes[k])
	}
	return objects
}

// measured is the height that all stages have room in, and what it was measured for.
type measured struct {
	of     lettered
	height float32
}

// lettered is all that the heights of stages depend on.
type lettered struct {
	course         *course
	unit           geometry.Unit
	width, letters float32
}

func newExplanation() *explanation {
	e := &explanation{probes: map[entry.Style]*entry.Text{}, heights: map[written]float32{}}
	for i := range e.sets {
		s := &e.sets[i]
		s.caption = entry.NewText("", styles[i].caption)
		for k := range kinds {
			bold := styles[i].note
			bold.Bold = true
			s.labels[k] = entry.NewText(k.label(), bold)
			s.notes[k] = entry.NewText("", styles[i].note)
		}
	}
	for k := range kinds {
		e.icons[k] = canvas.NewImageFromResource(k.icon())
		e.icons[k].FillMode = canvas.ImageFillContain
	}
	for _, style := range []entry.Style{captionStyle, noteStyle, smallStyle} {
		e.probes[style] = entry.NewText("", style)
	}
	e.ExtendBaseWidget(e)
	return e
}

// show says what a stage is about, with lengths in a unit.
func (e *explanation) show(c *course, stage int, unit geometry.Unit) {
	e.course, e.stage, e.unit = c, stage, unit
	notes := c.notesOf(stage, unit)
	for i := range e.sets {
		e.sets[i].caption.SetText(e.captionOf(stage))
		for k, text := range notes {
			e.sets[i].notes[k].SetText(text)
		}
	}
	e.fit(e.width, e.tall)
}

// captionOf returns what the hands do in a stage.
func (e *explanation) captionOf(stage int) string {
	return words.Measured(e.course.Stages[stage].Caption, e.unit)
}

// fit writes the stage as large as it has room in a width and a height, and no smaller
// than all stages are to be.
func (e *explanation) fit(width, tall float32) {
	e.width, e.tall = width, tall
	if e.course == nil || width <= 0 {
		return
	}
	e.size = 0
	for e.size < e.smallest() && e.heightOf(e.stage, e.size, width) > tall {
		e.size++
	}
	notes := e.course.notesOf(e.stage, e.unit)
	for i := range e.sets {
		setVisible(e.sets[i].caption, i == e.size)
		for k, text := range notes {
			setVisible(e.sets[i].labels[k], i == e.size && text != "")
			setVisible(e.sets[i].notes[k], i == e.size && text != "")
		}
	}
	for k, text := range notes {
		setVisible(e.icons[k], text != "")
	}
	e.place()
}

func setVisible(object fyne.CanvasObject, visible bool) {
	switch {
	case visible && !object.Visible():
		object.Show()
	case !visible && object.Visible():
		object.Hide()
	}
}

func (e *explanation) padding() float32 { return e.Theme().Size(theme.SizeNamePadding) }
func (e *explanation) letters() float32 { return e.Theme().Size(theme.SizeNameText) }

// smallest is the smallest size in which a stage is written: never smaller than the text
// that the user chose, and smaller than usual only where the letters are large.
func (e *explanation) smallest() int {
	const large, usual = 1.25, 13
	chosen := fyne.CurrentApp().Settings().Theme().Size(theme.SizeNameText)
	switch {
	case e.letters() < large*usual*growth.Larger:
		return 1
	case e.Theme().Size(smallStyle.Size) < chosen:
		return 2
	}
	return 3
}

// columns returns the widths of the caption, of the labels and of the notes in a size.
func (e *explanation) columns(width float32, size int) (caption, label, note float32) {
	for _, text := range e.sets[size].labels {
		label = max(label, text.OneLine())
	}
	caption = 0.42*width - 2*e.padding()
	note = width - caption - 8*e.padding() - e.iconSize(size) - label
	return max(caption, 1), label + 1, max(note, 1)
}

func (e *explanation) iconSize(size int) float32 { return 1.4 * e.Theme().Size(styles[size].note.Size) }

// room is the height that the words are to have, the same for all stages, so that nothing
// moves from one to the next. The longest of them may be written in the smallest size in
// it, half of them need not.
func (e *explanation) room(width float32) float32 {
	if e.course == nil || width <= 0 {
		return 0
	}
	of := e.lettered(width)
	if e.measured.of == of && e.measured.height > 0 {
		return e.measured.height
	}
	height, usual := float32(0), []float32(nil)
	for stage := range e.course.Stages {
		height = max(height, e.heightOf(stage, e.smallest(), width))
		usual = append(usual, e.heightOf(stage, 1, width))
	}
	slices.Sort(usual)
	e.measured = measured{of, max(height, usual[len(usual)/2])}
	return e.measured.height
}

func (e *explanation) lettered(width float32) lettered {
	return lettered{e.course, e.unit, width, e.letters()}
}

// written is a stage in a size, at a width.
type written struct {
	of          lettered
	stage, size int
}

// heightOf is the height of a stage that is written in a size. The toolkit asks for it with
// every picture.
func (e *explanation) heightOf(stage, size int, width float32) float32 {
	key := written{e.lettered(width), stage, size}
	if _, known := e.heights[key]; !known {
		const most = 500 // of one course there are far fewer
		if len(e.heights) > most {
			clear(e.heights)
		}
		e.heights[key] = e.measureStage(stage, size, width)
	}
	return e.heights[key]
}

func (e *explanation) measureStage(stage, size int, width float32) float32 {
	caption, _, note := e.columns(width, size)
	right := float32(0)
	for _, text := range e.course.notesOf(stage, e.unit) {
		right += e.noteHeight(text, size, note)
	}
	return max(right, e.measure(e.captionOf(stage), styles[size].caption, caption))
}

// HeightFor is the height of the stage at a width.
func (e *explanation) HeightFor(width float32) float32 {
	if e.course == nil || width <= 0 {
		return 0
	}
	return e.heightOf(e.stage, e.size, width)
}

func (e *explanation) measure(text string, style entry.Style, width float32) float32 {
	e.probes[style].SetText(text)
	return e.probes[style].HeightFor(width)
}

// noteHeight is the height of a note with the space below it.
func (e *explanation) noteHeight(text string, size int, width float32) float32 {
	if text == "" {
		return 0
	}
	return max(e.measure(text, styles[size].note, width), e.iconSize(size)) + e.padding()
}

// place puts everything where it belongs.
func (e *explanation) place() {
	width := e.Size().Width
	if width <= 0 {
		return
	}
	s, icon := &e.sets[e.size], e.iconSize(e.size)
	caption, label, note := e.columns(width, e.size)
	put(s.caption, 0, 0, caption, s.caption.HeightFor(caption))
	x, y := caption+4*e.padding(), float32(0)
	for k := range kinds {
		if s.notes[k].Text() == "" {
			continue
		}
		tall := max(s.notes[k].HeightFor(note), icon)
		put(e.icons[k], x, y, icon, icon)
		put(s.labels[k], x+icon+e.padding(), y, label, tall)
		put(s.notes[k], x+icon+4*e.padding()+label, y, note, tall)
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
	return fyne.NewSize(1, r.e.HeightFor(r.e.width))
}

// Destroy is part of fyne.WidgetRenderer.
func (r *explanationRenderer) Destroy() {}

// Objects is part of fyne.WidgetRenderer.
func (r *explanationRenderer) Objects() []fyne.CanvasObject {
	var objects []fyne.CanvasObject
	for i := range r.e.sets {
		objects = append(objects, r.e.sets[i].objects()...)
	}
	for k := range kinds {
		objects = append(objects, r.e.icons[k])
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
