// Package keyrelay hands keys on from what has the focus: to the page that a button
// stands on, so that arrows and Escape still work there, and to the window.
package keyrelay

import (
	"fyne.io/fyne/v2"

	"gussetwright/app/appearance"
)

// Button is a button that hands keys on.
type Button struct {
	appearance.Button

	relay func(*fyne.KeyEvent) bool
}

// New returns a button. relay is told every key and says whether it took it.
func New(text string, tapped func(), relay func(*fyne.KeyEvent) bool) *Button {
	b := &Button{relay: relay}
	b.Text, b.OnTapped = text, tapped
	b.ExtendBaseWidget(b)
	return b
}

// TypedKey is part of fyne.Focusable.
func (b *Button) TypedKey(event *fyne.KeyEvent) {
	if !ToWindow(b, event) && !b.relay(event) {
		b.Button.TypedKey(event)
	}
}
