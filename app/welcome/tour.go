package welcome

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/app/keyrelay"
)

// Tour is a layer over the window that points to its parts, one after the other,
// with a ring round the part and a card beside it. The window below can be used all
// the while. Put it on top of a stack that is the content of the window.
type Tour struct {
	widget.BaseWidget

	stops []Stop
	at    int
	left  func()

	ring     *canvas.Rectangle
	card     *tourCard
	title    *widget.Label
	text     *widget.Label
	count    *widget.Label
	previous *tourButton
	next     *tourButton
	leave    *tourButton
}

// NewTour returns a hidden tour. left is called when it ends or is left.
func NewTour(stops []Stop, left func()) *Tour {
	t := &Tour{stops: stops, left: left, ring: canvas.NewRectangle(nil)}
	t.title, t.text, t.count = widget.NewLabel(""), widget.NewLabel(""), widget.NewLabel("")
	t.title.TextStyle.Bold = true
	t.title.SizeName = theme.SizeNameSubHeadingText
	t.title.Wrapping, t.text.Wrapping = fyne.TextWrapWord, fyne.TextWrapWord
	t.count.Importance = widget.LowImportance
	t.previous = newTourButton(lang.L("Previous"), t.Previous, t.TypedKey)
	t.next = newTourButton(lang.L("Next"), t.Next, t.TypedKey)
	t.next.Importance = widget.HighImportance
	t.leave = newTourButton(lang.L("Leave the tour"), t.Leave, t.TypedKey)
	t.leave.Importance = widget.LowImportance
	buttons := container.NewHBox(t.leave, layout.NewSpacer(), t.count, t.previous, t.next)
	t.card = &tourCard{card{content: container.NewBorder(t.title, buttons, nil, nil, t.text), border: theme.ColorNamePrimary}}
	t.card.ExtendBaseWidget(t.card)
	t.ExtendBaseWidget(t)
	t.Hide()
	return t
}

// CreateRenderer is part of fyne.Widget.
func (t *Tour) CreateRenderer() fyne.WidgetRenderer {
	r := &tourRenderer{tour: t}
	r.colour()
	return r
}

// Start shows the first stop.
func (t *Tour) Start() {
	if len(t.stops) == 0 {
		return
	}
	t.Show()
	t.show(0)
}

// Leave ends the tour.
func (t *Tour) Leave() {
	if !t.Visible() {
		return
	}
	t.Hide()
	if on := t.canvas(); on != nil {
		if button, relays := on.Focused().(*tourButton); relays && slices.Contains([]*tourButton{t.previous, t.next, t.leave}, button) {
			on.Unfocus()
		}
	}
	t.left()
}

// Next goes on to the next stop; after the last the tour ends.
func (t *Tour) Next() {
	if t.at+1 == len(t.stops) {
		t.Leave()
		return
	}
	t.show(t.at + 1)
}

// Previous goes back to the stop before.
func (t *Tour) Previous() { t.show(max(t.at-1, 0)) }

// TypedKey takes the keys of the tour: arrows go on and back, Escape leaves. It
// tells whether the key was one of them. The window calls it for keys that no
// entry takes.
func (t *Tour) TypedKey(event *fyne.KeyEvent) bool {
	if !t.Visible() {
		return false
	}
	switch event.Name {
	case fyne.KeyEscape:
		t.Leave()
	case fyne.KeyRight:
		t.Next()
	case fyne.KeyLeft:
		t.Previous()
	default:
		return false
	}
	return true
}

// show shows a stop and holds the focus, so that the keys work at once.
func (t *Tour) show(stop int) {
	t.at = stop
	t.title.SetText(t.stops[stop].Title)
	t.text.SetText(t.stops[stop].Text)
	t.count.SetText(fmt.Sprintf(lang.L("%d of %d"), stop+1, len(t.stops)))
	t.next.SetText(lang.L("Next"))
	if stop+1 == len(t.stops) {
		t.next.SetText(lang.L("Done"))
	}
	t.previous.Enable()
	if stop == 0 {
		t.previous.Disable()
	}
	t.Refresh()
	if on := t.canvas(); on != nil {
		on.Focus(t.next)
	}
}

// canvas returns where the tour is shown. The driver knows what it has painted only,
// which the tour was not when it starts, but its parts were.
func (t *Tour) canvas() fyne.Canvas {
	driver := fyne.CurrentApp().Driver()
	for _, stop := range t.stops {
		if part := stop.Target(); part != nil {
			if on := driver.CanvasForObject(part); on != nil {
				return on
			}
		}
	}
	return driver.CanvasForObject(t)
}

// target returns where the part of this stop lies in the content of the window, and
// so on the tour's own layer.
func (t *Tour) target() (at fyne.Position, size fyne.Size, found bool) {
	part := t.stops[t.at].Target()
	if part == nil || !part.Visible() || part.Size().IsZero() {
		return at, size, false
	}
	driver := fyne.CurrentApp().Driver()
	at = driver.AbsolutePositionForObject(part)
	if on := t.canvas(); on != nil {
		at = at.Subtract(driver.AbsolutePositionForObject(on.Content()))
	}
	return at, part.Size(), true
}

// tourButton is a button that hands keys on to the tour.
type tourButton struct {
	widget.Button

	ring  appearance.Ring
	relay func(*fyne.KeyEvent) bool
}

func newTourButton(text string, tapped func(), relay func(*fyne.KeyEvent) bool) *tourButton {
	b := &tourButton{relay: relay}
	b.Text, b.OnTapped = text, tapped
	b.ExtendBaseWidget(b)
	return b
}

// TypedKey is part of fyne.Focusable.
func (b *tourButton) TypedKey(event *fyne.KeyEvent) {
	if !keyrelay.ToWindow(b, event) && !b.relay(event) {
		b.Button.TypedKey(event)
	}
}

// CreateRenderer is part of fyne.Widget.
func (b *tourButton) CreateRenderer() fyne.WidgetRenderer {
	return b.ring.Round(&b.Button, b.Button.CreateRenderer())
}

// FocusGained is part of fyne.Focusable.
func (b *tourButton) FocusGained() {
	b.ring.Show(true)
	b.Button.FocusGained()
}

// FocusLost is part of fyne.Focusable.
func (b *tourButton) FocusLost() {
	b.ring.Show(false)
	b.Button.FocusLost()
}

// tourCard is a card that keeps clicks from what lies below it.
type tourCard struct{ card }

// Tapped is part of fyne.Tappable.
func (c *tourCard) Tapped(*fyne.PointEvent) {}
