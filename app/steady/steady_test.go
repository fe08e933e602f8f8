package steady

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// Holding the cursor changes nothing that is typed or selected.
func TestHoldingChangesNothing(t *testing.T) {
	test.NewTempApp(t)
	entry := NewEntry()
	changes := 0
	entry.OnChanged = func(string) { changes++ }
	window := test.NewTempWindow(t, entry)
	window.Canvas().Focus(entry)
	test.Type(entry, "240 mm")
	entry.TypedShortcut(&fyne.ShortcutSelectAll{})
	before, column := changes, entry.CursorColumn
	for range 3 {
		entry.holdCursor()
	}
	if entry.Text != "240 mm" || entry.SelectedText() != "240 mm" || changes != before || entry.CursorColumn != column {
		t.Errorf("text %q, selected %q, %d changes, cursor at %d", entry.Text, entry.SelectedText(), changes-before, entry.CursorColumn)
	}
	test.Type(entry, "2")
	if entry.Text != "2" {
		t.Errorf("typing over the selection gives %q, want 2", entry.Text)
	}
}

// The cursor is held from the focus on, and no longer.
func TestCursorIsHeldWhileFocused(t *testing.T) {
	test.NewTempApp(t)
	entry := NewEntry()
	window := test.NewTempWindow(t, entry)
	if entry.hold != nil {
		t.Fatal("an entry without focus holds its cursor")
	}
	window.Canvas().Focus(entry)
	if entry.hold == nil || entry.hold.RepeatCount != fyne.AnimationRepeatForever {
		t.Fatal("an entry with focus lets its cursor blink")
	}
	window.Canvas().Unfocus()
	entry.FocusLost() // once more does no harm
}
