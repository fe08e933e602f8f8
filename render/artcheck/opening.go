package artcheck

import (
	"gussetwright/geometry"
	"gussetwright/geometry/blank"
)

// opening is a hole, a hand hole or a slit: all that lies within a radius of its middle
// line. A round hole has none but its centre.
type opening struct {
	from, to geometry.Vec2 // from the lower left
	radius   float64       // mm
}

// openingsOn returns the openings in a panel.
func openingsOn(piece *blank.Piece, panel blank.Panel) []opening {
	var all []opening
	for _, hole := range piece.Holes {
		if hole.Panel == panel.ID {
			all = append(all, opening{hole.Center, hole.Center, hole.Diameter / 2})
		}
	}
	for _, cut := range piece.CutOuts() {
		if box := cut.Shape.Bounds(); panel.Box.Contains(box.Center()) {
			radius := min(box.Width(), box.Height()) / 2
			middle := box.Inset(radius)
			all = append(all, opening{middle.Min, middle.Max, radius})
		}
	}
	return all
}

// away returns how far a point lies from the middle line.
func (o opening) away(p geometry.Vec2) float64 {
	nearest := geometry.Vec2{X: min(max(p.X, o.from.X), o.to.X), Y: min(max(p.Y, o.from.Y), o.to.Y)}
	return p.Sub(nearest).Length()
}
