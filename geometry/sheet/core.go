package sheet

import (
	"cmp"
	"math"
	"slices"

	"gussetwright/geometry"
)

// coreBound returns a number of pieces that no layout of outlines passes. In every
// outline lie upright rectangles, its cores. Where outlines keep the gap so do their
// cores, so that no more outlines lie in a room than cores of one kind.
func (p *Plan) coreBound(outline *contour) int {
	best := int(p.Usable.Area()/p.Piece.Area + shade)
	for _, core := range outline.cores() {
		best = min(best, p.mostOf(core))
	}
	return best
}

// mostOf bounds how many rectangles can lie as the grain of the pieces allows.
func (p *Plan) mostOf(core geometry.Vec2) int {
	if p.Piece.Grain != GrainRequired {
		if in, ok := newInstance(p.Usable, p.Gap(), core.X, core.Y); ok {
			return in.bound()
		}
	}
	most := 0
	for _, turn := range p.turns() {
		size := core
		if turn == 90 {
			size = swapped(core)
		}
		most = max(most, fit(p.Usable, p.Gap(), size.X, size.Y).count())
	}
	return most
}

// cores returns the sizes of upright rectangles inside the contour that no other of
// them holds. Their sides pass through the outermost corners of the contour.
func (c *contour) cores() []geometry.Vec2 {
	lefts, rights := outermost(c.closed, func(p geometry.Vec2) float64 { return p.X })
	lows, highs := outermost(c.closed, func(p geometry.Vec2) float64 { return p.Y })
	all := edges(c.closed)
	var found []geometry.Vec2
	for _, left := range lefts {
		for _, right := range rights {
			for _, low := range lows {
				for _, high := range highs {
					r := geometry.Rect{Min: geometry.Vec2{X: left, Y: low}, Max: geometry.Vec2{X: right, Y: high}}
					size := r.Max.Sub(r.Min)
					if size.X > 0 && size.Y > 0 && !holdsOne(found, size) && c.holds(r, all) {
						found = append(found, size)
					}
				}
			}
		}
	}
	return found
}

// holdsOne tells whether one of the sizes is not less than size on either side.
func holdsOne(sizes []geometry.Vec2, size geometry.Vec2) bool {
	return slices.ContainsFunc(sizes, func(s geometry.Vec2) bool { return s.X >= size.X && s.Y >= size.Y })
}

// outermost returns the least and the greatest coordinates that corners have, from the
// outside inwards.
func outermost(corners []geometry.Vec2, of func(geometry.Vec2) float64) (least, greatest []float64) {
	const deep = 4
	all := make([]float64, len(corners))
	for i, p := range corners {
		all[i] = of(p)
	}
	slices.Sort(all)
	all = slices.CompactFunc(all, func(a, b float64) bool { return math.Abs(b-a) <= geometry.Tolerance })
	least = slices.Clone(all[:min(deep, len(all))])
	greatest = slices.Clone(all[max(0, len(all)-deep):])
	slices.SortFunc(greatest, func(a, b float64) int { return cmp.Compare(b, a) })
	return least, greatest
}

// holds tells whether a rectangle lies in the contour, which it may touch.
func (c *contour) holds(r geometry.Rect, all []edge) bool {
	within := r.Inset(2 * geometry.Tolerance)
	middle := within.Min.Mid(within.Max)
	if !inside(&contour{corners: c.closed}, middle) {
		return false
	}
	return !slices.ContainsFunc(all, func(e edge) bool {
		_, _, passes := within.Through(e.low, e.high)
		return passes
	})
}
