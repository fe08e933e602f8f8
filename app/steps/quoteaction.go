package steps

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"gussetwright/app/entry"
	"gussetwright/app/keyrelay"
)

// action is an offer that says what it does when it gets the focus, and comes into view.
type action struct {
	offer
	name, help string
}

func newAction(act, help string, gained func(entry.Explained), press func()) *action {
	a := &action{name: act, help: help}
	a.gain, a.act = entry.NewText("", entry.Small), entry.NewText(act, actStyle)
	a.press, a.gained = press, func() { gained(a) }
	a.lay(a)
	return a
}

// Explanation says what a press does.
func (a *action) Explanation() (title, text string) { return a.name, a.help }

// sizeTable is a table that says what it is when it gets the focus. The row that the keys
// are on comes into view.
type sizeTable struct {
	table
	name, help string
	gained     func(entry.Explained)
	bring      func(fyne.CanvasObject)
}

func newSizeTable(name, help string, b *bench, choose func(int)) *sizeTable {
	t := &sizeTable{name: name, help: help, gained: b.explain, bring: b.bring}
	t.choose, t.over = choose, -1
	t.light, t.ring = canvas.NewRectangle(color.Transparent), canvas.NewRectangle(color.Transparent)
	t.light.Hide()
	t.ring.Hide()
	t.ExtendBaseWidget(t)
	return t
}

// FocusGained is part of fyne.Focusable.
func (t *sizeTable) FocusGained() {
	t.table.FocusGained()
	t.gained(t)
}

// TypedKey goes up and down and chooses.
func (t *sizeTable) TypedKey(key *fyne.KeyEvent) {
	if keyrelay.ToWindow(t, key) {
		return
	}
	t.table.TypedKey(key)
	if t.at < len(t.lines) {
		t.bring(t.lines[t.at].note)
	}
}

// Tapped chooses the row under the pointer.
func (t *sizeTable) Tapped(e *fyne.PointEvent) {
	if on := fyne.CurrentApp().Driver().CanvasForObject(t); on != nil {
		on.Focus(t)
	}
	if i := t.rowAt(e.Position.Y); i >= 0 {
		t.at = i
		t.choose(i)
		t.lightUp()
	}
}

// Explanation says what the list is.
func (t *sizeTable) Explanation() (title, text string) { return t.name, t.help }
