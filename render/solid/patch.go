package solid

import (
	"image/color"
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/fold"
)

// Patch is an area on one side of a panel that is drawn striped on the folded paper,
// such as what is glued.
type Patch struct {
	Piece    int // index into the pieces of the blank
	Panel    string
	Reverse  bool              // on the reverse, not on the print side
	Shape    []geometry.Vec2   // on the blank, anticlockwise
	Openings [][]geometry.Vec2 // of which it stays clear, anticlockwise
	Colour   color.RGBA
	Strength float64 // how much it covers, 0 to 1
}

// patches draws the areas that the view asks for.
func (c *canvas) patches(v *View, l *lens) {
	for i := range v.Patches {
		patch := &v.Patches[i]
		for k := range v.Model.body.Facets {
			f := &v.Model.body.Facets[k]
			if f.Piece == patch.Piece && f.Panel == patch.Panel {
				c.patch(l, patch, f, &v.Model.surfaces[k])
			}
		}
	}
}

// patchLift is how much nearer than its paper a patch is drawn, in mm.
const patchLift = 0.05

// patch draws the part of a patch that lies on a facet, where its side is seen.
func (c *canvas) patch(l *lens, patch *Patch, f *fold.Facet, s *surface) {
	p, facing, ok := l.plane(s)
	if !ok || facing == patch.Reverse {
		return
	}
	shape := clipTo(patch.Shape, f.Corners)
	if len(shape) < 3 {
		return
	}
	loop := make([]geometry.Vec3, len(shape))
	for i, corner := range shape {
		loop[i] = f.Pose.At(corner)
	}
	c.scan.begin()
	p.least, p.most = c.trace(l, loop)
	for _, hole := range s.loops[1:] {
		c.trace(l, hole)
	}
	for _, opening := range patch.Openings {
		loop := make([]geometry.Vec3, len(opening))
		for i, corner := range opening {
			loop[len(loop)-1-i] = f.Pose.At(corner)
		}
		c.trace(l, loop)
	}
	turn := 1
	if !facing {
		turn = -1
	}
	lift := 1 + patchLift*p.most
	weak, strong := uint32(256*0.35*patch.Strength), uint32(256*0.8*patch.Strength)
	colour := pack(patch.Colour)
	c.scan.fill(c.width, turn, func(row, left, right int) {
		n, u, v := p.nearness.at(row, left), p.u.at(row, left), p.v.at(row, left)
		for i := row*c.width + left; i < row*c.width+right; i++ {
			nearness := p.within(n)
			if float32(nearness*lift) >= c.nearness[i] {
				part := weak
				if striped((u + v) / nearness) {
					part = strong
				}
				c.colours[i] = mix(c.colours[i], colour, part)
			}
			n, u, v = n+p.nearness.x, u+p.u.x, v+p.v.x
		}
	})
}

// striped tells whether a stripe lies at a distance in mm.
func striped(at float64) bool {
	const every, share = 8.0, 0.35
	at /= every
	return at-math.Floor(at) < share
}

// clipTo returns the part of a shape within a facet, both anticlockwise. Edges of the
// facet that point into it, as between the teeth of a zigzag, do not cut.
func clipTo(shape, facet []geometry.Vec2) []geometry.Vec2 {
	last := facet[len(facet)-1]
	for _, corner := range facet {
		if along := corner.Sub(last); isHull(last, along, facet) {
			shape = geometry.CutLeft(shape, last, along)
		}
		last = corner
	}
	return shape
}

// isHull tells whether no corner lies to the right of a line.
func isHull(from, along geometry.Vec2, corners []geometry.Vec2) bool {
	for _, c := range corners {
		if along.Cross(c.Sub(from)) < -geometry.Tolerance*along.Length() {
			return false
		}
	}
	return true
}
