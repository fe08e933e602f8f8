package geometry

// Offset returns the closed path with every edge moved by d to the outside
// (inside when d is negative) and the corners drawn out to a mitre. Arcs are
// taken as their chords. The result is empty when nothing is left of the shape
// or an edge would turn round, so it serves outlines whose edges are long beside d.
func (p Path) Offset(d float64) Path {
	corners := distinct(p)
	n := len(corners)
	if n < 3 {
		return Path{}
	}
	moved := make([]Vec2, n)
	for i := range corners {
		before := corners[(i+n-1)%n]
		at := corners[i]
		after := corners[(i+1)%n]
		moved[i] = mitre(before, at, after, d)
	}
	for i := range corners {
		was := corners[(i+1)%n].Sub(corners[i])
		is := moved[(i+1)%n].Sub(moved[i])
		if was.Dot(is) <= 0 {
			return Path{}
		}
	}
	return Polygon(moved...)
}

// mitre returns where the corner at goes when both of its edges move outward by d.
func mitre(before, at, after Vec2, d float64) Vec2 {
	in := at.Sub(before).Unit()
	out := after.Sub(at).Unit()
	// The outside of an anticlockwise path lies to the right of its edges.
	right := func(u Vec2) Vec2 { return Vec2{u.Y, -u.X} }
	sum := right(in).Add(right(out))
	scale := 1 + in.Dot(out)
	if scale < 1e-9 {
		return at.Add(right(in).Scale(d))
	}
	return at.Add(sum.Scale(d / scale))
}

// distinct returns the corners of the path without repeats and without corners
// that lie on a straight line between their neighbours.
func distinct(p Path) []Vec2 {
	var corners []Vec2
	n := len(p.Vertices)
	for i, v := range p.Vertices {
		if !v.Near(p.Vertices[(i+1)%n].Vec2) {
			corners = append(corners, v.Vec2)
		}
	}
	var kept []Vec2
	for i, c := range corners {
		before := corners[(i+len(corners)-1)%len(corners)]
		after := corners[(i+1)%len(corners)]
		in, out := c.Sub(before).Unit(), after.Sub(c).Unit()
		if in.Dot(out) < 1-1e-12 {
			kept = append(kept, c)
		}
	}
	return kept
}
