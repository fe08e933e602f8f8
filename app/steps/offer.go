package steps

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"gussetwright/app/entry"
)

// offer is a button of two lines, both of which may wrap: what would be gained, and what
// a press does.
type offer struct {
	plate
	gain, act *entry.Text
}

var actStyle = entry.Style{Colour: theme.ColorNamePrimary, Size: theme.SizeNameCaptionText, Bold: true}

func newOffer(act string) *offer {
	o := &offer{gain: entry.NewText("", entry.Small), act: entry.NewText(act, actStyle)}
	o.lay(o)
	return o
}

// say offers something else.
func (o *offer) say(gain string, press func()) {
	o.press = press
	o.gain.SetText(gain)
}

// HeightFor returns the height at a width.
func (o *offer) HeightFor(width float32) float32 {
	width -= 4 * o.padding()
	return o.gain.HeightFor(width) + o.act.HeightFor(width) + 2*o.padding()
}

// CreateRenderer is part of fyne.Widget.
func (o *offer) CreateRenderer() fyne.WidgetRenderer {
	o.colour()
	return &plateRenderer{&o.plate, o.layout, o.HeightFor, []fyne.CanvasObject{o.gain, o.act}}
}

func (o *offer) layout(size fyne.Size) {
	padding := o.padding()
	top, width := padding, size.Width-4*padding
	for _, text := range []*entry.Text{o.gain, o.act} {
		height := text.HeightFor(width)
		text.Move(fyne.NewPos(2*padding, top))
		text.Resize(fyne.NewSize(width, height))
		top += height
	}
}

// offers is a column of offers, of which as many are shown as are needed.
type offers struct {
	*entry.Column
	act  string
	list []*offer
}

func newOffers(act string) *offers { return &offers{Column: entry.NewColumn(1), act: act} }

// set shows what would be gained by each press.
func (o *offers) set(gains []string, press func(int)) {
	for len(o.list) < len(gains) {
		added := newOffer(o.act)
		added.Hide()
		o.list = append(o.list, added)
		o.Add(added)
	}
	for i, one := range o.list {
		if i >= len(gains) {
			one.Hide()
			continue
		}
		one.say(gains[i], func() { press(i) })
		one.Show()
	}
}
