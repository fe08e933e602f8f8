package document_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/geometry/bag"
)

// width returns a document's spec with another face width.
func width(d *document.Document, mm float64) bag.Spec {
	spec := d.Project().Spec
	spec.Body.Width = mm
	return spec
}

// steps carries out a row of words: a number sets the width, others act.
func steps(d *document.Document, words string) {
	widths := map[string]float64{"a": 250, "b": 260, "c": 270, "start": 240}
	for _, word := range strings.Fields(words) {
		switch word {
		case "undo":
			d.Undo()
		case "redo":
			d.Redo()
		case "save":
			d.MarkSaved()
		case "drop":
			d.Drop()
		case "cancel":
			d.CancelDrag()
		default:
			if name, dragged := strings.CutPrefix(word, "drag-"); dragged {
				d.Drag(width(d, widths[name]))
			} else {
				d.Set(width(d, widths[word]))
			}
		}
	}
}

// After a row of steps: the width, whether it differs from what was saved, and
// what undo and redo would do.
func TestStepsAndSaving(t *testing.T) {
	for _, test := range []struct {
		steps      string
		width      float64
		dirty      bool
		undo, redo string // From → To of the width
	}{
		{"", 240, false, "", ""},
		{"a", 250, true, "240 mm 250 mm", ""},
		{"a a", 250, true, "240 mm 250 mm", ""},
		{"a undo", 240, false, "", "240 mm 250 mm"},
		{"a undo undo", 240, false, "", "240 mm 250 mm"},
		{"a undo redo redo", 250, true, "240 mm 250 mm", ""},
		{"a save", 250, false, "240 mm 250 mm", ""},
		{"a save undo", 240, true, "", "240 mm 250 mm"},
		{"a save undo redo", 250, false, "240 mm 250 mm", ""},
		{"a save b", 260, true, "250 mm 260 mm", ""},
		{"a save b undo", 250, false, "240 mm 250 mm", "250 mm 260 mm"},
		{"a save b undo undo", 240, true, "", "240 mm 250 mm"},
		{"a b save undo c", 270, true, "250 mm 270 mm", ""},                   // the saved state is cut off
		{"a b save undo c undo", 250, true, "240 mm 250 mm", "250 mm 270 mm"}, // and stays so
		{"a save undo b", 260, true, "240 mm 260 mm", ""},
		{"a save undo b a", 250, false, "260 mm 250 mm", ""}, // back by hand at what is on disk
		{"a start", 240, false, "250 mm 240 mm", ""},
		{"a undo save redo", 250, true, "240 mm 250 mm", ""},
		{"a undo b redo", 260, true, "240 mm 260 mm", ""},

		{"drag-a", 250, true, "", ""},
		{"drag-a drag-start", 240, false, "", ""},
		{"drag-a drag-b drop", 260, true, "240 mm 260 mm", ""},
		{"drag-a drag-b drop undo", 240, false, "", "240 mm 260 mm"},
		{"drag-a drag-start drop", 240, false, "", ""},
		{"drag-a cancel", 240, false, "", ""},
		{"drag-a undo", 240, false, "", ""}, // undo cancels the drag
		{"a drag-b undo", 250, true, "240 mm 250 mm", ""},
		{"a undo drag-b redo", 260, true, "", "240 mm 250 mm"}, // nothing to redo meanwhile
		{"drag-a b", 260, true, "240 mm 260 mm", ""},           // a typed value ends the drag
		{"a drag-b a", 250, true, "240 mm 250 mm", ""},
		{"drag-a save", 250, false, "240 mm 250 mm", ""},
		{"a undo drag-b drop", 260, true, "240 mm 260 mm", ""},
		{"drop cancel", 240, false, "", ""},
	} {
		t.Run(test.steps, func(t *testing.T) {
			d := document.New()
			steps(d, test.steps)
			state := d.State()
			if got := state.Spec.Body.Width; got != test.width {
				t.Errorf("width %g, want %g", got, test.width)
			}
			if state.Dirty != test.dirty {
				t.Errorf("dirty %t, want %t", state.Dirty, test.dirty)
			}
			for _, change := range []struct {
				got  document.Change
				want string
			}{{state.Undo, test.undo}, {state.Redo, test.redo}} {
				if got := strings.TrimSpace(change.got.From + " " + change.got.To); got != change.want {
					t.Errorf("change %+v, want %q", change.got, change.want)
				}
				if (change.want != "") != (change.got.Label == "Face width") {
					t.Errorf("label %q of %q", change.got.Label, change.want)
				}
			}
			if err := state.Err; err != nil || state.Snapshot.Spec.Body.Width != test.width {
				t.Errorf("the snapshot shows %g, %v", state.Snapshot.Spec.Body.Width, err)
			}
		})
	}
}

func TestListeners(t *testing.T) {
	d := document.New()
	var first, second []float64
	hear := func(heard *[]float64) func(document.State) {
		return func(s document.State) { *heard = append(*heard, s.Spec.Body.Width) }
	}
	stopFirst, stopSecond := d.Listen(hear(&first)), d.Listen(hear(&second))
	steps(d, "a a drag-b drag-b drop undo redo redo")
	stopFirst()
	stopFirst() // once more does no harm
	steps(d, "c")
	stopSecond()
	steps(d, "start")
	want := []float64{250, 260, 260, 260, 250, 260}
	if !slices.Equal(first, want) || !slices.Equal(second, append(want, 270)) {
		t.Errorf("heard %v and %v", first, second)
	}
}

// Who is told after a listener that changes the bag hears of the newest state
// last, and of no older one after it.
func TestListenerMayChangeTheBag(t *testing.T) {
	d := document.New()
	var heard []float64
	d.Listen(func(s document.State) {
		if s.Spec.Body.Width == 250 {
			d.Set(width(d, 260))
		}
	})
	d.Listen(func(s document.State) { heard = append(heard, s.Spec.Body.Width) })
	steps(d, "a")
	if !slices.Equal(heard, []float64{260}) {
		t.Errorf("heard %v, want the last state alone", heard)
	}
}

func TestListenerMayStopOthers(t *testing.T) {
	d := document.New()
	var stop func()
	d.Listen(func(document.State) { stop() })
	stop = d.Listen(func(document.State) { t.Error("told after it was stopped") })
	steps(d, "a b")
}

// What cannot be drawn is kept as it was entered; the last bag that could be drawn
// stays in view, whether anybody listens or not.
func TestSpecThatCannotBeDrawn(t *testing.T) {
	d := document.New()
	steps(d, "a")
	bad := d.Project().Spec
	bad.Body.Width = 5
	d.Set(bad)
	state := d.State()
	if state.Err == nil || !strings.Contains(state.Err.Error(), "bag.width_mm") {
		t.Errorf("error %v", state.Err)
	}
	if state.Spec.Body.Width != 5 || state.Snapshot.Spec.Body.Width != 250 {
		t.Errorf("spec %g, snapshot %g", state.Spec.Body.Width, state.Snapshot.Spec.Body.Width)
	}
	d.Undo()
	if state := d.State(); state.Err != nil || state.Spec.Body.Width != 250 {
		t.Errorf("after undo %g, %v", state.Spec.Body.Width, state.Err)
	}
}

func TestSnapshotIsKeptWhileNothingChanges(t *testing.T) {
	d := document.New()
	first := d.State().Snapshot
	if d.State().Snapshot != first {
		t.Error("laid out again for nothing")
	}
	steps(d, "a")
	if d.State().Snapshot == first {
		t.Error("the old snapshot for a new bag")
	}
}

func TestLoadAndRestore(t *testing.T) {
	d := document.New()
	steps(d, "a drag-b")
	told := 0
	d.Listen(func(document.State) { told++ })
	opened := project.Project{Spec: width(d, 300), Files: map[string][]byte{"front.pdf": []byte("%PDF")}, ReadOnly: true}
	d.Load(opened)
	state := d.State()
	if state.Dirty || state.Dragging || !state.ReadOnly || state.Undo.Label != "" || state.Redo.Label != "" || told != 1 {
		t.Errorf("after opening %+v, told %d times", state, told)
	}
	if got := d.Project(); !reflect.DeepEqual(got, opened) {
		t.Errorf("project %+v, want %+v", got, opened)
	}
	opened.Files["front.pdf"], opened.Files["more.pdf"] = nil, nil
	if files := d.Project().Files; len(files) != 1 || string(files["front.pdf"]) != "%PDF" {
		t.Errorf("files %q changed with the map they came in", files)
	}
	d.MarkSaved()
	if d.State().ReadOnly {
		t.Error("still read-only after a copy was saved")
	}
	told = 0
	d.Restore(opened)
	if state := d.State(); !state.Dirty || state.Undo.Label != "" || told != 1 {
		t.Errorf("restored work counts as saved, or was told %d times", told)
	}
	steps(d, "a undo")
	if !d.State().Dirty {
		t.Error("restored work counts as saved after undoing")
	}
}

// The date of a save goes into every state, so that undo and redo know nothing of it.
func TestMarkSavedOn(t *testing.T) {
	d := document.New()
	steps(d, "a b undo drag-c")
	d.MarkSavedOn("2026-03-31")
	for _, step := range []struct {
		do, undo string
		dirty    bool
	}{{"", "Face width", false}, {"undo", "Face width", true}, {"undo", "", true}, {"redo redo", "Face width", false}} {
		steps(d, step.do)
		state := d.State()
		if state.Spec.Date != "2026-03-31" || state.Undo.Label != step.undo || state.Dirty != step.dirty {
			t.Errorf("after %q: date %q, undo %q, dirty %t", step.do, state.Spec.Date, state.Undo.Label, state.Dirty)
		}
	}
}

func TestDay(t *testing.T) {
	today := time.Date(2026, time.November, 25, 12, 0, 0, 0, time.UTC)
	d := document.New()
	if got := d.State().Day(today); got != today {
		t.Errorf("without a date: %v", got)
	}
	d.MarkSavedOn("2026-03-31")
	if got := d.State().Day(today).Format(time.DateOnly); got != "2026-03-31" {
		t.Errorf("of a saved bag: %v", got)
	}
	steps(d, "a")
	if got := d.State().Day(today); got != today {
		t.Errorf("of a changed bag: %v", got)
	}
}
