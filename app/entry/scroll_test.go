package entry_test

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/settings"
	"gussetwright/geometry/bag"
)

// The wheel moves the page over every part of an entry, the line to type in with them.
func TestWheelOverAnEntry(t *testing.T) {
	set := settings.New(test.NewTempApp(t).Preferences())
	doc := document.New()
	field, _ := bag.FieldAt("bag.width_mm")
	column := entry.NewColumn(2, entry.NewName("Name", "", 120, func(string) {}))
	for range 12 {
		number := entry.NewNumber(entry.OfField(doc, field), set)
		number.Put(240)
		column.Add(number)
	}
	window := test.NewTempWindow(t, entry.NewScroll(column))
	window.SetPadded(false)
	window.Resize(fyne.NewSize(240, 200))
	top := func() float32 { return fyne.CurrentApp().Driver().AbsolutePositionForObject(column).Y }
	for y := float32(5); y < 195; y += 6 {
		for x := float32(5); x < 235; x += 23 {
			before := top()
			test.Scroll(window.Canvas(), fyne.NewPos(x, y), 0, -20)
			if got := before - top(); got != 20 {
				t.Fatalf("at %g,%g the wheel moves the page by %g, want 20", x, y, got)
			}
			test.Scroll(window.Canvas(), fyne.NewPos(x, y), 0, 20)
		}
	}
}
