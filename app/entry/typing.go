package entry

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"gussetwright/app/keyrelay"
	"gussetwright/app/steady"
)

// typist is what a typing belongs to.
type typist interface {
	commit() bool             // takes over what was typed; false when it cannot be read
	restore()                 // forgets what was typed
	typed() bool              // tells whether something was typed and not taken over
	nudge(by int, far stride) // steps up or down
	settle()                  // ends a row of steps
	focused()                 // tells that the entry has the focus
}

// typing is a line to type in. Enter and the loss of focus commit, Escape restores,
// arrows step.
type typing struct {
	steady.Entry

	owner typist
	shift bool
}

func newTyping(owner typist) *typing {
	t := &typing{owner: owner}
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
	t.owner.settle()
	t.owner.commit()
	t.Entry.FocusLost()
}

// TypedKey gives the keys of an entry their meaning and hands on the rest.
func (t *typing) TypedKey(key *fyne.KeyEvent) {
	if keyrelay.ToWindow(t, key) {
		return
	}
	far := normal
	if t.shift {
		far = coarse
	}
	switch key.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		t.owner.commit()
	case fyne.KeyEscape:
		t.owner.restore()
	case fyne.KeyUp:
		t.owner.nudge(1, far)
	case fyne.KeyDown:
		t.owner.nudge(-1, far)
	case fyne.KeyPageUp:
		t.owner.nudge(1, coarse)
	case fyne.KeyPageDown:
		t.owner.nudge(-1, coarse)
	default:
		t.Entry.TypedKey(key)
	}
}

// TypedShortcut takes the arrows with Alt, which come as a shortcut.
func (t *typing) TypedShortcut(shortcut fyne.Shortcut) {
	if custom, ok := shortcut.(*desktop.CustomShortcut); ok && custom.Modifier == fyne.KeyModifierAlt {
		switch custom.KeyName {
		case fyne.KeyUp:
			t.owner.nudge(1, fine)
			return
		case fyne.KeyDown:
			t.owner.nudge(-1, fine)
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
	case key.Name == fyne.KeyUp || key.Name == fyne.KeyDown || key.Name == fyne.KeyPageUp || key.Name == fyne.KeyPageDown:
		t.owner.settle()
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
