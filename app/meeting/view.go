// Package meeting is the view for deciding on proportions together with a client, at a
// table or on a wall: the folded bag large, three sliders, and a few sizes that are kept
// and compared. It fills the window and belongs to fyne's goroutine.
package meeting

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/document"
	"gussetwright/app/settings"
	"gussetwright/geometry/bag"
	"gussetwright/render/solid"
)

// Around is what the view asks of the window.
type Around struct {
	Leave func() // goes back to the desk
	Proof func() // writes the proof for the client; the view is told how that went by Say
}

// View is the meeting view.
type View struct {
	widget.BaseWidget

	doc    *document.Document
	set    *settings.Settings
	around Around
	stop   func()

	open    bool // the view is shown
	loads   int  // of the project that the variants belong to
	state   document.State
	kept    shelf
	letters int       // how many were given to variants
	removed []removal // that can be put back, the last one first
	chosen  int       // the place of the variant that is shown, or none
	said    string
	answer  *answer // to what was said, or nil

	comparing bool     // the variants stand side by side
	moving    bool     // a slider or a key changes the bag
	from      bag.Spec // what it was before
	note      string   // what is said while it moves

	stage   *stage
	dials   [axes]*dial
	stepped axis // that the arrow keys step
	page    *page
}

// New returns the view of a document, not yet open.
func New(doc *document.Document, set *settings.Settings, around Around) *View {
	v := &View{doc: doc, set: set, around: around, state: doc.State()}
	v.loads = v.state.Loads
	v.recall()
	v.stage = newStage(v)
	for a := range axes {
		v.dials[a] = newDial(v, a)
	}
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
	v.stop()
	v.stage.close()
}

// Open begins to show the document, from where it is always seen at first. beside, if
// anything, stands beside the bag for scale.
func (v *View) Open(beside solid.Reference) {
	v.stage.camera = first
	if beside == solid.NoReference {
		beside = v.stage.reference
	}
	v.stage.setReference(beside)
	v.open, v.comparing, v.chosen, v.said, v.answer = true, false, none, "", nil
	v.take(v.doc.State(), true)
}

// Shut stops showing it. The variants are kept. What was shown last is what counts: a
// variant becomes the bag, as it does for a proof. Shut returns a sentence that tells so, or
// "".
func (v *View) Shut() (told string) {
	v.settle()
	if v.chosen != none && !v.isTaken() && v.kept[v.chosen].snapshot != nil {
		v.takeChosen()
		told = v.said
	}
	v.open = false
	v.stage.letGo()
	return told
}

// setReference chooses what stands beside the bag for scale.
func (v *View) setReference(r solid.Reference) {
	v.stage.setReference(r)
	v.stage.reframe(true)
	v.update()
}

// FirstFocus returns what should hold the focus when the view is shown.
func (v *View) FirstFocus() fyne.Focusable { return v.dials[width].slider }

// Pictures returns the number of the last picture of the bag that was ordered and of the
// one that is shown, for measuring how fast the view follows.
func (v *View) Pictures() (ordered, shown int) { return v.stage.present.ordered, v.stage.present.shown }

// follow takes a new state of the document.
func (v *View) follow(state document.State) {
	if state.Loads != v.loads {
		v.loads = state.Loads
		v.recall()
		v.comparing, v.said, v.answer, v.moving = false, "", nil, false
		if v.open {
			v.take(state, true)
		}
		return
	}
	if v.open {
		v.take(state, false)
	}
}

// take shows a state of the document.
func (v *View) take(state document.State, anew bool) {
	changed := state.Spec.Body != v.state.Spec.Body
	v.state = state
	if changed {
		v.said, v.answer = v.note, nil
	}
	v.stage.present.take(state.Snapshot)
	if !state.Dragging {
		v.derive()
	}
	moved := v.stage.reframe(anew)
	if state.Dragging && !moved && slices.Equal(v.bags(), v.stage.bags()) {
		v.showSizes()
		v.writePresent()
		v.stage.present.write(v.stage.brief)
		v.stage.drawOne(v.stage.present, draft)
		return
	}
	v.update()
}

// bags returns the figures to be seen: the bag or the variant that is chosen, or all of
// them side by side. The bag itself is left out where it is one of the variants.
func (v *View) bags() []*figure {
	if !v.comparing {
		if v.chosen != none {
			return []*figure{v.stage.kept[v.chosen]}
		}
		return []*figure{v.stage.present}
	}
	var list []*figure
	for _, place := range v.kept.order() {
		list = append(list, v.stage.kept[place])
	}
	if v.kept.find(sizeOf(&v.state.Spec)) == none {
		list = append(list, v.stage.present)
	}
	return list
}

// update shows everything anew.
func (v *View) update() {
	if !v.open {
		return
	}
	v.write()
	v.showSizes()
	v.page.show()
	v.stage.put(v.comparing, v.bags()...)
}
