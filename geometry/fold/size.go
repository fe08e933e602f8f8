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
// looks along upright lines at a quarter and at three quarters between any two
// neighbouring corners: creases run along both axes and at 45°, so whatever two of
// these cut off reaches one of the lines.
func mostLayers(shapes [][]geometry.Vec2) int {
	var stops []float64
	for _, shape := range shapes {
		for _, p := range shape {
			stops = append(stops, p.X)
		}
	}
	slices.Sort(stops)
	most := 0
	var ends []layerEnd
	for i := 1; i < len(stops); i++ {
		gap := stops[i] - stops[i-1]
		if gap < 0.01 {
			continue
		}
		for _, share := range [2]float64{0.25, 0.75} {
			ends = ends[:0]
			for _, shape := range shapes {
				// What only touches does not overlap.
				if low, high := heights(shape, stops[i-1]+share*gap); high-low > 0.01 {
					ends = append(ends, layerEnd{low + 0.005, 1}, layerEnd{high - 0.005, -1})
				}
			}
			most = max(most, deepest(ends))
		}
	}
	return most
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
