package steppage

import (
	"strings"

	"fyne.io/fyne/v2"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/geometry/bag"
)

// Page is the content of one step: entries under headings, and what belongs to them.
type Page struct {
	*entry.Column
	*Bench
	Enter func() // is called when the page is shown from now on
	Leave func() // is called when it is not shown any more

	slots   []*Slot
	groups  []*group
	follows []func(document.State)
	forgets []func()
	closes  []func()
}

// group is a heading with entries. It hides when none of them applies.
type group struct {
	column *entry.Column
	slots  []*Slot
}

// New returns a page with nothing on it.
func New(b *Bench) *Page {
	p := &Page{Column: entry.NewColumn(3), Bench: b, Enter: func() {}, Leave: func() {}}
	p.SetInset(2)
	return p
}

// OnFollow adds what shows a state of the bag beside the entries.
func (p *Page) OnFollow(show func(document.State)) { p.follows = append(p.follows, show) }

// OnForget adds what drops the text that was typed into an entry and not taken over.
func (p *Page) OnForget(forget func()) { p.forgets = append(p.forgets, forget) }

// OnClose adds what is done when the window closes.
func (p *Page) OnClose(end func()) { p.closes = append(p.closes, end) }

// Named adds a heading with fields below it, and returns both. An end in "." or "_"
// takes every field whose path begins so, in the order of the table; those that stand on
// the page already are left out. A heading without fields is not added: the last one of
// each step waits for entries that nobody has found a place for yet.
func (p *Page) Named(heading string, prefixes ...string) *entry.Column {
	g := &group{column: entry.NewColumn(2.5, entry.NewText(heading, entry.Heading)), slots: p.Slots(p.FieldSlot, prefixes...)}
	for _, s := range g.slots {
		g.column.Add(s)
	}
	if len(g.slots) > 0 {
		p.groups = append(p.groups, g)
		p.Add(g.column)
	}
	return g.column
}

// Slots makes entries of fields, which are named as in Named, and keeps them. It is up
// to the caller where they stand.
func (p *Page) Slots(entryOf func(*bag.Field) *Slot, prefixes ...string) []*Slot {
	var list []*Slot
	table := bag.Fields()
	for _, prefix := range prefixes {
		for i := range table {
			if takes(prefix, table[i].Path) && p.Slot(table[i].Path) == nil {
				s := entryOf(&table[i])
				list = append(list, s)
				p.Keep(s)
			}
		}
	}
	return list
}

// Keep brings an entry up to date from now on. It is up to the caller where it stands.
func (p *Page) Keep(s *Slot) { p.slots = append(p.slots, s) }

func takes(prefix, path string) bool {
	if strings.HasSuffix(prefix, ".") || strings.HasSuffix(prefix, "_") {
		return strings.HasPrefix(path, prefix)
	}
	return path == prefix
}

// Slot returns the entry with a path, or nil where the page has none.
func (p *Page) Slot(path string) *Slot {
	for _, s := range p.slots {
		if s.Path == path {
			return s
		}
	}
	return nil
}

// Follow shows a state of the bag. Only what changed is touched, as this happens with
// every step of a drag.
func (p *Page) Follow(state document.State) {
	for _, s := range p.slots {
		s.show(&state.Spec)
	}
	for _, g := range p.groups {
		any := false
		for _, s := range g.slots {
			any = any || s.applies
		}
		p.Reveal(g.column, any)
	}
	complaints := p.Complaints(state.Err)
	for _, s := range p.slots {
		s.complain(ComplaintAbout(s.Path, complaints))
		s.remark(p.remarksOn(s.Path, state, complaints))
	}
	for _, show := range p.follows {
		show(state)
	}
}

// Forget drops what was typed and not taken over.
func (p *Page) Forget() {
	for _, forget := range p.forgets {
		forget()
	}
}

// Close ends what is under way. Nothing may be asked of the page after it.
func (p *Page) Close() {
	for _, end := range p.closes {
		end()
	}
}

// Reveal shows or hides an object of the page, and gives the others their places anew.
func (p *Page) Reveal(object fyne.CanvasObject, on bool) {
	if Show(object, on) {
		p.Grown()
	}
}

// Show shows or hides an object, and returns whether that is a change. The caller gives
// the others their places.
func Show(object fyne.CanvasObject, on bool) bool {
	if object.Visible() == on {
		return false
	}
	if on {
		object.Show()
	} else {
		object.Hide()
	}
	return true
}
