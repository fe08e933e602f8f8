package packing

import (
	"math"

	"gussetwright/geometry"
)

// opening returns the net in closed form when the base has swung by an angle of at
// most a few degrees. All is plane but the strip of the front and the small triangles:
// the strip is bent half way up, the panel edge dented there.
//
// The dent lies at its distances from base corner, flat-fold crease and apex: three
// spheres. The bend of the strip runs parallel to the base but for its end, which
// lies as far from the dent as on the blank.
func (n *net) opening(swing float64) *still {
	s := n.newStill(swing)
	l := linkageAt(swing)
	edge, far := n.width, 2*n.width+1
	set := func(i int, x, y float64, p geometry.Vec3) {
		s.places[i], s.points[i] = geometry.Vec2{X: x, Y: y}, p
	}
	between := n.between()
	set(backMiddle, 0, 0, geometry.Vec3{X: n.width, Y: 1})
	set(backBetween, edge-between, 0, geometry.Vec3{X: between, Y: 1})
	set(backCorner, edge, 0, geometry.Vec3{Y: 1})
	set(frontCorner, edge+1, 0, l.frontFoot)
	set(frontMiddle, far, 0, l.frontFoot.Add(geometry.Vec3{X: n.width}))

	const half = 0.25 // of the strip
	dent := meet(l.frontFoot, l.frontCrest, l.apex, half, half, math.Hypot(0.5, half))
	along := l.frontCrest.Sub(l.frontFoot)
	outward := geometry.Vec3{Y: -along.Z, Z: along.Y}.Unit()
	bend := l.frontFoot.Mid(l.frontCrest).Add(outward.Scale(math.Sqrt(max(half*half-along.Dot(along)/4, 0))))
	if dent.X > 0 {
		gap := dent.Sub(bend)
		bend.X = gap.Dot(gap) / (2 * dent.X)
	}
	set(edgeDent, edge+1, half, dent)
	set(stripBend, edge+1+bend.X, half, bend)
	set(stripMiddle, far, half, geometry.Vec3{X: n.width, Y: bend.Y, Z: bend.Z})

	crease := l.apex
	for row, height := range rows {
		up := geometry.Vec3{Z: height}
		at := func(column int, x float64, p geometry.Vec3) { set(corner(row, column), x, height, p.Add(up)) }
		at(columnBackMiddle, 0, geometry.Vec3{X: n.width, Y: 1})
		at(columnBackBetween, edge-between, geometry.Vec3{X: between, Y: 1})
		at(columnBackEdge, edge, geometry.Vec3{Y: 1})
		at(columnBackGusset, edge+0.25, geometry.Vec3{X: crease.X / 2, Y: (1 + crease.Y) / 2})
		at(columnCrease, edge+0.5, geometry.Vec3{X: crease.X, Y: crease.Y})
		at(columnFrontGusset, edge+0.75, geometry.Vec3{X: crease.X / 2, Y: (l.front + crease.Y) / 2})
		at(columnFrontEdge, edge+1, geometry.Vec3{Y: l.front})
		at(columnFrontBetween, edge+1+between, geometry.Vec3{X: between, Y: l.front})
		at(columnFrontMiddle, far, geometry.Vec3{X: n.width, Y: l.front})
	}
	return s
}

// between is how far from the panel edge the columns between edge and middle of a
// face begin.
func (n *net) between() float64 { return min(0.35, n.width/2) }

// meet returns the point at the distances toP, toQ and toR from p, q and r, of the two
// that there are the one against which p, q and r run clockwise. Where there is none
// it returns the nearest in their plane.
func meet(p, q, r geometry.Vec3, toP, toQ, toR float64) geometry.Vec3 {
	e := q.Sub(p)
	d := e.Length()
	e = e.Scale(1 / d)
	i := e.Dot(r.Sub(p))
	f := r.Sub(p).Sub(e.Scale(i))
	j := f.Length()
	f = f.Scale(1 / j)
	x := (toP*toP - toQ*toQ + d*d) / (2 * d)
	y := (toP*toP - toR*toR + i*i + j*j - 2*i*x) / (2 * j)
	z := math.Sqrt(max(toP*toP-x*x-y*y, 0))
	return p.Add(e.Scale(x)).Add(f.Scale(y)).Sub(e.Cross(f).Scale(z))
}

// packed returns the net packed flat, its corners at places on the blank: with u
// across the gusset from the front and y up from the base crease, the gusset goes to
// the depth min(u, 1 − u) at the height y, the triangle beside the base to (y, 1 − u),
// the small triangle below the flat-fold crease to (u, 1 − y), and the strip of the
// front to the height 1 − y.
func (n *net) packed(places []geometry.Vec2) *still {
	s := n.newStill(math.Pi / 2)
	copy(s.places, places)
	for i, p := range places {
		s.points[i] = n.packedPoint(p)
	}
	return s
}

func (n *net) packedPoint(p geometry.Vec2) geometry.Vec3 {
	flat := func(x, z float64) geometry.Vec3 { return geometry.Vec3{X: x, Y: 1, Z: z} }
	u := n.width + 1 - p.X // from the front edge of the gusset
	switch {
	case u >= 1: // back
		return flat(u-1, p.Y)
	case u <= 0 && p.Y < 0.5:
		return flat(-u, 1-p.Y)
	case u <= 0:
		return flat(-u, p.Y)
	case p.Y <= min(u, 1-u):
		return flat(p.Y, 1-u)
	case u < 0.5 && p.Y < 0.5:
		return flat(u, 1-p.Y)
	default:
		return flat(min(u, 1-u), p.Y)
	}
}
