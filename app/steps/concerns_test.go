package steps

import (
	"errors"
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"fyne.io/fyne/v2/test"

	"gussetwright/app/document"
	"gussetwright/assets"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/product"
)

// codes returns the codes of all findings, as they stand in the source of package
// check.
func codes(t *testing.T) []string {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(geomtest.Root(t), "geometry", "check", "*.go"))
	if err != nil {
		t.Fatal(err)
	}
	found := regexp.MustCompile(`l\.find\([^"]*"([a-z-]+)"`)
	seen := map[string]bool{}
	var list []string
	for _, path := range paths {
		source, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		for _, match := range found.FindAllSubmatch(source, -1) {
			if code := string(match[1]); !seen[code] {
				seen[code] = true
				list = append(list, code)
			}
		}
	}
	if len(list) < 30 {
		t.Fatalf("only %d codes found", len(list))
	}
	return list
}

func TestEveryFindingHasAStep(t *testing.T) {
	known := codes(t)
	for _, code := range known {
		if len(concerns[code]) == 0 {
			t.Errorf("finding %q belongs to no entry", code)
		}
	}
	if len(concerns) != len(known) {
		t.Errorf("%d findings have entries, and there are %d", len(concerns), len(known))
	}
	for code, paths := range concerns {
		for _, path := range paths {
			if _, found := bag.FieldAt(path); !found {
				t.Errorf("%s: no entry %q", code, path)
			}
			if stepOf(path) < 0 {
				t.Errorf("%s: %q stands in no step", code, path)
			}
		}
	}
}

// Each change to the default bag causes a finding, which is to stand at an entry.
func TestFindingStandsAtItsEntry(t *testing.T) {
	tests := []struct {
		code   string
		change func(*bag.Spec)
		entry  string
		step   int
	}{
		{"seam-flap-narrow", func(s *bag.Spec) { s.Body.SeamFlap = 8 }, "bag.seam_flap_mm", bagStep},
		{"hole-near-edge", func(s *bag.Spec) { s.Handle.Spacing = 210 }, "handle.spacing_mm", carryStep},
		{
			"hole-near-edge", func(s *bag.Spec) {
				s.Handle.Kind = bag.HandleHandHole
				s.Handle.HandHoleWidth = 200
				s.Body.Width = 220
			},
			"handle.hand_hole_width_mm", carryStep,
		},
		{"card-without-place", func(s *bag.Spec) { s.Body.Top = bag.TopStraight }, "cards.top", carryStep},
		{"card-without-place", func(s *bag.Spec) { s.Body.Base = bag.BasePinch }, "cards.base", carryStep},
		{"grammage-light", func(s *bag.Spec) { s.Paper.Grammage = 90 }, "paper.grammage_gsm", paperStep},
		{"grain-across", func(s *bag.Spec) { s.Paper.Grain = bag.GrainWidth }, "paper.grain", paperStep},
		{"no-sheet-fits", func(s *bag.Spec) { s.Sheet.Width, s.Sheet.Height = 500, 350 }, "sheet.width_mm", sheetStep},
		{"margin-less-than-bleed", func(s *bag.Spec) { s.Sheet.Tail = 2 }, "sheet.side_mm", sheetStep},
	}
	for _, test := range tests {
		spec := bag.Default()
		test.change(&spec)
		snapshot, err := document.Derive(spec)
		if err != nil {
			t.Errorf("%s: %v", test.code, err)
			continue
		}
		found := false
		for i := range snapshot.Findings {
			if f := &snapshot.Findings[i]; f.Code == test.code {
				found = true
				if got := entryOf(f, &spec); got != test.entry {
					t.Errorf("%s stands at %q, want %q", test.code, got, test.entry)
				}
			}
		}
		if !found {
			t.Errorf("%s is not found", test.code)
		}
		if got := marks(&spec, snapshot.Findings, nil)[test.step]; got == "" || got == check.Note {
			t.Errorf("%s: step %d is marked %q", test.code, test.step, got)
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

func TestComplaintsIn(t *testing.T) {
	spec := bag.Default()
	spec.Body.Gusset, spec.Body.BaseOverlap, spec.Body.Base = 5, 2, bag.BasePinch
	got := complaintsIn(spec.Validate())
	if len(got) != 2 || got[0].Path != "bag.gusset_mm" || got[1].Path != "bag.base_overlap_mm" {
		t.Errorf("complaints %v", got)
	}
	if complaintsIn(nil) != nil || complaintsIn(errors.New("other")) != nil {
		t.Error("complaints out of nothing")
	}
}

// Every entry of a bag stands in exactly one step, under a heading of its own.
func TestEveryFieldHasOneEntry(t *testing.T) {
	panel, _ := newDesk(t)
	where := map[string]int{}
	for step := range stepCount {
		if step == filesStep {
			continue
		}
		for _, s := range panel.page(step).slots {
			if other, twice := where[s.path]; twice {
				t.Errorf("%s stands in step %d and in step %d", s.path, other, step)
			}
			where[s.path] = step
		}
		for _, g := range panel.page(step).groups {
			if len(g.slots) == 0 {
				t.Errorf("step %d has a heading without entries", step)
			}
		}
	}
	for _, field := range bag.Fields() {
		step, found := where[field.Path]
		if !found || step != stepOf(field.Path) {
			t.Errorf("%s stands in step %d (found: %v), want %d", field.Path, step, found, stepOf(field.Path))
		}
	}
	if len(where) != len(bag.Fields())+1 { // and the name
		t.Errorf("%d entries for %d fields and a name", len(where), len(bag.Fields()))
	}
}

// Every usual size has a name in the language of the user.
func TestEveryUsualSizeHasAName(t *testing.T) {
	test.NewTempApp(t)
	sizes, err := product.ReadUsual(assets.UsualSizes)
	if err != nil {
		t.Fatal(err)
	}
	names := usualNames()
	for _, size := range sizes {
		if names[size.Name] == "" {
			t.Errorf("%q has no name", size.Name)
		}
	}
	if len(names) != len(sizes) {
		t.Errorf("%d names for %d sizes", len(names), len(sizes))
	}
}
