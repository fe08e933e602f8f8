package sheet

import "gussetwright/geometry"

// OffGripper returns how far the nearest piece lies off the gripper, in mm; 0 where none
// lies on the sheet.
func (p *Plan) OffGripper() float64 {
	over := p.covered()
	if GripOf(p.Sheet) == GripLeft {
		return max(over.Min.X-p.Sheet.Gripper, 0)
	}
	return max(over.Min.Y-p.Sheet.Gripper, 0)
}

// leaveGripper moves all pieces away from the gripper as far as their ink runs off, or as
// far as the sheet has room to spare.
func (p *Plan) leaveGripper() {
	if p.Up() == 0 {
		return
	}
	by, spare := p.Piece.Ink-p.OffGripper(), p.Usable.Max.Sub(p.covered().Max)
	shift := geometry.Vec2{Y: min(by, spare.Y)}
	if GripOf(p.Sheet) == GripLeft {
		shift = geometry.Vec2{X: min(by, spare.X)}
	}
	for i := range p.Placements {
		p.Placements[i].X += max(shift.X, 0)
		p.Placements[i].Y += max(shift.Y, 0)
	}
}

// covered returns the box around all pieces.
func (p *Plan) covered() geometry.Rect {
	var all geometry.Rect
	for i := range p.Placements {
		if i == 0 {
			all = p.Box(i)
		}
		all = all.Union(p.Box(i))
	}
	return all
}
