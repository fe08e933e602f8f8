package fold

import (
	"cmp"
	"math"
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
)

// PackedSize returns the width, the height and the thickness of the bag packed flat,
// in mm, or zeros for a bag that cannot be folded or packed. The thickness is that of
// the paper where most layers lie on each other; handles and cards come on top of it.
func PackedSize(laid *blank.Blank) (width, height, thickness float64) {
	if !anyObstacle(laid).Empty() {
		return 0, 0, 0
	}
	body := Packed(laid)
	shapes := make([][]geometry.Vec2, len(body.Facets))
	box := geometry.Rect{}
	for i := range body.Facets {
		points := body.Facets[i].Points
		shape := make([]geometry.Vec2, len(points))
		for c, p := range points {
			shape[c] = geometry.Vec2{X: p.X, Y: p.Z}
		}
		bounds := boundsOf(shape)
		if i == 0 {
			box = bounds
		}
		box = box.Union(bounds)
		if len(shape) > mostPlainCorners { // the teeth of a zigzag do not matter
			shape = []geometry.Vec2{bounds.Min, {X: bounds.Max.X, Y: bounds.Min.Y}, bounds.Max, {X: bounds.Min.X, Y: bounds.Max.Y}}
		}
		shapes[i] = shape
	}
	return rounded(box.Width()), rounded(box.Height()), rounded(float64(mostLayers(shapes)) * body.Caliper)
}

// rounded drops what turns leave behind the millionth of a mm.
func rounded(length float64) float64 { return math.Round(length*1e6) / 1e6 }

// mostPlainCorners is the greatest number of corners of a facet without teeth.
const mostPlainCorners = 20

// mostLayers returns how many of the shapes, convex all, cover one point at most. It
// looks along upright lines, one between any two neighbouring places where borders
// end or cross: between these nothing changes.
func mostLayers(shapes [][]geometry.Vec2) int {
	stops := stopsOf(bordersOf(shapes))
	most := 0
	var ends []layerEnd
	for i := 1; i < len(stops); i++ {
		if stops[i]-stops[i-1] < fine {
			continue
		}
		ends = ends[:0]
		for _, shape := range shapes {
			// What only touches does not overlap.
			if low, high := heights(shape, (stops[i]+stops[i-1])/2); high-low > fine {
				ends = append(ends, layerEnd{low + fine/2, 1}, layerEnd{high - fine/2, -1})
			}
		}
		most = max(most, deepest(ends))
	}
	return most
}

// fine is a length that no layer is missed by, in mm.
const fine = 0.01

// border is a line that borders a shape, or several.
type border struct{ x1, y1, x2, y2 float64 }

// bordersOf returns the borders of shapes, each once, from left to right.
func bordersOf(shapes [][]geometry.Vec2) []border {
	seen := map[border]bool{}
	var borders []border
	round := func(v float64) float64 { return math.Round(v*1e4) / 1e4 }
	for _, shape := range shapes {
		last := shape[len(shape)-1]
		for _, p := range shape {
			from, to := last, p
			if from.X > to.X {
				from, to = to, from
			}
			edge := border{round(from.X), round(from.Y), round(to.X), round(to.Y)}
			if !seen[edge] {
				seen[edge] = true
				borders = append(borders, edge)
			}
			last = p
		}
	}
	return borders
}

// stopsOf returns where along x borders begin, end or cross, in order.
func stopsOf(borders []border) []float64 {
	var stops []float64
	for i, a := range borders {
		stops = append(stops, a.x1, a.x2)
		if a.x1 == a.x2 || a.y1 == a.y2 {
			continue
		}
		rise := (a.y2 - a.y1) / (a.x2 - a.x1)
		for k, b := range borders {
			if b.x1 == b.x2 || k < i && b.y1 != b.y2 {
				continue
			}
			other := (b.y2 - b.y1) / (b.x2 - b.x1)
			at := a.x1 + (b.y1+other*(a.x1-b.x1)-a.y1)/(rise-other)
			if at > max(a.x1, b.x1) && at < min(a.x2, b.x2) {
				stops = append(stops, at)
			}
		}
	}
	slices.Sort(stops)
	return stops
}

// layerEnd is the height at which a layer begins, 1, or ends, −1.
type layerEnd struct {
	at   float64
	step int
}

// deepest returns how many layers lie over each other at most.
func deepest(ends []layerEnd) int {
	slices.SortFunc(ends, func(a, b layerEnd) int {
		return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.step, b.step))
	})
	count, most := 0, 0
	for _, end := range ends {
		count += end.step
		most = max(most, count)
	}
	return most
}

// heights returns between which heights a convex shape lies at x, low above high
// where it does not reach there.
func heights(shape []geometry.Vec2, x float64) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	last := shape[len(shape)-1]
	for _, p := range shape {
		if (p.X < x) != (last.X < x) {
			at := p.Y + (x-p.X)*(last.Y-p.Y)/(last.X-p.X)
			low, high = min(low, at), max(high, at)
		}
		last = p
	}
	return low, high
}
