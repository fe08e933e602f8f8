package bag_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"gussetwright/geometry/bag"
)

func TestDefaultIsValid(t *testing.T) {
	spec := bag.Default()
	if err := spec.Validate(); err != nil {
		t.Error(err)
	}
}

// Every entry that Validate refuses must be refused whatever else is right.
func TestValidateLooksAtEveryField(t *testing.T) {
	table := bag.Fields()
	for i := range table {
		f := &table[i]
		spec := bag.Default()
		switch f.Kind() {
		case bag.Number:
			f.SetNumber(&spec, math.NaN())
		case bag.Choice:
			f.SetChoice(&spec, "none of them")
		case bag.Switch:
			continue
		}
		err := spec.Validate()
		if err == nil || !strings.HasPrefix(err.Error(), f.Path+" ") {
			t.Errorf("%s: got %v", f.Path, err)
		}
	}
}

func TestValidateReportsAllAtOnce(t *testing.T) {
	spec := bag.Default()
	spec.Body.Width, spec.Body.Height, spec.Paper.Kind = 1, math.Inf(1), "silk"
	spec.Name = strings.Repeat("n", 121)
	spec.Artwork = []bag.Artwork{{}}
	err := spec.Validate()
	if err == nil {
		t.Fatal("no complaint")
	}
	for _, path := range []string{"bag.width_mm", "bag.height_mm", "paper.kind", "name", "artwork[0].file", "artwork[0].on", "artwork[0].fit", "artwork[0].scale"} {
		if !strings.Contains("\n"+err.Error(), "\n"+path+" ") {
			t.Errorf("no complaint about %s in\n%v", path, err)
		}
	}
}

func TestEntriesThatDoNotGoTogether(t *testing.T) {
	tests := []struct {
		name   string
		change func(*bag.Spec)
		says   string // empty when the bag can be drawn
	}{
		{"least gusset", func(s *bag.Spec) { s.Body.Gusset = 10 }, ""},
		{"a gusset too narrow", func(s *bag.Spec) { s.Body.Gusset = 9.5 },
			"bag.gusset_mm (Gusset depth D) is 9.5 mm: too narrow to be creased down its middle; enter 0 for a flat bag or at least 10 mm"},
		{"flat bag", func(s *bag.Spec) { s.Body.Gusset, s.Body.Base = 0, bag.BasePinch }, ""},
		{"flat bag with a block", func(s *bag.Spec) { s.Body.Gusset = 0 },
			`bag.base (Base) is block: a bag without gussets has no block to stand on; choose "pinch", or give the gusset a depth`},
		{"flat bag with slots", func(s *bag.Spec) { s.Body.Gusset, s.Body.Base = 0, bag.BaseSlotted }, "no block to stand on"},
		{"least pinch", func(s *bag.Spec) { s.Body.Base, s.Body.BaseOverlap = bag.BasePinch, 5 }, ""},
		{"nothing to pinch", func(s *bag.Spec) { s.Body.Base, s.Body.BaseOverlap = bag.BasePinch, 4 },
			"bag.base_overlap_mm (Base overlap V) is 4 mm: nothing is left to fold over for the pinch base; enter at least 5 mm"},
		{"block base without overlap", func(s *bag.Spec) { s.Body.BaseOverlap = 0 }, ""},
		{"two teeth", func(s *bag.Spec) { s.Body.Top, s.Body.Width, s.Body.ZigzagPitch = bag.TopZigzag, 60, 30 }, ""},
		{"one tooth and a half", func(s *bag.Spec) { s.Body.Top, s.Body.Width, s.Body.ZigzagPitch = bag.TopZigzag, 60, 40 },
			"bag.zigzag_pitch_mm (Zigzag pitch) is 40 mm: fewer than two teeth on the face; enter at most 30 mm"},
		{"coarse teeth that are not cut", func(s *bag.Spec) { s.Body.Width, s.Body.ZigzagPitch = 60, 40 }, ""},
	}
	for _, test := range tests {
		spec := bag.Default()
		test.change(&spec)
		err := spec.Validate()
		if test.says == "" {
			if err != nil {
				t.Errorf("%s: %v", test.name, err)
			}
			continue
		}
		if err == nil || !strings.Contains(err.Error(), test.says) {
			t.Errorf("%s: got %v, want %s", test.name, err, test.says)
		}
	}
}

func TestName(t *testing.T) {
	tests := []struct {
		name  string
		valid bool
	}{
		{"", true}, {"Tea house", true}, {strings.Repeat("ü", 120), true}, {strings.Repeat("ü", 121), false},
	}
	for _, test := range tests {
		spec := bag.Default()
		spec.Name = test.name
		if err := spec.Validate(); (err == nil) != test.valid {
			t.Errorf("a name of %d characters: %v", len([]rune(test.name)), err)
		}
	}
}

func piece() bag.Artwork {
	return bag.Artwork{File: "front.svg", On: "front", Fit: bag.FitCover, Scale: 1}
}

func TestArtworkUpToItsLimits(t *testing.T) {
	tests := []struct {
		name   string
		change func(*bag.Artwork)
		says   string // empty when it is accepted
	}{
		{"as it is", func(*bag.Artwork) {}, ""},
		{"on the whole blank", func(a *bag.Artwork) { a.On = "blank" }, ""},
		{"least scale", func(a *bag.Artwork) { a.Scale = 0.001 }, ""},
		{"most of all", func(a *bag.Artwork) { a.X, a.Y, a.Scale, a.Turn = 5000, -5000, 1000, -360 }, ""},
		{"no file", func(a *bag.Artwork) { a.File = "" }, `artwork[0].file (Artwork) is "": no file is named`},
		{"no place", func(a *bag.Artwork) { a.On = "lid" }, `artwork[0].on (Artwork) is "lid": not a place on the blank; choose blank, front`},
		{"no fit", func(a *bag.Artwork) { a.Fit = "stretch" }, `"stretch": not one of the choices; choose cover, contain or exact`},
		{"scaled to nothing", func(a *bag.Artwork) { a.Scale = 0 }, "artwork[0].scale (Artwork) is 0: outside 0.001 to 1000"},
		{"mirrored", func(a *bag.Artwork) { a.Scale = -1 }, "artwork[0].scale (Artwork) is -1: outside"},
		{"too large", func(a *bag.Artwork) { a.Scale = 1000.5 }, "artwork[0].scale (Artwork) is 1000.5: outside"},
		{"x beyond", func(a *bag.Artwork) { a.X = 5000.5 }, "artwork[0].x_mm (Artwork) is 5000.5: outside -5000 to 5000"},
		{"y no number", func(a *bag.Artwork) { a.Y = math.NaN() }, "artwork[0].y_mm (Artwork) is NaN: outside"},
		{"y endless", func(a *bag.Artwork) { a.Y = math.Inf(-1) }, "artwork[0].y_mm (Artwork) is -Inf: outside"},
		{"turned twice", func(a *bag.Artwork) { a.Turn = 720 }, "artwork[0].turn_deg (Artwork) is 720: outside -360 to 360"},
	}
	for _, test := range tests {
		spec := bag.Default()
		placed := piece()
		test.change(&placed)
		spec.Artwork = []bag.Artwork{placed}
		err := spec.Validate()
		if test.says == "" {
			if err != nil {
				t.Errorf("%s: %v", test.name, err)
			}
			continue
		}
		if err == nil || !strings.Contains(err.Error(), test.says) {
			t.Errorf("%s: got %v, want %s", test.name, err, test.says)
		}
	}
}

func TestTooManyPiecesOfArtwork(t *testing.T) {
	for count, valid := range map[int]bool{64: true, 65: false} {
		spec := bag.Default()
		for range count {
			spec.Artwork = append(spec.Artwork, piece())
		}
		err := spec.Validate()
		if (err == nil) != valid {
			t.Errorf("%d pieces: %v", count, err)
		}
		if !valid && !strings.Contains(err.Error(), fmt.Sprintf("artwork is a list of %d: more than 64 pieces; join", count)) {
			t.Errorf("%d pieces: %v", count, err)
		}
	}
}
