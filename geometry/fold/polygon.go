package fold

import (
	"gussetwright/geometry"
	"gussetwright/geometry/blank"
)

// arcSteps is the number of chords that stand for a curved cut.
const arcSteps = 6

// cornersOf returns the outline of a panel as a polygon.
func cornersOf(panel *blank.Panel) []geometry.Vec2 {
	path := panel.Shape
	corners := make([]geometry.Vec2, 0, len(path.Vertices)+2*arcSteps)
	for i := range path.Vertices {
		edge := path.Edge(i)
		corners = append(corners, edge.From)
		if edge.Bulge == 0 {
			continue
		}
		arc := edge.Arc()
		for step := 1; step < arcSteps; step++ {
			corners = append(corners, arc.At(float64(step)/arcSteps))
		}
	}
	return corners
}

// line is a line on the blank with an inside to its left.
type line struct{ from, to geometry.Vec2 }

func (l line) turned() line { return line{l.to, l.from} }

// left returns how far p lies to the left of the line, in mm.
func (l line) left(p geometry.Vec2) float64 {
	return l.to.Sub(l.from).Unit().Cross(p.Sub(l.from))
}

// upright returns the line up the blank at x: what lies to its left is inside.
func upright(x float64) line { return line{geometry.Vec2{X: x}, geometry.Vec2{X: x, Y: 1}} }

// mirrored returns the line mirrored about the height y, the same part inside.
func (l line) mirrored(y float64) line {
	flip := func(p geometry.Vec2) geometry.Vec2 { return geometry.Vec2{X: p.X, Y: 2*y - p.Y} }
	return line{flip(l.to), flip(l.from)}
}

// clip returns the part of a polygon to the left of all lines (the polygon clipping
// of Sutherland and Hodgman, 1974), or nil when it has no area. Beside convex
// polygons it takes the teeth of a zigzag, which every line here cuts at most into
// parts that share a border.
func clip(corners []geometry.Vec2, lines ...line) []geometry.Vec2 {
	for _, l := range lines {
		corners = clipOne(corners, l)
	}
	if len(corners) < 3 || geometry.Polygon(corners...).Area() <= geometry.Tolerance {
		return nil
	}
	return corners
}

func clipOne(corners []geometry.Vec2, l line) []geometry.Vec2 {
	kept := make([]geometry.Vec2, 0, len(corners)+2)
	add := func(p geometry.Vec2) {
		if len(kept) == 0 || !kept[len(kept)-1].Near(p) {
			kept = append(kept, p)
		}
	}
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		da, db := l.left(a), l.left(b)
		if da >= -geometry.Tolerance {
			add(a)
		}
		if da > geometry.Tolerance && db < -geometry.Tolerance || da < -geometry.Tolerance && db > geometry.Tolerance {
			add(a.Add(b.Sub(a).Scale(da / (da - db))))
		}
	}
	if len(kept) > 1 && kept[0].Near(kept[len(kept)-1]) {
		kept = kept[:len(kept)-1]
	}
	return kept
}
