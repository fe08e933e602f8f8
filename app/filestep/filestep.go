// Package filestep is the last step of the job: which files to write, where to, and
// how that went. It belongs to fyne's goroutine; the files are made on another.
package filestep

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/jobs"
	"gussetwright/app/settings"
)

// Step is the panel of the step. What it says scrolls; the button to write stays in
// sight below.
type Step struct {
	widget.BaseWidget

	surroundings
	doc     *document.Document
	project func() string
	window  fyne.Window
	runner  *jobs.Runner
	stop    func()

	scroll   *entry.Scroll
	foot     *entry.Column // the button, and how it goes on
	picture  *picture
	kinds    *kinds
	paper    *paper
	folder   *folder
	list     *list
	warning  *entry.Message
	button   *appearance.Button
	question *question
	running  *running
	result   *result
}

// surroundings is what tests put their own in the place of.
type surroundings struct {
	later    func(func())     // does something on fyne's goroutine
	now      func() time.Time // the clock
	patience time.Duration    // how long writing may take before progress is shown
}

// New returns the step for a document. project returns what the names of the files
// begin with; messages and dialogs appear in window. The step is hidden at first. Close
// it when the window is closed.
func New(doc *document.Document, project func() string, set *settings.Settings, window fyne.Window) *Step {
	const patience = 500 * time.Millisecond
	return newStep(doc, project, set, window, jobs.New(writeTidily), surroundings{fyne.Do, time.Now, patience})
}

func newStep(doc *document.Document, project func() string, set *settings.Settings, window fyne.Window, runner *jobs.Runner, around surroundings) *Step {
	s := &Step{surroundings: around, doc: doc, project: project, window: window, runner: runner}
	s.picture = newPicture(set, around.later)
	s.kinds = newKinds(s.choicesChanged)
	s.paper = newPaper(set)
	s.kinds.attach("practice", s.paper.Choice)
	s.folder = newFolder(window, s.choicesChanged)
	s.list = newList()
	s.warning = entry.NewMessage()
	s.button = appearance.NewButton(lang.L("Write files"), s.write)
	s.button.Icon = theme.DocumentSaveIcon()
	s.button.Importance = widget.HighImportance
	s.question = newQuestion(window, s.answered)
	s.running = newRunning(runner.Cancel)
	s.result = newResult()
	s.scroll = entry.NewScroll(entry.NewColumn(3,
		s.picture.box,
		s.kinds.box,
		entry.NewColumn(1, entry.NewText(lang.L("Where to"), entry.Heading), s.folder.box, s.list),
	))
	s.foot = entry.NewColumn(1.5, s.warning, s.button, s.question.box, s.running, s.result)
	s.foot.OnGrow(s.Refresh)
	s.ExtendBaseWidget(s)
	s.Hide()
	s.stop = doc.Listen(s.follow)
	set.Listen(func() { s.follow(doc.State()) })
	return s
}

// Close cancels what is being written, waits for that to end and stops listening.
func (s *Step) Close() {
	s.stop()
	s.picture.close()
	s.runner.Cancel()
	s.runner.Wait()
}

// CreateRenderer is part of fyne.Widget.
func (s *Step) CreateRenderer() fyne.WidgetRenderer { return &stepRenderer{s} }

// Show is part of fyne.CanvasObject. It looks anew which files there are.
func (s *Step) Show() {
	s.list.forget()
	s.show(s.doc.State())
	s.BaseWidget.Show()
}

// follow shows a change at once where the step is in sight; breaking the lines of a
// hidden one takes longer than drawing the bag.
func (s *Step) follow(state document.State) {
	if s.Visible() {
		s.show(state)
	}
}

// show puts a state of the bag into the step.
func (s *Step) show(state document.State) {
	if !state.Dragging {
		s.picture.order(state.Snapshot, s.dayOf(state))
	}
	s.kinds.offer(len(state.Spec.Family) > 0)
	s.paper.show()
	s.warn(state)
	s.showFiles(state)
	s.showButton(state)
}

func (s *Step) dayOf(state document.State) time.Time { return state.Day(s.now()) }

// choicesChanged shows what follows from other ticks or another folder.
func (s *Step) choicesChanged() {
	state := s.doc.State()
	s.showFiles(state)
	s.showButton(state)
}
