package packing

import (
	"math"

	"gussetwright/geometry"
)

// contacts keeps corners off triangles and edges off edges: nothing is felt from a
// distance of near on, and the energy grows without bounds toward touching. It returns
// the least distance.
func (r *relaxer) contacts(sum *equations) (nearest float64) {
	nearest = math.Inf(1)
	feel := func(way geometry.Vec3, corners [4]int, shares [4]float64) {
		distance := way.Length()
		if distance == 0 {
			return
		}
		nearest = min(nearest, distance)
		if distance >= r.weights.near {
			return
		}
		slope := way.Scale(-r.weights.near / (distance * distance * distance))
		terms := make([]term, 0, 12)
		for k, i := range corners {
			terms = r.alongPoint(terms, i, slope.Scale(shares[k]))
		}
		sum.add(r.weights.contact, r.weights.near/distance-1, terms)
	}
	r.cornersOnTriangles(feel)
	r.edgesOnEdges(feel)
	return nearest
}

// felt takes the way between two nearest points, and how much of each of four corners
// is in it.
type felt func(way geometry.Vec3, corners [4]int, shares [4]float64)

func (r *relaxer) cornersOnTriangles(feel felt) {
	for i, p := range r.now.points {
		for _, t := range r.net.triangles {
			if t.has(i) {
				continue
			}
			a, b, c := r.now.points[t.corners[0]], r.now.points[t.corners[1]], r.now.points[t.corners[2]]
			if apart(p, p, a, b, c, r.weights.near) {
				continue
			}
			shares := nearestOn(p, a, b, c)
			if r.meetsJoined(i, t.corners, shares) {
				continue
			}
			on := a.Scale(shares[0]).Add(b.Scale(shares[1])).Add(c.Scale(shares[2]))
			feel(p.Sub(on), [4]int{i, t.corners[0], t.corners[1], t.corners[2]},
				[4]float64{1, -shares[0], -shares[1], -shares[2]})
		}
	}
}

// meetsJoined tells whether a corner is nearest to the border of a triangle that an
// edge joins it to: that is a neighbour at any distance.
func (r *relaxer) meetsJoined(i int, corners [3]int, shares [3]float64) bool {
	joined, border := false, false
	for k, c := range corners {
		joined = joined || r.beside[i][c]
		border = border || shares[k] == 0
	}
	return joined && border
}

func (r *relaxer) edgesOnEdges(feel felt) {
	for k, e := range r.edges {
		a, b := r.now.points[e.a], r.now.points[e.b]
		for _, f := range r.edges[k+1:] {
			if e.a == f.a || e.a == f.b || e.b == f.a || e.b == f.b {
				continue
			}
			c, d := r.now.points[f.a], r.now.points[f.b]
			if apart(a, b, c, d, d, r.weights.near) {
				continue
			}
			s, t := nearestBetween(a, b, c, d)
			if s <= 0 || s >= 1 || t <= 0 || t >= 1 {
				continue // the end of one is looked at with the triangles
			}
			way := a.Scale(1 - s).Add(b.Scale(s)).Sub(c.Scale(1 - t)).Sub(d.Scale(t))
			feel(way, [4]int{e.a, e.b, f.a, f.b}, [4]float64{1 - s, s, t - 1, -t})
		}
	}
}

// apart tells whether the boxes around p and q and around a, b and c are farther from
// each other than a distance.
func apart(p, q, a, b, c geometry.Vec3, distance float64) bool {
	far := func(p, q, a, b, c float64) bool {
		return min(p, q) > max(a, b, c)+distance || min(a, b, c) > max(p, q)+distance
	}
	return far(p.X, q.X, a.X, b.X, c.X) || far(p.Y, q.Y, a.Y, b.Y, c.Y) || far(p.Z, q.Z, a.Z, b.Z, c.Z)
}

// nearestOn returns the point of a triangle nearest to p, as shares of its corners. It
// looks at the regions of corners, edges and inside in turn (Ericson, "Real-time
// collision detection", 2005, section 5.1.5).
func nearestOn(p, a, b, c geometry.Vec3) [3]float64 {
	ab, ac, ap := b.Sub(a), c.Sub(a), p.Sub(a)
	abA, acA := ab.Dot(ap), ac.Dot(ap)
	if abA <= 0 && acA <= 0 {
		return [3]float64{1, 0, 0}
	}
	bp := p.Sub(b)
	abB, acB := ab.Dot(bp), ac.Dot(bp)
	if abB >= 0 && acB <= abB {
		return [3]float64{0, 1, 0}
	}
	atC := abA*acB - abB*acA
	if atC <= 0 && abA >= 0 && abB <= 0 {
		t := abA / (abA - abB)
		return [3]float64{1 - t, t, 0}
	}
	cp := p.Sub(c)
	abC, acC := ab.Dot(cp), ac.Dot(cp)
	if acC >= 0 && abC <= acC {
		return [3]float64{0, 0, 1}
	}
	atB := abC*acA - abA*acC
	if atB <= 0 && acA >= 0 && acC <= 0 {
		t := acA / (acA - acC)
		return [3]float64{1 - t, 0, t}
	}
	atA := abB*acC - abC*acB
	if atA <= 0 && acB-abB >= 0 && abC-acC >= 0 {
		t := (acB - abB) / (acB - abB + abC - acC)
		return [3]float64{0, 1 - t, t}
	}
	whole := atA + atB + atC
	return [3]float64{1 - atB/whole - atC/whole, atB / whole, atC / whole}
}

// nearestBetween returns how far along the lines from a to b and from c to d they come
// nearest to each other, 0 to 1.
func nearestBetween(a, b, c, d geometry.Vec3) (s, t float64) {
	first, second, between := b.Sub(a), d.Sub(c), a.Sub(c)
	ff, ss, fs := first.Dot(first), second.Dot(second), first.Dot(second)
	fb, sb := first.Dot(between), second.Dot(between)
	limit := func(x float64) float64 { return min(max(x, 0), 1) }
	const parallel = 1e-14
	if slant := ff*ss - fs*fs; slant > parallel*ff*ss {
		s = limit((fs*sb - fb*ss) / slant)
	}
	t = (fs*s + sb) / ss
	switch {
	case t < 0:
		return limit(-fb / ff), 0
	case t > 1:
		return limit((fs - fb) / ff), 1
	}
	return s, t
}
