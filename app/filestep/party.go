package filestep

import (
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
)

// party is whom some kinds of files are for: a heading with a button that ticks all of
// them or none, and the kinds below it.
type party struct {
	kinds []int // numbers of the kinds
	turn  *widget.Button
	box   *entry.Column
}

func newParty(title string) *party {
	p := &party{turn: widget.NewButton("", nil)}
	p.turn.Importance = widget.LowImportance
	middle := container.NewVBox(layout.NewSpacer(), entry.NewText(title, entry.Heading), layout.NewSpacer())
	p.box = entry.NewColumn(1, container.NewBorder(nil, nil, nil, p.turn, middle))
	return p
}

// take adds a kind by its number.
func (p *party) take(number int, line *helped) {
	p.kinds = append(p.kinds, number)
	p.box.Add(line)
}

// offer says on the button whether it ticks all or none.
func (p *party) offer(all bool) {
	words := lang.L("Tick none")
	if all {
		words = lang.L("Tick all")
	}
	if words != p.turn.Text {
		p.turn.SetText(words)
	}
}
