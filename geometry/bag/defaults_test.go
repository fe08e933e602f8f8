package bag_test

import (
	"math"
	"testing"

	"gussetwright/geometry/bag"
)

// The rules are common practice, no published source: holes half a face apart
// and 25 mm down, a turn-in of 50 mm, cards for a bag on a rope, and more paper
// where a hand reaches through the face.
func TestDerive(t *testing.T) {
	tests := []struct {
		name                  string
		change                func(*bag.Spec)
		spacing, drop, turnIn float64
		topCard, baseCard     bool
	}{
		{"rope", func(*bag.Spec) {}, 120, 25, 50, true, true},
		{"ribbon", func(s *bag.Spec) { s.Handle.Kind = bag.HandleRibbon }, 120, 25, 50, true, true},
		{"tape", func(s *bag.Spec) { s.Handle.Kind = bag.HandleTape }, 120, 25, 50, true, true},
		{"wider face", func(s *bag.Spec) { s.Body.Width = 320 }, 160, 25, 50, true, true},
		{"hand hole", func(s *bag.Spec) { s.Handle.Kind = bag.HandleHandHole }, 120, 45, 80, false, false},
		{"twisted cord", func(s *bag.Spec) { s.Handle.Kind = bag.HandleTwisted }, 120, 25, 50, false, false},
		{"flat strip", func(s *bag.Spec) { s.Handle.Kind = bag.HandleStrip }, 120, 25, 50, false, false},
		{"no handle", func(s *bag.Spec) { s.Handle.Kind = bag.HandleNone }, 120, 25, 50, false, false},
		{"rope through a raw edge", func(s *bag.Spec) { s.Body.Top = bag.TopStraight }, 120, 25, 50, false, true},
		{"rope on a pinch base", func(s *bag.Spec) { s.Body.Base = bag.BasePinch }, 120, 25, 50, true, false},
	}
	for _, test := range tests {
		spec := bag.Default()
		test.change(&spec)
		spec.Derive(func(string) bool { return false })
		if spec.Handle.Spacing != test.spacing || spec.Handle.Drop != test.drop || spec.Body.TurnIn != test.turnIn {
			t.Errorf("%s: spacing %g, drop %g, turn-in %g; want %g, %g, %g", test.name,
				spec.Handle.Spacing, spec.Handle.Drop, spec.Body.TurnIn, test.spacing, test.drop, test.turnIn)
		}
		if spec.Cards.Top != test.topCard || spec.Cards.Base != test.baseCard {
			t.Errorf("%s: cards %v and %v, want %v and %v", test.name,
				spec.Cards.Top, spec.Cards.Base, test.topCard, test.baseCard)
		}
		if err := spec.Validate(); err != nil {
			t.Errorf("%s: %v", test.name, err)
		}
	}
}

func TestDeriveKeepsWhatIsGiven(t *testing.T) {
	for _, path := range []string{"handle.spacing_mm", "handle.drop_mm", "bag.turn_in_mm", "product.ease_mm", "product.headroom_mm"} {
		spec := bag.Default()
		f := field(t, path)
		f.SetNumber(&spec, 77)
		spec.Derive(func(given string) bool { return given == path })
		if got := f.Number(&spec); got != 77 {
			t.Errorf("%s was given as 77 and became %g", path, got)
		}
		spec.Derive(func(string) bool { return false })
		if got := f.Number(&spec); got == 77 {
			t.Errorf("%s was not given and stayed 77", path)
		}
	}
	for _, path := range []string{"cards.top", "cards.base"} {
		spec := bag.Default()
		f := field(t, path)
		f.SetSwitch(&spec, false)
		spec.Derive(func(given string) bool { return given == path })
		if f.Switch(&spec) {
			t.Errorf("%s was switched off and came back", path)
		}
	}
}

// Kraft is brown unless it is said to be bleached; every other paper is white.
func TestPaperColourFollowsTheKind(t *testing.T) {
	for _, kind := range field(t, "paper.kind").Options {
		spec := bag.Default()
		spec.Paper.Kind = bag.PaperKind(kind)
		want := bag.ColourWhite
		if spec.Paper.Kind == bag.PaperKraft {
			want = bag.ColourNatural
		}
		spec.Derive(func(string) bool { return false })
		if spec.Paper.Colour != want {
			t.Errorf("%s is %s, want %s", kind, spec.Paper.Colour, want)
		}
		for _, given := range []bag.PaperColour{bag.ColourWhite, bag.ColourNatural} {
			spec.Paper.Colour = given
			spec.Derive(func(path string) bool { return path == "paper.colour" })
			if spec.Paper.Colour != given {
				t.Errorf("%s was given as %s and became %s", kind, given, spec.Paper.Colour)
			}
		}
	}
}

func TestDeriveTouchesNothingElse(t *testing.T) {
	table := bag.Fields()
	derived := map[string]bool{
		"product.ease_mm": true, "product.headroom_mm": true,
		"handle.spacing_mm": true, "handle.drop_mm": true, "bag.turn_in_mm": true, "cards.top": true, "cards.base": true, "paper.colour": true,
	}
	was, is := bag.Default(), bag.Default()
	for i := range table {
		if f := &table[i]; f.Kind() == bag.Number {
			f.SetNumber(&was, float64(i)+0.25)
			f.SetNumber(&is, float64(i)+0.25)
		}
	}
	is.Derive(func(string) bool { return false })
	for i := range table {
		if f := &table[i]; !derived[f.Path] && f.Text(&was) != f.Text(&is) {
			t.Errorf("%s went from %s to %s", f.Path, f.Text(&was), f.Text(&is))
		}
	}
}

// Base flap: half the gusset and the overlap; a pinch base folds over by the
// overlap alone. 240 × 100 with 20 mm overlap is the worked example (common
// practice, no published source).
func TestDepthsThatFollowFromTheConstruction(t *testing.T) {
	body := bag.Default().Body
	if got := body.BaseFlap(); got != 70 {
		t.Errorf("base flap %g, want 70", got)
	}
	body.Base = bag.BaseSlotted
	if got := body.BaseFlap(); got != 70 {
		t.Errorf("slotted base flap %g, want 70", got)
	}
	body.Base = bag.BasePinch
	if got := body.BaseFlap(); got != 20 {
		t.Errorf("pinch base flap %g, want 20", got)
	}
	for top, want := range map[bag.Top]float64{bag.TopTurnIn: 50, bag.TopStraight: 0, bag.TopZigzag: 0} {
		body.Top = top
		if got := body.TurnInDepth(); got != want {
			t.Errorf("%s: turn-in %g, want %g", top, got, want)
		}
	}
}

// Worked example, common practice, no published source: 310 mm up to the
// flat-fold crease and a gusset of 100 mm stand 360 mm high.
func TestHeightFromFlatFold(t *testing.T) {
	if got := bag.HeightFromFlatFold(310, 100); got != 360 {
		t.Errorf("got %g, want 360", got)
	}
	if got := bag.HeightFromFlatFold(310, 0); got != 310 {
		t.Errorf("flat bag: got %g, want 310", got)
	}
}

// A litre is 1 dm³: a box of 1 × 1 × 1 dm holds one.
func TestVolume(t *testing.T) {
	if got := (bag.Body{Width: 100, Gusset: 100, Height: 100}).Volume(); got != 1 {
		t.Errorf("got %g l, want 1", got)
	}
	if got := bag.Default().Body.Volume(); math.Abs(got-8.64) > 1e-12 {
		t.Errorf("240 × 100 × 360: got %g l, want 8.64", got)
	}
}

func TestHandleKinds(t *testing.T) {
	holes := map[bag.HandleKind]bool{bag.HandleRope: true, bag.HandleRibbon: true}
	slits := map[bag.HandleKind]bool{bag.HandleTape: true}
	patch := map[bag.HandleKind]bool{bag.HandleTwisted: true, bag.HandleStrip: true}
	for _, name := range field(t, "handle.kind").Options {
		kind := bag.HandleKind(name)
		if kind.HasHoles() != holes[kind] || kind.HasSlits() != slits[kind] || kind.HasPatch() != patch[kind] {
			t.Errorf("%s: holes %v, slits %v, patch %v", kind, kind.HasHoles(), kind.HasSlits(), kind.HasPatch())
		}
		if kind.IsThreaded() != (holes[kind] || slits[kind]) {
			t.Errorf("%s: threaded %v", kind, kind.IsThreaded())
		}
	}
}
