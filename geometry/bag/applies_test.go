package bag_test

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/job"
	"gussetwright/geometry/sheet"
)

func TestApplies(t *testing.T) {
	tests := []struct {
		name    string
		change  func(*bag.Spec)
		apply   []string
		applies bool
	}{
		{"turned in", func(*bag.Spec) {}, []string{"bag.turn_in_mm", "cards.top"}, true},
		{"turned in", func(*bag.Spec) {}, []string{"bag.zigzag_pitch_mm", "bag.zigzag_depth_mm", "bag.slot_width_mm"}, false},
		{"zigzag", func(s *bag.Spec) { s.Body.Top = bag.TopZigzag }, []string{"bag.zigzag_pitch_mm", "bag.zigzag_depth_mm"}, true},
		{"zigzag", func(s *bag.Spec) { s.Body.Top = bag.TopZigzag }, []string{"bag.turn_in_mm", "cards.top_grammage_gsm", "cards.top_edge_margin_mm"}, false},
		{"straight", func(s *bag.Spec) { s.Body.Top = bag.TopStraight }, []string{"bag.turn_in_mm", "bag.zigzag_pitch_mm"}, false},
		{"slotted", func(s *bag.Spec) { s.Body.Base = bag.BaseSlotted }, []string{"bag.slot_width_mm", "bag.base_overlap_mm"}, true},
		{"pinch", func(s *bag.Spec) { s.Body.Base = bag.BasePinch; s.Cards.Base = false }, []string{"cards.base", "cards.base_grammage_gsm", "bag.slot_width_mm"}, false},
		{"pinch", func(s *bag.Spec) { s.Body.Base = bag.BasePinch }, []string{"bag.base_overlap_mm"}, true},
		// A card that has no place can still be left out.
		{"pinch with base card", func(s *bag.Spec) { s.Body.Base = bag.BasePinch; s.Cards.Base = true }, []string{"cards.base"}, true},
		{"straight with top cards", func(s *bag.Spec) { s.Body.Top = bag.TopStraight; s.Cards.Top = true }, []string{"cards.top"}, true},
		{
			"rope", func(s *bag.Spec) { s.Handle.Kind = bag.HandleRope },
			[]string{"handle.hole_diameter_mm", "handle.spacing_mm", "handle.drop_mm", "handle.rise_mm", "handle.knot_mm", "handle.eyelets"},
			true,
		},
		{
			"rope", func(s *bag.Spec) { s.Handle.Kind = bag.HandleRope },
			[]string{"handle.hand_hole_width_mm", "handle.hand_hole_height_mm", "handle.patch_width_mm", "handle.patch_height_mm"},
			false,
		},
		{"ribbon", func(s *bag.Spec) { s.Handle.Kind = bag.HandleRibbon }, []string{"handle.hole_diameter_mm", "handle.eyelets"}, true},
		{
			"hand hole", func(s *bag.Spec) { s.Handle.Kind = bag.HandleHandHole },
			[]string{"handle.hand_hole_width_mm", "handle.hand_hole_height_mm", "handle.drop_mm"},
			true,
		},
		{
			"hand hole", func(s *bag.Spec) { s.Handle.Kind = bag.HandleHandHole },
			[]string{"handle.hole_diameter_mm", "handle.spacing_mm", "handle.rise_mm", "handle.knot_mm", "handle.eyelets", "handle.patch_width_mm"},
			false,
		},
		{
			"twisted", func(s *bag.Spec) { s.Handle.Kind = bag.HandleTwisted },
			[]string{"handle.patch_width_mm", "handle.patch_height_mm", "handle.spacing_mm", "handle.drop_mm", "handle.rise_mm"},
			true,
		},
		{
			"tape", func(s *bag.Spec) { s.Handle.Kind = bag.HandleTape },
			[]string{"handle.slit_height_mm", "handle.spacing_mm", "handle.drop_mm", "handle.rise_mm", "handle.knot_mm", "prices.rope_per_m", "prices.handles_per_1000_bags"},
			true,
		},
		{
			"tape", func(s *bag.Spec) { s.Handle.Kind, s.Handle.Eyelets = bag.HandleTape, true },
			[]string{"handle.hole_diameter_mm", "handle.eyelets", "handle.hand_hole_width_mm", "handle.patch_width_mm", "prices.eyelets_per_1000"},
			false,
		},
		{"rope", func(s *bag.Spec) { s.Handle.Kind = bag.HandleRope }, []string{"handle.slit_height_mm"}, false},
		{"strip", func(s *bag.Spec) { s.Handle.Kind = bag.HandleStrip }, []string{"handle.hole_diameter_mm", "handle.eyelets"}, false},
		{
			"none", func(s *bag.Spec) { s.Handle.Kind = bag.HandleNone },
			[]string{
				"handle.hole_diameter_mm", "handle.spacing_mm", "handle.drop_mm", "handle.rise_mm", "handle.knot_mm", "handle.eyelets",
				"handle.hand_hole_width_mm", "handle.patch_width_mm",
			},
			false,
		},
		{
			"no cards", func(s *bag.Spec) { s.Cards.Top, s.Cards.Base = false, false },
			[]string{"cards.clearance_mm", "cards.top_edge_margin_mm", "cards.top_grammage_gsm", "cards.base_grammage_gsm"},
			false,
		},
		{"base card", func(s *bag.Spec) { s.Cards.Top, s.Cards.Base = false, true }, []string{"cards.clearance_mm", "cards.base_grammage_gsm"}, true},
		{"any", func(*bag.Spec) {}, []string{"bag.width_mm", "paper.kind", "sheet.gap_mm", "print.bleed_mm", "run.quantity", "handle.kind"}, true},
	}
	for _, test := range tests {
		spec := bag.Default()
		test.change(&spec)
		for _, path := range test.apply {
			if _, known := bag.FieldAt(path); !known {
				t.Errorf("no field %q", path)
			}
			if got := bag.Applies(path, &spec); got != test.applies {
				t.Errorf("%s: %s applies %v, want %v", test.name, path, got, test.applies)
			}
		}
	}
}

// made is everything that is cut, printed and bought for a bag.
type made struct {
	pieces []blank.Piece
	cards  []blank.Card
	job    job.Job
}

func makeAll(spec bag.Spec) made {
	laid := blank.Lay(spec)
	plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
	return made{laid.Pieces, laid.Cards, job.Reckon(&laid, &plan)}
}

// An entry that does not apply changes nothing, whatever is entered.
func TestWhatDoesNotApplyChangesNothing(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 1))
	idle := map[string]bool{}
	for range 60 {
		spec := geomtest.RandomBag(random)
		before := makeAll(spec)
		table := bag.Fields()
		for i := range table {
			field := &table[i]
			if bag.Applies(field.Path, &spec) {
				continue
			}
			idle[field.Path] = true
			changed := spec
			switch field.Kind() {
			case bag.Number:
				field.SetNumber(&changed, field.Least+(field.Most-field.Least)*random.Float64())
			case bag.Switch:
				field.SetSwitch(&changed, !field.Switch(&spec))
			}
			if after := makeAll(changed); !reflect.DeepEqual(before, after) {
				t.Errorf("%s does not apply, but changes the bag", field.Path)
			}
		}
	}
	if len(idle) < 15 {
		t.Errorf("only %d entries were seen not to apply: %v", len(idle), idle)
	}
}

// Every path that Applies names is an entry: an entry that is renamed must not
// quietly apply always.
func TestEveryConditionIsMet(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 2))
	conditional := []string{
		"bag.turn_in_mm", "bag.zigzag_pitch_mm", "bag.zigzag_depth_mm", "bag.slot_width_mm",
		"handle.hole_diameter_mm", "handle.eyelets", "handle.spacing_mm", "handle.rise_mm", "handle.knot_mm", "handle.drop_mm",
		"handle.hand_hole_width_mm", "handle.hand_hole_height_mm", "handle.patch_width_mm", "handle.patch_height_mm",
		"handle.slit_height_mm", "cards.top", "cards.base", "cards.top_edge_margin_mm", "cards.top_grammage_gsm", "cards.base_grammage_gsm", "cards.clearance_mm", "run.most_forms",
		"prices.lamination_per_m2", "prices.handles_per_1000_bags", "prices.rope_per_m", "prices.eyelets_per_1000", "prices.board_per_kg",
	}
	var seen []string
	for range 200 {
		spec := geomtest.RandomBag(random)
		for _, field := range bag.Fields() {
			if !bag.Applies(field.Path, &spec) && !slices.Contains(seen, field.Path) {
				seen = append(seen, field.Path)
			}
		}
	}
	slices.Sort(seen)
	slices.Sort(conditional)
	if !slices.Equal(seen, conditional) {
		t.Errorf("entries that sometimes do not apply:\n%s\nwant\n%s", strings.Join(seen, "\n"), strings.Join(conditional, "\n"))
	}
}

// What is asked of a bag with a glued handle speaks of no hole, knot or rope.
func TestGluedHandlesHaveNoHoles(t *testing.T) {
	for _, kind := range []bag.HandleKind{bag.HandleTwisted, bag.HandleStrip} {
		spec := bag.Default()
		spec.Handle.Kind = kind
		fields := bag.Fields()
		for i := range fields {
			field := &fields[i]
			if !strings.HasPrefix(field.Path, "handle.") && !strings.HasPrefix(field.Path, "prices.") || !bag.Applies(field.Path, &spec) {
				continue
			}
			for _, word := range []string{"hole", "knot", "rope"} {
				if strings.Contains(strings.ToLower(field.Label), word) {
					t.Errorf("%s: %s is called %q", kind, field.Path, field.Label)
				}
			}
		}
		if name := kind.Name(); !strings.Contains(string(name), "paper") {
			t.Errorf("%s is called %q", kind, name)
		}
	}
}
