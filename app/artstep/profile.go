package artstep

import (
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/geometry/check"
)

// profile is the choice of the ICC profile of the printing condition.
type profile struct {
	*entry.Column

	name    *entry.Text
	message *entry.Message
	flow    *flow
	takeOut *widget.Button
}

func newProfile(s *Step) *profile {
	p := &profile{name: entry.NewText("", entry.Small), message: entry.NewMessage()}
	choose := widget.NewButton(lang.L("Choose…"), func() {
		s.ask(profileEndings(), s.source.ChooseProfile)
	})
	p.takeOut = widget.NewButton(lang.L("Take out"), func() {
		spec := s.doc.State().Spec
		spec.Profile = ""
		s.doc.Set(spec)
	})
	p.flow = newFlow(choose, p.takeOut)
	p.Column = entry.NewColumn(1.5, entry.NewText(lang.L("Output profile"), entry.Heading), p.name, p.message, p.flow)
	return p
}

// show shows the profile of a state.
func (p *profile) show(state document.State) {
	name, missing := state.Spec.Profile, ""
	p.name.SetText(name)
	if name == "" {
		p.name.SetText(lang.L("Without a profile the file is written without an output intent. Your printer names the ICC profile of the printing condition."))
	} else if state.Err == nil && state.Snapshot.Profile == nil {
		missing = lang.L("The file is missing from the project. Choose it again, or take it out.")
	}
	p.message.Say(check.Warning, missing, nil)
	if shown := name != ""; p.takeOut.Visible() != shown {
		if shown {
			p.takeOut.Show()
		} else {
			p.takeOut.Hide()
		}
		p.flow.Refresh()
		p.Grown()
	}
}
