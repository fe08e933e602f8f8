package skyline_test

import (
	"slices"
	"testing"

	"gussetwright/geometry/sheet/skyline"
)

// Worked by hand: a room 10 wide and 8 high. A piece 4 × 3 is laid at the left, one of
// 6 × 3 beside it, so that the edge is even again.
func TestRaisedByHand(t *testing.T) {
	floor := skyline.Line[int64]{{}}
	left := skyline.Line[int64](floor.Raised(nil, 0, 4, 3, floor.End(0, 10)))
	if want := (skyline.Line[int64]{{0, 3}, {4, 0}}); !slices.Equal(left, want) {
		t.Fatalf("after the first piece %v, want %v", left, want)
	}
	if at := left.Lowest(); at != 1 || left.End(at, 10) != 10 {
		t.Errorf("the lowest step is %d and ends at %d", at, left.End(at, 10))
	}
	if l, r := left.Walls(1, 8); l != 3 || r != 8 {
		t.Errorf("walls %d and %d high, want 3 and the 8 of the room", l, r)
	}
	even := left.Raised(nil, 1, 10, 3, left.End(1, 10))
	if want := (skyline.Line[int64]{{0, 3}}); !slices.Equal(skyline.Line[int64](even), want) {
		t.Errorf("after the second piece %v, want %v", even, want)
	}
}
