// Package window is the main window of Gussetwright: it puts the steps, the panes,
// the findings and the status line together, and gives menu and keys their meaning.
// It belongs to fyne's goroutine.
package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/appearance"
	"gussetwright/app/artstep"
	"gussetwright/app/blankpane"
	"gussetwright/app/document"
	"gussetwright/app/filestep"
	"gussetwright/app/findings"
	"gussetwright/app/focus"
	"gussetwright/app/foldedpane"
	"gussetwright/app/gallery"
	"gussetwright/app/inspector"
	"gussetwright/app/intake"
	"gussetwright/app/lesson"
	"gussetwright/app/meeting"
	"gussetwright/app/notice"
	"gussetwright/app/session"
	"gussetwright/app/settings"
	"gussetwright/app/status"
	"gussetwright/app/steps"
	"gussetwright/app/welcome"
	"gussetwright/app/words"
	"gussetwright/geometry/check"
)

// Window is the main window with everything in it.
type Window struct {
	app    fyne.App
	window fyne.Window
	set    *settings.Settings
	file   *session.Session
	doc    *document.Document
	look   *focus.Focus

	gallery   *gallery.Gallery
	inspector *inspector.Inspector
	intake    *intake.Intake
	art       *artstep.Step

	bar       *notice.Bar
	steps     *steps.Panel
	files     *filestep.Step
	blank     *blankpane.Pane
	folded    *foldedpane.Pane
	findings  *findings.Strip
	meeting   *meeting.View
	lesson    *lesson.View
	resting   [2]fyne.Size // of the panes while the meeting view is shown
	desk      *desk        // steps, panes, findings
	foot      *status.Line
	pages     *fyne.Container // the desk, or a page in its place
	wardrobe  *appearance.Wardrobe
	frame     *fyne.Container // the pages between the bar and the foot
	layers    *fyne.Container // all of the window, and the tour on top of it
	tour      *welcome.Tour
	textTurns *appearance.Turns
	textAsked float64 // how much larger text shall be when it has its turn
	begun     bool    // there is a bag that the user began with
	menu      *menu
	keeper    *keeper
	tidy      *tidy
	saver     *saver
}

// New returns the window for a document and the session that knows its file, not
// yet shown.
func New(app fyne.App, set *settings.Settings, doc *document.Document, file *session.Session) *Window {
	return newWindow(app, set, doc, file, fyne.Do)
}

// newWindow returns the window; later does something on fyne's goroutine.
func newWindow(app fyne.App, set *settings.Settings, doc *document.Document, file *session.Session, later func(func())) *Window {
	w := &Window{app: app, window: app.NewWindow(""), set: set, file: file, doc: doc, look: focus.New()}
	w.textTurns = appearance.NewTurns(w.scaleText)
	w.bar = notice.New()
	w.saver = newSaver(w.bar)
	w.blank = blankpane.New(w.doc, w.look, set)
	w.folded = foldedpane.New(w.doc, w.look, set)
	w.findings = findings.New(w.doc, w.look, w.set)
	w.findings.OnChosen(w.leadTo)
	w.files = filestep.New(w.doc, w.baseName, set, w.window)
	w.foot = status.New(w.doc, set)
	w.newArtwork(later)
	w.newMeeting()
	w.newLesson()
	w.steps = steps.New(w.doc, w.look, set, w.art, w.files, later)
	w.desk = newDesk(set, w.steps, w.blank, w.folded, w.findings)
	w.pages = container.NewStack(w.desk.all)
	w.wardrobe = appearance.NewWardrobe(app, set, w.desk.all, w.meeting, w.lesson)
	w.frame = container.NewBorder(w.bar, w.foot, nil, nil, w.pages)
	w.bar.OnMove(w.arrange)
	w.layers = container.NewStack(w.frame)
	w.window.SetContent(w.layers)
	w.menu = w.newMenu()
	w.keeper = w.newKeeper()
	w.tidy = newTidy()
	w.bindKeys()
	w.followDocument()
	w.window.SetOnDropped(w.dropped)
	w.window.SetCloseIntercept(w.close)
	w.window.Resize(set.WindowSize())
	return w
}

// Show shows the window: the project at path when one is given, else what the user
// left or the ways to begin.
func (w *Window) Show(path string) {
	w.window.Show()
	w.begin(path)
}

// followDocument keeps title and menu true.
func (w *Window) followDocument() {
	show := func(state document.State) {
		if title := w.file.Title(lang.L("untitled")); title != w.window.Title() {
			w.window.SetTitle(title)
		}
		w.menu.show(state)
		w.keeper.changed()
		w.tidy.changed()
	}
	show(w.doc.State())
	w.doc.Listen(show)
}

// showPage puts a page in the place of the desk; nil brings the desk back.
func (w *Window) showPage(page fyne.CanvasObject) {
	if page == nil {
		page, w.begun = w.desk.all, true
	}
	if w.inMeeting() && page != w.meeting {
		w.endMeeting()
	}
	if w.inLesson() && page != w.lesson {
		w.endLesson()
	}
	w.wardrobe.Leaves(w.pages.Objects[0])
	w.pages.Objects = []fyne.CanvasObject{page}
	if w.begun && page != w.meeting && page != w.lesson {
		w.foot.Show()
	} else {
		w.foot.Hide() // there is no bag yet that it could tell of, or others look on
	}
	w.arrange()
	w.pages.Refresh()
	w.wardrobe.Comes(page)
	switch page {
	case w.meeting:
		w.beginMeeting()
	case w.lesson:
		w.lesson.Open()
	}
}

// arrange gives bar, page and foot their places. The toolkit would do so in the picture that
// shows them, which takes long enough without.
func (w *Window) arrange() { w.frame.Layout.Layout(w.frame.Objects, w.frame.Size()) }

// leadTo shows the entry that mends a finding, and for one about artwork the piece at
// its place.
func (w *Window) leadTo(f check.Finding) {
	w.steps.ShowEntryOf(f)
	w.blank.ChooseArtworkAt(f.Piece, f.At)
}

// atDesk tells whether the desk is shown.
func (w *Window) atDesk() bool { return w.pages.Objects[0] == w.desk.all }

// alarm tells of an error where the user is looking.
func (w *Window) alarm(err error) {
	if err != nil {
		w.bar.Say(notice.Alarm, words.Error(err), notice.Answer{Label: closeWord()})
	}
}
