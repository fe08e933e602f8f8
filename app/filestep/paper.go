package filestep

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/entry"
	"gussetwright/app/practice"
	"gussetwright/app/settings"
	"gussetwright/app/words"
)

// paperKey is where the paper of practice blanks is remembered, once one was chosen.
const paperKey = "practice-paper"

// paper is the choice of what practice blanks are printed on.
type paper struct {
	*entry.Choice
	set *settings.Settings
}

func newPaper(set *settings.Settings) *paper {
	p := &paper{set: set}
	p.Choice = entry.NewChoice(lang.L("Paper of the practice blanks"), "", nil, func(name string) {
		fyne.CurrentApp().Preferences().SetString(paperKey, name)
	})
	p.show()
	return p
}

// show shows which papers there are, with their sizes in the unit of the user, and which
// is chosen.
func (p *paper) show() {
	var options []entry.Option
	for _, paper := range practice.Papers() {
		size := paper.Size()
		options = append(options, entry.Option{Value: string(paper), Word: string(paper), Line: words.Size(p.set.Unit(), size.Width, size.Height)})
	}
	p.SetOptions(options)
	p.Put(string(p.chosen()))
}

// chosen returns the paper that was chosen, before that the one usual with the unit.
func (p *paper) chosen() practice.Paper {
	chosen := practice.Paper(fyne.CurrentApp().Preferences().String(paperKey))
	if slices.Contains(practice.Papers(), chosen) {
		return chosen
	}
	return practice.UsualPaper(p.set.Unit())
}
