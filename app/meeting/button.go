package meeting

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

// say changes what stands on the button and how much it stands out.
func (b *button) say(text string, importance widget.Importance) { b.Say(text, b.Icon, importance) }

// choose says whether the button is the chosen one of several.
func (b *button) choose(chosen bool) {
	importance := widget.MediumImportance
	if chosen {
		importance = widget.HighImportance
	}
	b.say(b.Text, importance)
}

// showIf shows the button, or hides it.
func (b *button) showIf(wanted bool) { show(b, wanted) }

// enableIf lets the button be pressed, or not.
func (b *button) enableIf(possible bool) {
	switch {
	case possible && b.Disabled():
		b.Enable()
	case !possible && !b.Disabled():
		b.Disable()
	}
}
