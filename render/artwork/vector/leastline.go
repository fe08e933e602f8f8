package vector

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/render/artwork/vector/outline"
)

// LeastLine returns the thinnest line of the drawing in mm and a place on it. Lines
// of width 0 count, as some programs draw them as thin as they can; lines outside of
// the drawing or of what clips them do not. It returns false when there are none.
func (d *Drawing) LeastLine() (width float64, at geometry.Vec2, found bool) {
	width = math.Inf(1)
	seen := geometry.Rect{Max: d.Size}
	leastLine(d.Shapes, seen, func(w float64, p geometry.Vec2) {
		width, at, found = w, p, true
	}, &width)
	if !found {
		return 0, at, false
	}
	return width, at, true
}

// leastLine tells of every line that is thinner than all before.
func leastLine(shapes []Shape, seen geometry.Rect, tell func(float64, geometry.Vec2), least *float64) {
	for _, shape := range shapes {
		within := seen
		for _, clip := range shape.look().Clips {
			within = overlap(within, clip.bounds())
		}
		switch shape := shape.(type) {
		case *Group:
			leastLine(shape.Shapes, within, tell, least)
		case *Figure:
			if !shape.Stroke.Paint.shows() {
				continue
			}
			// Rounded to a nanometre, so that a line of 0.25 mm is not thinner than that.
			width := math.Round(shape.Stroke.Pen.Width*narrowest(shape.Stroke.Plane)*1e6) / 1e6
			if width >= *least {
				continue
			}
			if at, ok := firstPoint(shape.Path, within); ok {
				tell(width, at)
			}
		}
	}
}

// narrowest returns the least that a motion makes of a length of 1.
func narrowest(a geometry.Affine) float64 {
	sum := a.U.Dot(a.U) + a.V.Dot(a.V)
	area := a.Area()
	return math.Sqrt(max(sum-math.Sqrt(max(sum*sum-4*area*area, 0)), 0) / 2)
}

// firstPoint returns the first point of a path that lies in a rectangle, halfway
// along where its line runs through.
func firstPoint(path outline.Path, within geometry.Rect) (at geometry.Vec2, found bool) {
	const fine = 0.1 // mm; the place is for people to look at
	flat := outline.Flattening{By: geometry.Identity(), Tolerance: fine, Seen: within}
	flat.Strands(path, func(s outline.Strand) {
		if found || !s.Drawn {
			return
		}
		n := len(s.Points)
		if n == 1 {
			at, found = s.Points[0], within.Contains(s.Points[0])
		}
		for i := range n {
			a, b := s.Points[i], s.Points[(i+1)%n]
			if i == n-1 && !s.Closed || found {
				break
			}
			if enter, leave, hit := within.Through(a, b); hit {
				at, found = a.Add(b.Sub(a).Scale((enter+leave)/2)), true
			}
		}
	})
	return at, found
}

func overlap(a, b geometry.Rect) geometry.Rect {
	return geometry.Rect{
		Min: geometry.Vec2{X: max(a.Min.X, b.Min.X), Y: max(a.Min.Y, b.Min.Y)},
		Max: geometry.Vec2{X: min(a.Max.X, b.Max.X), Y: min(a.Max.Y, b.Max.Y)},
	}
}

// bounds returns the smallest upright rectangle around a clip in mm.
func (c *Clip) bounds() geometry.Rect {
	var box geometry.Rect
	for i, part := range c.Parts {
		one, _ := part.Path.Bounds(geometry.Identity())
		if i == 0 {
			box = one
		}
		box = box.Union(one)
	}
	return box
}
