package solid

import (
	"math"
	"slices"

	"gussetwright/geometry"
)

// Crease is a line of the blank that is drawn on the folded paper, on both sides.
type Crease struct {
	Piece int // index into the pieces of the blank
	geometry.Edge
	// Lit creases stand out: whole where they are seen, dashed where something lies
	// before them. The others are fine lines.
	Lit bool
}

// creases draws the creases that the view asks for, those that stand out last.
func (c *canvas) creases(v *View, l *lens, samples float64) {
	// Lines keep their share of a large picture, for those who sit far from it.
	large := max(float64(min(v.Width, v.Height))/700, 1) * samples
	accent, halo := pack(v.Look.Accent), pack(v.Look.Halo)
	for _, way := range []struct {
		pen
		lit, once bool // once: only the paper on one side of the crease draws it
	}{
		{pen{width: 1.2 * samples, colour: pack(v.Look.Ink), part: 70, lift: 0.05}, false, true},
		{pen{width: 1.6 * large, colour: accent, part: 170, hidden: true, dash: 5 * large}, true, true},
		{pen{width: 6 * large, colour: halo, part: 150, lift: 0.3}, true, false},
		{pen{width: 3.2 * large, colour: accent, part: 256, lift: 0.35}, true, false},
	} {
		for i := range v.Creases {
			crease := &v.Creases[i]
			if crease.Lit == way.lit {
				v.Model.along(crease, way.once, func(s stroke) { c.line(l, s, way.pen) })
			}
		}
	}
}

// along calls draw for every part of the paper that a crease runs over, in space. once
// leaves out paper along the right side of the crease.
func (m *Model) along(crease *Crease, once bool, draw func(stroke)) {
	for i := range m.body.Facets {
		f := &m.body.Facets[i]
		if f.Piece != crease.Piece || apart(crease.Edge, f.Corners) {
			continue
		}
		part := func(on geometry.Edge) { draw(stroke{f.Pose.At(on.From), f.Pose.At(on.To), f.Pose.Out()}) }
		alongBorder(crease.Edge, f.Corners, once, part)
		across(crease.Edge, f.Corners, part)
	}
}

const (
	aside     = 0.01 // how far beside an edge of the paper a crease may run and be on it, in mm
	leastPart = 0.1  // what is shorter is a corner, in mm
)

// apart tells whether a line lies beyond one side of a facet.
func apart(line geometry.Edge, facet []geometry.Vec2) bool {
	low, high := facet[0], facet[0]
	for _, c := range facet[1:] {
		low, high = geometry.Vec2{X: min(low.X, c.X), Y: min(low.Y, c.Y)}, geometry.Vec2{X: max(high.X, c.X), Y: max(high.Y, c.Y)}
	}
	return max(line.From.X, line.To.X) < low.X-aside || min(line.From.X, line.To.X) > high.X+aside ||
		max(line.From.Y, line.To.Y) < low.Y-aside || min(line.From.Y, line.To.Y) > high.Y+aside
}

// alongBorder calls draw for the parts of a line that run along the border of a facet,
// which is anticlockwise. leftOnly leaves out those with the facet on their right.
func alongBorder(line geometry.Edge, facet []geometry.Vec2, leftOnly bool, draw func(geometry.Edge)) {
	direction := line.To.Sub(line.From)
	length := direction.Length()
	direction = direction.Unit()
	last := facet[len(facet)-1].Sub(line.From)
	for _, corner := range facet {
		a, b := last, corner.Sub(line.From)
		last = b
		if math.Abs(direction.Cross(a)) > aside || math.Abs(direction.Cross(b)) > aside {
			continue
		}
		from, to := min(max(direction.Dot(a), 0), length), min(max(direction.Dot(b), 0), length)
		if to-from > leastPart || from-to > leastPart && !leftOnly {
			draw(geometry.Edge{From: line.From.Add(direction.Scale(from)), To: line.From.Add(direction.Scale(to))})
		}
	}
}

// across calls draw for the parts of a line that run over the inside of a facet.
func across(line geometry.Edge, facet []geometry.Vec2, draw func(geometry.Edge)) {
	direction := line.To.Sub(line.From)
	var room [16]float64
	cuts := append(room[:0], 0, 1)
	last := facet[len(facet)-1]
	for _, corner := range facet {
		a, b := last, corner
		last = corner
		before, after := direction.Cross(a.Sub(line.From)), direction.Cross(b.Sub(line.From))
		if before == after || before > 0 == (after > 0) && before != 0 && after != 0 {
			continue
		}
		at := a.Add(b.Sub(a).Scale(before / (before - after)))
		if share := at.Sub(line.From).Dot(direction) / direction.Dot(direction); share > 0 && share < 1 {
			cuts = append(cuts, share)
		}
	}
	slices.Sort(cuts)
	for i := range len(cuts) - 1 {
		part := geometry.Edge{From: line.From.Add(direction.Scale(cuts[i])), To: line.From.Add(direction.Scale(cuts[i+1]))}
		if (cuts[i+1]-cuts[i])*direction.Length() > leastPart && strictlyWithin(facet, part.From.Mid(part.To)) {
			draw(part)
		}
	}
}

// strictlyWithin tells whether a point lies within a facet and not on its border.
func strictlyWithin(facet []geometry.Vec2, p geometry.Vec2) bool {
	inside := false
	last := facet[len(facet)-1]
	for _, c := range facet {
		along := c.Sub(last)
		if length := along.Length(); length > 0 {
			share := along.Dot(p.Sub(last)) / (length * length)
			if math.Abs(along.Cross(p.Sub(last))) <= aside*length && share >= 0 && share <= 1 {
				return false
			}
		}
		if (c.Y > p.Y) != (last.Y > p.Y) && p.X < c.X+(p.Y-c.Y)*(last.X-c.X)/(last.Y-c.Y) {
			inside = !inside
		}
		last = c
	}
	return inside
}
