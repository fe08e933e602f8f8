package window

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/appearance"
	"gussetwright/app/help"
	"gussetwright/app/jobs"
	"gussetwright/app/lesson"
	"gussetwright/app/places"
	"gussetwright/app/shortcuts"
	"gussetwright/app/words"
)

// newLesson makes the view that shows how the bag is folded.
func (w *Window) newLesson() {
	w.lesson = lesson.New(w.doc, w.set, lesson.Around{
		Leave: func() {
			if !w.bar.Escape() {
				w.showPage(nil)
			}
		},
		FullScreen: w.toggleFullScreen,
		Write:      w.writeLesson,
		Open:       w.openOutside,
	})
}

// inLesson tells whether the lesson is shown.
func (w *Window) inLesson() bool { return w.pages.Objects[0] == w.lesson }

// toggleLesson shows the lesson, or leads back to the desk.
func (w *Window) toggleLesson() {
	switch {
	case w.inLesson():
		w.showPage(nil)
	case !w.begun:
		w.tell(lang.L("The lesson folds a bag. Begin one or open a project first."))
	case w.commitTyping():
		w.showPage(w.lesson)
		w.window.Canvas().Focus(w.lesson.FirstFocus())
	}
}

// askHelp shows the help, which begins in the lesson with the keys of the lesson.
func (w *Window) askHelp() {
	fromLesson := w.inLesson()
	w.showHelp()
	if page, is := w.pages.Objects[0].(*help.Page); is && fromLesson {
		page.BeginWith(shortcuts.InLesson())
	}
}

// toggleFullScreen gives the whole screen to the lesson, or takes it back.
func (w *Window) toggleFullScreen() {
	if w.window.FullScreen() {
		w.window.SetFullScreen(false)
		w.window.SetMainMenu(w.menu.main)
	} else {
		w.fillScreen()
	}
	w.layers.Refresh() // a window that fills the screen already would not be drawn anew
}

// fillScreen gives the whole screen to the window, and what the menu took to its content. A
// window that was as large already would not hear of a new size.
func (w *Window) fillScreen() {
	w.window.SetMainMenu(nil)
	w.window.SetFullScreen(true)
	appearance.Fill(w.window)
}

// endLesson brings everything back to where it was.
func (w *Window) endLesson() {
	w.lesson.Shut()
	if w.window.FullScreen() {
		w.toggleFullScreen()
	}
	w.window.Canvas().Unfocus()
}

// writeLesson writes a kind of file for the lesson, and says there where it is.
func (w *Window) writeLesson(kind string) {
	begun, done, failed := lang.L("The lesson is being written…"), lang.L("The lesson was written to %s"), lang.L("The lesson cannot be written: %s")
	if kind == "practice" {
		begun, done = lang.L("The practice blanks are being written…"), lang.L("The practice blanks were written to %s")
		failed = lang.L("The practice blanks cannot be written: %s")
	}
	w.lesson.Say(begun, "")
	w.files.Deliver(kind, func(result jobs.Result) {
		if result.Err != nil {
			w.lesson.Say(fmt.Sprintf(failed, words.Error(result.Err)), "")
			return
		}
		wrote := ""
		if len(result.Paths) > 0 {
			wrote = result.Paths[0]
		}
		w.lesson.Say(fmt.Sprintf(done, strings.Join(result.Paths, ", ")), wrote)
	})
}

// openOutside shows a file or a folder outside the window.
func (w *Window) openOutside(path string) {
	if err := places.Open(path); err != nil {
		w.alarm(fmt.Errorf(lang.L("open %s: %s"), path, err))
	}
}
