package steps

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/artstep"
	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/focus"
	"gussetwright/app/settings"
	"gussetwright/app/words"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/geometry/phrase"
)

// bench is what all pages work with.
type bench struct {
	doc     *document.Document
	look    *focus.Focus
	set     *settings.Settings
	art     *artstep.Step
	explain func(entry.Explained)   // an entry got the focus
	bring   func(fyne.CanvasObject) // scrolls an object into view
	later   func(func())            // does something on the goroutine of the window
	atOnce  bool                    // slow work is done at once, not beside the window
}

// page is the content of one step: entries under headings, and what belongs to them.
type page struct {
	*entry.Column
	*bench
	slots   []*slot
	groups  []*group
	shows   []func(document.State) // what is shown besides entries
	forgets []func()               // drop what was typed into an entry and not taken over
	enter   func()                 // the page is shown from now on
	leave   func()                 // the page is not shown any more
	close   func()                 // the window closes
}

func newPage(b *bench) *page {
	p := &page{Column: entry.NewColumn(3), bench: b, enter: func() {}, leave: func() {}, close: func() {}}
	p.SetInset(2)
	return p
}

// slot is an entry with the findings about it below it.
type slot struct {
	*entry.Column
	path     string
	put      func(*bag.Spec)
	complain func(string)
	remarks  []*entry.Message
	applies  bool
}

// group is a heading with slots. It hides when none of them applies.
type group struct {
	*entry.Column
	slots []*slot
}

// named adds a group of fields. An end in "." or "_" takes every field whose path
// begins so, in the order of the table; those that stand on the page already are
// left out. A group that would be empty is not added: the last one of each step
// waits for entries that nobody has found a place for yet.
func (p *page) named(heading string, prefixes ...string) *group {
	g := &group{Column: entry.NewColumn(2.5)}
	g.Add(entry.NewText(heading, entry.Heading))
	table := bag.Fields()
	for _, prefix := range prefixes {
		for i := range table {
			if takes(prefix, table[i].Path) && !p.holds(table[i].Path) {
				p.addTo(g, p.fieldSlot(&table[i]))
			}
		}
	}
	if len(g.slots) > 0 {
		p.groups = append(p.groups, g)
		p.Add(g)
	}
	return g
}

func takes(prefix, path string) bool {
	if strings.HasSuffix(prefix, ".") || strings.HasSuffix(prefix, "_") {
		return strings.HasPrefix(path, prefix)
	}
	return path == prefix
}

func (p *page) holds(path string) bool {
	for _, s := range p.slots {
		if s.path == path {
			return true
		}
	}
	return false
}

func (p *page) addTo(g *group, s *slot) {
	p.slots = append(p.slots, s)
	g.slots = append(g.slots, s)
	g.Add(s)
}

// fieldSlot returns the entry of a field.
func (p *page) fieldSlot(field *bag.Field) *slot {
	doc := p.doc
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
		choice.OnFocus(p.explain)
		return newSlot(field.Path, choice.Complain, func(spec *bag.Spec) { choice.Put(field.Choice(spec)) }, choice)
	case bag.Switch:
		turn := entry.NewSwitch(lang.L(field.Label), lang.L(field.Help), func(on bool) {
			spec := doc.State().Spec
			field.SetSwitch(&spec, on)
			doc.Set(spec)
		})
		turn.OnFocus(p.explain)
		return newSlot(field.Path, turn.Complain, func(spec *bag.Spec) { turn.Put(field.Switch(spec)) }, turn)
	}
	number := p.number(entry.OfField(doc, field))
	return newSlot(field.Path, number.Complain, func(spec *bag.Spec) { number.Put(field.Number(spec)) }, number)
}

// number returns the entry of a quantity on this page.
func (p *page) number(quantity entry.Quantity) *entry.Number {
	number := entry.NewNumber(quantity, p.set)
	number.OnFocus(p.explain)
	p.forgets = append(p.forgets, number.Forget)
	return number
}

func newSlot(path string, complain func(string), put func(*bag.Spec), object entry.Tall) *slot {
	return &slot{Column: entry.NewColumn(1, object), path: path, complain: complain, put: put, applies: true}
}

// show brings the page up to date. Only what changed is touched, as this happens
// with every step of a drag.
func (p *page) show(state document.State) {
	spec := &state.Spec
	complaints := complaintsIn(state.Err)
	for _, g := range p.groups {
		any := false
		for _, s := range g.slots {
			s.show(spec)
			any = any || s.applies
		}
		p.reveal(g.Column, any)
	}
	for _, s := range p.slots {
		s.complain(complaintAbout(s.path, complaints))
		s.remark(p.remarksOn(s.path, state, complaints))
	}
	for _, show := range p.shows {
		show(state)
	}
}

// reveal hides or shows a column.
func (p *page) reveal(c *entry.Column, visible bool) {
	if c.Visible() == visible {
		return
	}
	if visible {
		c.Show()
	} else {
		c.Hide()
	}
	c.Grown()
}

func (s *slot) show(spec *bag.Spec) {
	s.put(spec)
	if applies := bag.Applies(s.path, spec); applies != s.applies {
		s.applies = applies
		if applies {
			s.Show()
		} else {
			s.Hide()
		}
		s.Grown()
	}
}

// complaintAbout says in the language of the user what is wrong with an entry.
func complaintAbout(path string, complaints []*bag.FieldError) string {
	for _, c := range complaints {
		if c.Path == path {
			return sentence(words.Of(c.Limit)) + " " + sentence(words.Of(c.Remedy))
		}
	}
	return ""
}

// remark is a finding as it stands below an entry.
type remark struct {
	severity check.Severity
	text     string
	show     func() // shows the place in the panes
}

// remarksOn returns the findings about an entry. While the bag cannot be drawn
// there are none: they would be about another bag.
func (p *page) remarksOn(path string, state document.State, complaints []*bag.FieldError) []remark {
	if len(complaints) > 0 {
		return nil
	}
	var list []remark
	for i := range state.Snapshot.Findings {
		f := &state.Snapshot.Findings[i]
		if entryOf(f, &state.Spec) == path {
			text := p.said(f.Message) + " " + p.said(f.Remedy)
			place := &focus.Place{Piece: f.Piece, At: f.At}
			list = append(list, remark{f.Severity, text, func() { p.look.Show(place) }})
		}
	}
	return list
}

// said returns what a phrase says as a sentence, with lengths in the unit of the user.
func (b *bench) said(p phrase.Phrase) string { return sentence(words.Measured(p, b.set.Unit())) }

// sentence gives a phrase a capital letter and a full stop.
func sentence(text string) string {
	runes := []rune(text)
	if len(runes) == 0 {
		return ""
	}
	return strings.ToUpper(string(runes[0])) + strings.TrimSuffix(string(runes[1:]), ".") + "."
}

// remark shows the findings about the entry.
func (s *slot) remark(list []remark) {
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
