package document_test

import (
	"slices"
	"testing"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/geometry/bag"
)

func sizes(letters string) (kept []project.KeptSize) {
	for i, letter := range letters {
		kept = append(kept, project.KeptSize{Letter: string(letter), Width: 200 + 10*float64(i), Gusset: 80, Height: 300})
	}
	return kept
}

// Keeping a size leaves the bag and its history alone, and no undo takes it away; it only
// is to be saved.
func TestKeptSizesAreNoSteps(t *testing.T) {
	d := document.New()
	steps(d, "a b")
	d.MarkSaved()
	steps(d, "undo")
	before, told := d.State(), 0
	d.Listen(func(document.State) { told++ })
	d.Keep(sizes("AB"))
	d.Keep(sizes("AB"))
	state := d.State()
	if told != 1 || state.Undo != before.Undo || state.Redo != before.Redo || state.Snapshot != before.Snapshot {
		t.Errorf("told %d times; undo %+v, redo %+v", told, state.Undo, state.Redo)
	}
	steps(d, "redo")
	if !d.State().Dirty || !slices.Equal(d.Kept(), sizes("AB")) {
		t.Errorf("the bag is as it was saved, what is kept is not: dirty %t, kept %v", d.State().Dirty, d.Kept())
	}
	steps(d, "undo undo redo redo")
	if !slices.Equal(d.Kept(), sizes("AB")) {
		t.Errorf("undone: %v", d.Kept())
	}
	if d.Keep(nil); d.State().Dirty {
		t.Error("what is kept is as it was saved, and counts as changed")
	}
}

func TestKeptSizesBelongToTheProject(t *testing.T) {
	d := document.New()
	given := sizes("AB")
	d.Load(project.Project{Spec: bag.Default(), Kept: given})
	given[0].Width = 1
	d.Kept()[1].Width = 1
	d.Project().Kept[1].Width = 1
	if !slices.Equal(d.Kept(), sizes("AB")) || d.State().Dirty {
		t.Errorf("opened: %v, dirty %t", d.Kept(), d.State().Dirty)
	}
	d.Keep(sizes("ABC"))
	if got := d.Project().Kept; !slices.Equal(got, sizes("ABC")) || !d.State().Dirty {
		t.Errorf("to be saved: %v, dirty %t", got, d.State().Dirty)
	}
	for name, mark := range map[string]func(){"MarkSaved": d.MarkSaved, "MarkSavedOn": func() { d.MarkSavedOn("2026-03-31") }} {
		d.Keep(sizes("ABCD"))
		if mark(); d.State().Dirty {
			t.Errorf("%s leaves it dirty", name)
		}
		d.Keep(sizes("ABC"))
	}
	d.Restore(project.Project{Spec: bag.Default(), Kept: sizes("A")})
	if !slices.Equal(d.Kept(), sizes("A")) || !d.State().Dirty {
		t.Errorf("restored: %v", d.Kept())
	}
	if d.Load(project.Project{Spec: bag.Default()}); len(d.Kept()) != 0 || d.State().Dirty {
		t.Errorf("another project keeps %v", d.Kept())
	}
}

// What is kept while a slow disk writes is not saved with it.
func TestKeptWhileSaving(t *testing.T) {
	d := document.New()
	d.Keep(sizes("A"))
	saving := d.Project()
	d.Keep(sizes("AB"))
	d.MarkKeptSaved(saving.Kept)
	d.MarkSpecSavedOn(saving.Spec, "2026-03-31")
	if !d.State().Dirty {
		t.Error("B counts as saved")
	}
	if d.Keep(sizes("A")); d.State().Dirty {
		t.Error("A counts as unsaved")
	}
}

// The day of a bag is that of its last change, and keeping a size is none.
func TestKeepingIsNoChangeOfTheDay(t *testing.T) {
	d := document.New()
	d.MarkSavedOn("2026-03-31")
	d.Keep(sizes("A"))
	today := time.Date(2026, time.November, 25, 12, 0, 0, 0, time.UTC)
	if got := d.State().Day(today).Format(time.DateOnly); got != "2026-03-31" {
		t.Errorf("the day of the bag is %s", got)
	}
}
