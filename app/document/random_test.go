package document_test

import (
	"math/rand/v2"
	"reflect"
	"runtime"
	"testing"
	"time"

	"gussetwright/app/document"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
)

// model is the history as a plain list, to compare with.
type model struct {
	states []bag.Spec
	at     int
	drag   *bag.Spec
	saved  bag.Spec
}

func (m *model) set(spec bag.Spec) {
	m.drag = nil
	if !reflect.DeepEqual(spec, m.states[m.at]) {
		m.states = append(m.states[:m.at+1:m.at+1], spec)
		m.at++
	}
}

func (m *model) shown() bag.Spec {
	if m.drag != nil {
		return *m.drag
	}
	return m.states[m.at]
}

// Ten thousand edits, drags, undos, redos and saves in random order agree with a
// plain list of states; undoing all gives the first, redoing all the last.
func TestTenThousandRandomEdits(t *testing.T) {
	const edits = 10_000
	random := rand.New(rand.NewPCG(3, 14))
	before := runtime.NumGoroutine()
	d := document.New()
	m := model{states: []bag.Spec{d.Project().Spec}, saved: d.Project().Spec}
	var heard document.State
	stop := d.Listen(func(s document.State) { heard = s })
	for range edits {
		edit(random, d, &m)
		state := d.State()
		want := m.shown()
		if !reflect.DeepEqual(state.Spec, want) || !reflect.DeepEqual(heard.Spec, want) {
			t.Fatalf("the document, its listener and the list differ:\n%+v\n%+v\n%+v", state.Spec, heard.Spec, want)
		}
		if dirty := !reflect.DeepEqual(want, m.saved); state.Dirty != dirty || heard.Dirty != dirty {
			t.Fatalf("dirty %t, told %t, want %t", state.Dirty, heard.Dirty, dirty)
		}
		if (state.Undo.Label != "") != (m.at > 0) || (state.Redo.Label != "") != (m.at+1 < len(m.states)) {
			t.Fatalf("undo %+v, redo %+v at %d of %d", state.Undo, state.Redo, m.at, len(m.states))
		}
		if valid := want.Validate() == nil; valid != (state.Err == nil) || state.Snapshot == nil || state.Snapshot.Spec.Validate() != nil {
			t.Fatalf("error %v for a spec that is valid: %t", state.Err, valid)
		}
	}
	d.CancelDrag()
	for d.State().Redo.Label != "" {
		d.Redo()
	}
	last := m.states[len(m.states)-1]
	undone := 0
	for ; d.State().Undo.Label != ""; undone++ {
		d.Undo()
	}
	if got := d.State().Spec; !reflect.DeepEqual(got, m.states[0]) || undone != len(m.states)-1 {
		t.Errorf("after undoing %d of %d steps: %+v", undone, len(m.states)-1, got)
	}
	for range undone {
		d.Redo()
	}
	if got := d.State().Spec; !reflect.DeepEqual(got, last) {
		t.Errorf("after redoing all: %+v, want %+v", got, last)
	}
	stop()
	if undone < 100 {
		t.Errorf("the history had only %d steps", undone)
	}
	wantGoroutines(t, before)
}

// edit does one thing to the document and to the list.
func edit(random *rand.Rand, d *document.Document, m *model) {
	switch random.IntN(12) {
	case 0:
		d.Undo()
		if m.drag != nil {
			m.drag = nil
		} else {
			m.at = max(m.at-1, 0)
		}
	case 1:
		d.Redo()
		if m.drag == nil {
			m.at = min(m.at+1, len(m.states)-1)
		}
	case 2, 3:
		spec := anotherSpec(random, m.shown())
		d.Drag(spec)
		m.drag = &spec
	case 4:
		d.Drop()
		if m.drag != nil {
			m.set(*m.drag)
		}
	case 5:
		d.CancelDrag()
		m.drag = nil
	case 6:
		d.MarkSaved()
		m.set(m.shown())
		m.saved = m.shown()
	default:
		spec := anotherSpec(random, m.shown())
		d.Set(spec)
		m.set(spec)
	}
}

// anotherSpec changes one entry, within its limits and beyond, or all of them.
func anotherSpec(random *rand.Rand, spec bag.Spec) bag.Spec {
	fields := bag.Fields()
	field := &fields[random.IntN(len(fields))]
	switch random.IntN(20) {
	case 0:
		return geomtest.RandomBag(random)
	case 1:
		spec.Name = string(rune('A' + random.IntN(26)))
		return spec
	}
	switch field.Kind() {
	case bag.Number:
		span := field.Most - field.Least
		field.SetNumber(&spec, field.Least-span/50+random.Float64()*span*1.04)
	case bag.Switch:
		field.SetSwitch(&spec, random.IntN(2) == 0)
	case bag.Choice:
		field.SetChoice(&spec, field.Options[random.IntN(len(field.Options))])
	}
	return spec
}

// wantGoroutines waits for goroutines that are about to end.
func wantGoroutines(t *testing.T, most int) {
	t.Helper()
	for range 100 {
		if runtime.NumGoroutine() <= most {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Errorf("%d goroutines, before there were %d", runtime.NumGoroutine(), most)
}

// The history forgets its oldest steps beyond ten thousand states, and undo and
// the dirty state go on to be right.
func TestHistoryIsBounded(t *testing.T) {
	const bound, beyond = 10_000, 250
	d := document.New()
	at := func(i int) float64 { return 100 + float64(i)/100 }
	for i := range bound + beyond {
		d.Set(width(d, at(i)))
		if i == 100 {
			d.MarkSaved()
		}
	}
	undone := 0
	for ; d.State().Undo.Label != ""; undone++ {
		d.Undo()
	}
	if undone != bound-1 {
		t.Errorf("%d steps can be undone, want %d", undone, bound-1)
	}
	if state := d.State(); state.Spec.Body.Width != at(beyond) || !state.Dirty {
		t.Errorf("the oldest state has the width %g, dirty %t; want %g", state.Spec.Body.Width, state.Dirty, at(beyond))
	}
	d.Set(width(d, at(100)))
	if d.State().Dirty {
		t.Error("what is on disk counts as unsaved once its step is forgotten")
	}
}
