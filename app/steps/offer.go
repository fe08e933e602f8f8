package steps

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
	"gussetwright/app/keyrelay"
)

// offer is a button of two lines, both of which may wrap: what would be gained, and what
// a press does.
type offer struct {
	widget.BaseWidget

	gain, act     *entry.Text
	press         func()
	over, focused bool
	ground, ring  *canvas.Rectangle
}

var actStyle = entry.Style{Colour: theme.ColorNamePrimary, Size: theme.SizeNameCaptionText, Bold: true}

func newOffer(act string) *offer {
	o := &offer{
		gain: entry.NewText("", entry.Small), act: entry.NewText(act, actStyle),
		ground: canvas.NewRectangle(color.Transparent), ring: canvas.NewRectangle(color.Transparent),
	}
	o.ExtendBaseWidget(o)
	return o
}

// say offers something else.
func (o *offer) say(gain string, press func()) {
	o.press = press
	o.gain.SetText(gain)
}

// Tapped is part of fyne.Tappable.
func (o *offer) Tapped(*fyne.PointEvent) {
	if o.press != nil {
		o.press()
	}
}

// Cursor tells that the offer can be clicked.
func (o *offer) Cursor() desktop.Cursor { return desktop.PointerCursor }

// MouseIn is part of desktop.Hoverable.
func (o *offer) MouseIn(*desktop.MouseEvent) { o.light(true, o.focused) }

// MouseMoved is part of desktop.Hoverable.
func (o *offer) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is part of desktop.Hoverable.
func (o *offer) MouseOut() { o.light(false, o.focused) }

// FocusGained is part of fyne.Focusable.
func (o *offer) FocusGained() { o.light(o.over, true) }

// FocusLost is part of fyne.Focusable.
func (o *offer) FocusLost() { o.light(o.over, false) }

// TypedRune is part of fyne.Focusable.
func (o *offer) TypedRune(rune) {}

// TypedKey presses.
func (o *offer) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		o.Tapped(nil)
		return
	}
	keyrelay.ToWindow(o, key)
}

func (o *offer) light(over, focused bool) {
	o.over, o.focused = over, focused
	o.colour()
	o.ground.Refresh()
	o.ring.Refresh()
}

func (o *offer) padding() float32 { return o.Theme().Size(theme.SizeNamePadding) }

// HeightFor returns the height at a width.
func (o *offer) HeightFor(width float32) float32 {
	width -= 4 * o.padding()
	return o.gain.HeightFor(width) + o.act.HeightFor(width) + 2*o.padding()
}

func (o *offer) colour() {
	th, variant := o.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	o.ground.FillColor = th.Color(theme.ColorNameButton, variant)
	o.ground.CornerRadius = th.Size(theme.SizeNameInputRadius)
	o.ring.FillColor = color.Transparent
	if o.over {
		o.ring.FillColor = th.Color(theme.ColorNameHover, variant)
	}
	o.ring.CornerRadius, o.ring.StrokeWidth, o.ring.StrokeColor = o.ground.CornerRadius, 0, th.Color(theme.ColorNamePrimary, variant)
	if o.focused {
		o.ring.StrokeWidth = 2
	}
}

// CreateRenderer is part of fyne.Widget.
func (o *offer) CreateRenderer() fyne.WidgetRenderer {
	o.colour()
	return &offerRenderer{o}
}

type offerRenderer struct{ o *offer }

func (r *offerRenderer) Layout(size fyne.Size) {
	o, padding := r.o, r.o.padding()
	o.ground.Resize(size)
	o.ring.Resize(size)
	top, width := padding, size.Width-4*padding
	for _, text := range []*entry.Text{o.gain, o.act} {
		height := text.HeightFor(width)
		text.Move(fyne.NewPos(2*padding, top))
		text.Resize(fyne.NewSize(width, height))
		top += height
	}
}

func (r *offerRenderer) MinSize() fyne.Size {
	return fyne.NewSize(20*r.o.padding(), r.o.HeightFor(r.o.Size().Width))
}

func (r *offerRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.o.ground, r.o.gain, r.o.act, r.o.ring}
}
func (r *offerRenderer) Destroy() {}

func (r *offerRenderer) Refresh() {
	r.o.colour()
	for _, object := range r.Objects() {
		object.Refresh()
	}
	r.Layout(r.o.Size())
	canvas.Refresh(r.o)
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
