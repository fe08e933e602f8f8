package window

import (
	"bytes"
	"fmt"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/help"
	"gussetwright/app/notice"
	"gussetwright/app/project"
	"gussetwright/app/session"
	"gussetwright/app/welcome"
	"gussetwright/assets"
	"gussetwright/geometry/bag"
)

// begin opens the project at path, or shows the ways to begin. Work that a crash
// left is offered in either case.
func (w *Window) begin(path string) {
	w.foot.AskForFile(func() bool { return w.file.Path() != "" })
	w.showWelcome()
	if path != "" {
		w.open(path)
	}
	w.offerRecovery()
}

// showWelcome shows the ways to begin in place of the desk.
func (w *Window) showWelcome() {
	w.begun = false
	w.showPage(w.welcomePage())
}

func (w *Window) welcomePage() *welcome.Start {
	return welcome.NewStart(w.set, welcome.Actions{
		FromProduct: func() { w.beginAt(bag.Default(), stepProduct) },
		FromSize: func(width, depth, height float64) {
			w.beginAt(bag.OfSize(width, depth, height), stepBag)
		},
		OpenDemo:   w.openDemo,
		Open:       w.openAsked,
		OpenRecent: w.openRecent,
		TakeTour:   w.startTour,
	})
}

// The steps that the window itself goes to, counted from 1.
const (
	stepProduct = 1
	stepBag     = 2
	stepArtwork = 6
)

// beginAt starts a new bag at a step. Unsaved work has been asked about before.
func (w *Window) beginAt(spec bag.Spec, step int) {
	w.file.New()
	w.doc.Load(project.Project{Spec: spec})
	w.goToStep(step)
}

// openDemo opens a copy of the demo project that has no file yet, so that nobody
// saves over it.
func (w *Window) openDemo() {
	w.unlessUnsaved(lang.L("Save the changes before you open another project?"), func() {
		demo, err := readDemo()
		if err != nil {
			w.alarm(err)
			return
		}
		w.file.New()
		w.doc.Load(demo)
		w.goToStep(stepBag)
	})
}

func readDemo() (project.Project, error) {
	return project.Read(bytes.NewReader(assets.Demo), int64(len(assets.Demo)))
}

// offerRecovery offers the newest work that a crash left.
func (w *Window) offerRecovery() {
	left, err := w.file.Recoverable()
	if err != nil {
		w.alarm(err)
		return
	}
	if len(left) > 0 {
		w.askToRestore(left[0])
	}
}

func (w *Window) askToRestore(left session.Recovery) {
	name := left.Name
	if name == "" {
		name = lang.L("untitled")
	}
	text := fmt.Sprintf(lang.L("The program ended without saving %s. A copy from %s was kept."), name, left.Time.Format(time.DateTime))
	w.bar.Say(notice.Ask, text,
		notice.Answer{Label: lang.L("Take it up again"), Main: true, Do: func() {
			notes, err := w.file.Restore(left)
			if err != nil {
				w.alarm(err)
				return
			}
			w.goToStep(stepBag)
			w.tellAll(notes)
		}},
		notice.Answer{Label: lang.L("Discard it"), Do: func() {
			if err := w.file.Discard(left); err != nil {
				w.alarm(err)
				return
			}
			w.offerRecovery() // of another window that the same crash ended
		}},
		notice.Answer{Label: lang.L("Later")})
}

// showHelp shows the help page in place of what is there. Back from it the page before
// stands as it was left, and the keys go where they went.
func (w *Window) showHelp() {
	before := w.pages.Objects[0]
	if _, shown := before.(*help.Page); shown {
		return
	}
	focused, wholeScreen := w.window.Canvas().Focused(), w.inLesson() && w.window.FullScreen()
	page := help.New(w.app.Metadata().Version, func() {
		w.showPage(before)
		w.takeUpKeys(focused)
		if wholeScreen {
			w.toggleFullScreen()
		}
	})
	w.showPage(page)
	w.window.Canvas().Focus(page.FirstFocus())
}

// takeUpKeys gives the keys back to what had them on the page that is shown.
func (w *Window) takeUpKeys(focused fyne.Focusable) {
	keys := w.window.Canvas()
	switch object, is := focused.(fyne.CanvasObject); {
	case is && fyne.CurrentApp().Driver().CanvasForObject(object) == keys:
		keys.Focus(focused)
	case w.inLesson():
		keys.Focus(w.lesson.FirstFocus())
	case w.inMeeting():
		keys.Focus(w.meeting.FirstFocus())
	default:
		keys.Unfocus()
	}
}

// startTour shows the tour over the desk. It needs a bag to point at.
func (w *Window) startTour() {
	w.showPage(nil)
	at := func(object fyne.CanvasObject) func() fyne.CanvasObject {
		return func() fyne.CanvasObject { return object }
	}
	w.tour = welcome.NewTour(welcome.Stops(welcome.Parts{
		Steps: w.steps.List, Entries: w.steps.Page, Blank: at(w.blank), Folded: at(w.folded), Findings: at(w.findings),
		Files: w.steps.List,
	}), func() { w.layers.Remove(w.tour) })
	w.layers.Add(w.tour)
	w.tour.Start()
}
