package blank

import (
	"math"

	"gussetwright/geometry"
)

// quarterRight and halfRight are the bulges of a quarter and a half circle that
// turn to the right, as the round end of a slot does.
var (
	quarterRight = -math.Tan(math.Pi / 8)
	halfRight    = -1.0
)

// outline returns the closed cut edge of the piece, anticlockwise from the lower
// left corner.
func (f *frame) outline() geometry.Path {
	path := geometry.Path{Closed: true}
	path.Vertices = make([]geometry.Vertex, 0, 8+8*len(f.columns)+f.toothCount())
	at := func(x, y, bulge float64) {
		path.Vertices = append(path.Vertices, geometry.Vertex{Vec2: geometry.Vec2{X: x, Y: y}, Bulge: bulge})
	}
	f.traceBottom(at)
	for _, corner := range f.flap.Vertices {
		at(corner.X, corner.Y, 0)
	}
	f.traceTop(at)
	return path
}

// traceBottom walks the free edges of the base flaps from left to right, in and
// out of the slots, up to the seam flap.
func (f *frame) traceBottom(at func(x, y, bulge float64)) {
	if f.slot == 0 {
		at(0, 0, 0)
		return
	}
	base, half := f.levels.Base, f.slot/2
	at(0, base, quarterRight)
	last := len(f.columns) - 2
	for i, c := range f.columns[:last+1] {
		at(c.left+half, base-half, 0)
		at(c.left+half, 0, 0)
		at(c.right()-half, 0, 0)
		if i < last {
			at(c.right()-half, base-half, halfRight)
		} else {
			at(c.right()-half, base-half, quarterRight)
		}
	}
}

// traceTop walks the top edge from the seam flap back to the left raw edge.
func (f *frame) traceTop(at func(x, y, bulge float64)) {
	if f.teeth == 0 {
		at(0, f.levels.Top, 0)
		return
	}
	for i := len(f.columns) - 2; i >= 0; i-- {
		f.traceTeeth(f.columns[i], at)
	}
}

// traceTeeth walks the zigzag of one column from right to left. It begins after
// the right end, which is there already, and ends at the left one. Whole teeth
// fill each column, so that every panel edge meets the top at the same height.
func (f *frame) traceTeeth(c column, at func(x, y, bulge float64)) {
	count := f.teethOn(c)
	pitch := c.width / float64(count)
	for tooth := range count {
		at(c.right()-(float64(tooth)+0.5)*pitch, f.levels.Top, 0)
		at(c.right()-float64(tooth+1)*pitch, f.lowEdge(), 0)
	}
}

func (f *frame) teethOn(c column) int {
	return max(1, int(math.Round(c.width/f.body.ZigzagPitch)))
}

func (f *frame) toothCount() int {
	if f.teeth == 0 {
		return 0
	}
	count := 0
	for _, c := range f.columns {
		count += 2 * f.teethOn(c)
	}
	return count
}
