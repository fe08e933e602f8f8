package blank

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// frame is what all parts of a piece are measured from.
type frame struct {
	body    bag.Body
	levels  Levels
	columns []column
	slot    float64 // width of a slot between base flaps, 0 without slots
	teeth   float64 // depth of the zigzag, 0 without
	flap    geometry.Path
}

func newFrame(b bag.Body, caliper float64, columns []column) frame {
	base := b.BaseFlap()
	f := frame{body: b, columns: columns}
	f.levels = Levels{Base: base, FlatFold: base, TopFold: base + b.Height}
	f.levels.Top = f.levels.TopFold + b.TurnInDepth()
	if f.hasBlock() && b.Gusset/2 < b.Height {
		f.levels.FlatFold = base + b.Gusset/2
	}
	if b.Base == bag.BaseSlotted {
		f.slot = min(max(b.SlotWidth, caliper), base, b.Width/2, b.Gusset/2)
	}
	if b.Top == bag.TopZigzag {
		f.teeth = min(b.ZigzagDepth, b.Height/2)
	}
	f.flap = f.flapShape()
	return f
}

func (f *frame) width() float64 { return f.columns[len(f.columns)-1].right() }

// hasBlock tells whether the bag stands on a block base.
func (f *frame) hasBlock() bool { return f.body.Base != bag.BasePinch }

// hasTurnIn tells whether there is a row above the top fold.
func (f *frame) hasTurnIn() bool { return f.levels.Top > f.levels.TopFold }

// lowEdge is the height at which panel edges meet the top in a raw edge: the
// bottom of the teeth of a zigzag.
func (f *frame) lowEdge() float64 { return f.levels.Top - f.teeth }

// flapShape returns the seam flap from end to end. Its ends are slanted by the
// chamfer angle, but never so far that the slant leaves the base row or the
// turn-in: between base crease and top fold the seam keeps its full width. Where
// such a row is missing, the slant is at least 45° from the crease.
func (f *frame) flapShape() geometry.Path {
	flap := f.columns[len(f.columns)-1]
	bottom, top := f.flapBottom(), f.lowEdge()
	slant := flap.width / math.Tan(f.body.Chamfer*math.Pi/180)
	low, high := min(slant, flap.width), min(slant, flap.width)
	if bottom < f.levels.Base {
		low = min(slant, f.levels.Base-bottom)
	}
	if f.hasTurnIn() {
		high = min(slant, f.levels.Top-f.levels.TopFold)
	}
	// The slants of a wide flap on a low bag would cross; some of its end stays straight.
	const straight = 0.2 // of the height of the flap
	if room := (1 - straight) * (top - bottom); low+high > room {
		low, high = low*room/(low+high), high*room/(low+high)
	}
	return geometry.Polygon(
		geometry.Vec2{X: flap.left, Y: bottom},
		geometry.Vec2{X: flap.right(), Y: bottom + low},
		geometry.Vec2{X: flap.right(), Y: top - high},
		geometry.Vec2{X: flap.left, Y: top},
	)
}

// rightEdgeAt returns where the seam flap, and with it the piece, ends at the
// height y.
func (f *frame) rightEdgeAt(y float64) float64 {
	corners := f.flap.Vertices
	for _, slant := range [][2]geometry.Vertex{{corners[0], corners[1]}, {corners[3], corners[2]}} {
		inner, outer := slant[0], slant[1]
		if share := (y - inner.Y) / (outer.Y - inner.Y); share >= 0 && share < 1 {
			return inner.X + share*(outer.X-inner.X)
		}
	}
	return f.width()
}

// flapBottom is where the seam flap begins: at the base crease when the corners
// of the base are slotted, since the base flaps must then come apart.
func (f *frame) flapBottom() float64 {
	if f.slot > 0 {
		return f.levels.Base
	}
	return 0
}

// band returns the part of a convex polygon between two heights.
func band(shape geometry.Path, low, high float64) geometry.Path {
	above := clip(shape.Vertices, func(v geometry.Vec2) float64 { return v.Y - low })
	return geometry.Path{
		Vertices: clip(above, func(v geometry.Vec2) float64 { return high - v.Y }),
		Closed:   true,
	}
}

// clip cuts a convex polygon down to where inside is not negative (the polygon
// clipping of Sutherland and Hodgman, 1974, for one half plane).
func clip(corners []geometry.Vertex, inside func(geometry.Vec2) float64) []geometry.Vertex {
	kept := make([]geometry.Vertex, 0, len(corners)+1)
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		da, db := inside(a.Vec2), inside(b.Vec2)
		if da >= 0 {
			kept = append(kept, a)
		}
		if da > 0 && db < 0 || da < 0 && db > 0 {
			cross := a.Add(b.Sub(a.Vec2).Scale(da / (da - db)))
			kept = append(kept, geometry.Vertex{Vec2: cross})
		}
	}
	return kept
}
