package keyrelay

import "fyne.io/fyne/v2"

// ToWindow hands a function key on to the window that an object is in: no part of a
// window has a use for one. It tells whether the key is one. The toolkit tells keys to
// what has the focus alone, so whatever takes keys has to ask here.
func ToWindow(from fyne.CanvasObject, key *fyne.KeyEvent) bool {
	if key.Name != fyne.KeyF11 {
		return false
	}
	HandOn(from, key)
	return true
}

// HandOn tells a key to the window that an object is in, for which the object itself has
// no use now.
func HandOn(from fyne.CanvasObject, key *fyne.KeyEvent) {
	if on := fyne.CurrentApp().Driver().CanvasForObject(from); on != nil && on.OnTypedKey() != nil {
		on.OnTypedKey()(key)
	}
}
