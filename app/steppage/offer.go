package steppage

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"gussetwright/app/entry"
)

// Offer is a button of two lines, both of which may wrap: what would be gained, and what
// a press does. The first may be empty.
type Offer struct {
	plate
	gain, act *entry.Text
	help      string
}

// NewOffer returns an offer with nothing to gain yet. act is translated.
func NewOffer(act string, press func()) *Offer {
	o := &Offer{
		gain: entry.NewText("", entry.Small),
		act:  entry.NewText(act, entry.Style{Colour: theme.ColorNamePrimary, Size: theme.SizeNameCaptionText, Bold: true}),
	}
	o.press = press
	o.lay(o)
	return o
}

// WithHelp makes the offer explain what a press does when it gets the focus, by a help
// that is translated. It returns the offer.
func (o *Offer) WithHelp(help string, explain func(entry.Explained)) *Offer {
	o.help, o.gained = help, func() { explain(o) }
	return o
}

// Explanation says what a press does.
func (o *Offer) Explanation() (title, text string) { return o.act.Text(), o.help }

// SetGain changes what would be gained.
func (o *Offer) SetGain(text string) { o.gain.SetText(text) }

// SetAct changes what is said of a press.
func (o *Offer) SetAct(text string) { o.act.SetText(text) }

// HeightFor returns the height at a width.
func (o *Offer) HeightFor(width float32) float32 {
	width -= 4 * o.padding()
	return o.gain.HeightFor(width) + o.act.HeightFor(width) + 2*o.padding()
}

// CreateRenderer is part of fyne.Widget.
func (o *Offer) CreateRenderer() fyne.WidgetRenderer {
	o.colour()
	return &plateRenderer{&o.plate, o.layout, o.HeightFor, []fyne.CanvasObject{o.gain, o.act}}
}

func (o *Offer) layout(size fyne.Size) {
	padding := o.padding()
	top, width := padding, size.Width-4*padding
	for _, text := range []*entry.Text{o.gain, o.act} {
		height := text.HeightFor(width)
		text.Move(fyne.NewPos(2*padding, top))
		text.Resize(fyne.NewSize(width, height))
		top += height
	}
}
