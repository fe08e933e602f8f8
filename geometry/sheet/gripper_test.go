package sheet_test

import (
	"math"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
)

// Pieces whose ink runs off keep its width off the gripper where the sheet has room to
// spare, else as much as there is; their number and their layout are the same as without.
func TestPiecesLeaveTheGripper(t *testing.T) {
	for name, test := range map[string]struct {
		edge          bag.GripperEdge
		width, height float64 // of the sheet
		bleed, want   float64
	}{
		"room to spare":      {bag.GripperLong, 700, 500, 0, 3},
		"a little to spare":  {bag.GripperLong, 700, 12 + 300 + 5 + 1.5, 0, 1.5},
		"nothing to spare":   {bag.GripperLong, 700, 12 + 300 + 5, 0, 0},
		"at the short edge":  {bag.GripperShort, 700, 400, 0, 3},
		"room for the bleed": {bag.GripperLong, 700, 500, 3, 3},
	} {
		s := bag.Default().Sheet
		s.Width, s.Height, s.GripperEdge, s.Gripper, s.Tail, s.Side, s.Gap = test.width, test.height, test.edge, 12, 5, 5, 6
		piece := sheet.Piece{Width: 200, Height: 300, PerBag: 1, Area: 60_000, Bleed: test.bleed}
		plain := sheet.Lay(s, piece)
		piece.Ink = 3
		inked := sheet.Lay(s, piece)
		if got := inked.OffGripper(); math.Abs(got-test.want) > 1e-9 {
			t.Errorf("%s: %g mm off the gripper, want %g", name, got, test.want)
		}
		if inked.Up() != plain.Up() || inked.Up() < 3 {
			t.Fatalf("%s: %d pieces, without ink %d", name, inked.Up(), plain.Up())
		}
		for i := range inked.Placements {
			box := inked.Box(i)
			if !inked.Usable.Inset(-1e-9).Contains(box.Min) || !inked.Usable.Inset(-1e-9).Contains(box.Max) {
				t.Errorf("%s: piece %d leaves the usable part: %v, %v", name, i, box, inked.Usable)
			}
			by, other := box.Min.Sub(plain.Box(i).Min), inked.Box(0).Min.Sub(plain.Box(0).Min)
			if by.Sub(other).Length() > 1e-9 {
				t.Errorf("%s: piece %d moves by %v, the first by %v", name, i, by, other)
			}
		}
	}
	empty := sheet.Lay(bag.Default().Sheet, sheet.Piece{Width: 5000, Height: 5000, PerBag: 1, Ink: 3})
	if empty.OffGripper() != 0 {
		t.Errorf("an empty sheet has a piece %g mm off the gripper", empty.OffGripper())
	}
}
