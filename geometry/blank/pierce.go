package blank

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// pierce adds the holes of the handle: on each face, and mirrored about the top
// fold in the turn-in where it is deep enough to take them whole.
func (f *frame) pierce(piece *Piece, h bag.Handle) {
	for _, c := range f.columns {
		if c.kind != face {
			continue
		}
		middle := c.left + c.width/2
		body, turnIn := f.levels.TopFold-h.Drop, f.levels.TopFold+h.Drop
		switch {
		case h.Kind.HasHoles():
			add := func(y float64, row Row) {
				for _, x := range []float64{middle - h.Spacing/2, middle + h.Spacing/2} {
					piece.Holes = append(piece.Holes, Hole{geometry.Vec2{X: x, Y: y}, h.HoleDiameter, panelID(c.name, row)})
				}
			}
			add(body, RowBody)
			if f.backed(h.Drop + h.HoleDiameter/2) {
				add(turnIn, RowTurnIn)
			}
		case h.Kind == bag.HandleHandHole:
			piece.cutHandHole(geometry.Vec2{X: middle, Y: body}, h)
			if f.backed(h.Drop + h.HandHoleHeight/2) {
				piece.cutHandHole(geometry.Vec2{X: middle, Y: turnIn}, h)
			}
		}
	}
}

// backed tells whether the turn-in reaches at least as far as the far edge of a
// hole, measured from the top fold.
func (f *frame) backed(farEdge float64) bool {
	return f.hasTurnIn() && f.levels.Top-f.levels.TopFold >= farEdge-geometry.Tolerance
}

// cutHandHole adds a slot with round ends.
func (p *Piece) cutHandHole(center geometry.Vec2, h bag.Handle) {
	hole := HandHole(center, h.HandHoleWidth, h.HandHoleHeight)
	for i := range hole.Len() {
		p.Lines = append(p.Lines, Line{Edge: hole.Edge(i), Kind: Cut, Role: RoleHandHole, Fold: NoFold})
	}
}

// HandHole returns the closed outline of a slot with round ends, anticlockwise.
// A slot that is not longer than it is high is a circle.
func HandHole(center geometry.Vec2, width, height float64) geometry.Path {
	radius := min(height, width) / 2
	straight := max(width/2-radius, 0)
	left, right := center.X-straight, center.X+straight
	return geometry.Path{Closed: true, Vertices: []geometry.Vertex{
		{Vec2: geometry.Vec2{X: left, Y: center.Y - radius}},
		{Vec2: geometry.Vec2{X: right, Y: center.Y - radius}, Bulge: 1},
		{Vec2: geometry.Vec2{X: right, Y: center.Y + radius}},
		{Vec2: geometry.Vec2{X: left, Y: center.Y + radius}, Bulge: 1},
	}}
}
