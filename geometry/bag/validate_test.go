package bag_test

import (
	"fmt"
	"math"
	"slices"
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
	for _, path := range []string{
		"bag.width_mm", "bag.height_mm", "paper.kind", "name", "artwork[0].file", "artwork[0].on", "artwork[0].fit", "artwork[0].scale",
		"artwork[0].repeat", "artwork[0].holds", "artwork[0].page",
	} {
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
		{
			"a gusset too narrow", func(s *bag.Spec) { s.Body.Gusset = 9.5 },
			"bag.gusset_mm (Gusset depth D) is 9.5 mm: too narrow to be creased down its middle; enter 0 for a flat bag or at least 10 mm",
		},
		{"flat bag", func(s *bag.Spec) { s.Body.Gusset, s.Body.Base = 0, bag.BasePinch }, ""},
		{
			"flat bag with a block", func(s *bag.Spec) { s.Body.Gusset = 0 },
			`bag.base (Base) is block: a bag without gussets has no block to stand on; choose "pinch", or give the gusset a depth`,
		},
		{"flat bag with slots", func(s *bag.Spec) { s.Body.Gusset, s.Body.Base = 0, bag.BaseSlotted }, "no block to stand on"},
		{"least pinch", func(s *bag.Spec) { s.Body.Base, s.Body.BaseOverlap = bag.BasePinch, 5 }, ""},
		{
			"nothing to pinch", func(s *bag.Spec) { s.Body.Base, s.Body.BaseOverlap = bag.BasePinch, 4 },
			"bag.base_overlap_mm (Base overlap V) is 4 mm: nothing is left to fold over for the pinch base; enter at least 5 mm",
		},
		{"block base without overlap", func(s *bag.Spec) { s.Body.BaseOverlap = 0 }, ""},
		{"two teeth", func(s *bag.Spec) { s.Body.Top, s.Body.Width, s.Body.ZigzagPitch = bag.TopZigzag, 60, 30 }, ""},
		{
			"one tooth and a half", func(s *bag.Spec) { s.Body.Top, s.Body.Width, s.Body.ZigzagPitch = bag.TopZigzag, 60, 40 },
			"bag.zigzag_pitch_mm (Zigzag pitch) is 40 mm: fewer than two teeth on the face; enter at most 30 mm",
		},
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
	return bag.NewArtwork("front.svg", "front")
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
		{"most of all", func(a *bag.Artwork) { a.X, a.Y, a.Scale, a.Turn, a.Page = 5000, -5000, 1000, -360, 10_000 }, ""},
		{"mirrored", func(a *bag.Artwork) { a.Mirror = true }, ""},
		{"invisible", func(a *bag.Artwork) { a.Opacity = 0 }, ""},
		{"repeated", func(a *bag.Artwork) { a.Repeat = bag.RepeatGrid }, ""},
		{"repeated with half a drop", func(a *bag.Artwork) { a.Repeat = bag.RepeatHalfDrop }, ""},
		{"a bar code", func(a *bag.Artwork) { a.Holds = bag.HoldsEAN13 }, ""},
		{"no file", func(a *bag.Artwork) { a.File = "" }, `artwork[0].file (Artwork) is "": no file is named`},
		{"no place", func(a *bag.Artwork) { a.On = "lid" }, `artwork[0].on (Artwork) is "lid": not a place on the blank; choose blank, front-piece, back-piece, faces, gussets, front, back`},
		{"no fit", func(a *bag.Artwork) { a.Fit = "stretch" }, `"stretch": not one of the choices; choose cover, contain or exact`},
		{"scaled to nothing", func(a *bag.Artwork) { a.Scale = 0 }, "artwork[0].scale (Artwork) is 0: outside 0.001 to 1000"},
		{"scaled below nothing", func(a *bag.Artwork) { a.Scale = -1 }, "artwork[0].scale (Artwork) is -1: outside"},
		{"too large", func(a *bag.Artwork) { a.Scale = 1000.5 }, "artwork[0].scale (Artwork) is 1000.5: outside"},
		{"x beyond", func(a *bag.Artwork) { a.X = 5000.5 }, "artwork[0].x_mm (Artwork) is 5000.5 mm: outside -5000 to 5000 mm"},
		{"y no number", func(a *bag.Artwork) { a.Y = math.NaN() }, "artwork[0].y_mm (Artwork) is NaN mm: outside"},
		{"y endless", func(a *bag.Artwork) { a.Y = math.Inf(-1) }, "artwork[0].y_mm (Artwork) is -Inf mm: outside"},
		{"turned twice", func(a *bag.Artwork) { a.Turn = 720 }, "artwork[0].turn_deg (Artwork) is 720: outside -360 to 360"},
		{"page before the first", func(a *bag.Artwork) { a.Page = 0 }, "artwork[0].page (Artwork) is 0: outside 1 to 10000"},
		{"page beyond", func(a *bag.Artwork) { a.Page = 10_001 }, "artwork[0].page (Artwork) is 10001: outside 1 to 10000"},
		{"half a page", func(a *bag.Artwork) { a.Page = 1.5 }, "artwork[0].page (Artwork) is 1.5: not a whole number; count the pages from 1"},
		{"page no number", func(a *bag.Artwork) { a.Page = math.NaN() }, "artwork[0].page (Artwork) is NaN: outside"},
		{"less than invisible", func(a *bag.Artwork) { a.Opacity = -1 }, "artwork[0].opacity_percent (Artwork) is -1: outside 0 to 100"},
		{"more than opaque", func(a *bag.Artwork) { a.Opacity = 101 }, "artwork[0].opacity_percent (Artwork) is 101: outside 0 to 100"},
		{"no repeat", func(a *bag.Artwork) { a.Repeat = "brick" }, `artwork[0].repeat (Artwork) is "brick": not one of the choices; choose none, grid or half-drop`},
		{"no content", func(a *bag.Artwork) { a.Holds = "" }, `artwork[0].holds (Artwork) is "": not one of the choices; choose picture or ean-13`},
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

// Everywhere that artwork may lie is accepted, and each place once.
func TestArtworkPlaces(t *testing.T) {
	places := bag.ArtworkPlaces()
	seen := map[string]bool{}
	for _, place := range places {
		spec := bag.Default()
		spec.Artwork = []bag.Artwork{bag.NewArtwork("front.svg", place)}
		if err := spec.Validate(); err != nil || seen[place] {
			t.Errorf("%s: seen before %v, %v", place, seen[place], err)
		}
		seen[place] = true
	}
	places[0] = "changed"
	if bag.ArtworkPlaces()[0] != bag.OnBlank {
		t.Error("the list of places can be changed from outside")
	}
}

func TestFileNames(t *testing.T) {
	spec := bag.Default()
	if got := spec.FileNames(); len(got) != 0 {
		t.Errorf("a bag without files names %q", got)
	}
	for _, file := range []string{"front.svg", "back.svg", "", "front.svg"} {
		spec.Artwork = append(spec.Artwork, bag.NewArtwork(file, "front"))
	}
	spec.Profile = "coated.icc"
	if got := spec.FileNames(); !slices.Equal(got, []string{"front.svg", "back.svg", "coated.icc"}) {
		t.Errorf("got %q", got)
	}
	spec.Profile = "back.svg"
	if got := spec.FileNames(); !slices.Equal(got, []string{"front.svg", "back.svg"}) {
		t.Errorf("named twice: got %q", got)
	}
}
