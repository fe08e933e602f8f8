package sheet

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// Grip is the side of the drawn sheet that the press holds.
type Grip int

// The sides that can be held.
const (
	GripBottom Grip = iota
	GripLeft
)

// GripOf returns the held side of the sheet. The long edge of a sheet that is
// wider than high is the bottom one.
func GripOf(s bag.Sheet) Grip {
	widthIsLong := s.Width >= s.Height
	if widthIsLong == (s.GripperEdge == bag.GripperLong) {
		return GripBottom
	}
	return GripLeft
}

// Usable returns the part of the sheet that blanks may cover: the sheet without
// gripper, tail and side margins. It may be empty.
func Usable(s bag.Sheet) geometry.Rect { return usable(s, 0) }

// usable also keeps room for a bleed: in the margins, and beyond the gripper, where
// nothing is printed.
func usable(s bag.Sheet, bleed float64) geometry.Rect {
	gripper, side, tail := s.Gripper+bleed, max(s.Side, bleed), max(s.Tail, bleed)
	if GripOf(s) == GripBottom {
		return geometry.Rect{
			Min: geometry.Vec2{X: side, Y: gripper},
			Max: geometry.Vec2{X: s.Width - side, Y: s.Height - tail},
		}
	}
	return geometry.Rect{
		Min: geometry.Vec2{X: gripper, Y: side},
		Max: geometry.Vec2{X: s.Width - tail, Y: s.Height - side},
	}
}
