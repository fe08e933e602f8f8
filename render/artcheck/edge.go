package artcheck

import "gussetwright/geometry"

// edge is one side of a place.
type edge struct {
	from, to geometry.Vec2
	out      geometry.Vec2 // the way past it
}

func edgesOf(r geometry.Rect) [4]edge {
	leftTop, rightBottom := geometry.Vec2{X: r.Min.X, Y: r.Max.Y}, geometry.Vec2{X: r.Max.X, Y: r.Min.Y}
	return [4]edge{
		{r.Min, leftTop, geometry.Vec2{X: -1}},
		{rightBottom, r.Max, geometry.Vec2{X: 1}},
		{r.Min, rightBottom, geometry.Vec2{Y: -1}},
		{leftTop, r.Max, geometry.Vec2{Y: 1}},
	}
}

// over returns how far a box reaches past the edge, negative where it ends before; and
// how far it begins past it.
func (e edge) over(box geometry.Rect) (end, begin float64) {
	a, b := box.Min.Sub(e.from).Dot(e.out), box.Max.Sub(e.from).Dot(e.out)
	return max(a, b), min(a, b)
}

// along returns from where to where a box lies along the edge, in mm from its beginning.
func (e edge) along(box geometry.Rect) (low, high float64) {
	if e.out.X != 0 {
		return box.Min.Y - e.from.Y, box.Max.Y - e.from.Y
	}
	return box.Min.X - e.from.X, box.Max.X - e.from.X
}

// moved returns the edge of another place.
func (e edge) moved(by geometry.Vec2) edge { return edge{e.from.Add(by), e.to.Add(by), e.out} }
