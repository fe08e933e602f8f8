// Package steady has an entry whose cursor stands still. The toolkit's own cursor
// blinks, and for each shade of a blink all of the window is drawn anew, a dozen times
// a second for as long as an entry has the focus.
package steady

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/keyrelay"
)

// Entry is a line to type in.
type Entry struct {
	widget.Entry

	hold *fyne.Animation // runs while the entry has the focus
}

// NewEntry returns an empty entry.
func NewEntry() *Entry {
	e := &Entry{}
	e.ExtendBaseWidget(e)
	return e
}

// FocusGained is part of fyne.Focusable.
func (e *Entry) FocusGained() {
	e.Entry.FocusGained()
	e.hold = fyne.NewAnimation(time.Second, func(float32) { e.holdCursor() })
	e.hold.RepeatCount = fyne.AnimationRepeatForever
	e.hold.Start()
}

// FocusLost is part of fyne.Focusable.
func (e *Entry) FocusLost() {
	if e.hold != nil {
		e.hold.Stop()
	}
	e.Entry.FocusLost()
}

// TypedKey is part of fyne.Focusable.
func (e *Entry) TypedKey(key *fyne.KeyEvent) {
	if !keyrelay.ToWindow(e, key) {
		e.Entry.TypedKey(key)
	}
}

// holdCursor is called once for every picture that the window could draw. The toolkit
// holds the cursor still for a moment after a key; a key that means nothing will do.
func (e *Entry) holdCursor() { e.Entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyUnknown}) }
