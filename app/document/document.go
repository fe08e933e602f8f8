package document

import (
	"maps"
	"slices"
	"time"

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
	Loads    int    // counts the projects that were loaded, to tell one from the next

	bagDirty bool // the bag itself differs from what was saved
}

// mostSteps bounds the history; a step is some 800 bytes.
const mostSteps = 10_000

// Document is the bag that is being worked on, with its history. It belongs to one
// goroutine, that of the window; the States and Snapshots it hands out may go
// anywhere.
type Document struct {
	steps     []step    // every state from first to last, one at least
	at        int       // the state that is shown
	saved     *bag.Spec // the state on disk, or nil when there is none
	kept      []project.KeptSize
	keptSaved []project.KeptSize // those on disk
	drag      *bag.Spec          // shown in place of the state while a drag lasts
	last      *Snapshot          // of the last Spec that could be drawn
	stale     bool               // last was made before something outside changed
	files     map[string][]byte
	gallery   Gallery // nil: artwork is not shown
	readOnly  bool
	listeners []*listener
	told      int // counts the changes that listeners were told
	loads     int // counts the projects that were loaded
}

// step is one state with what led to it.
type step struct {
	spec   bag.Spec
	change Change
}

type listener struct {
	tell    func(State)
	stopped bool
}

// New returns a document with the default bag, unchanged.
func New() *Document {
	d := &Document{}
	d.Load(project.Project{Spec: bag.Default()})
	return d
}

// Load replaces everything by an opened project and forgets the history. The spec
// of a project can always be drawn, as reading validates it.
func (d *Document) Load(p project.Project) {
	d.replace(p)
	d.saved, d.keptSaved = &p.Spec, d.kept
	d.tell()
}

// Restore is Load for work that was never saved: the document is dirty.
func (d *Document) Restore(p project.Project) {
	d.replace(p)
	d.saved = nil
	d.tell()
}

func (d *Document) replace(p project.Project) {
	d.loads++
	d.steps, d.at, d.drag = []step{{spec: p.Spec}}, 0, nil
	d.kept, d.keptSaved = slices.Clone(p.Kept), nil
	d.files, d.readOnly = maps.Clone(p.Files), p.ReadOnly
	if d.files == nil {
		d.files = map[string][]byte{}
	}
	d.stale = true
}

// Project returns what is to be saved: the state that is shown, the kept sizes and the
// artwork.
func (d *Document) Project() project.Project {
	return project.Project{Spec: d.shown(), Kept: d.Kept(), Files: maps.Clone(d.files), ReadOnly: d.readOnly}
}

// State returns the bag as it stands now. It costs little while nothing changes.
func (d *Document) State() State {
	state := State{Spec: d.shown(), ReadOnly: d.readOnly, Dragging: d.drag != nil, Loads: d.loads}
	state.bagDirty = d.saved == nil || !same(&state.Spec, d.saved)
	state.Dirty = state.bagDirty || !slices.Equal(d.kept, d.keptSaved)
	if d.last == nil || d.stale || !same(&state.Spec, &d.last.Spec) {
		var snapshot *Snapshot
		if snapshot, state.Err = Derive(state.Spec); state.Err == nil {
			snapshot.hang(d.files, d.gallery)
			d.last, d.stale = snapshot, false
		}
	}
	state.Snapshot = d.last
	if d.at > 0 {
		state.Undo = d.steps[d.at].change
	}
	if d.at+1 < len(d.steps) {
		state.Redo = d.steps[d.at+1].change
	}
	return state
}

func (d *Document) shown() bag.Spec {
	if d.drag != nil {
		return *d.drag
	}
	return d.steps[d.at].spec
}

// Listen calls tell after every change, until stop is called. It does not call it
// at once. A tell may change the document; the others are then told of the newer
// state alone.
func (d *Document) Listen(tell func(State)) (stop func()) {
	added := &listener{tell: tell}
	d.listeners = append(d.listeners, added)
	return func() {
		added.stopped = true
		d.listeners = slices.DeleteFunc(slices.Clone(d.listeners), func(l *listener) bool { return l == added })
	}
}

func (d *Document) tell() {
	d.told++
	state, mine := d.State(), d.told
	for _, l := range d.listeners {
		if !l.stopped {
			l.tell(state)
		}
		if d.told != mine {
			return // everybody knows of a newer state already
		}
	}
}

// Set makes spec the state of the bag, as a step that can be undone. A spec that
// is no change makes no step. A drag that is under way ends without a step.
func (d *Document) Set(spec bag.Spec) {
	if d.step(spec, Difference) {
		d.tell()
	}
}

// SetAs is Set for a step that has a name of its own.
func (d *Document) SetAs(spec bag.Spec, change Change) {
	if d.step(spec, func(_, _ *bag.Spec) Change { return change }) {
		d.tell()
	}
}

// step ends a drag and adds a step, where spec is a change, under the name that name
// gives to it. It tells whether there is anything to tell.
func (d *Document) step(spec bag.Spec, name func(from, to *bag.Spec) Change) bool {
	dragged := d.drag != nil
	d.drag = nil
	now := &d.steps[d.at].spec
	if same(&spec, now) {
		return dragged
	}
	label := name(now, &spec)
	var named []string
	for i := range d.steps[d.at+1:] {
		named = append(named, d.steps[d.at+1+i].spec.FileNames()...)
	}
	clear(d.steps[d.at+1:]) // lets go of their texts
	d.steps = append(d.steps[:d.at+1], step{spec, label})
	d.at++
	for len(d.steps) > mostSteps {
		named = append(named, d.steps[0].spec.FileNames()...)
		d.steps[0] = step{}
		d.steps = d.steps[1:]
		d.at--
	}
	d.dropFiles(named)
	return true
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

// MarkSaved says that the state which is shown is on disk now, with the kept sizes. A
// drag that is under way becomes a step first.
func (d *Document) MarkSaved() {
	if d.drag != nil {
		d.step(*d.drag, Difference)
	}
	saved := d.steps[d.at].spec
	d.saved, d.keptSaved, d.readOnly = &saved, d.kept, false
	d.tell()
}

// MarkSavedOn is MarkSaved for a file that carries a date, as YYYY-MM-DD. The date
// is no step of its own: every state of the history gets it, so that undoing goes
// on as before.
func (d *Document) MarkSavedOn(date string) {
	d.MarkKeptSaved(d.kept)
	d.MarkSpecSavedOn(d.shown(), date)
}

// MarkSpecSavedOn is MarkSavedOn for a state that was shown when saving began: what
// was changed since then, even by a drag, is not saved. MarkKeptSaved goes before it.
func (d *Document) MarkSpecSavedOn(spec bag.Spec, date string) {
	for i := range d.steps {
		d.steps[i].spec.Date = date
	}
	spec.Date = date
	if d.drag != nil {
		d.drag.Date = date
		if same(d.drag, &spec) {
			d.step(*d.drag, Difference)
		}
	}
	d.saved, d.readOnly = &spec, false
	d.tell()
}

// Day returns the day of the last change to the bag, which drawings of it and a saved
// file carry: today where a change is not saved yet or no day is known.
func (s State) Day(today time.Time) time.Time {
	day, err := time.Parse(time.DateOnly, s.Spec.Date)
	if err != nil || s.bagDirty {
		return today
	}
	return day
}
