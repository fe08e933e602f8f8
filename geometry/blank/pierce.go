package blank

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// pierce adds the openings for the handle: on each face, and mirrored about the top
// fold in the turn-in where it is deep enough to take them whole.
func (f *frame) pierce(piece *Piece, h bag.Handle) {
	for _, c := range f.columns {
		if c.kind != face {
			continue
		}
		middle := c.left + c.width/2
		body, turnIn := f.levels.TopFold-h.Drop, f.levels.TopFold+h.Drop
		pair := [2]float64{middle - h.Spacing/2, middle + h.Spacing/2}
		switch {
		case h.Kind.HasHoles():
			add := func(y float64, row Row) {
				for _, x := range pair {
					piece.Holes = append(piece.Holes, Hole{geometry.Vec2{X: x, Y: y}, h.HoleDiameter, panelID(c.name, row)})
				}
			}
			add(body, RowBody)
			if f.backed(h.Drop + h.HoleDiameter/2) {
				add(turnIn, RowTurnIn)
			}
		case h.Kind.HasSlits():
			add := func(y float64) {
				for _, x := range pair {
					piece.cutOut(RoleSlit, Slit(geometry.Vec2{X: x, Y: y}, h.SlitHeight))
				}
			}
			add(body)
			if f.backed(h.Drop + h.SlitHeight/2) {
				add(turnIn)
			}
		case h.Kind == bag.HandleHandHole:
			add := func(y float64) {
				piece.cutOut(RoleHandHole, HandHole(geometry.Vec2{X: middle, Y: y}, h.HandHoleWidth, h.HandHoleHeight))
			}
			add(body)
			if f.backed(h.Drop + h.HandHoleHeight/2) {
				add(turnIn)
			}
		}
	}
}

// backed tells whether the turn-in reaches at least as far as the far edge of a
// hole, measured from the top fold.
func (f *frame) backed(farEdge float64) bool {
	return f.hasTurnIn() && f.levels.Top-f.levels.TopFold >= farEdge-geometry.Tolerance
}

// HandHole returns the closed outline of a slot with round ends, anticlockwise.
// A slot that is not longer than it is high is a circle.
func HandHole(center geometry.Vec2, width, height float64) geometry.Path {
	return roundEnded(center, width, min(width, height))
}

// SlitWidth is how wide a slit is, in mm: a cotton tape slips through, and the round
// ends do not start a tear (common practice, no published source).
const SlitWidth = 1.5

// Slit returns the closed outline of an upright slit with round ends, anticlockwise.
// height, in mm, is measured from end to end and is more than SlitWidth.
func Slit(center geometry.Vec2, height float64) geometry.Path {
	return roundEnded(center, SlitWidth, height)
}

// roundEnded returns the closed outline of a slot along its longer side, anticlockwise:
// straight, round, straight, round.
func roundEnded(center geometry.Vec2, width, height float64) geometry.Path {
	radius := min(width, height) / 2
	half := geometry.Vec2{X: width/2 - radius} // from the middle to the centre of the second end
	side := geometry.Vec2{Y: -radius}
	if height > width {
		half, side = geometry.Vec2{Y: height/2 - radius}, geometry.Vec2{X: radius}
	}
	first, second := center.Sub(half), center.Add(half)
	return geometry.Path{Closed: true, Vertices: []geometry.Vertex{
		{Vec2: first.Add(side)},
		{Vec2: second.Add(side), Bulge: 1},
		{Vec2: second.Sub(side)},
		{Vec2: first.Sub(side), Bulge: 1},
	}}
}
