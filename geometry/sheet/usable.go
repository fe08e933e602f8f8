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
func Usable(s bag.Sheet) geometry.Rect {
	if GripOf(s) == GripBottom {
		return geometry.Rect{
			Min: geometry.Vec2{X: s.Side, Y: s.Gripper},
			Max: geometry.Vec2{X: s.Width - s.Side, Y: s.Height - s.Tail},
		}
	}
	return geometry.Rect{
		Min: geometry.Vec2{X: s.Gripper, Y: s.Side},
		Max: geometry.Vec2{X: s.Width - s.Tail, Y: s.Height - s.Side},
	}
}
