package packing

import (
	"math"

	"gussetwright/geometry"
)

// energy adds up all that the net is relaxed by, and returns how near two things come
// to each other that do not join.
func (r *relaxer) energy(sum *equations) (nearest float64) {
	r.stretching(sum)
	r.widening(sum)
	r.bending(sum)
	r.holding(sum)
	r.pulling(sum)
	r.shaping(sum)
	return r.contacts(sum)
}

// alongPoint appends the derivatives by the point of a corner.
func (r *relaxer) alongPoint(terms []term, i int, slope geometry.Vec3) []term {
	u := r.point[i]
	return append(terms, term{u[0], slope.X}, term{u[1], slope.Y}, term{u[2], slope.Z})
}

func (r *relaxer) alongPlace(terms []term, i int, slope geometry.Vec2) []term {
	u := r.place[i]
	return append(terms, term{u[0], slope.X}, term{u[1], slope.Y})
}

// stretching keeps edges as long in space as on the blank.
func (r *relaxer) stretching(sum *equations) {
	var terms []term
	for _, e := range r.edges {
		if e.a <= frontMiddle && e.b <= frontMiddle {
			continue // the base is rigid
		}
		flat := r.now.places[e.b].Sub(r.now.places[e.a])
		taut := r.now.points[e.b].Sub(r.now.points[e.a])
		long, short := taut.Length(), flat.Length()
		along, across := taut.Scale(1/long), flat.Scale(1/short)
		terms = r.alongPoint(terms[:0], e.a, along.Scale(-1))
		terms = r.alongPoint(terms, e.b, along)
		terms = r.alongPlace(terms, e.a, across)
		terms = r.alongPlace(terms, e.b, across.Scale(-1))
		sum.add(r.weights.stretch/short, long-short, terms)
	}
}

// widening keeps triangles as large in space as on the blank, since thin ones can be
// stretched across while their edges hardly change.
func (r *relaxer) widening(sum *equations) {
	var terms []term
	for _, t := range r.net.triangles {
		if t.part == base {
			continue
		}
		i, j, k := t.corners[0], t.corners[1], t.corners[2]
		a, b, c := r.now.places[i], r.now.places[j], r.now.places[k]
		p, q, s := r.now.points[i], r.now.points[j], r.now.points[k]
		flat := b.Sub(a).Cross(c.Sub(a))
		normal := q.Sub(p).Cross(s.Sub(p))
		taut := normal.Length()
		if flat < leastArea || taut < leastArea {
			continue
		}
		normal = normal.Scale(1 / taut / flat)
		terms = r.alongPoint(terms[:0], i, q.Sub(s).Cross(normal))
		terms = r.alongPoint(terms, j, s.Sub(p).Cross(normal))
		terms = r.alongPoint(terms, k, p.Sub(q).Cross(normal))
		by := func(v, w geometry.Vec2) geometry.Vec2 {
			return geometry.Vec2{X: w.Y - v.Y, Y: v.X - w.X}.Scale(taut / flat / flat)
		}
		terms = r.alongPlace(terms, i, by(b, c))
		terms = r.alongPlace(terms, j, by(c, a))
		terms = r.alongPlace(terms, k, by(a, b))
		sum.add(r.weights.widen, taut/flat-1, terms)
	}
}

// bending holds parts plane.
func (r *relaxer) bending(sum *equations) {
	if r.weights.bend == 0 {
		return
	}
	var terms []term
	for _, h := range r.hinges {
		angle, slopes := r.angle(h)
		terms = terms[:0]
		for k, i := range []int{h.a, h.b, h.c, h.d} {
			terms = r.alongPoint(terms, i, slopes[k])
		}
		sum.add(r.weights.bend*r.now.points[h.b].Sub(r.now.points[h.a]).Length(), angle, terms)
	}
}

// angle returns by how much the net is bent at a hinge, in radians, and how that
// changes with the points of its four corners.
func (r *relaxer) angle(h hinge) (float64, [4]geometry.Vec3) {
	a := r.now.points[h.a]
	axis := r.now.points[h.b].Sub(a)
	c, d := r.now.points[h.c].Sub(a), r.now.points[h.d].Sub(a)
	length := axis.Length()
	left, right := axis.Cross(c), d.Cross(axis)
	const thin = 1e-12
	if left.Dot(left) < thin || right.Dot(right) < thin {
		return 0, [4]geometry.Vec3{}
	}
	angle := math.Atan2(left.Cross(right).Dot(axis)/length, left.Dot(right))
	atC := left.Scale(-length / left.Dot(left))
	atD := right.Scale(-length / right.Dot(right))
	shareC, shareD := c.Dot(axis)/(length*length), d.Dot(axis)/(length*length)
	atA := atC.Scale(shareC - 1).Add(atD.Scale(shareD - 1))
	atB := atC.Scale(-shareC).Add(atD.Scale(-shareD))
	return angle, [4]geometry.Vec3{atA, atB, atC, atD}
}

// holding keeps corners where they were in space, and near their place on the blank.
func (r *relaxer) holding(sum *equations) {
	for i, p := range r.now.points {
		stray := p.Sub(r.before[i])
		wander := r.now.places[i].Sub(r.prefer[i])
		for k, way := range []float64{stray.X, stray.Y, stray.Z} {
			if u := r.point[i][k]; u >= 0 {
				sum.add(r.weights.still, way, []term{{u, 1}})
			}
		}
		for k, way := range []float64{wander.X, wander.Y} {
			if u := r.place[i][k]; u >= 0 {
				sum.add(r.weights.place, way, []term{{u, 1}})
			}
		}
	}
}

// pulling draws the back to its plane, and corners to their targets.
func (r *relaxer) pulling(sum *equations) {
	for i, p := range r.now.points {
		u := r.point[i]
		if column := (i - rowStart) % columnCount; i >= rowStart && column <= columnBackEdge && u[1] >= 0 {
			sum.add(r.weights.lean, p.Y-1, []term{{u[1], 1}})
		}
		target, any := r.targets[i]
		if !any || r.weights.pull == 0 {
			continue
		}
		way := p.Sub(target)
		for k, w := range []float64{way.X, way.Y, way.Z} {
			if u[k] >= 0 {
				sum.add(r.weights.pull, w, []term{{u[k], 1}})
			}
		}
	}
}

// shaping keeps triangles from getting thin on the blank, let alone turning over.
func (r *relaxer) shaping(sum *equations) {
	const share, largest = 0.4, 0.06 // of the area at home; D²
	var terms []term
	for _, t := range r.net.triangles {
		if t.part == base {
			continue
		}
		i, j, k := t.corners[0], t.corners[1], t.corners[2]
		a, b, c := r.now.places[i], r.now.places[j], r.now.places[k]
		home := r.home[j].Sub(r.home[i]).Cross(r.home[k].Sub(r.home[i]))
		least := share * min(home, largest)
		area := b.Sub(a).Cross(c.Sub(a))
		if area >= least {
			continue
		}
		by := func(p, q geometry.Vec2) geometry.Vec2 {
			return geometry.Vec2{X: q.Y - p.Y, Y: p.X - q.X}.Scale(1 / least)
		}
		terms = r.alongPlace(terms[:0], i, by(b, c))
		terms = r.alongPlace(terms, j, by(c, a))
		terms = r.alongPlace(terms, k, by(a, b))
		sum.add(r.weights.shape, (least-area)/least, terms)
	}
}
