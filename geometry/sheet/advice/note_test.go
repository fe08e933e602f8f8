package advice_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/check"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/sheet"
	"gussetwright/geometry/sheet/advice"
)

// The worked example, common practice, no published source, half a millimetre wider: 701
// × 480 lies once on 1000 × 700 gripped at a short edge. One millimetre less and it lies
// twice.
func TestNote(t *testing.T) {
	wider := func(s *bag.Spec) {
		s.Body.Width = 240.5
		s.Sheet = bag.Sheet{Width: 1000, Height: 700, Gripper: 20, GripperEdge: bag.GripperShort, Grain: bag.GrainEither, GrainRule: bag.GrainRequired}
	}
	cases := []struct {
		name            string
		change          func(*bag.Spec)
		message, remedy string
	}{
		{"a millimetre too wide", wider, "the sheet is 1-up; 2-up if the seam flap were 19 mm instead of 20 mm", "make the seam flap 19 mm, unless it has to be as it is"},
		{"two up", func(s *bag.Spec) { wider(s); s.Body.Width = 240 }, "", ""},
		{"the other gripper edge holds two", func(s *bag.Spec) { wider(s); s.Body.Width, s.Sheet.GripperEdge = 240, bag.GripperLong }, "", ""},
		{"nothing fits", func(s *bag.Spec) { wider(s); s.Sheet.Width, s.Sheet.Height = 697, 520 }, "", ""},
		{"far too wide", func(s *bag.Spec) { wider(s); s.Body.Width = 300 }, "", ""},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			spec := geomtest.WorkedExample()
			c.change(&spec)
			laid := blank.Lay(spec)
			plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
			note, found := advice.Note(&laid, &plan)
			if found != (c.message != "") || note.Message.String() != c.message || note.Remedy.String() != c.remedy {
				t.Fatalf("%d-up, note %t: %q; %q", plan.Up(), found, note.Message, note.Remedy)
			}
			if found && (note.Severity != check.Note || note.Code != "near-miss" || !laid.Pieces[0].Box().Contains(note.At)) {
				t.Errorf("note %+v", note)
			}
		})
	}
}

// The note says what Near puts first, where that is one change and no other gripper edge;
// and Near is verified by drawing the bag anew.
func TestNoteIsTheFirstNearMiss(t *testing.T) {
	random := rand.New(rand.NewPCG(23, 4))
	notes := 0
	for range 250 {
		spec := geomtest.RandomBag(random)
		if spec.Body.Top == bag.TopZigzag {
			spec.Body.Top = bag.TopStraight // nesting teeth takes long
		}
		laid := blank.Lay(spec)
		plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
		near := advice.Near(&laid, &plan)
		want := plan.Up() > 0 && len(near) > 0 && len(near[0].Changes) == 1 && !near[0].OtherEdge
		note, found := advice.Note(&laid, &plan)
		if found != want || found && !strings.HasSuffix(note.Message.String(), "; "+near[0].Phrase().String()) {
			t.Errorf("%d-up: note %t %q, want %t: %s", plan.Up(), found, note.Message, want, says(near))
		}
		if found {
			notes++
			verify(t, &laid, plan.Piece, &plan, &near[0])
		}
	}
	if notes < 10 {
		t.Errorf("only %d notes: the tries are too tame", notes)
	}
}

func ExampleNote() {
	spec := bag.OfSize(210, 100, 320)
	spec.Sheet.Width, spec.Sheet.Height = 900, 640
	laid := blank.Lay(spec)
	plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
	if note, found := advice.Note(&laid, &plan); found {
		fmt.Println(note.Message)
	}
	// Output:
	// the sheet is 1-up; 2-up if the face width were 201.7 mm instead of 210 mm
}

func BenchmarkNote(b *testing.B) {
	spec := bag.OfSize(210, 100, 320)
	spec.Sheet.Width, spec.Sheet.Height = 900, 640
	laid := blank.Lay(spec)
	plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
	for b.Loop() {
		advice.Note(&laid, &plan)
	}
}
