// Package notice is the bar at the head of the window that tells of something and
// asks what to do about it, without getting in the way of the work.
package notice

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
)

// Kind is what a notice is about.
type Kind int

// The kinds of notice.
const (
	Tell  Kind = iota // something happened
	Ask               // an answer is needed
	Alarm             // something failed
)

// Answer is a button of a notice.
type Answer struct {
	Label string
	Do    func() // may be nil for an answer that only closes the notice
	Main  bool   // the answer that Enter gives
}

// Bar shows one notice at a time; a new one takes the place of the last. It belongs
// to the goroutine of the window.
type Bar struct {
	widget.BaseWidget

	sign    *widget.Icon
	text    *widget.Label
	answers *fyne.Container
	ground  *canvas.Rectangle
	escape  func()
	moved   func()   // the bar takes room, or gives it back
	kind    Kind     // of the notice that is shown
	waiting []func() // notices that wait for a question to be answered
}

// New returns a bar that shows nothing.
func New() *Bar {
	b := &Bar{
		sign: widget.NewIcon(nil), text: widget.NewLabel(""), answers: container.NewHBox(),
		ground: canvas.NewRectangle(color.Transparent), moved: func() {},
	}
	b.text.Wrapping = fyne.TextWrapWord
	b.ground.StrokeWidth = 2
	b.ExtendBaseWidget(b)
	b.Hide()
	return b
}

// OnMove sets what is called when the bar takes room or gives it back: what stands below
// it has to be laid out anew.
func (b *Bar) OnMove(call func()) { b.moved = call }

func (b *Bar) hide() {
	b.Hide()
	b.moved()
}

// CreateRenderer is part of fyne.Widget.
func (b *Bar) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewStack(b.ground, container.NewPadded(
		container.NewBorder(nil, nil, container.NewCenter(b.sign), container.NewCenter(b.answers), b.text))))
}

// SayAfter is Say for what nobody waits for: while a question is open it is shown only
// once that was answered.
func (b *Bar) SayAfter(kind Kind, text string, answers ...Answer) {
	if b.Visible() && b.kind == Ask {
		b.waiting = append(b.waiting, func() { b.Say(kind, text, answers...) })
		return
	}
	b.Say(kind, text, answers...)
}

// next shows what waited, once nothing else is shown.
func (b *Bar) next() {
	if !b.Visible() && len(b.waiting) > 0 {
		say := b.waiting[0]
		b.waiting = b.waiting[1:]
		say()
	}
}

// Say shows a notice with its answers. The last answer is also that of the escape
// key.
func (b *Bar) Say(kind Kind, text string, answers ...Answer) {
	b.kind = kind
	b.sign.SetResource(signOf(kind))
	b.text.SetText(text)
	b.answers.RemoveAll()
	b.escape = func() {
		b.hide()
		b.next()
	}
	var focus fyne.Focusable
	for _, answer := range answers {
		give := func() {
			b.hide()
			if answer.Do != nil {
				answer.Do()
			}
			b.next()
		}
		button := appearance.NewButton(answer.Label, give)
		if answer.Main {
			button.Importance = widget.HighImportance
			focus = button
		}
		b.answers.Add(button)
		b.escape = give
	}
	b.colour(kind)
	b.Show()
	b.Refresh()
	b.moved()
	if canvas := fyne.CurrentApp().Driver().CanvasForObject(b); canvas != nil && focus != nil {
		canvas.Focus(focus)
	}
}

// Escape gives the last answer, as the escape key does. It tells whether there was
// a notice.
func (b *Bar) Escape() bool {
	if !b.Visible() || b.escape == nil {
		return false
	}
	b.escape()
	return true
}

// Text returns what the bar says, or "" when it shows nothing.
func (b *Bar) Text() string {
	if !b.Visible() {
		return ""
	}
	return b.text.Text
}

// Answers returns the buttons that are shown, in their order.
func (b *Bar) Answers() []*widget.Button {
	var buttons []*widget.Button
	if b.Visible() {
		for _, object := range b.answers.Objects {
			buttons = append(buttons, &object.(*appearance.Button).Button)
		}
	}
	return buttons
}

func signOf(kind Kind) fyne.Resource {
	switch kind {
	case Ask:
		return theme.QuestionIcon()
	case Alarm:
		return theme.NewErrorThemedResource(theme.ErrorIcon())
	}
	return theme.InfoIcon()
}

func (b *Bar) colour(kind Kind) {
	name := theme.ColorNamePrimary
	if kind == Alarm {
		name = theme.ColorNameError
	}
	variant := fyne.CurrentApp().Settings().ThemeVariant()
	b.ground.FillColor = b.Theme().Color(theme.ColorNameOverlayBackground, variant)
	b.ground.StrokeColor = b.Theme().Color(name, variant)
}
