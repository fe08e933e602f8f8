package keyrelay

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// A button hands function keys to the window, others to its page, and the rest presses it.
func TestKeysGoWhereTheyBelong(t *testing.T) {
	test.NewTempApp(t)
	var pressed, paged, heard []fyne.KeyName
	page := func(key *fyne.KeyEvent) bool {
		paged = append(paged, key.Name)
		return key.Name == fyne.KeyEscape
	}
	button := New("", func() { pressed = append(pressed, "") }, page)
	window := test.NewTempWindow(t, button)
	press := func(name fyne.KeyName) { button.TypedKey(&fyne.KeyEvent{Name: name}) }
	press(fyne.KeyF11) // nobody listens yet
	window.Canvas().SetOnTypedKey(func(key *fyne.KeyEvent) { heard = append(heard, key.Name) })
	press(fyne.KeyF11)
	press(fyne.KeyEscape)
	press(fyne.KeySpace)
	if len(heard) != 1 || heard[0] != fyne.KeyF11 || len(paged) != 2 || len(pressed) != 1 {
		t.Errorf("the window heard %q, the page %q, pressed %d times", heard, paged, len(pressed))
	}
}
