package welcome

import (
	"errors"
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/settings"
	"gussetwright/app/steady"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// measures are the entries width, depth and height, in the order in which a bag is
// named.
type measures struct {
	set     *settings.Settings
	entries [3]*measure
	object  fyne.CanvasObject
	accept  func(width, depth, height float64)
}

// measure is one entry with the complaint below it.
type measure struct {
	field     *bag.Field
	entry     *sizeEntry
	complaint *widget.Label
}

// sizeEntry is an entry that comes into sight when it gains the focus.
type sizeEntry struct {
	steady.Entry
	bring func(fyne.CanvasObject)
}

// FocusGained is part of fyne.Focusable.
func (e *sizeEntry) FocusGained() {
	e.Entry.FocusGained()
	e.bring(e)
}

const gussetPath = "bag.gusset_mm"

func newMeasures(set *settings.Settings, accept func(width, depth, height float64), bring func(fyne.CanvasObject)) *measures {
	m := &measures{set: set, accept: accept}
	rows := container.NewVBox()
	usual := bag.Default()
	labels := make([]fyne.CanvasObject, 0, len(m.entries))
	for i, path := range []string{"bag.width_mm", gussetPath, "bag.height_mm"} {
		field, _ := bag.FieldAt(path)
		one := &measure{field: field, entry: &sizeEntry{bring: bring}, complaint: widget.NewLabel("")}
		one.entry.ExtendBaseWidget(one.entry)
		one.entry.OnSubmitted = func(string) { m.next(i) }
		one.complaint.Wrapping = fyne.TextWrapWord
		one.complaint.Importance = widget.DangerImportance
		one.complaint.Hide()
		m.entries[i] = one
		label := widget.NewLabel(lang.L(field.Label) + " " + field.Symbol)
		labels = append(labels, label)
		rows.Add(container.New(labelled{&labels}, label, one.entry))
		rows.Add(one.complaint)
	}
	m.object = rows
	m.showUsual(usual)
	set.Listen(func() { m.showUsual(usual) })
	return m
}

// showUsual writes the usual size behind empty entries, in the unit of the user.
func (m *measures) showUsual(usual bag.Spec) {
	for _, one := range m.entries {
		one.entry.SetPlaceHolder(m.length(one.field.Number(&usual)))
	}
}

// next goes on to the next entry, or begins the bag after the last.
func (m *measures) next(i int) {
	if i+1 == len(m.entries) {
		m.submit()
		return
	}
	m.focus(m.entries[i+1])
}

func (m *measures) focus(one *measure) {
	if canvas := fyne.CurrentApp().Driver().CanvasForObject(one.entry); canvas != nil {
		canvas.Focus(one.entry)
	}
}

// submit begins the bag, or says at each entry what is wrong with it and goes to
// the first of them.
func (m *measures) submit() {
	spec := bag.Default()
	var wrong *measure
	for i := len(m.entries) - 1; i >= 0; i-- {
		one := m.entries[i]
		length, complaint := m.read(one)
		one.complain(complaint)
		one.field.SetNumber(&spec, length)
		if complaint != "" {
			wrong = one
		}
	}
	if wrong == nil {
		wrong = m.together(spec)
	}
	if wrong != nil {
		m.focus(wrong)
		return
	}
	m.accept(spec.Body.Width, spec.Body.Gusset, spec.Body.Height)
}

// read returns the length in mm, or what is wrong with the text.
func (m *measures) read(one *measure) (length float64, complaint string) {
	length, err := words.DecimalMark().Evaluate(one.entry.Text, m.set.Unit())
	switch {
	case err != nil:
		return 0, words.Error(err)
	case length < one.field.Least:
		return 0, m.beyond(lang.L("at least %s"), one.field.Least, one.field.WhyLeast)
	case length > one.field.Most:
		return 0, m.beyond(lang.L("at most %s"), one.field.Most, one.field.WhyMost)
	}
	return length, ""
}

// beyond says which limit is broken and why there is one.
func (m *measures) beyond(limit string, at float64, why string) string {
	text := fmt.Sprintf(limit, m.length(at))
	if why != "" {
		text += ": " + lang.L(why)
	}
	return text
}

// together looks for sizes that are fine alone but make no bag, and complains at
// the entry.
func (m *measures) together(spec bag.Spec) *measure {
	if spec.Body.Gusset == 0 {
		spec.Body.Base = bag.BasePinch
	}
	var refused *bag.FieldError
	if !errors.As(spec.Validate(), &refused) {
		return nil
	}
	gusset := m.entries[1]
	gusset.complain(lang.L("too narrow to be creased down its middle; enter 0 for a flat bag, or a deeper gusset"))
	return gusset
}

func (one *measure) complain(text string) {
	one.complaint.SetText(text)
	if text == "" {
		one.complaint.Hide()
		return
	}
	one.complaint.Show()
}

// length writes a length in the unit of the user.
func (m *measures) length(mm float64) string {
	unit := m.set.Unit()
	decimals := map[geometry.Unit]int{geometry.Millimetre: 1, geometry.Centimetre: 2, geometry.Inch: 3}[unit]
	return words.Plain(mm/unit.Length(), decimals) + " " + string(unit)
}
