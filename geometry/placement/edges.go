package placement

import "gussetwright/geometry"

// edges moves the sides of a clip back to the place that it surrounds, as far as ink
// round the place demands.
type edges struct {
	place, clip geometry.Rect
	corners     []geometry.Rect // ink off the corners of the place
}

// end ends the clip where ink beside the place begins. Ink off a corner waits: the clip
// may end before it on account of a side.
func (e *edges) end(ink geometry.Rect) {
	switch {
	case nothing(ink):
	case e.offCorner(ink):
		e.corners = append(e.corners, ink)
	case e.beside(ink):
		e.endBeside(ink)
	default:
		e.endAbove(ink)
	}
}

// ended returns the clip. Where it still reaches ink off a corner it ends on the shorter
// side of the place, so that the longer one keeps its bleed.
func (e *edges) ended() geometry.Rect {
	for _, ink := range e.corners {
		switch {
		case nothing(common(e.clip, ink)):
		case e.place.Width() < e.place.Height():
			e.endAbove(ink)
		default:
			e.endBeside(ink)
		}
	}
	return e.clip
}

// endBeside ends the clip before ink to the left or the right of the place.
func (e *edges) endBeside(ink geometry.Rect) {
	if ink.Min.X > e.place.Center().X {
		e.clip.Max.X = min(e.clip.Max.X, max(e.place.Max.X, ink.Min.X))
	} else {
		e.clip.Min.X = max(e.clip.Min.X, min(e.place.Min.X, ink.Max.X))
	}
}

// endAbove ends the clip before ink above or below the place.
func (e *edges) endAbove(ink geometry.Rect) {
	if ink.Min.Y > e.place.Center().Y {
		e.clip.Max.Y = min(e.clip.Max.Y, max(e.place.Max.Y, ink.Min.Y))
	} else {
		e.clip.Min.Y = max(e.clip.Min.Y, min(e.place.Min.Y, ink.Max.Y))
	}
}

func (e *edges) offCorner(ink geometry.Rect) bool { return e.beside(ink) && e.above(ink) }

// beside tells whether ink lies to the left or the right of the place.
func (e *edges) beside(ink geometry.Rect) bool {
	return outside(e.place.Min.X, e.place.Max.X, ink.Min.X, ink.Max.X)
}

// above tells whether ink lies above or below the place.
func (e *edges) above(ink geometry.Rect) bool {
	return outside(e.place.Min.Y, e.place.Max.Y, ink.Min.Y, ink.Max.Y)
}

// outside tells whether a stretch does not reach into another.
func outside(low, high, from, to float64) bool {
	return from >= high-geometry.Tolerance || to <= low+geometry.Tolerance
}

// common returns what two rectangles have in common, of no size where that is nothing.
func common(a, b geometry.Rect) geometry.Rect {
	low := geometry.Vec2{X: max(a.Min.X, b.Min.X), Y: max(a.Min.Y, b.Min.Y)}
	high := geometry.Vec2{X: min(a.Max.X, b.Max.X), Y: min(a.Max.Y, b.Max.Y)}
	return geometry.Rect{Min: low, Max: geometry.Vec2{X: max(high.X, low.X), Y: max(high.Y, low.Y)}}
}

// nothing tells whether a rectangle is at most a line.
func nothing(r geometry.Rect) bool {
	return r.Width() <= geometry.Tolerance || r.Height() <= geometry.Tolerance
}
