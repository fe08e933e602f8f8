package filestep

import (
	"slices"
	"unicode"
	"unicode/utf8"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
	"gussetwright/app/export"
)

// omittedKey is where the names of the kinds are remembered that are not ticked, so
// that a kind which comes later is.
const omittedKey = "files-omitted"

// kinds is the list of what can be written, with a tick and a line of help each, under
// headings that say whom it is for.
type kinds struct {
	all     []export.Kind
	checks  []*widget.Check
	lines   []*helped
	parties []*party
	box     *entry.Column
	changed func()
	holding bool // several ticks change; what follows is shown once at the end
}

func newKinds(changed func()) *kinds {
	k := &kinds{all: export.Kinds(), box: entry.NewColumn(2.5), changed: changed}
	for _, party := range export.Parties() {
		k.add(newParty(lang.L(party)))
	}
	omitted := fyne.CurrentApp().Preferences().StringList(omittedKey)
	for i, kind := range k.all {
		check := widget.NewCheck(lang.L(kind.Title), nil)
		check.Checked = !slices.Contains(omitted, kind.Name)
		check.OnChanged = k.remember
		line := newHelped(check, entry.NewText(capitalised(lang.L(kind.Help)), entry.Small))
		k.checks, k.lines = append(k.checks, check), append(k.lines, line)
		k.parties[slices.Index(export.Parties(), kind.For)].take(i, line)
	}
	k.nameTurns()
	return k
}

// attach puts the choice of how a kind is made below its line, where that is ticked.
func (k *kinds) attach(name string, option *entry.Choice) {
	i := slices.IndexFunc(k.all, func(kind export.Kind) bool { return kind.Name == name })
	k.lines[i].attach(option)
	option.OnGrow(k.box.Grown)
}

func (k *kinds) add(p *party) {
	p.turn.OnTapped = func() { k.turn(p) }
	k.parties = append(k.parties, p)
	k.box.Add(p.box)
}

// turn ticks everything for a party, or nothing where all is ticked.
func (k *kinds) turn(p *party) {
	on := !k.allOf(p)
	k.holding = true
	for _, i := range p.kinds {
		if k.lines[i].Visible() {
			k.checks[i].SetChecked(on)
		}
	}
	k.holding = false
	k.remember(on)
}

// allOf tells whether all is ticked that a party can have.
func (k *kinds) allOf(p *party) bool {
	return !slices.ContainsFunc(p.kinds, func(i int) bool { return k.lines[i].Visible() && !k.checks[i].Checked })
}

// nameTurns says on the button of every party what it does next.
func (k *kinds) nameTurns() {
	for _, p := range k.parties {
		p.offer(!k.allOf(p))
	}
}

// offer shows what is of a family where the project has one.
func (k *kinds) offer(family bool) {
	for i, line := range k.lines {
		if !k.all[i].OfFamily || line.Visible() == family {
			continue
		}
		if family {
			line.Show()
		} else {
			line.Hide()
		}
		k.box.Grown()
	}
	k.nameTurns()
}

func (k *kinds) remember(bool) {
	if k.holding {
		return
	}
	var omitted []string
	for i, check := range k.checks {
		if !check.Checked {
			omitted = append(omitted, k.all[i].Name)
		}
	}
	fyne.CurrentApp().Preferences().SetStringList(omittedKey, omitted)
	k.nameTurns()
	for _, line := range k.lines {
		line.showOption()
	}
	k.changed()
}

// chosen returns the kinds that are ticked.
func (k *kinds) chosen() (chosen []export.Kind) {
	for i, check := range k.checks {
		if check.Checked && k.lines[i].Visible() {
			chosen = append(chosen, k.all[i])
		}
	}
	return chosen
}

// title returns what the kind with a name is called here.
func (k *kinds) title(name string) string {
	for i := range k.all {
		if k.all[i].Name == name {
			return k.checks[i].Text
		}
	}
	return name
}

func capitalised(sentence string) string {
	first, size := utf8.DecodeRuneInString(sentence)
	return string(unicode.ToUpper(first)) + sentence[size:]
}
