package lesson

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/app/keyrelay"
)

// button is a button that leaves to the view all keys but those that press it.
type button struct {
	keyrelay.PageButton
	ring appearance.Ring
}

func newButton(view *View, text string, icon fyne.Resource, tapped func()) *button {
	b := &button{}
	b.Place(b, view, text, icon, tapped)
	return b
}

// CreateRenderer is part of fyne.Widget.
func (b *button) CreateRenderer() fyne.WidgetRenderer {
	return b.ring.Round(&b.Button, b.PageButton.CreateRenderer())
}

// FocusGained is part of fyne.Focusable.
func (b *button) FocusGained() {
	b.ring.Show(true)
	b.PageButton.FocusGained()
}

// FocusLost is part of fyne.Focusable.
func (b *button) FocusLost() {
	b.ring.Show(false)
	b.PageButton.FocusLost()
}

// quiet makes the button one that does not shout.
func (b *button) quiet() *button {
	b.Importance = widget.LowImportance
	return b
}

// openList opens a list of choices below a button.
func openList(below *button, items ...*fyne.MenuItem) {
	driver := fyne.CurrentApp().Driver()
	on := driver.CanvasForObject(below)
	if on == nil {
		return
	}
	list := widget.NewPopUpMenu(fyne.NewMenu("", items...), on)
	list.ShowAtPosition(driver.AbsolutePositionForObject(below).AddXY(0, below.Size().Height))
	on.Focus(list)
}
