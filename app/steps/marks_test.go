package steps

import (
	"testing"

	"gussetwright/app/document"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
)

// Each change to the default bag causes a warning or an error, which is to mark its step.
func TestFindingMarksItsStep(t *testing.T) {
	for name, c := range map[string]struct {
		step   int
		change func(*bag.Spec)
	}{
		"narrow seam flap":         {bagStep, func(s *bag.Spec) { s.Body.SeamFlap = 8 }},
		"hole near the edge":       {carryStep, func(s *bag.Spec) { s.Handle.Spacing = 210 }},
		"base card without a base": {carryStep, func(s *bag.Spec) { s.Body.Base = bag.BasePinch }},
		"light paper":              {paperStep, func(s *bag.Spec) { s.Paper.Grammage = 90 }},
		"small sheet":              {sheetStep, func(s *bag.Spec) { s.Sheet.Width, s.Sheet.Height = 500, 350 }},
	} {
		spec := bag.Default()
		c.change(&spec)
		snapshot, err := document.Derive(spec)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if got := marks(&spec, snapshot.Findings, nil)[c.step]; got == "" || got == check.Note {
			t.Errorf("%s: step %d is marked %q", name, c.step, got)
		}
	}
}

func TestMarksShowTheWorst(t *testing.T) {
	spec := bag.Default()
	findings := []check.Finding{
		{Code: "cord-loop", Severity: check.Note}, {Code: "hole-near-top", Severity: check.Error}, {Code: "holes-close", Severity: check.Warning},
	}
	got := marks(&spec, findings, []*bag.FieldError{{Path: "bag.gusset_mm"}, {Path: "artwork[3].file"}})
	want := [stepCount]check.Severity{carryStep: check.Error, bagStep: check.Error, artworkStep: check.Error}
	if got != want {
		t.Errorf("marks %q, want %q", got, want)
	}
}

// Every entry of a bag stands in exactly one step.
func TestEveryFieldHasOneEntry(t *testing.T) {
	panel, _ := newDesk(t)
	where := map[string]int{}
	for step := range stepCount {
		if step == filesStep {
			continue
		}
		for _, s := range panel.slots(step) {
			if other, twice := where[s.Path]; twice {
				t.Errorf("%s stands in step %d and in step %d", s.Path, other, step)
			}
			where[s.Path] = step
		}
	}
	for _, field := range bag.Fields() {
		step, found := where[field.Path]
		if !found || step != stepOf(field.Path) {
			t.Errorf("%s stands in step %d (found: %v), want %d", field.Path, step, found, stepOf(field.Path))
		}
	}
	if len(where) != len(bag.Fields())+2 {
		t.Errorf("%d entries for %d fields, a name and a currency", len(where), len(bag.Fields()))
	}
}
