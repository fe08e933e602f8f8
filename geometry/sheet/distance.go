package sheet

import (
	"math"

	"gussetwright/geometry"
)

// distance returns the least distance of two contours of which the second is moved
// by shift; it is negative when they overlap.
func distance(a, b *contour, shift geometry.Vec2) float64 {
	least := math.Inf(1)
	others := edges(b.corners)
	for _, e := range edges(a.corners) {
		for _, f := range others {
			f.low, f.high = f.low.Add(shift), f.high.Add(shift)
			if e.farFrom(f, least) {
				continue
			}
			if crosses(e, f) {
				return -1
			}
			least = min(least, toEdge(e.low, f), toEdge(e.high, f), toEdge(f.low, e), toEdge(f.high, e))
		}
	}
	// Contours that do not cross but share area have a corner, or the middle of an
	// edge, of one in the other.
	if reachesInto(b, a, shift) || reachesInto(a, b, shift.Scale(-1)) {
		return -1
	}
	return least
}

// farFrom tells, at little cost, that two edges are farther apart than a distance.
func (e edge) farFrom(f edge, distance float64) bool {
	return f.low.Y-e.high.Y > distance || e.low.Y-f.high.Y > distance ||
		min(f.low.X, f.high.X)-max(e.low.X, e.high.X) > distance || min(e.low.X, e.high.X)-max(f.low.X, f.high.X) > distance
}

func reachesInto(one, other *contour, shift geometry.Vec2) bool {
	for _, e := range edges(one.corners) {
		if inside(other, e.low.Add(shift)) || inside(other, e.low.Mid(e.high).Add(shift)) {
			return true
		}
	}
	return false
}

// toEdge returns the distance of a point from an edge.
func toEdge(p geometry.Vec2, e edge) float64 {
	along := e.high.Sub(e.low)
	share := 0.0
	if length := along.Dot(along); length > 0 {
		share = min(max(p.Sub(e.low).Dot(along)/length, 0), 1)
	}
	return p.Sub(e.low.Add(along.Scale(share))).Length()
}

// crosses tells whether two edges pass through each other; touching is not crossing.
func crosses(e, f edge) bool {
	side := func(e edge, p geometry.Vec2) float64 {
		along := e.high.Sub(e.low)
		length := along.Length()
		if length == 0 {
			return 0
		}
		return along.Cross(p.Sub(e.low)) / length
	}
	apart := func(a, b float64) bool {
		return a > geometry.Tolerance && b < -geometry.Tolerance || a < -geometry.Tolerance && b > geometry.Tolerance
	}
	return apart(side(e, f.low), side(e, f.high)) && apart(side(f, e.low), side(f, e.high))
}

// inside tells whether a point lies in the contour, well away from its edges.
func inside(c *contour, p geometry.Vec2) bool {
	in := false
	for i, a := range c.corners {
		b := c.corners[(i+1)%len(c.corners)]
		if max(a.Y, b.Y) < p.Y-geometry.Tolerance || min(a.Y, b.Y) > p.Y+geometry.Tolerance {
			continue
		}
		if toEdge(p, newEdge(a, b)) <= geometry.Tolerance {
			return false
		}
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)*(b.X-a.X)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}
