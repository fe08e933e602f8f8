package outline

import (
	"math"

	"gussetwright/geometry"
)

// Cap is how a line ends.
type Cap uint8

// The ends of lines.
const (
	Butt Cap = iota
	RoundCap
	Square
)

// Join is how a line turns a corner.
type Join uint8

// The corners of lines.
const (
	Miter Join = iota
	RoundJoin
	Bevel
)

// Pen is how a line is drawn along a path.
type Pen struct {
	Width      float64
	Cap        Cap
	Join       Join
	MiterLimit float64   // the longest mitre, in widths; sharper corners are bevelled
	Dashes     []float64 // lengths of dashes and gaps in turn; none for a solid line
	Offset     float64   // how far into the dashes the line begins
}

// Tracer finds what a pen covers. All polygons that it hands over are convex and
// run anticlockwise (y up), so what is covered by any of them is covered by the line.
type Tracer struct {
	Pen       Pen
	Tolerance float64 // how far polygons may stray from round ends and corners
	Seen      geometry.Rect
	Take      func(polygon []geometry.Vec2)

	half   float64
	step   float64 // the angle between two points of an arc
	corner []geometry.Vec2
}

// leastStep bounds how many points a round end has: enough for pens of a hundred
// thousand pixels.
const leastStep = math.Pi / 2048

// Trace hands over the polygons of one part of a path.
func (t *Tracer) Trace(s Strand) {
	t.half = t.Pen.Width / 2
	t.step = max(2*math.Acos(max(1-t.Tolerance/t.half, math.Cos(math.Pi/8))), leastStep)
	if len(t.Pen.Dashes) > 0 {
		t.dash(s)
		return
	}
	t.solid(s)
}

func (t *Tracer) solid(s Strand) {
	n := len(s.Points)
	if n == 1 {
		t.dot(s)
		return
	}
	edges := n - 1
	if s.Closed {
		edges = n
	}
	var first, before geometry.Vec2
	for i := range edges {
		a, b := s.Points[i], s.Points[(i+1)%n]
		along := b.Sub(a).Unit()
		t.edge(a, b, along)
		if i == 0 {
			first = along
		} else {
			t.join(a, before, along, s.Smooth[i])
		}
		before = along
	}
	if s.Closed {
		t.join(s.Points[0], before, first, s.Smooth[0])
		return
	}
	t.end(s.Points[0], first.Scale(-1))
	t.end(s.Points[n-1], before)
}

// dot leaves what a line without length shows: its two ends.
func (t *Tracer) dot(s Strand) {
	if s.Drawn && t.Pen.Cap != Butt {
		along := geometry.Vec2{X: 1}
		t.end(s.Points[0], along)
		t.end(s.Points[0], along.Scale(-1))
	}
}

func (t *Tracer) edge(a, b, along geometry.Vec2) {
	if !t.near(a, b) {
		return
	}
	side := along.Left().Scale(t.half)
	t.polygon(a.Sub(side), b.Sub(side), b.Add(side), a.Add(side))
}

// near tells whether the line between two points may be seen.
func (t *Tracer) near(a, b geometry.Vec2) bool {
	return max(a.X, b.X)+t.half >= t.Seen.Min.X && min(a.X, b.X)-t.half <= t.Seen.Max.X &&
		max(a.Y, b.Y)+t.half >= t.Seen.Min.Y && min(a.Y, b.Y)-t.half <= t.Seen.Max.Y
}

// join fills the wedge outside of a corner.
func (t *Tracer) join(at, before, after geometry.Vec2, smooth bool) {
	turn := before.Cross(after)
	straight := before.Dot(after)
	from, to := before.Left().Scale(-t.half), after.Left().Scale(-t.half)
	if turn < 0 {
		from, to = after.Left().Scale(t.half), before.Left().Scale(t.half)
	}
	switch {
	case smooth || t.Pen.Join == RoundJoin:
		t.fan(at, from, math.Atan2(math.Abs(turn), straight))
	case turn == 0:
	case t.Pen.Join == Miter && t.Pen.MiterLimit*t.Pen.MiterLimit*(1+straight) >= 2:
		// 2/(1+cos) is the square of the mitre's length in widths.
		tip := from.Add(to).Scale(1 / (1 + straight))
		t.polygon(at, at.Add(from), at.Add(tip), at.Add(to))
	default:
		t.polygon(at, at.Add(from), at.Add(to))
	}
}

// end adds the end of a line that arrives in a direction.
func (t *Tracer) end(at, along geometry.Vec2) {
	side := along.Left().Scale(t.half)
	switch t.Pen.Cap {
	case RoundCap:
		t.fan(at, side.Scale(-1), math.Pi)
	case Square:
		out := at.Add(along.Scale(t.half))
		t.polygon(at.Sub(side), out.Sub(side), out.Add(side), at.Add(side))
	}
}

// fan adds a sector anticlockwise about a point.
func (t *Tracer) fan(at, from geometry.Vec2, sweep float64) {
	if sweep == 0 {
		return
	}
	count := max(math.Ceil(sweep/t.step), 1)
	sin, cos := math.Sincos(sweep / count)
	t.corner = append(t.corner[:0], at, at.Add(from))
	for range int(count) {
		from = geometry.Vec2{X: from.X*cos - from.Y*sin, Y: from.X*sin + from.Y*cos}
		t.corner = append(t.corner, at.Add(from))
	}
	t.Take(t.corner)
}

func (t *Tracer) polygon(corners ...geometry.Vec2) {
	t.corner = append(t.corner[:0], corners...)
	t.Take(t.corner)
}
