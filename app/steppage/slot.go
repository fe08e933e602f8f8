package steppage

import (
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/focus"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
)

// Slot is an entry with the findings about it below it. It hides while the entry has no
// bearing on the bag.
type Slot struct {
	*entry.Column
	Path string // of the entry in the project file

	put      func(*bag.Spec)
	complain func(string)
	remarks  []*entry.Message
	applies  bool
}

// NewSlot returns the slot of an entry with a path. complain shows what is wrong with
// the entry, put what a bag has in it.
func NewSlot(path string, complain func(string), put func(*bag.Spec), object entry.Tall) *Slot {
	return &Slot{Column: entry.NewColumn(1, object), Path: path, complain: complain, put: put, applies: true}
}

// FieldSlot returns the usual entry of a field.
func (p *Page) FieldSlot(field *bag.Field) *Slot {
	doc := p.Doc
	switch field.Kind() {
	case bag.Choice:
		choice := entry.NewChoice(lang.L(field.Label), lang.L(field.Help), entry.OptionsOf(field), func(value string) {
			spec := doc.State().Spec
			field.SetChoice(&spec, value)
			if field.Path == "paper.kind" {
				// The colour comes with the paper, and can be changed after it.
				spec.Derive(func(path string) bool { return path != "paper.colour" })
			}
			doc.Set(spec)
		})
		choice.OnFocus(p.Explain)
		return NewSlot(field.Path, choice.Complain, func(spec *bag.Spec) { choice.Put(field.Choice(spec)) }, choice)
	case bag.Switch:
		turn := entry.NewSwitch(lang.L(field.Label), lang.L(field.Help), func(on bool) {
			spec := doc.State().Spec
			field.SetSwitch(&spec, on)
			doc.Set(spec)
		})
		turn.OnFocus(p.Explain)
		return NewSlot(field.Path, turn.Complain, func(spec *bag.Spec) { turn.Put(field.Switch(spec)) }, turn)
	}
	number := p.Number(entry.OfField(doc, field))
	return NewSlot(field.Path, number.Complain, func(spec *bag.Spec) { number.Put(field.Number(spec)) }, number)
}

// Number returns the entry of a quantity for this page.
func (p *Page) Number(quantity entry.Quantity) *entry.Number {
	number := entry.NewNumber(quantity, p.Settings)
	number.OnFocus(p.Explain)
	p.OnForget(number.Forget)
	return number
}

// longestName is the limit of package bag on every name, in characters.
const longestName = 120

// Name returns the entry of a name for this page. Label and help are translated; take is
// called with each name that is entered.
func (p *Page) Name(label, help string, take func(string)) *entry.Name {
	name := entry.NewName(label, help, longestName, take)
	name.OnFocus(p.Explain)
	p.OnForget(name.Forget)
	return name
}

// show puts in what a bag has, and hides what has no bearing on it.
func (s *Slot) show(spec *bag.Spec) {
	s.put(spec)
	s.applies = bag.Applies(s.Path, spec)
	if Show(s, s.applies) {
		s.Grown()
	}
}

// remark is a finding as it stands below an entry.
type remark struct {
	severity check.Severity
	text     string
	show     func() // shows the place in the panes
}

// remarksOn returns the findings about an entry. While the bag cannot be drawn
// there are none: they would be about another bag.
func (p *Page) remarksOn(path string, state document.State, complaints []*bag.FieldError) []remark {
	if len(complaints) > 0 {
		return nil
	}
	var list []remark
	for i := range state.Snapshot.Findings {
		f := &state.Snapshot.Findings[i]
		if EntryOf(f, &state.Spec) == path {
			text := p.Said(f.Message) + " " + p.Said(f.Remedy)
			place := &focus.Place{Piece: f.Piece, At: f.At}
			list = append(list, remark{f.Severity, text, func() { p.Look.Show(place) }})
		}
	}
	return list
}

// remark shows the findings about the entry.
func (s *Slot) remark(list []remark) {
	for len(s.remarks) < len(list) {
		message := entry.NewMessage()
		s.remarks = append(s.remarks, message)
		s.Add(message)
	}
	for i, message := range s.remarks {
		if i < len(list) {
			message.Say(list[i].severity, list[i].text, list[i].show)
		} else {
			message.Say(check.Note, "", nil)
		}
	}
}
