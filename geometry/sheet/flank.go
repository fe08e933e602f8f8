package sheet

import (
	"cmp"
	"math"
	"slices"

	"gussetwright/geometry"
)

// flank is the side of a contour that faces a neighbour, as the neighbour sees it:
// x is how far a point falls back from the side of the box.
type flank struct {
	corners []geometry.Vec2
	edges   []edge  // by their lower ends
	depth   float64 // how far any corner falls back; a neighbour comes no nearer
	longest float64 // of the edges, along y
}

// left returns the flank on the left of a contour.
func (c *contour) left() flank {
	var f flank
	for _, p := range c.closed {
		if p.X < c.size.X/2 {
			f.depth = max(f.depth, p.X)
		}
	}
	for _, p := range c.closed {
		if p.X <= f.depth {
			f.corners = append(f.corners, p)
		}
	}
	for _, e := range edges(c.closed) {
		if min(e.low.X, e.high.X) <= f.depth {
			f.edges = append(f.edges, e)
			f.longest = max(f.longest, e.high.Y-e.low.Y)
		}
	}
	slices.SortFunc(f.edges, func(a, b edge) int { return cmp.Compare(a.low.Y, b.low.Y) })
	return f
}

// right returns the flank on the right of a contour.
func (c *contour) right() flank {
	m := c.mirrored()
	return m.left()
}

// least distances in mm: corners that just meet are kept from each other by the first,
// and what comes nearer than the gap by less than the second only grazes.
const (
	thinnest = 1e-7
	graze    = 2e-8
)

// meet returns how far apart the boxes of two neighbours must be, negative when they
// may reach into each other, so that the contours keep the gap. The one on the right
// is raised by rise.
func meet(left, right *flank, rise, gap float64) float64 {
	gap = max(gap, thinnest)
	nearest := gap - min(left.depth, right.depth)
	return max(nearest, passing(left.corners, right, -rise, gap), passing(right.corners, left, rise, gap))
}

// passing returns the least distance of the boxes at which corners, raised by rise,
// keep the gap from the edges of the other flank.
func passing(corners []geometry.Vec2, other *flank, rise, gap float64) float64 {
	least := math.Inf(-1)
	for _, corner := range corners {
		y := corner.Y + rise
		from, _ := slices.BinarySearchFunc(other.edges, y-gap-other.longest, func(e edge, low float64) int {
			return cmp.Compare(e.low.Y, low)
		})
		for _, e := range other.edges[from:] {
			if e.low.Y > y+gap {
				break
			}
			if x, touched := e.nearest(y, gap); touched {
				least = max(least, -corner.X-x)
			}
		}
	}
	return least
}

// nearest returns the least x at height y of the points that are nearer to the edge
// than gap. What only grazes the edge does not touch it.
func (e edge) nearest(y, gap float64) (x float64, touched bool) {
	x = math.Inf(1)
	for _, end := range [2]geometry.Vec2{e.low, e.high} {
		if off := math.Abs(y - end.Y); off < gap-graze {
			x = min(x, end.X-math.Sqrt(gap*gap-off*off))
		}
	}
	if along := e.high.Sub(e.low); along.Y > 2*graze {
		out := e.left.Scale(gap)
		if up := y - e.low.Y - out.Y; up > graze && up < along.Y-graze {
			x = min(x, e.low.X+out.X+up/along.Y*along.X)
		}
	}
	return x, !math.IsInf(x, 1)
}
