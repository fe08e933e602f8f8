package steady

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

// The wheel moves the page over an entry, a button and a label alike, and they stay what
// they are to clicks and keys.
func TestWheelOverEntries(t *testing.T) {
	test.NewTempApp(t)
	entry, pressed := NewEntry(), 0
	entry.SetText("a text that is far longer than the entry is wide, and would like to move sideways")
	button := widget.NewButton("Press", func() { pressed++ })
	page := container.NewVBox(entry, button, widget.NewLabel("words"))
	for range 20 {
		page.Add(widget.NewLabel("more"))
	}
	scroll := NewScroll(page)
	window := test.NewTempWindow(t, scroll)
	window.SetPadded(false)
	window.Resize(fyne.NewSize(200, 160))
	for i, object := range page.Objects[:3] {
		scroll.ScrollToTop()
		middle := object.Position().AddXY(object.Size().Width/2, object.Size().Height/2)
		test.Scroll(window.Canvas(), middle, 0, -30)
		if scroll.Offset.Y != 30 {
			t.Errorf("over object %d the wheel moves the page by %g, want 30", i, scroll.Offset.Y)
		}
		test.Scroll(window.Canvas(), middle, 0, 1000)
		if scroll.Offset.Y != 0 {
			t.Errorf("over object %d the wheel leaves the page at %g", i, scroll.Offset.Y)
		}
	}
	test.TapCanvas(window.Canvas(), button.Position().AddXY(20, 20))
	if pressed != 1 {
		t.Errorf("a click presses the button %d times", pressed)
	}
}

// What lies over the page takes no click, no drag and no key.
func TestWheelTakesNothingElse(t *testing.T) {
	var over any = newWheel(nil)
	for name, takes := range map[string]bool{
		"clicks": is[fyne.Tappable](over), "second clicks": is[fyne.SecondaryTappable](over), "double clicks": is[fyne.DoubleTappable](over),
		"drags": is[fyne.Draggable](over), "keys": is[fyne.Focusable](over), "buttons": is[desktop.Mouseable](over),
		"the pointer": is[desktop.Hoverable](over), "its shape": is[desktop.Cursorable](over),
	} {
		if takes {
			t.Errorf("it takes %s", name)
		}
	}
}

func is[T any](object any) bool {
	_, is := object.(T)
	return is
}

// A page that has room stays where it is, as does what is beside the scroll.
func TestWheelWithRoomToSpare(t *testing.T) {
	test.NewTempApp(t)
	scroll := NewScroll(NewEntry())
	window := test.NewTempWindow(t, scroll)
	window.Resize(fyne.NewSize(200, 160))
	test.Scroll(window.Canvas(), fyne.NewPos(40, 20), 0, -30)
	if scroll.Offset.Y != 0 {
		t.Errorf("a page that fits moves by %g", scroll.Offset.Y)
	}
}
