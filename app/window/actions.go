package window

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/appearance"
	"gussetwright/app/notice"
	"gussetwright/app/shortcuts"
	"gussetwright/app/wholefile"
	"gussetwright/app/words"
	"gussetwright/geometry/phrase"
)

// typer is an entry in which something may be typed that is not taken over yet. The
// main menu hears its keys before the focused entry does, so it asks the entry first.
type typer interface {
	UndoTyping() bool
	RedoTyping() bool
	Commit() bool
}

func (w *Window) typer() (typer, bool) {
	entry, ok := w.window.Canvas().Focused().(typer)
	return entry, ok
}

// undo takes back what was typed in the focused entry, else the last step.
func (w *Window) undo() {
	if entry, ok := w.typer(); !ok || !entry.UndoTyping() {
		w.doc.Undo()
	}
}

// redo does again what undo took back.
func (w *Window) redo() {
	if entry, ok := w.typer(); !ok || !entry.RedoTyping() {
		w.doc.Redo()
	}
}

// commitTyping takes over what is being typed. It returns false where that cannot be
// read; the entry says why.
func (w *Window) commitTyping() bool {
	entry, ok := w.typer()
	return !ok || entry.Commit()
}

// goToStep shows a step of the job, counted from 1.
func (w *Window) goToStep(number int) {
	w.showPage(nil)
	w.steps.Select(number - 1)
}

func (w *Window) nextStep(by int) {
	if next := w.steps.Selected() + by; next >= 0 && next < shortcuts.Steps {
		w.goToStep(next + 1)
	}
}

func (w *Window) zoomIn() {
	w.blank.ZoomIn()
}

func (w *Window) zoomOut() {
	w.blank.ZoomOut()
}

// textStep is how much larger or smaller text becomes at once.
const textStep = 0.1

func (w *Window) largerText() { w.askText(textStep) }

func (w *Window) smallerText() { w.askText(-textStep) }

// askText makes text larger as soon as the window has been drawn after the last change of
// its size: a key that is held down asks faster.
func (w *Window) askText(by float64) {
	w.textAsked += by
	w.textTurns.Ask()
}

func (w *Window) scaleText() {
	by := w.textAsked
	w.textAsked = 0
	w.restyle(func() { w.set.SetTextScale(w.set.TextScale() + by) })
}

// restyle changes how everything looks. The panes draw their pictures once that is seen: to
// lay out and draw the window anew takes all the time that there is.
func (w *Window) restyle(change func()) {
	w.blank.Rest()
	w.folded.Rest()
	change()
	appearance.AfterDrawn(func() {
		w.blank.Wake()
		w.folded.Wake()
	})
}

// tell says something that needs no answer.
func (w *Window) tell(text string) {
	w.bar.Say(notice.Tell, text, notice.Answer{Label: closeWord()})
}

// tellAll says sentences that need no answer; none is said when there are none.
func (w *Window) tellAll(sentences []phrase.Phrase) {
	var said []string
	for _, sentence := range sentences {
		said = append(said, words.Of(sentence))
	}
	if len(said) > 0 {
		w.tell(strings.Join(said, " "))
	}
}

// bindKeys ties the keys that are not in the menu, which has its own, and those of the
// menu that are wanted on the whole screen, where there is none.
func (w *Window) bindKeys() {
	keys := map[shortcuts.ID]func(){
		shortcuts.Undo:         w.undo,
		shortcuts.Redo:         w.redo,
		shortcuts.Save:         w.save,
		shortcuts.Quit:         w.close,
		shortcuts.Meeting:      w.toggleMeeting,
		shortcuts.Lesson:       w.toggleLesson,
		shortcuts.Help:         w.askHelp,
		shortcuts.NextStep:     func() { w.nextStep(1) },
		shortcuts.PreviousStep: func() { w.nextStep(-1) },
		shortcuts.ZoomIn:       w.zoomIn,
		shortcuts.LargerText:   w.largerText,
		shortcuts.SmallerText:  w.smallerText,
	}
	for id, do := range keys {
		if s, found := shortcuts.Find(id); found {
			keys[id] = w.unlessCovered(s.Shortcut(), do)
		}
	}
	shortcuts.Register(w.window.Canvas(), keys)
	w.window.Canvas().SetOnTypedKey(func(key *fyne.KeyEvent) {
		switch over := w.over(); {
		case over != nil && key.Name == fyne.KeyEscape:
			over.Hide()
		case over != nil:
		case w.tour != nil && w.tour.TypedKey(key):
		case w.inMeeting():
			w.meeting.TypedKey(key)
		case w.inLesson():
			w.lesson.TypedKey(key)
		case key.Name == fyne.KeyEscape:
			w.escape()
		case key.Name == fyne.KeyF11:
			w.toggleMeeting()
		}
	})
	w.window.Canvas().SetOnTypedRune(func(letter rune) {
		switch {
		case w.over() != nil:
		case w.inMeeting():
			w.meeting.TypedRune(letter)
		case w.inLesson():
			w.lesson.TypedRune(letter)
		}
	})
}

// over returns the dialog or the list that lies over the window, or nil.
func (w *Window) over() fyne.CanvasObject { return w.window.Canvas().Overlays().Top() }

// unlessCovered keeps a shortcut from what lies behind a dialog or a list. There it goes
// to what has the focus: the main menu hears its keys first.
func (w *Window) unlessCovered(shortcut fyne.Shortcut, do func()) func() {
	return func() {
		if w.over() == nil {
			do()
		} else if focused, is := w.window.Canvas().Focused().(fyne.Shortcutable); is {
			focused.TypedShortcut(shortcut)
		}
	}
}

// escape answers a notice, or leaves a page.
func (w *Window) escape() {
	if w.bar.Escape() {
		return
	}
	if !w.atDesk() && w.begun {
		w.showPage(nil)
	}
}

// The size of a saved picture of the folded bag, in pixels.
const pictureWidth, pictureHeight = 2000, 2000

// savePicture writes the folded bag, as it is turned now, to a PNG file.
func (w *Window) savePicture() {
	question := askFile{window: w, title: lang.L("Save the picture as"), ending: ".png", then: func(path string) {
		w.saver.after(func() { w.writePicture(path) })
	}}
	question.ask(w.folderToBegin(), w.baseName()+"-folded.png")
}

func (w *Window) writePicture(path string) {
	var err error
	picture := w.folded.PNG(pictureWidth, pictureHeight)
	w.saver.write(func() { err = wholefile.Write(path, picture) }, func() {
		if err != nil {
			w.bar.Say(notice.Alarm, fmt.Sprintf(lang.L("The picture %s cannot be written: %s"), path, words.Error(err)),
				notice.Answer{Label: closeWord()})
			return
		}
		w.tell(fmt.Sprintf(lang.L("The picture is in %s."), path))
	})
}

// baseName is what files of the bag begin with.
func (w *Window) baseName() string {
	if name := w.file.Name(); name != "" {
		return name
	}
	return lang.L("bag")
}
