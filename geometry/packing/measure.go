package packing

import (
	"context"
	"math"

	"gussetwright/geometry"
)

// Measure is how well paper would follow a motion.
type Measure struct {
	// MaxStrain is the greatest change of an edge of the net, as a share of its length
	// on the blank. Edges of less than a mm are left out.
	MaxStrain float64
	// MaxStretch is the same of any length within a triangle, in any direction: more, as
	// it is reckoned across narrow triangles as well. Those of less than a mm across
	// are left out.
	MaxStretch float64
	// MaxCrossing is how far an edge reaches through a triangle at most, in mm: the
	// least of the ways of its two ends back to the plane of that triangle and of the
	// way from where it passes to the border of the triangle.
	MaxCrossing float64
	// A step is the way of the corner that goes farthest from one moment to the next,
	// of a hundred, in mm.
	MaxStep, MeanStep float64
}

// What is good enough to be shown as the motion of paper.
const (
	mostStrain   = 0.02
	mostCrossing = 1.0 // mm
	mostUneven   = 2.0 // greatest step as a multiple of the mean
)

// Good tells whether a motion may be shown as that of paper.
func (m Measure) Good() bool {
	return m.MaxStrain <= mostStrain && m.MaxCrossing <= mostCrossing && m.MaxStep <= mostUneven*m.MeanStep
}

const (
	steps       = 100
	finerMoment = 4 // moments of each step at which strain and crossing are looked at
	leastLength = 1 // mm
)

// measure follows the motion. The context ends it.
func (m *Motion) measure(ctx context.Context, progress func(float64)) (Measure, error) {
	var r Measure
	scale := m.laid.Spec.Body.Gusset
	edges := edgesOf(m.fields)
	var before []geometry.Vec3
	for k := range steps*finerMoment + 1 {
		if err := ctx.Err(); err != nil {
			return r, err
		}
		if progress != nil && k%finerMoment == 0 {
			progress(float64(k) / (steps * finerMoment))
		}
		m.set(float64(k) / (steps * finerMoment))
		strain, stretch := m.strain(leastLength / scale)
		r.MaxStrain, r.MaxStretch = max(r.MaxStrain, strain), max(r.MaxStretch, stretch)
		r.MaxCrossing = max(r.MaxCrossing, scale*crossing(m.now.points, edges, m.fields))
		r.MaxCrossing = max(r.MaxCrossing, scale*m.beyondMiddle())
		if k%finerMoment != 0 {
			continue
		}
		if before != nil {
			step := scale * farthest(before, m.now.points)
			r.MaxStep = max(r.MaxStep, step)
			r.MeanStep += step / steps
		}
		before = append(before[:0], m.now.points...)
	}
	return r, nil
}

// beyondMiddle returns how far the half bag reaches over its middle, into the other
// half, in D.
func (m *Motion) beyondMiddle() float64 {
	farthest := 0.0
	for _, p := range m.now.points {
		farthest = max(farthest, p.X)
	}
	return max(farthest-m.laid.Spec.Body.Width/2/m.laid.Spec.Body.Gusset, 0)
}

// edge is an edge of the net, from one corner to another.
type edge struct{ a, b int }

// edgesOf returns every edge of the triangles once.
func edgesOf(fields []triangle) []edge {
	var edges []edge
	known := map[[2]int]bool{}
	for _, t := range fields {
		for k, a := range t.corners {
			b := t.corners[(k+1)%3]
			key := [2]int{min(a, b), max(a, b)}
			if !known[key] {
				known[key] = true
				edges = append(edges, edge{key[0], key[1]})
			}
		}
	}
	return edges
}

// strain returns the greatest strain at the moment that is set, of edges no shorter than
// least, in D, and the greatest in any direction of triangles that are no lower.
func (m *Motion) strain(least float64) (edges, fields float64) {
	for _, f := range m.frames() {
		longest := 0.0
		for k, a := range f.corners {
			b := f.corners[(k+1)%3]
			flat := b.Sub(a).Length()
			longest = max(longest, flat)
			if flat >= least {
				edges = max(edges, math.Abs(f.at(b).Sub(f.at(a)).Length()/flat-1))
			}
		}
		if 2*f.area >= least*longest {
			fields = max(fields, f.strain())
		}
	}
	return edges, fields
}

// strain returns the greatest change of a length within the triangle, as a share of
// it: the principal stretches are the roots of the eigenvalues of the products of the
// steps along x and y.
func (f *frame) strain() float64 {
	xx, yy, xy := f.x.Dot(f.x), f.y.Dot(f.y), f.x.Dot(f.y)
	mean, off := (xx+yy)/2, math.Hypot((xx-yy)/2, xy)
	return max(math.Sqrt(mean+off)-1, 1-math.Sqrt(max(mean-off, 0)))
}

// crossing returns how far an edge reaches through a triangle at most.
func crossing(points []geometry.Vec3, edges []edge, fields []triangle) float64 {
	most := 0.0
	for _, t := range fields {
		p, q, r := points[t.corners[0]], points[t.corners[1]], points[t.corners[2]]
		low := geometry.Vec3{X: min(p.X, q.X, r.X), Y: min(p.Y, q.Y, r.Y), Z: min(p.Z, q.Z, r.Z)}
		high := geometry.Vec3{X: max(p.X, q.X, r.X), Y: max(p.Y, q.Y, r.Y), Z: max(p.Z, q.Z, r.Z)}
		for _, e := range edges {
			if t.has(e.a) || t.has(e.b) {
				continue
			}
			a, b := points[e.a], points[e.b]
			if max(a.X, b.X) < low.X || min(a.X, b.X) > high.X ||
				max(a.Y, b.Y) < low.Y || min(a.Y, b.Y) > high.Y ||
				max(a.Z, b.Z) < low.Z || min(a.Z, b.Z) > high.Z {
				continue
			}
			most = max(most, through(a, b, [3]geometry.Vec3{p, q, r}))
		}
	}
	return most
}

func (t *triangle) has(i int) bool {
	return t.corners[0] == i || t.corners[1] == i || t.corners[2] == i
}

// through returns how far the line from a to b reaches through a triangle, 0 if it
// does not pass through it.
func through(a, b geometry.Vec3, t [3]geometry.Vec3) float64 {
	normal := t[1].Sub(t[0]).Cross(t[2].Sub(t[0])).Unit()
	before, behind := a.Sub(t[0]).Dot(normal), b.Sub(t[0]).Dot(normal)
	if before*behind >= 0 {
		return 0
	}
	hit := a.Add(b.Sub(a).Scale(before / (before - behind)))
	depth := min(math.Abs(before), math.Abs(behind))
	for k, from := range t {
		along := t[(k+1)%3].Sub(from).Unit()
		inside := normal.Cross(along).Dot(hit.Sub(from))
		if inside <= 0 {
			return 0
		}
		depth = min(depth, inside)
	}
	return depth
}
