// Package keyrelay has a button that lets the page it stands on have its keys first.
// While such a button holds the focus, arrows and Escape still work on the page.
package keyrelay

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// Button is a button that hands keys on.
type Button struct {
	widget.Button

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
	if !b.relay(event) {
		b.Button.TypedKey(event)
	}
}
