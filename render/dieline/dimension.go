package dieline

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/scene"
)

// span is one measured length between two marks along a line of dimensions.
type span struct {
	from, to float64
	symbol   phrase.Word // what is measured, such as "W"; may be empty
}

func (s span) length() float64 { return math.Abs(s.to - s.from) }

// spanText is the number with the name of what it measures beside it.
func (d *drafter) spanText(s span) string {
	if s.symbol == "" {
		return d.number(s.length())
	}
	return d.voice.Word(s.symbol) + " " + d.number(s.length())
}

// across draws a row of dimensions below the piece at height y, with extension
// lines from the height edge down. Numbers too long for their span step down to a
// second line so that neighbours never run into each other.
func (d *drafter) across(spans []span, edge, y float64) {
	lower := false
	for _, s := range spans {
		d.extend(geometry.Vec2{X: s.from, Y: edge}, geometry.Vec2{X: s.from, Y: y})
		d.extend(geometry.Vec2{X: s.to, Y: edge}, geometry.Vec2{X: s.to, Y: y})
		d.measure(geometry.Vec2{X: s.from, Y: y}, geometry.Vec2{X: s.to, Y: y})
		at := geometry.Vec2{X: (s.from + s.to) / 2, Y: y + d.u/3}
		below := geometry.Vec2{X: at.X, Y: y - 1.1*d.u}
		if d.screen != nil {
			d.placeNumber(s, at, below, 0)
			continue
		}
		lower = d.textWidth(d.spanText(s)) > s.length()-d.u/2 && !lower
		if lower {
			at = below
		}
		d.write(scene.Dimensions, d.spanText(s), at, scene.Middle, 0)
	}
}

// upward draws a column of dimensions left of the piece at x, read from the right.
func (d *drafter) upward(spans []span, edge, x float64) {
	beside := false
	for _, s := range spans {
		d.extend(geometry.Vec2{X: edge, Y: s.from}, geometry.Vec2{X: x, Y: s.from})
		d.extend(geometry.Vec2{X: edge, Y: s.to}, geometry.Vec2{X: x, Y: s.to})
		d.measure(geometry.Vec2{X: x, Y: s.from}, geometry.Vec2{X: x, Y: s.to})
		at := geometry.Vec2{X: x - d.u/3, Y: (s.from + s.to) / 2}
		right := geometry.Vec2{X: x + 1.1*d.u, Y: at.Y}
		if d.screen != nil {
			d.placeNumber(s, at, right, math.Pi/2)
			continue
		}
		beside = d.textWidth(d.spanText(s)) > s.length()-d.u/2 && !beside
		if beside {
			at = right
		}
		d.write(scene.Dimensions, d.spanText(s), at, scene.Middle, math.Pi/2)
	}
}

// extend draws an extension line from near the edge to a little past the
// dimension line.
func (d *drafter) extend(edge, end geometry.Vec2) {
	along := end.Sub(edge).Unit()
	d.line(scene.Dimensions, edge.Add(along.Scale(d.u/2)), end.Add(along.Scale(d.u/2)))
}

// measure draws a dimension line with an arrowhead at each end, pointing inward
// from outside where there is no room between.
func (d *drafter) measure(a, b geometry.Vec2) {
	along := b.Sub(a).Unit()
	if b.Sub(a).Length() >= 3*d.u {
		d.line(scene.Dimensions, a, b)
		d.arrowhead(scene.Dimensions, a, along.Scale(-1))
		d.arrowhead(scene.Dimensions, b, along)
		return
	}
	d.line(scene.Dimensions, a.Sub(along.Scale(1.5*d.u)), b.Add(along.Scale(1.5*d.u)))
	d.arrowhead(scene.Dimensions, a, along)
	d.arrowhead(scene.Dimensions, b, along.Scale(-1))
}

// arrowhead fills a narrow triangle with its tip at the point.
func (d *drafter) arrowhead(role scene.Role, tip, along geometry.Vec2) {
	back := tip.Sub(along.Scale(0.7 * d.u))
	side := along.Left().Scale(0.12 * d.u)
	d.add(scene.Fill{Role: role, Path: geometry.Polygon(tip, back.Add(side), back.Sub(side))})
}
