package sheet_test

import (
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
)

func TestRankOrder(t *testing.T) {
	pieces := []sheet.Piece{one, two, large, {Width: 900, Height: 700, PerBag: 1, Area: 900 * 700}, {Width: 3000, Height: 2000, PerBag: 1, Area: 6e6}}
	for _, piece := range pieces {
		ranked := sheet.Rank(press(0, 0, bag.GripperLong), piece)
		if len(ranked) != len(sheet.UsualSheets()) {
			t.Fatalf("%+v: %d sheets ranked, want all %d", piece, len(ranked), len(sheet.UsualSheets()))
		}
		for i := 1; i < len(ranked); i++ {
			before, after := ranked[i-1].Plan, ranked[i].Plan
			switch {
			case before.Up() == 0 && after.Up() > 0:
				t.Errorf("%+v: %s holds one and comes after %s, which holds none", piece, ranked[i].Name, ranked[i-1].Name)
			case after.Up() > 0 && after.WastePercent() < before.WastePercent():
				t.Errorf("%+v: %s wastes less than %s before it", piece, ranked[i].Name, ranked[i-1].Name)
			case before.Up() == 0 && after.TooLong.X+after.TooLong.Y < before.TooLong.X+before.TooLong.Y:
				t.Errorf("%+v: %s is a nearer miss than %s before it", piece, ranked[i].Name, ranked[i-1].Name)
			}
		}
	}
}

// Worked example, common practice, no published source: the blank 700 × 480 goes
// twice on 100 × 70 cm with the gripper on the short edge only, and once on
// 70 × 50 cm with the gripper on the long edge only.
func TestRankTakesTheBetterGripperEdge(t *testing.T) {
	found := 0
	for _, r := range sheet.Rank(press(0, 0, bag.GripperLong), one) {
		want := map[string]struct {
			edge bag.GripperEdge
			up   int
		}{"100 × 70 cm": {bag.GripperShort, 2}, "70 × 50 cm": {bag.GripperLong, 1}}
		expected, named := want[r.Name]
		if !named {
			continue
		}
		found++
		if r.Plan.Up() != expected.up || r.Plan.Sheet.GripperEdge != expected.edge {
			t.Errorf("%s: %d up, gripped at the %s edge; want %d and %s", r.Name,
				r.Plan.Up(), r.Plan.Sheet.GripperEdge, expected.up, expected.edge)
		}
		if r.Plan.Sheet.Width != r.Width || r.Plan.Sheet.Height != r.Height {
			t.Errorf("%s is planned as %g × %g", r.Name, r.Plan.Sheet.Width, r.Plan.Sheet.Height)
		}
	}
	if found != 2 {
		t.Errorf("%d of the two sheets are ranked", found)
	}
}

// No plan of the list may hold fewer than either gripper edge allows, or miss by
// more.
func TestRankIsNoWorseThanEitherEdge(t *testing.T) {
	for _, piece := range []sheet.Piece{one, two, large} {
		for _, r := range sheet.Rank(press(0, 0, bag.GripperShort), piece) {
			for _, edge := range []bag.GripperEdge{bag.GripperLong, bag.GripperShort} {
				other := sheet.Lay(press(r.Width, r.Height, edge), piece)
				if other.Up() > r.Plan.Up() {
					t.Errorf("%+v on %s: %d up, the %s edge gives %d", piece, r.Name, r.Plan.Up(), edge, other.Up())
				}
				if r.Plan.Up() == 0 && other.TooLong.X+other.TooLong.Y < r.Plan.TooLong.X+r.Plan.TooLong.Y {
					t.Errorf("%+v on %s: misses by %v, the %s edge by %v", piece, r.Name, r.Plan.TooLong, edge, other.TooLong)
				}
			}
		}
	}
}
