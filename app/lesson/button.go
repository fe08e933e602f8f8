package lesson

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// button is a button that leaves to the view all keys but those that press it.
type button struct {
	widget.Button
	view *View
}

func newButton(view *View, text string, icon fyne.Resource, tapped func()) *button {
	b := &button{view: view}
	b.Text, b.Icon, b.OnTapped = text, icon, tapped
	b.ExtendBaseWidget(b)
	return b
}

// quiet makes the button one that does not shout.
func (b *button) quiet() *button {
	b.Importance = widget.LowImportance
	return b
}

// TypedRune is part of fyne.Focusable.
func (b *button) TypedRune(letter rune) { b.view.TypedRune(letter) }

// TypedKey is part of fyne.Focusable.
func (b *button) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeySpace, fyne.KeyReturn, fyne.KeyEnter:
		b.Tapped(nil)
	default:
		b.view.TypedKey(key)
	}
}

// say changes what the button shows.
func (b *button) say(text string, icon fyne.Resource, importance widget.Importance) {
	if b.Text != text || b.Icon != icon || b.Importance != importance {
		b.Text, b.Icon, b.Importance = text, icon, importance
		b.Refresh()
	}
}
