package document

import (
	"maps"
	"slices"

	"gussetwright/app/project"
	"gussetwright/geometry/bag"
)

// State is what a listener is told: the bag as it stands now.
type State struct {
	Spec bag.Spec // as entered; may be one that cannot be drawn
	// Snapshot follows from Spec, or from the last Spec that could be drawn while
	// Err is set. It is never nil.
	Snapshot *Snapshot
	Err      error  // why Spec cannot be drawn, or nil
	Dirty    bool   // differs from what was saved
	ReadOnly bool   // opened from a newer version; only a copy can be saved
	Undo     Change // what Undo would take back; its Label is empty when nothing
	Redo     Change // what Redo would do again; its Label is empty when nothing
	Dragging bool   // a drag is under way; the change has no step yet
}

// mostSteps bounds the history; a Spec is some 700 bytes.
const mostSteps = 10_000

// Document is the bag that is being worked on, with its history. It belongs to one
// goroutine, that of the window; the States and Snapshots it hands out may go
// anywhere.
type Document struct {
	steps     []bag.Spec // every state from first to last
	at        int        // the state that is shown
	saved     int        // the state on disk, or −1 when it is none of these
	drag      *bag.Spec  // shown in place of the state while a drag lasts
	last      *Snapshot  // of the last Spec that could be drawn
	files     map[string][]byte
	readOnly  bool
	listeners []*listener
}

type listener struct{ tell func(State) }

// New returns a document with the default bag, unchanged.
func New() *Document {
	d := &Document{}
	d.Load(project.Project{Spec: bag.Default()})
	return d
}

// Load replaces everything by an opened project and forgets the history. The spec
// of a project can always be drawn, as reading validates it.
func (d *Document) Load(p project.Project) {
	d.steps, d.at, d.saved, d.drag = []bag.Spec{p.Spec}, 0, 0, nil
	d.files, d.readOnly = maps.Clone(p.Files), p.ReadOnly
	if snapshot, err := Derive(p.Spec); err == nil {
		d.last = snapshot
	}
	d.tell()
}

// Restore is Load for work that was never saved: the document is dirty.
func (d *Document) Restore(p project.Project) {
	d.Load(p)
	d.saved = -1
	d.tell()
}

// Project returns what is to be saved: the state that is shown and the artwork.
func (d *Document) Project() project.Project {
	return project.Project{Spec: d.shown(), Files: maps.Clone(d.files), ReadOnly: d.readOnly}
}

// State returns the bag as it stands now.
func (d *Document) State() State {
	state := State{Spec: d.shown(), Dirty: d.at != d.saved || d.drag != nil, ReadOnly: d.readOnly, Dragging: d.drag != nil}
	snapshot, err := Derive(state.Spec)
	if err == nil {
		d.last = snapshot
	}
	state.Snapshot, state.Err = d.last, err
	if d.at > 0 {
		state.Undo = Difference(&d.steps[d.at-1], &d.steps[d.at])
	}
	if d.at+1 < len(d.steps) {
		state.Redo = Difference(&d.steps[d.at], &d.steps[d.at+1])
	}
	return state
}

func (d *Document) shown() bag.Spec {
	if d.drag != nil {
		return *d.drag
	}
	return d.steps[d.at]
}

// Listen calls tell after every change, until stop is called. It does not call it
// at once.
func (d *Document) Listen(tell func(State)) (stop func()) {
	added := &listener{tell}
	d.listeners = append(d.listeners, added)
	return func() {
		d.listeners = slices.DeleteFunc(slices.Clone(d.listeners), func(l *listener) bool { return l == added })
	}
}

func (d *Document) tell() {
	if len(d.listeners) == 0 {
		return
	}
	state := d.State()
	for _, l := range d.listeners {
		l.tell(state)
	}
}

// Set makes spec the state of the bag, as a step that can be undone. A spec that
// is no change makes no step. A drag that is under way ends without a step.
func (d *Document) Set(spec bag.Spec) {
	dragged := d.drag != nil
	d.drag = nil
	if same(&spec, &d.steps[d.at]) {
		if dragged {
			d.tell()
		}
		return
	}
	if d.saved > d.at {
		d.saved = -1 // the saved state is cut off with the steps that were undone
	}
	d.steps = append(d.steps[:d.at+1], spec)
	d.at++
	if over := len(d.steps) - mostSteps; over > 0 {
		d.steps = slices.Clone(d.steps[over:])
		d.at -= over
		d.saved = max(d.saved-over, -1)
	}
	d.tell()
}

// Drag shows spec without making a step, as often as a drag moves.
func (d *Document) Drag(spec bag.Spec) {
	d.drag = &spec
	d.tell()
}

// Drop ends a drag and makes one step of it.
func (d *Document) Drop() {
	if d.drag != nil {
		d.Set(*d.drag)
	}
}

// CancelDrag ends a drag as if it had not been.
func (d *Document) CancelDrag() {
	if d.drag != nil {
		d.drag = nil
		d.tell()
	}
}

// Undo takes the last step back. A drag that is under way is cancelled instead.
func (d *Document) Undo() {
	if d.drag != nil {
		d.CancelDrag()
		return
	}
	if d.at > 0 {
		d.at--
		d.tell()
	}
}

// Redo does the step again that was undone last.
func (d *Document) Redo() {
	if d.drag == nil && d.at+1 < len(d.steps) {
		d.at++
		d.tell()
	}
}

// MarkSaved says that the state which is shown is on disk now.
func (d *Document) MarkSaved() {
	d.Drop()
	d.saved, d.readOnly = d.at, false
	d.tell()
}
