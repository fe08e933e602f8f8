package press

import (
	"math"

	"gussetwright/geometry"
)

// spread is how far the ink of each blank of a form runs.
type spread struct {
	// shown holds a rectangle around the ink of each blank: its box and bleed, up to
	// half way to its neighbours and not into the gripper.
	shown []geometry.Rect
	// nested tells of each blank that its box and that of a neighbour reach into each
	// other, so that no rectangle parts their inks.
	nested []bool
	// halved tells that some bleed ends before its full width between blanks, cut that
	// some ends at the gripper or at the edge of the sheet.
	halved, cut bool
}

// spreadOf returns how far ink runs on a form.
func spreadOf(f *Form, printable geometry.Rect) spread {
	n := len(f.Blanks)
	s := spread{shown: make([]geometry.Rect, n), nested: make([]bool, n)}
	boxes, bleeds := make([]geometry.Rect, n), make([]float64, n)
	for i, laid := range f.Blanks {
		boxes[i], bleeds[i] = laid.Box(), laid.Blank.Spec.Print.Bleed
		whole := boxes[i].Inset(-bleeds[i])
		s.shown[i] = common(whole, printable)
		s.cut = s.cut || !whole.Min.Near(s.shown[i].Min) || !whole.Max.Near(s.shown[i].Max)
	}
	for i := range boxes {
		for k := range boxes {
			gap, along := between(boxes[i], boxes[k])
			switch {
			case i == k || gap > bleeds[i]+bleeds[k]-geometry.Tolerance:
			case gap < -geometry.Tolerance:
				s.nested[i], s.halved = true, true
			default:
				s.halved = true
				s.shown[i] = along(s.shown[i], gap/2)
			}
		}
	}
	return s
}

// between returns the distance of two boxes along x or y, whichever is more, negative
// where they reach into each other both ways; and what cuts a rectangle around the
// first off at a distance from it on the side of the second.
func between(a, b geometry.Rect) (gap float64, cut func(geometry.Rect, float64) geometry.Rect) {
	gap = math.Inf(-1)
	consider := func(distance float64, c func(geometry.Rect, float64) geometry.Rect) {
		if distance > gap {
			gap, cut = distance, c
		}
	}
	consider(b.Min.X-a.Max.X, func(r geometry.Rect, d float64) geometry.Rect { r.Max.X = min(r.Max.X, a.Max.X+d); return r })
	consider(a.Min.X-b.Max.X, func(r geometry.Rect, d float64) geometry.Rect { r.Min.X = max(r.Min.X, a.Min.X-d); return r })
	consider(b.Min.Y-a.Max.Y, func(r geometry.Rect, d float64) geometry.Rect { r.Max.Y = min(r.Max.Y, a.Max.Y+d); return r })
	consider(a.Min.Y-b.Max.Y, func(r geometry.Rect, d float64) geometry.Rect { r.Min.Y = max(r.Min.Y, a.Min.Y-d); return r })
	return gap, cut
}

// common returns what two rectangles share.
func common(a, b geometry.Rect) geometry.Rect {
	return geometry.Rect{
		Min: geometry.Vec2{X: max(a.Min.X, b.Min.X), Y: max(a.Min.Y, b.Min.Y)},
		Max: geometry.Vec2{X: min(a.Max.X, b.Max.X), Y: min(a.Max.Y, b.Max.Y)},
	}
}

// clearOf tells whether two rectangles have no area in common.
func clearOf(a, b geometry.Rect) bool { return common(a, b.Inset(geometry.Tolerance)).Empty() }

// around returns paths that together cover the outline and all that lies within a
// distance of it: the outline, a strip along each edge and a circle at each corner.
// However narrow its slots are, nothing farther away is covered.
func around(outline geometry.Path, distance float64) []geometry.Path {
	paths := []geometry.Path{outline}
	if distance < geometry.Tolerance {
		return paths
	}
	for i := range outline.Len() {
		edge := outline.Edge(i)
		out := edge.To.Sub(edge.From).Unit().Left().Scale(-distance)
		if out.Length() > 0 {
			paths = append(paths, geometry.Polygon(edge.From, edge.From.Add(out), edge.To.Add(out), edge.To))
		}
		paths = append(paths, geometry.Circle(edge.From, distance))
	}
	return paths
}
