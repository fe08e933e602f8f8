package keyrelay

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
)

// Page takes the keys for which what stands on it has no use.
type Page interface {
	TypedKey(*fyne.KeyEvent)
	TypedRune(rune)
}

// PageButton is a button that leaves to its page all keys but those that press it. It is
// embedded in the button of a page.
type PageButton struct {
	appearance.Button

	page Page
}

// Place puts the button, which is self or embedded in it, on a page.
func (b *PageButton) Place(self fyne.Widget, page Page, text string, icon fyne.Resource, tapped func()) {
	b.page = page
	b.Text, b.Icon, b.OnTapped = text, icon, tapped
	b.ExtendBaseWidget(self)
}

// TypedRune is part of fyne.Focusable.
func (b *PageButton) TypedRune(letter rune) { b.page.TypedRune(letter) }

// TypedKey is part of fyne.Focusable.
func (b *PageButton) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeySpace, fyne.KeyReturn, fyne.KeyEnter:
		b.Tapped(nil)
	default:
		b.page.TypedKey(key)
	}
}

// Say changes what stands on the button and how much it stands out.
func (b *PageButton) Say(text string, icon fyne.Resource, importance widget.Importance) {
	if b.Text != text || b.Icon != icon || b.Importance != importance {
		b.Text, b.Icon, b.Importance = text, icon, importance
		b.Refresh()
	}
}
