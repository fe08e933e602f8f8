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

// kinds is the list of what can be written, with a tick and a line of help each.
type kinds struct {
	all     []export.Kind
	checks  []*widget.Check
	box     *entry.Column
	changed func()
}

func newKinds(changed func()) *kinds {
	k := &kinds{all: export.Kinds(), box: entry.NewColumn(1), changed: changed}
	omitted := fyne.CurrentApp().Preferences().StringList(omittedKey)
	for _, kind := range k.all {
		check := widget.NewCheck(lang.L(kind.Title), nil)
		check.Checked = !slices.Contains(omitted, kind.Name)
		check.OnChanged = k.remember
		help := entry.NewText(capitalised(lang.L(kind.Help)), entry.Small)
		k.checks = append(k.checks, check)
		k.box.Add(newHelped(check, help))
	}
	return k
}

// offer shows what is of a family where the project has one.
func (k *kinds) offer(family bool) {
	for i, line := range k.box.Objects() {
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
}

func (k *kinds) remember(bool) {
	var omitted []string
	for i, check := range k.checks {
		if !check.Checked {
			omitted = append(omitted, k.all[i].Name)
		}
	}
	fyne.CurrentApp().Preferences().SetStringList(omittedKey, omitted)
	k.changed()
}

// chosen returns the kinds that are ticked.
func (k *kinds) chosen() (chosen []export.Kind) {
	for i, check := range k.checks {
		if check.Checked && k.box.Objects()[i].Visible() {
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
