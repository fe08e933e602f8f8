package shortcuts

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

type press struct {
	key      fyne.KeyName
	modifier fyne.KeyModifier
}

func TestNoKeyDoesTwoThings(t *testing.T) {
	ids, keys := map[ID]bool{}, map[press]string{}
	for _, group := range Groups() {
		if group.Shortcuts[0].ID == "" {
			keys = map[press]string{} // these keys only work inside one part of the window
		}
		for _, s := range group.Shortcuts {
			if s.Label == "" || s.Key == "" {
				t.Errorf("%s: a shortcut without key or label: %+v", group.Title, s)
			}
			if s.ID != "" {
				if ids[s.ID] {
					t.Errorf("%s stands twice in the table", s.ID)
				}
				ids[s.ID] = true
				if s.Modifier == 0 || s.Modifier == fyne.KeyModifierShift {
					t.Errorf("%s is a bare key and would be typed into an entry", s.ID)
				}
			}
			for _, key := range []fyne.KeyName{s.Key, s.Also} {
				if key == "" {
					continue
				}
				if s.ID == "" && key == s.Also {
					continue
				}
				pressed := []press{{key, s.Modifier}}
				if s.Shifted {
					pressed = append(pressed, press{key, s.Modifier | shift})
				}
				for _, p := range pressed {
					if other := keys[p]; other != "" {
						t.Errorf("%s and %s are on the same keys", other, s.Label)
					}
					keys[p] = s.Label
				}
			}
		}
	}
	for step := 1; step <= Steps; step++ {
		if !ids[Step(step)] {
			t.Errorf("step %d has no key", step)
		}
	}
}

// Cut, copy, paste and select all belong to the entry that is typed in.
func TestTextKeepsItsShortcuts(t *testing.T) {
	for _, group := range Groups() {
		for _, s := range group.Shortcuts {
			for _, key := range []fyne.KeyName{fyne.KeyX, fyne.KeyC, fyne.KeyV, fyne.KeyA} {
				if s.Key == key && s.Modifier == control {
					t.Errorf("%s takes %s away from text", s.ID, s.Keys())
				}
			}
		}
	}
}

func TestKeysAreWritten(t *testing.T) {
	tests := []struct {
		s    Shortcut
		want string
	}{
		{Shortcut{Key: fyne.KeyS, Modifier: fyne.KeyModifierControl | fyne.KeyModifierShift}, "Ctrl + Shift + S"},
		{Shortcut{Key: fyne.KeyUp, Modifier: fyne.KeyModifierAlt}, "Alt + ↑"},
		{Shortcut{ID: ZoomIn, Key: fyne.KeyPlus, Modifier: fyne.KeyModifierControl, Also: fyne.KeyEqual}, "Ctrl + +"},
		{Shortcut{Key: fyne.KeyUp, Modifier: fyne.KeyModifierShift, Also: fyne.KeyPageUp}, "Shift + ↑, Page up"},
		{Shortcut{Key: fyne.KeyReturn, Also: fyne.KeyTab}, "Enter, Tab"},
	}
	for _, test := range tests {
		if got := test.s.Keys(); got != test.want {
			t.Errorf("got %q, want %q", got, test.want)
		}
	}
}

func TestRegisteredShortcutsAnswer(t *testing.T) {
	test.NewTempApp(t)
	window := test.NewTempWindow(t, widget.NewLabel(""))
	did := map[ID]int{}
	do := map[ID]func(){}
	for _, id := range []ID{Undo, Save, ZoomIn, Step(3)} {
		do[id] = func() { did[id]++ }
	}
	Register(window.Canvas(), do)
	typed := window.Canvas().(interface{ TypedShortcut(fyne.Shortcut) })
	typed.TypedShortcut(&fyne.ShortcutUndo{})
	for _, key := range []fyne.KeyName{fyne.KeyS, fyne.KeyPlus, fyne.KeyEqual, fyne.Key3, fyne.KeyO} {
		typed.TypedShortcut(&desktop.CustomShortcut{KeyName: key, Modifier: control})
	}
	for id, want := range map[ID]int{Undo: 1, Save: 1, ZoomIn: 2, Step(3): 1} {
		if did[id] != want {
			t.Errorf("%s: %d times, want %d", id, did[id], want)
		}
	}
}

// Plus stands alone on a key (German keyboards, number pads), or above = on one that needs
// shift (English and American ones). Wherever it is, what the menu shows must work.
func TestPlusWorksOnEveryKeyboard(t *testing.T) {
	test.NewTempApp(t)
	window := test.NewTempWindow(t, widget.NewLabel(""))
	did := map[ID]int{}
	Register(window.Canvas(), map[ID]func(){
		LargerText: func() { did[LargerText]++ }, ZoomIn: func() { did[ZoomIn]++ }, SmallerText: func() { did[SmallerText]++ },
	})
	typed := window.Canvas().(interface{ TypedShortcut(fyne.Shortcut) })
	for id, held := range map[ID]fyne.KeyModifier{LargerText: control | alt, ZoomIn: control} {
		for _, p := range []press{{fyne.KeyPlus, held}, {fyne.KeyEqual, held | shift}, {fyne.KeyPlus, held | shift}, {fyne.KeyEqual, held}} {
			before := did[id]
			typed.TypedShortcut(&desktop.CustomShortcut{KeyName: p.key, Modifier: p.modifier})
			if did[id] != before+1 {
				t.Errorf("%s: %s with %b does nothing", id, p.key, p.modifier)
			}
		}
	}
	if did[SmallerText] != 0 {
		t.Error("plus makes text smaller")
	}
}

func TestFind(t *testing.T) {
	if s, found := Find(Redo); !found || s.Key != fyne.KeyY {
		t.Errorf("redo is %+v, %v", s, found)
	}
	if _, found := Find(""); found {
		t.Error("keys without an ID are found by none")
	}
	s, _ := Find(Save)
	if got := s.Shortcut().ShortcutName(); got != (&desktop.CustomShortcut{KeyName: fyne.KeyS, Modifier: control}).ShortcutName() {
		t.Errorf("save is %s", got)
	}
	if (Shortcut{Key: fyne.KeyUp}).Shortcut() != nil {
		t.Error("a bare key makes a shortcut")
	}
}
