package steppage

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"gussetwright/app/document"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
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

func TestEveryFindingHasAnEntry(t *testing.T) {
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
		}
	}
}

// Each change to the default bag causes a finding, which is to stand at an entry.
func TestFindingStandsAtItsEntry(t *testing.T) {
	tests := []struct {
		code   string
		change func(*bag.Spec)
		entry  string
	}{
		{"seam-flap-narrow", func(s *bag.Spec) { s.Body.SeamFlap = 8 }, "bag.seam_flap_mm"},
		{"hole-near-edge", func(s *bag.Spec) { s.Handle.Spacing = 210 }, "handle.spacing_mm"},
		{
			"hole-near-edge", func(s *bag.Spec) {
				s.Handle.Kind = bag.HandleHandHole
				s.Handle.HandHoleWidth = 200
				s.Body.Width = 220
			},
			"handle.hand_hole_width_mm",
		},
		{"card-without-place", func(s *bag.Spec) { s.Body.Top = bag.TopStraight }, "cards.top"},
		{"card-without-place", func(s *bag.Spec) { s.Body.Base = bag.BasePinch }, "cards.base"},
		{"grammage-light", func(s *bag.Spec) { s.Paper.Grammage = 90 }, "paper.grammage_gsm"},
		{"grain-across", func(s *bag.Spec) { s.Paper.Grain = bag.GrainWidth }, "paper.grain"},
		{"no-sheet-fits", func(s *bag.Spec) { s.Sheet.Width, s.Sheet.Height = 500, 350 }, "sheet.width_mm"},
		{"margin-less-than-bleed", func(s *bag.Spec) { s.Sheet.Tail = 2 }, "sheet.side_mm"},
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
				if got := EntryOf(f, &spec); got != test.entry {
					t.Errorf("%s stands at %q, want %q", test.code, got, test.entry)
				}
			}
		}
		if !found {
			t.Errorf("%s is not found", test.code)
		}
	}
}
