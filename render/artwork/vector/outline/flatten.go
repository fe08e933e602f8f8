package outline

import (
	"math"

	"gussetwright/geometry"
)

// Strand is one part of a path as a chain of straight lines. Its points lie apart; a
// part without length is a single point.
type Strand struct {
	Points []geometry.Vec2
	// Smooth tells of each point whether it lies inside a curve, where a line has
	// no corner.
	Smooth []bool
	Closed bool
	// Drawn is false for a mere move, which leaves nothing even with round ends.
	Drawn bool

	same float64 // how near points are to be one: what is left by rounding has no direction
}

// Flattening says how curves become lines.
type Flattening struct {
	By        geometry.Affine // moves the path first
	Tolerance float64         // how far a line may stray from its curve
	// Seen is what matters: curves wholly to one side of it become one line.
	Seen geometry.Rect
}

// mostLines bounds what one curve becomes. At a tolerance of a tenth of a pixel it
// is reached by curves some 200 000 pixels long.
const mostLines = 1024

// Strands hands over the parts of the path one by one. A strand is valid until the
// function returns.
func (f Flattening) Strands(path Path, take func(Strand)) {
	s := Strand{same: f.Tolerance / 1000}
	hand := func() {
		for n := len(s.Points); s.Closed && n > 1 && s.touches(s.Points[0]); n-- {
			s.Points, s.Smooth = s.Points[:n-1], s.Smooth[:n-1]
		}
		if len(s.Points) > 0 {
			take(s)
		}
		s = Strand{Points: s.Points[:0], Smooth: s.Smooth[:0], same: s.same}
	}
	for step, points := range path.All() {
		switch step {
		case Move:
			hand()
			s.add(f.By.At(points[0]), false)
			continue
		case Line:
			s.add(f.By.At(points[0]), false)
		case Curve:
			f.curve(&s, f.By.At(points[0]), f.By.At(points[1]), f.By.At(points[2]))
		case Close:
			s.Closed = true
		}
		s.Drawn = true
		if step == Close {
			hand()
		}
	}
	hand()
}

func (s *Strand) add(p geometry.Vec2, smooth bool) {
	if len(s.Points) > 0 && s.touches(p) {
		return
	}
	s.Points = append(s.Points, p)
	s.Smooth = append(s.Smooth, smooth)
}

// touches tells whether the last point is the same as another.
func (s *Strand) touches(p geometry.Vec2) bool {
	last := s.Points[len(s.Points)-1]
	return math.Abs(last.X-p.X) <= s.same && math.Abs(last.Y-p.Y) <= s.same
}

// curve cuts a curve into equal shares. How far they stray is bounded by the second
// differences of its points (the bound of Wang, 1984, value from memory).
func (f Flattening) curve(s *Strand, leave, arrive, to geometry.Vec2) {
	if len(s.Points) == 0 {
		s.add(to, false)
		return
	}
	from := s.Points[len(s.Points)-1]
	if f.aside(from, leave, arrive, to) {
		s.add(to, false)
		return
	}
	bend := max(from.Sub(leave.Scale(2)).Add(arrive).Length(), leave.Sub(arrive.Scale(2)).Add(to).Length())
	count := int(min(math.Ceil(math.Sqrt(0.75*bend/f.Tolerance)), mostLines))
	for i := 1; i < count; i++ {
		s.add(Along(from, leave, arrive, to, float64(i)/float64(count)), true)
	}
	s.add(to, false)
}

// aside tells whether a curve lies wholly to one side of what is seen.
func (f Flattening) aside(a, b, c, d geometry.Vec2) bool {
	return max(a.X, b.X, c.X, d.X) < f.Seen.Min.X || min(a.X, b.X, c.X, d.X) > f.Seen.Max.X ||
		max(a.Y, b.Y, c.Y, d.Y) < f.Seen.Min.Y || min(a.Y, b.Y, c.Y, d.Y) > f.Seen.Max.Y
}
