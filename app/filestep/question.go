package filestep

import (
	"fmt"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/entry"
	"gussetwright/app/keyrelay"
	"gussetwright/geometry/check"
)

// question asks before files are replaced that this window has not written itself.
type question struct {
	box            *entry.Column
	words          *entry.Message
	replace, leave *keyrelay.Button
	window         fyne.Window
}

// newQuestion returns a question in a window that is not asked yet. answered is called with
// what the user wants.
func newQuestion(window fyne.Window, answered func(replace bool)) *question {
	q := &question{words: entry.NewMessage(), window: window}
	leave := func() { q.withdraw(); answered(false) }
	q.leave = newAnswer(lang.L("Leave them"), leave, leave)
	q.replace = newAnswer(lang.L("Replace them"), func() { q.withdraw(); answered(true) }, leave)
	q.box = entry.NewColumn(1, q.words, container.NewHBox(q.replace, q.leave))
	q.box.Hide()
	return q
}

// newAnswer returns a button that Enter presses, and on which Escape does something else.
func newAnswer(text string, press, escape func()) *keyrelay.Button {
	return keyrelay.New(text, press, func(key *fyne.KeyEvent) bool {
		switch key.Name {
		case fyne.KeyReturn, fyne.KeyEnter:
			press()
		case fyne.KeyEscape:
			escape()
		default:
			return false
		}
		return true
	})
}

// ask asks about files; the harmless answer has the focus.
func (q *question) ask(paths []string) {
	text := lang.L("Files that this replaces: %d, such as %s. They were there before this window wrote any: another bag may have the same name, or somebody may work with them already.")
	q.words.Say(check.Warning, fmt.Sprintf(text, len(paths), filepath.Base(paths[0])), nil)
	q.box.Show()
	q.box.Refresh() // what was never drawn takes no focus
	q.box.Grown()
	q.window.Canvas().Focus(q.leave)
}

// withdraw takes the question back, and the focus off its answers.
func (q *question) withdraw() {
	if !q.box.Visible() {
		return
	}
	q.box.Hide()
	q.box.Grown()
	if on := q.window.Canvas(); on.Focused() == q.leave || on.Focused() == q.replace {
		on.Unfocus()
	}
}
