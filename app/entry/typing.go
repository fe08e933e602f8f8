package entry

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"gussetwright/app/keyrelay"
	"gussetwright/app/steady"
)

// typist is what a typing belongs to.
type typist interface {
	commit() bool // takes over what was typed; false when it cannot be read
	restore()     // forgets what was typed
	typed() bool  // tells whether something was typed and not taken over
	focused()     // tells that the entry has the focus
}

// stepper is a typist with a number, which goes up and down in steps.
type stepper interface {
	nudge(by int, far stride)
	settle() // ends a row of steps
}

// typing is a line to type in. Enter and the loss of focus commit, Escape restores; in
// the line of a number arrows step.
type typing struct {
	steady.Entry

	owner   typist
	stepper stepper // nil for words
	shift   bool
}

func newTyping(owner typist) *typing {
	t := &typing{owner: owner}
	t.stepper, _ = owner.(stepper)
	t.ExtendBaseWidget(t)
	t.Wrapping = fyne.TextWrap(fyne.TextTruncateClip)
	return t
}

// FocusGained selects all, so that typing puts a new value in place of the old.
func (t *typing) FocusGained() {
	t.Entry.FocusGained()
	t.Entry.TypedShortcut(&fyne.ShortcutSelectAll{})
	t.owner.focused()
}

// FocusLost commits.
func (t *typing) FocusLost() {
	t.shift = false
	t.settle()
	t.owner.commit()
	t.Entry.FocusLost()
}

// TypedKey gives the keys of an entry their meaning and hands on the rest.
func (t *typing) TypedKey(key *fyne.KeyEvent) {
	if keyrelay.ToWindow(t, key) {
		return
	}
	switch key.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		t.owner.commit()
	case fyne.KeyEscape:
		t.owner.restore()
	default:
		if !t.step(key.Name) {
			t.Entry.TypedKey(key)
		}
	}
}

// step steps by a key, and tells whether the key is one for that.
func (t *typing) step(key fyne.KeyName) bool {
	if t.stepper == nil || !steps(key) {
		return false
	}
	by, far := 1, normal
	if key == fyne.KeyDown || key == fyne.KeyPageDown {
		by = -1
	}
	if t.shift || key == fyne.KeyPageUp || key == fyne.KeyPageDown {
		far = coarse
	}
	t.stepper.nudge(by, far)
	return true
}

func steps(key fyne.KeyName) bool {
	return key == fyne.KeyUp || key == fyne.KeyDown || key == fyne.KeyPageUp || key == fyne.KeyPageDown
}

// settle ends a row of steps.
func (t *typing) settle() {
	if t.stepper != nil {
		t.stepper.settle()
	}
}

// TypedShortcut takes the arrows with Alt, which come as a shortcut.
func (t *typing) TypedShortcut(shortcut fyne.Shortcut) {
	if custom, ok := shortcut.(*desktop.CustomShortcut); ok && custom.Modifier == fyne.KeyModifierAlt && t.stepper != nil {
		switch custom.KeyName {
		case fyne.KeyUp:
			t.stepper.nudge(1, fine)
			return
		case fyne.KeyDown:
			t.stepper.nudge(-1, fine)
			return
		}
	}
	t.Entry.TypedShortcut(shortcut)
}

// KeyDown notes the shift key.
func (t *typing) KeyDown(key *fyne.KeyEvent) {
	if isShift(key.Name) {
		t.shift = true
	}
	t.Entry.KeyDown(key)
}

// KeyUp ends a row of steps: a key that is held down makes one step to undo.
func (t *typing) KeyUp(key *fyne.KeyEvent) {
	switch {
	case isShift(key.Name):
		t.shift = false
	case steps(key.Name):
		t.settle()
	}
	t.Entry.KeyUp(key)
}

func isShift(name fyne.KeyName) bool {
	return name == desktop.KeyShiftLeft || name == desktop.KeyShiftRight
}

// UndoTyping takes back a piece of what was typed; once none is left the entry shows
// what the document holds. It returns false where nothing was typed and the document
// is to be undone. The main menu of a window hears Ctrl+Z before the focused entry
// does, so its Undo has to ask the focused entry first.
func (t *typing) UndoTyping() bool {
	if !t.owner.typed() {
		return false
	}
	before := t.Text
	t.Entry.Undo()
	if t.Text == before {
		t.owner.restore()
	}
	return true
}

// RedoTyping does again what UndoTyping took back. It returns false where there is
// nothing and the document is to be redone.
func (t *typing) RedoTyping() bool {
	before := t.Text
	t.Entry.Redo()
	return t.Text != before
}

// Commit takes over what was typed, as is to be done before saving. It returns false
// where that cannot be read.
func (t *typing) Commit() bool { return t.owner.commit() }
