package sheet

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// Reason says why nothing fits on the sheet of the plan; it is empty when something
// does.
func (p Plan) Reason() phrase.Phrase {
	mm := func(length float64) geometry.Length { return geometry.Length(length) }
	long, x, y := p.Sheet.GripperEdge != bag.GripperShort, p.TooLong.X, p.TooLong.Y
	switch {
	case p.Up() > 0 || x <= 0 && y <= 0:
		return phrase.Phrase{}
	case x > 0 && y > 0 && long:
		return phrase.New("%s too wide and %s too high with the gripper on the long edge", mm(x), mm(y))
	case x > 0 && y > 0:
		return phrase.New("%s too wide and %s too high with the gripper on the short edge", mm(x), mm(y))
	case long:
		return phrase.New("%s too long with the gripper on the long edge", mm(max(x, y)))
	}
	return phrase.New("%s too long with the gripper on the short edge", mm(max(x, y)))
}
