package shortcuts

import (
	"runtime"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
)

// Shortcut returns the shortcut as a menu item or a canvas takes it, or nil for a
// bare key, which fyne never reports as one.
func (s Shortcut) Shortcut() fyne.Shortcut { return onKey(s.Key, s.Modifier) }

// Register makes do answer every shortcut on the canvas that has an ID in do. A
// shortcut of the main menu wins over it, and so does the focused widget.
func Register(on fyne.Canvas, do map[ID]func()) {
	for _, group := range Groups() {
		for _, s := range group.Shortcuts {
			action, wanted := do[s.ID]
			if !wanted {
				continue
			}
			for _, shortcut := range s.all() {
				on.AddShortcut(shortcut, func(fyne.Shortcut) { action() })
			}
		}
	}
}

// all returns the shortcut on every key that it is on.
func (s Shortcut) all() (list []fyne.Shortcut) {
	modifiers := []fyne.KeyModifier{s.Modifier}
	if s.Shifted {
		modifiers = append(modifiers, s.Modifier|shift)
	}
	for _, key := range []fyne.KeyName{s.Key, s.Also} {
		for _, modifier := range modifiers {
			if shortcut := onKey(key, modifier); shortcut != nil {
				list = append(list, shortcut)
			}
		}
	}
	return list
}

// onKey knows the shortcuts for which fyne has a kind of their own: it reports
// them as such and never as a key.
func onKey(key fyne.KeyName, modifier fyne.KeyModifier) fyne.Shortcut {
	switch {
	case key == "" || modifier == 0:
		return nil
	case modifier == fyne.KeyModifierShortcutDefault && key == fyne.KeyZ:
		return &fyne.ShortcutUndo{}
	case modifier == fyne.KeyModifierShortcutDefault && key == fyne.KeyY:
		return &fyne.ShortcutRedo{}
	}
	return &desktop.CustomShortcut{KeyName: key, Modifier: modifier}
}

// Keys writes the shortcut as it stands on the keys, such as "Ctrl + Shift + S" or,
// inside one part of the window, "Enter, Tab".
func (s Shortcut) Keys() string {
	var parts []string
	add := func(modifier fyne.KeyModifier, name string) {
		if s.Modifier&modifier != 0 {
			parts = append(parts, name)
		}
	}
	add(fyne.KeyModifierSuper, superName())
	add(fyne.KeyModifierControl, lang.L("Ctrl"))
	add(fyne.KeyModifierAlt, lang.L("Alt"))
	add(fyne.KeyModifierShift, lang.L("Shift"))
	text := strings.Join(append(parts, keyName(s.Key)), " + ")
	if s.ID == "" && s.Also != "" { // with an ID it is the same key of another keyboard
		text += ", " + keyName(s.Also)
	}
	return text
}

func superName() string {
	if runtime.GOOS == "darwin" {
		return "Cmd"
	}
	return lang.L("Super")
}

func keyName(key fyne.KeyName) string {
	switch key {
	case fyne.KeyReturn:
		return lang.L("Enter")
	case fyne.KeyEscape:
		return lang.L("Esc")
	case fyne.KeyDelete:
		return lang.L("Del")
	case fyne.KeyTab:
		return lang.L("Tab")
	case fyne.KeySpace:
		return lang.L("Space")
	case fyne.KeyHome:
		return lang.L("Home")
	case fyne.KeyEnd:
		return lang.L("End")
	case fyne.KeyPageDown:
		return lang.L("Page down")
	case fyne.KeyPageUp:
		return lang.L("Page up")
	case fyne.KeyUp:
		return "↑"
	case fyne.KeyDown:
		return "↓"
	case fyne.KeyLeft:
		return "←"
	case fyne.KeyRight:
		return "→"
	case fyne.KeyMinus:
		return "−"
	}
	return string(key)
}
