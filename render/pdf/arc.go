package pdf

import (
	"math"

	"gussetwright/geometry"
)

// How far a Bézier curve may stray from the arc that it stands for, in
// millimetres. Small circles are the four quarters that other programs write and
// look for (common practice, no published source); they stray by 0.027 % of the
// radius, which is 0.0007 mm for a rope hole of 5 mm. circleStray keeps to
// quarters up to a radius of 18 mm.
const (
	arcStray    = 0.0001
	circleStray = 0.005
)

// quarterBulge is the bulge of a quarter of a circle, the most that one curve
// may span.
const quarterBulge = math.Sqrt2 - 1

// curve is a cubic Bézier curve that starts where the pen is.
type curve struct {
	leave, arrive, to geometry.Vec2
}

// curves returns the edge as Bézier curves that stray at most by the given
// distance. The curves are found from the chord, never from the centre, which
// lies out of reach for an edge that is almost straight.
func curves(edge geometry.Edge, stray float64) []curve {
	if math.Abs(edge.Bulge) > quarterBulge+1e-12 || strayOf(edge) > stray {
		first, second := halves(edge)
		return append(curves(first, stray), curves(second, stray)...)
	}
	// The pen leaves at half the turn to one side of the chord and arrives at
	// half the turn to the other. With the bulge b that direction is
	// (1 − b², 2b) along and across the chord, and the usual handle of
	// 4/3·tan(θ/4)·r is a third of its length.
	chord := edge.To.Sub(edge.From)
	along := chord.Scale((1 - edge.Bulge*edge.Bulge) / 3)
	across := chord.Left().Scale(2 * edge.Bulge / 3)
	return []curve{{
		leave:  edge.From.Add(along).Sub(across),
		arrive: edge.To.Sub(along).Sub(across),
		to:     edge.To,
	}}
}

// strayOf returns the largest distance of one Bézier curve from the arc. With
// the handle above it is 2/27·sin⁶(θ/4)/cos²(θ/4)·r to the first order, written
// here in chord and bulge. The tests measure it.
func strayOf(edge geometry.Edge) float64 {
	b := math.Abs(edge.Bulge)
	chord := edge.To.Sub(edge.From).Length()
	return chord * b * b * b * b * b / (54 * (1 + b*b))
}

// halves cuts the arc in the middle.
func halves(edge geometry.Edge) (first, second geometry.Edge) {
	chord := edge.To.Sub(edge.From)
	middle := edge.From.Mid(edge.To).Sub(chord.Left().Scale(edge.Bulge / 2))
	bulge := edge.Bulge / (1 + math.Sqrt(1+edge.Bulge*edge.Bulge)) // tan of half the angle
	return geometry.Edge{From: edge.From, To: middle, Bulge: bulge},
		geometry.Edge{From: middle, To: edge.To, Bulge: bulge}
}
