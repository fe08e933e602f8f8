package blank

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// glueMargin is how far glue stays from the edges and folds of what it holds, in mm, so
// that none comes out where it is seen or touched (common practice, no published source).
const glueMargin = 2.0

// basePlan is a closed block base seen from within the bag: x along the faces from the
// left gusset, y from the front to the back, in mm. The gusset flaps are folded in first,
// the front flap with its corners over them, the back flap over all.
type basePlan struct {
	width, depth float64 // of the base
	flap         float64 // length of each base flap
	slot         float64 // half the width of a slot, 0 with envelope corners
}

// border is one edge of a flap: a point lies across·x + deep·y + from mm inside of it.
type border struct{ across, deep, from float64 }

func (b border) inside(v geometry.Vec2) float64 { return b.across*v.X + b.deep*v.Y + b.from }

func (f *frame) basePlan() basePlan {
	return basePlan{width: f.body.Width, depth: f.body.Gusset, flap: f.levels.Base, slot: f.slot / 2}
}

// place returns where a point of a base flap comes to lie.
func (p *basePlan) place(c column, v geometry.Vec2) geometry.Vec2 {
	along, depth := v.X-c.left, p.flap-v.Y
	switch c.name {
	case "front":
		return geometry.Vec2{X: along, Y: depth}
	case "back":
		return geometry.Vec2{X: p.width - along, Y: p.depth - depth}
	case "gusset-right":
		return geometry.Vec2{X: p.width - depth, Y: along}
	}
	return geometry.Vec2{X: depth, Y: p.depth - along}
}

// covered returns the edges of what the base flap of a face covers. The corners of an
// envelope are folded back along 45°, and what lies beside them stays bare.
func (p *basePlan) covered(face string) [3]border {
	deep := border{deep: 1}
	if face == "back" {
		deep = border{deep: -1, from: p.depth}
	}
	left, right := border{across: 1, from: -p.slot}, border{across: -1, from: p.width - p.slot}
	if p.slot == 0 {
		left, right = left.slanted(deep), right.slanted(deep)
	}
	return [3]border{left, right, {deep: -deep.deep, from: p.flap - deep.from}}
}

// slanted returns the line at 45° on which a point is as far inside of both borders.
func (b border) slanted(deep border) border {
	return border{b.across / math.Sqrt2, -deep.deep / math.Sqrt2, (b.from - deep.from) / math.Sqrt2}
}

// pastFront returns the edge of the front flap beyond which a gusset flap is still bare
// when that is closed.
func (p *basePlan) pastFront(c column) border {
	switch {
	case p.slot > 0:
		return border{deep: 1, from: -p.flap}
	case c.name == "gusset-right":
		return border{across: 1, deep: 1, from: -p.width}
	}
	return border{across: -1, deep: 1}
}

// glued returns the part of a base flap that lies within the borders, clear of them and
// of its own edges, and so under paper from edge to edge.
func (p *basePlan) glued(c column, borders ...border) []geometry.Vertex {
	box := geometry.RectAt(c.left+p.slot, 0, c.width-2*p.slot, p.flap).Inset(glueMargin)
	if box.Empty() {
		return nil
	}
	shape := box.Path().Vertices
	for _, b := range borders {
		shape = clip(shape, func(v geometry.Vec2) float64 { return b.inside(p.place(c, v)) - glueMargin })
	}
	return shape
}

// glueBlock adds what is glued of a block base: only what other paper covers.
func (f *frame) glueBlock(g *gluer, c column) {
	p, id := f.basePlan(), panelID(c.name, RowBase)
	add := func(role GlueRole, shape []geometry.Vertex) {
		g.add(role, PrintSide, id, geometry.Path{Vertices: shape, Closed: true})
	}
	front, back := p.covered("front"), p.covered("back")
	if c.kind == gusset {
		pastLeft := border{across: 1, from: glueMargin}     // no edge at all
		if c.name == "gusset-right" && 2*p.flap > p.width { // its tip lies under the left flap
			pastLeft.from = -p.flap
		}
		add(GlueGussetFront, p.glued(c, front[0], front[1], front[2], pastLeft))
		past := p.pastFront(c)
		under := p.glued(c, back[0], back[1], back[2], pastLeft)
		add(GlueGussetBack, clip(under, func(v geometry.Vec2) float64 { return past.inside(p.place(c, v)) }))
		return
	}
	if f.body.Base == bag.BaseBlock {
		f.glueCorners(g, c, id, p)
	}
	if c.name == "front" {
		add(GlueBase, p.glued(c, front[0], front[1], front[2], back[0], back[1], back[2]))
	}
}

// glueCorners adds the envelope corners of a face's base flap, which lie print side to
// print side on what is below the flap, mirrored about the panel edge.
func (f *frame) glueCorners(g *gluer, c column, id string, p basePlan) {
	role := GlueCornerFront
	if c.name == "back" {
		role = GlueCornerBack
	}
	for _, side := range []func(x float64) float64{
		func(x float64) float64 { return x - c.left },
		func(x float64) float64 { return c.right() - x },
	} {
		shape := clip(p.glued(c), func(v geometry.Vec2) float64 { return c.width/2 - side(v.X) })
		shape = clip(shape, func(v geometry.Vec2) float64 { return (p.flap-v.Y-side(v.X))/math.Sqrt2 - glueMargin })
		g.add(role, PrintSide, id, geometry.Path{Vertices: shape, Closed: true})
	}
}
