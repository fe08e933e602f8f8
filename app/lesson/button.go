package lesson

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/keyrelay"
)

// button is a button that leaves to the view all keys but those that press it.
type button struct{ keyrelay.PageButton }

func newButton(view *View, text string, icon fyne.Resource, tapped func()) *button {
	b := &button{}
	b.Place(b, view, text, icon, tapped)
	return b
}

// quiet makes the button one that does not shout.
func (b *button) quiet() *button {
	b.Importance = widget.LowImportance
	return b
}
