package sheet_test

import (
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
)

// press returns a sheet with a gripper of 20 mm and no other margins.
func press(width, height float64, edge bag.GripperEdge) bag.Sheet {
	return bag.Sheet{Width: width, Height: height, Gripper: 20, GripperEdge: edge}
}

func TestUsableArea(t *testing.T) {
	tests := []struct {
		name          string
		width, height float64
		edge          bag.GripperEdge
		grip          sheet.Grip
		want          geometry.Rect
	}{
		// 12 at the gripper, 5 at both sides, 8 at the tail.
		{"wide, long edge", 1000, 700, bag.GripperLong, sheet.GripBottom, geometry.RectAt(5, 12, 990, 680)},
		{"wide, short edge", 1000, 700, bag.GripperShort, sheet.GripLeft, geometry.RectAt(12, 5, 980, 690)},
		{"high, long edge", 700, 1000, bag.GripperLong, sheet.GripLeft, geometry.RectAt(12, 5, 680, 990)},
		{"high, short edge", 700, 1000, bag.GripperShort, sheet.GripBottom, geometry.RectAt(5, 12, 690, 980)},
		{"square, long edge", 700, 700, bag.GripperLong, sheet.GripBottom, geometry.RectAt(5, 12, 690, 680)},
		{"square, short edge", 700, 700, bag.GripperShort, sheet.GripLeft, geometry.RectAt(12, 5, 680, 690)},
	}
	for _, test := range tests {
		s := bag.Sheet{
			Width: test.width, Height: test.height, GripperEdge: test.edge,
			Gripper: 12, Side: 5, Tail: 8,
		}
		if got := sheet.GripOf(s); got != test.grip {
			t.Errorf("%s: grip %d, want %d", test.name, got, test.grip)
		}
		if got := sheet.Usable(s); !got.Min.Near(test.want.Min) || !got.Max.Near(test.want.Max) {
			t.Errorf("%s: got %+v, want %+v", test.name, got, test.want)
		}
	}
}

func TestUsableAreaMayBeEmpty(t *testing.T) {
	s := bag.Sheet{Width: 100, Height: 100, GripperEdge: bag.GripperLong, Side: 50}
	if got := sheet.Usable(s); !got.Empty() {
		t.Errorf("got %+v", got)
	}
	plan := sheet.Lay(s, sheet.Piece{Width: 50, Height: 50, PerBag: 1, Area: 2500})
	if plan.Up() != 0 || plan.WastePercent() != 100 || plan.TooLong.X != 50 {
		t.Errorf("%d up, waste %g %%, too long by %v", plan.Up(), plan.WastePercent(), plan.TooLong)
	}
}
