package fold

import (
	"cmp"
	"math"
	"slices"

	"gussetwright/geometry"
)

// crossing returns how deep two convex plates pass through each other, in mm, or a
// number not above least when that is all one needs to know. Convex bodies are apart
// when their shadows along some line are, and of all such lines those that stand on
// a face or on an edge of each are enough (separating axes); the least overlap of
// the shadows is the shortest way that parts them.
func crossing(a, b *plate, least float64) float64 {
	if len(a.points) < 3 || len(b.points) < 3 || boxesApart(a, b, least) {
		return 0
	}
	depth := math.Inf(1)
	// along measures on a line and tells whether to go on.
	along := func(axis geometry.Vec3) bool {
		length := axis.Length()
		if length < 1e-9 {
			return true
		}
		lowA, highA := shadow(a.points, axis)
		lowB, highB := shadow(b.points, axis)
		depth = min(depth, min(highA-lowB, highB-lowA)/length)
		return depth > least
	}
	if !along(a.normal) || !along(b.normal) {
		return 0
	}
	for i, p := range a.points {
		edge := a.points[(i+1)%len(a.points)].Sub(p).Unit()
		for k, q := range b.points {
			if !along(edge.Cross(b.points[(k+1)%len(b.points)].Sub(q).Unit())) {
				return 0
			}
		}
	}
	return depth
}

// boxesApart tells whether the boxes around two plates overlap by no more than least.
func boxesApart(a, b *plate, least float64) bool {
	return a.most.X-b.least.X <= least || b.most.X-a.least.X <= least ||
		a.most.Y-b.least.Y <= least || b.most.Y-a.least.Y <= least ||
		a.most.Z-b.least.Z <= least || b.most.Z-a.least.Z <= least
}

// shadow returns where the points lie along an axis.
func shadow(points []geometry.Vec3, axis geometry.Vec3) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, p := range points {
		at := p.Dot(axis)
		low, high = min(low, at), max(high, at)
	}
	return low, high
}

// creased tells whether an edge of a facet, from a to b on the blank, runs along one
// of another facet of the same piece.
func creased(facets []Facet, self int, a, b geometry.Vec2) bool {
	along := b.Sub(a).Unit()
	length := b.Sub(a).Length()
	for i := range facets {
		f := &facets[i]
		if i == self || f.Piece != facets[self].Piece {
			continue
		}
		for c, p := range f.Corners {
			q := f.Corners[(c+1)%len(f.Corners)]
			off, end := p.Sub(a), q.Sub(a)
			if math.Abs(along.Cross(off)) > geometry.Tolerance || math.Abs(along.Cross(end)) > geometry.Tolerance {
				continue
			}
			low, high := end.Dot(along), off.Dot(along) // it runs the other way
			if min(high, length)-max(low, 0) > geometry.Tolerance {
				return true
			}
		}
	}
	return false
}

// convexHull returns the least convex polygon around points, anticlockwise (monotone
// chain, Andrew 1979).
func convexHull(points []geometry.Vec2) []geometry.Vec2 {
	if len(points) < 3 {
		return nil
	}
	sorted := slices.Clone(points)
	slices.SortFunc(sorted, func(p, q geometry.Vec2) int { return cmp.Or(cmp.Compare(p.X, q.X), cmp.Compare(p.Y, q.Y)) })
	chain := func(hull []geometry.Vec2, p geometry.Vec2, keep int) []geometry.Vec2 {
		for len(hull) > keep && hull[len(hull)-1].Sub(hull[len(hull)-2]).Cross(p.Sub(hull[len(hull)-1])) <= 0 {
			hull = hull[:len(hull)-1]
		}
		return append(hull, p)
	}
	hull := make([]geometry.Vec2, 0, len(points)+1)
	for _, p := range sorted {
		hull = chain(hull, p, 1)
	}
	upper := len(hull)
	for i := len(sorted) - 2; i >= 0; i-- {
		hull = chain(hull, sorted[i], upper)
	}
	return hull[:len(hull)-1]
}
