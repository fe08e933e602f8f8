// Package lesson is the page with which a bag is taught: beside each other the blank and
// the bag as it is folded, stage by stage, with what the hands do in plain words. It
// belongs to fyne's goroutine; the pictures are drawn on another.
package lesson

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/app/document"
	"gussetwright/app/settings"
	"gussetwright/geometry"
)

// Around is what the view asks of the window.
type Around struct {
	Leave      func()            // goes back to the desk
	FullScreen func()            // gives the whole screen to the lesson, or takes it back
	Write      func(kind string) // writes a kind of file; the view is told how that went by Say
	Open       func(path string) // shows a file, or a folder, in another program
}

// View is the lesson view.
type View struct {
	widget.BaseWidget

	doc    *document.Document
	set    *settings.Settings
	around Around
	stop   func()

	open   bool // the view is shown
	loads  int  // of the document when the lesson was begun
	state  document.State
	course *course
	player player
	clock  *clock
	said   string
	wrote  string // the file that said tells of, or ""
	typed  typed

	flat  *flatPane
	bag   *bagPane
	line  *timeline
	text  *explanation
	page  *page
	shown showing // by words and buttons
}

// showing is what words and buttons depend on.
type showing struct {
	course *course
	stage  int
	pace   pace
	speed  float64
	said   string
	wrote  string
	upside upside
	bare   bool
	failed bool
	unit   geometry.Unit
}

// New returns the view of a document, not yet open.
func New(doc *document.Document, set *settings.Settings, around Around) *View {
	v := &View{doc: doc, set: set, around: around, state: doc.State()}
	v.player.speed = 1
	v.course = newCourse(v.state.Snapshot)
	v.clock = newClock(v.tick)
	v.flat, v.bag, v.line, v.text = newFlatPane(v), newBagPane(v), newTimeline(v), newExplanation()
	v.page = newPage(v)
	v.ExtendBaseWidget(v)
	v.stop = doc.Listen(v.follow)
	set.Listen(func() {
		if v.open {
			v.scale(v.Size())
			v.update()
		}
	})
	return v
}

// Close stops listening and drawing.
func (v *View) Close() {
	v.Shut()
	v.stop()
	v.flat.figure.close()
	v.bag.figure.close()
}

// Open shows the lesson of the document where it was left; of a bag that was loaded
// since, from its beginning.
func (v *View) Open() {
	v.open = true
	v.hush()
	state := v.doc.State()
	v.take(state)
	v.line.take(v.course)
	if v.loads != state.Loads {
		v.loads = state.Loads
		v.player.goTo(v.course, place{})
		v.bag.letGo()
	}
	v.update()
	v.flat.draw()
}

// Shut stops showing it: nothing moves any more, and nothing is drawn.
func (v *View) Shut() {
	v.player.pace = resting
	v.clock.run(false)
	v.open = false
	v.flat.figure.clear()
	v.bag.figure.clear()
}

// Say says something to the people in the room, until the next key. wrote is the file
// that it tells of, which can be opened then, or "".
func (v *View) Say(text, wrote string) {
	v.said, v.wrote = text, wrote
	v.update()
}

// hush takes back what was said.
func (v *View) hush() { v.said, v.wrote = "", "" }

// Said returns what was said last, or "".
func (v *View) Said() string { return v.said }

// Stage returns the number of the stage that is shown, from 0.
func (v *View) Stage() int { return v.player.at.stage }

// FirstFocus returns what should hold the focus when the view is shown.
func (v *View) FirstFocus() fyne.Focusable { return v.line }

// Pictures returns the number of the last picture of the bag that was ordered and of the
// one that is shown, for measuring how fast the view follows.
func (v *View) Pictures() (ordered, shown int) { return v.bag.figure.ordered, v.bag.figure.shown }

// follow takes a new state of the document.
func (v *View) follow(state document.State) {
	if !v.open {
		return
	}
	if v.take(state) {
		v.line.take(v.course)
	}
	v.update()
}

// take remembers a state. The lesson of another bag goes on in the stage of that name.
func (v *View) take(state document.State) (other bool) {
	v.state = state
	if v.course.snapshot == state.Snapshot {
		return false
	}
	before := v.course
	v.course = newCourse(state.Snapshot)
	v.player.at.stage = before.nearStage(v.course, v.player.at.stage)
	v.player.at = v.course.within(v.player.at)
	v.player.settle(v.course)
	return true
}

// tick moves the lesson on.
func (v *View) tick(passed time.Duration) {
	moved, was := v.player.advance(v.course, passed), v.player.pace
	switch {
	case was == resting:
		v.update() // the buttons change, and a fine picture is due
	case moved:
		v.draw()
	}
}

// moving tells whether a draft will do, as the next picture is soon to come.
func (v *View) moving() bool {
	held := v.player.at.share == 1 && v.player.waited > 0 // between two stages
	return v.player.pace != resting && !held || v.line.dragging || v.state.Dragging
}

// order returns the order for what is to be seen now, without what a pane knows.
func (v *View) order() order {
	return order{course: v.course, at: v.player.at, faded: v.state.Err != nil, bare: v.flat.bare, dark: appearance.IsDark()}
}

// update shows everything anew.
func (v *View) update() {
	if !v.open {
		return
	}
	v.clock.run(v.player.pace != resting)
	v.draw()
}

// draw shows the place where the lesson stands, and has it drawn.
func (v *View) draw() {
	if !v.open {
		return
	}
	v.line.set(v.player.at)
	now := showing{
		course: v.course, stage: v.player.at.stage, pace: v.player.pace, speed: v.player.speed, said: v.said, wrote: v.wrote,
		upside: v.flat.chosen, bare: v.flat.bare, failed: v.state.Err != nil, unit: v.set.Unit(),
	}
	if now != v.shown {
		v.shown = now
		v.page.show()
	}
	v.flat.drawIfChanged()
	v.bag.draw()
}

// focus gives the focus to a part of the view.
func (v *View) focus(on fyne.Focusable) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(v); c != nil {
		c.Focus(on)
	}
}
