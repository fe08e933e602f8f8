package entry

import (
	"fmt"
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"

	"gussetwright/app/settings"
	"gussetwright/geometry"
	"gussetwright/geometry/check"
)

// Number is the entry of a quantity: label and limits, a line to type in, the unit
// and a slider, and below them what is wrong.
type Number struct {
	Column

	quantity Quantity
	set      *settings.Settings
	label    *Text
	limits   *Text
	row      *row
	line     *typing
	unitText *Text
	slide    *slide
	message  *Message
	onFocus  func(Explained)

	value     float64       // as shown
	unit      geometry.Unit // in which it is shown
	shown     string        // the text that stands for value
	fault     string        // about what was typed
	complaint string        // about the value together with others
	updating  bool          // the text changes without being typed
	stepping  bool          // a row of steps is under way
}

// NewNumber returns the entry of a quantity. It shows nothing until it is told to.
func NewNumber(quantity Quantity, set *settings.Settings) *Number {
	n := &Number{quantity: quantity, set: set, value: math.NaN(), message: NewMessage()}
	n.label = NewText(quantity.name(), Plain)
	n.limits = NewText("", Muted)
	n.unitText = NewText("", Small)
	n.line = newTyping(n)
	n.line.OnChanged = n.changed
	n.slide = newSlide(n.slid, n.dropped)
	n.row = newRow(n.line, n.unitText, n.slide)
	n.fill(0.5, newHead(n.label, n.limits), n.row, n.message)
	n.ExtendBaseWidget(n)
	return n
}

func (q *Quantity) name() string {
	if q.Symbol == "" {
		return q.Label
	}
	return q.Label + " " + q.Symbol
}

// OnFocus sets what is called when the entry gets the focus.
func (n *Number) OnFocus(call func(Explained)) { n.onFocus = call }

// Put puts a value into the entry, in the unit of the settings. What is being
// typed stays as long as neither of them changes.
func (n *Number) Put(value float64) {
	unit := n.set.Unit()
	if value == n.value && unit == n.unit {
		return
	}
	if unit != n.unit {
		n.unit = unit
		n.unitText.SetText(n.quantity.unitIn(unit))
		n.tellLimits()
	}
	n.value = value
	n.display()
}

// SetLimits changes the limits.
func (n *Number) SetLimits(least, most float64) {
	if least != n.quantity.Least || most != n.quantity.Most {
		n.quantity.Least, n.quantity.Most = least, most
		n.tellLimits()
	}
}

// SetReach changes what the slider covers of the limits.
func (n *Number) SetReach(low, high float64) {
	if low != n.quantity.Low || high != n.quantity.High {
		n.quantity.Low, n.quantity.High = low, high
		n.tellLimits()
	}
}

// tellLimits shows the limits beside the label and the ends of the slider below it.
func (n *Number) tellLimits() {
	if n.unit == "" {
		return // nothing is shown yet
	}
	n.limits.SetText(n.quantity.rangeText(n.unit))
	low, high := n.quantity.reach(n.unit)
	lowText, highText := n.quantity.reachTexts(n.unit)
	n.slide.cover(low, high, lowText, highText)
}

// display writes the value anew, in place of what was typed: a bare number that
// could not be taken over means something else once the unit has changed.
func (n *Number) display() {
	n.shown = n.quantity.format(n.value, n.unit)
	n.updating = true
	if n.line.Text != n.shown {
		n.line.SetText(n.shown)
	}
	n.updating = false
	n.complainAbout("")
	n.slide.set(n.value)
}

// Complain shows what is wrong with the value together with others, or nothing.
func (n *Number) Complain(text string) {
	if text != n.complaint {
		n.complaint = text
		n.say()
	}
}

// Text returns what stands in the line, Message what stands below it.
func (n *Number) Text() string { return n.line.Text }

// Message returns what the entry complains about, or nothing.
func (n *Number) Message() string { return n.message.Text() }

// Focusable returns what takes the focus.
func (n *Number) Focusable() fyne.Focusable { return n.line }

func (n *Number) complainAbout(text string) {
	if text != n.fault {
		n.fault = text
		n.say()
	}
}

func (n *Number) say() {
	text := n.fault
	if text == "" {
		text = n.complaint
	}
	n.message.Say(check.Error, text, nil)
	n.row.frame(text != "")
}

func (n *Number) typed() bool { return n.line.Text != n.shown }

// changed takes a complaint away once the text that caused it is mended.
func (n *Number) changed(text string) {
	if n.updating || n.fault == "" {
		return
	}
	if _, complaint := n.quantity.read(text, n.unit); complaint == "" {
		n.complainAbout("")
	}
}

func (n *Number) commit() bool {
	if !n.typed() {
		n.complainAbout("")
		return true
	}
	value, complaint := n.quantity.read(n.line.Text, n.unit)
	n.complainAbout(complaint)
	if complaint != "" {
		return false
	}
	n.quantity.Set(value)
	n.value = value
	n.display()
	return true
}

func (n *Number) restore() { n.display() }

// Forget drops what was typed and not taken over.
func (n *Number) Forget() {
	if n.typed() {
		n.restore()
	}
}

// nudge steps from what was typed, if that can be read, or else from the value.
func (n *Number) nudge(by int, far stride) {
	from := n.value
	if n.typed() {
		value, complaint := n.quantity.read(n.line.Text, n.unit)
		n.complainAbout(complaint)
		if complaint != "" {
			return
		}
		from = value
	}
	to := from + float64(by)*n.quantity.step(far, n.unit)
	to = min(max(math.Round(to*1e6)/1e6, n.quantity.Least), n.quantity.Most)
	n.stepping = true
	n.quantity.Drag(to)
	n.value = to
	n.display()
}

func (n *Number) settle() {
	if n.stepping {
		n.stepping = false
		n.quantity.Drop()
	}
}

func (n *Number) focused() {
	if n.onFocus != nil {
		n.onFocus(n)
	}
}

func (n *Number) slid(value float64) {
	to := n.quantity.slideTo(value, float64(n.slide.room()), n.unit)
	if to == n.value {
		return
	}
	n.quantity.Drag(to)
	n.value = to
	n.display()
}

// dropped ends a drag. The line gets the focus, so that the arrow keys go on from there.
func (n *Number) dropped() {
	n.quantity.Drop()
	if canvas := fyne.CurrentApp().Driver().CanvasForObject(n.line); canvas != nil {
		canvas.Focus(n.line)
	}
}

// Explanation says what the entry is and why it has its limits.
func (n *Number) Explanation() (title, text string) {
	q := &n.quantity
	least, most := q.limits(n.unit)
	text = q.Help
	if q.WhyLeast != "" {
		text += " " + fmt.Sprintf(lang.L("Not less than %s: %s."), geometry.WithUnit(least, q.unitIn(n.unit)), q.WhyLeast)
	}
	if q.WhyMost != "" {
		text += " " + fmt.Sprintf(lang.L("Not more than %s: %s."), geometry.WithUnit(most, q.unitIn(n.unit)), q.WhyMost)
	}
	return q.name(), text
}

// Explained is an entry that says what it is.
type Explained interface {
	fyne.CanvasObject
	Explanation() (title, text string)
}

// newFrame returns the red edge of an entry that is wrong.
func newFrame() *canvas.Rectangle {
	frame := canvas.NewRectangle(color.Transparent)
	frame.Hide()
	return frame
}

func colourFrame(frame *canvas.Rectangle, th fyne.Theme) {
	frame.StrokeColor = th.Color(theme.ColorNameError, fyne.CurrentApp().Settings().ThemeVariant())
	frame.StrokeWidth = 2
	frame.CornerRadius = th.Size(theme.SizeNameInputRadius)
}
