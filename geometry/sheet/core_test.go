package sheet_test

import (
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/sheet"
)

// A blank of 708 × 480 holds a core of 688 × 480 without its seam flap of 20, whose
// chamfers alone neighbours can reach into. With 12 for the gripper on the short edge and
// 5 at the other sides, 1000 × 690 leaves 983 × 680, where no core stands upright, as 688
// is more than 680, and one lies: 688 + 6 + 688 > 983. By area alone two could be hoped
// for, 2 × 335 000 of 668 000 mm². On 698 two cores of 480 would fit side by side, but
// the other core, 708 × 360 between the chamfers, still lies once only.
func TestBoundOfOutlines(t *testing.T) {
	spec := bag.Default()
	spec.Body.SeamRelief = 0
	spec.Body.Width = 244 // 708 wide
	laid := blank.Lay(spec)
	for _, test := range []struct {
		sheetWidth, sheetHeight float64
		up, bound               int
	}{
		{1000, 690, 1, 1},
		{1000, 698, 1, 1},
		{1000, 718, 2, 2},
		{1460, 1000, 4, 4}, // two above each other, 966 of 983, and two beside, 1422 of 1450
	} {
		spec.Sheet.Width, spec.Sheet.Height = test.sheetWidth, test.sheetHeight
		if test.sheetHeight < 800 {
			spec.Sheet.GripperEdge = bag.GripperShort
		} else {
			spec.Sheet.GripperEdge = bag.GripperLong
		}
		plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
		if plan.Up() != test.up || plan.Bound != test.bound || plan.Proven != (test.up == test.bound) {
			t.Errorf("%g × %g: %d up of at most %d, proven %v; want %d of %d", test.sheetWidth, test.sheetHeight, plan.Up(), plan.Bound, plan.Proven, test.up, test.bound)
		}
	}
}
