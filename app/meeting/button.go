package meeting

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

// say changes what stands on the button and how much it stands out.
func (b *button) say(text string, importance widget.Importance) {
	if b.Text != text || b.Importance != importance {
		b.Text, b.Importance = text, importance
		b.Refresh()
	}
}

// choose says whether the button is the chosen one of several.
func (b *button) choose(chosen bool) {
	importance := widget.MediumImportance
	if chosen {
		importance = widget.HighImportance
	}
	b.say(b.Text, importance)
}

// showIf shows the button, or hides it.
func (b *button) showIf(wanted bool) {
	switch {
	case wanted && !b.Visible():
		b.Show()
	case !wanted && b.Visible():
		b.Hide()
	}
}
