package fold

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
)

// packedGusset is a gusset of a block bag that is being packed.
type packedGusset struct {
	*packer
	blank *blank.Panel
	piece *blank.Piece
	index int
	side  float64 // x of the side of the bag
	in    float64 // direction along x to the inside
	// On the blank u runs from front to back: x = zero + along·u.
	zero, along float64
	sunk        float64 // calipers that it lies further in
}

// gusset adds a gusset: two halves above the pack creases, the small triangle
// between flat-fold and front pack crease, and the triangle beside the base.
func (p *packer) gusset(piece *blank.Piece, index int, column *blank.Panel) {
	g := packedGusset{
		packer: p, blank: column, piece: piece, index: index,
		side: p.spec.Body.Width, in: -1, zero: column.Box.Min.X, along: 1,
	}
	if column.Column == "gusset-left" {
		g.side, g.in, g.sunk = 0, 1, layerOtherGusset
		g.zero, g.along = column.Box.Min.X+p.depth, -1
	}
	half, base := p.depth/2, piece.Levels.Base
	// Corners in u and y, from those shared by the parts.
	at := func(u, y float64) geometry.Vec2 { return geometry.Vec2{X: g.zero + g.along*u, Y: base + y} }
	apex, front, back := at(half, half), at(0, 0), at(p.depth, 0)
	crease, flatFold := g.left(at(half, 0), apex), g.left(apex, at(0, half))
	frontPack, backPack := g.left(front, apex), g.left(apex, back)

	g.half(crease, flatFold.turned(), -1)
	g.half(crease.turned(), backPack, 1)
	g.triangle(clip(cornersOf(column), frontPack, flatFold), [3]geometry.Vec2{front, at(0, half), apex},
		[3]geometry.Vec3{g.frontCorner(), g.frontFold(), g.apex()}, -packedSmall)
	g.triangle(clip(cornersOf(column), frontPack.turned(), backPack.turned()), [3]geometry.Vec2{front, back, apex},
		[3]geometry.Vec3{g.frontCorner(), {X: g.side, Y: p.depth}, g.apex()}, -packedBaseTriangle)

	if panel := rowOf(piece, column.Column, blank.RowBase); panel != nil {
		from := len(p.body.Facets)
		p.gussetBase(piece, index, column, g.standing())
		p.swing(from)
	}
}

// left returns the line between two points with what lies to its left seen from the
// front on the inside, whichever way the gusset hangs on the blank.
func (g *packedGusset) left(a, b geometry.Vec2) line {
	if g.along < 0 {
		return line{b, a}
	}
	return line{a, b}
}

// standing returns where the gusset of the standing bag is.
func (g *packedGusset) standing() Pose {
	pose := Pose{Right: geometry.Vec3{Y: g.along}, Up: geometry.Vec3{Z: 1}}
	pose.Origin = geometry.Vec3{X: g.side}.Sub(pose.At(geometry.Vec2{X: g.zero, Y: g.piece.Levels.Base}))
	return pose
}

// half adds the upper part of the gusset on one side of its crease: −1 toward the
// front, 1 toward the back, which it stays joined to.
func (g *packedGusset) half(crease, below line, face float64) {
	sin, cos := math.Sincos(g.tuck)
	base := g.piece.Levels.Base
	// Going on along u the front half leads inward and the back half out again.
	pose := Pose{Right: geometry.Vec3{X: -face * g.in * sin * g.along, Y: cos * g.along}, Up: geometry.Vec3{Z: 1}}
	back := geometry.Vec2{X: g.zero + g.along*g.depth, Y: base}
	edge := geometry.Vec3{X: g.side, Y: g.depth}
	layer := flatGap - layerGusset - g.sunk
	if face < 0 {
		back.X = g.zero
		edge.Y = g.depth * (1 - cos)
		layer = layerGusset + g.sunk
	}
	pose.Origin = edge.Sub(pose.At(back)).Sub(geometry.Vec3{Y: g.ahead(layer)})
	g.add(g.blank, g.index, clip(cornersOf(g.blank), crease, below), pose, nil)
	if panel := rowOf(g.piece, g.blank.Column, blank.RowTurnIn); panel != nil {
		turnIn := lerp(layerTurnIn, layerGusset-layerGussetTurnIn, g.weight)
		g.add(panel, g.index, clip(cornersOf(panel), crease), g.turnedDown(pose, g.piece.Levels.TopFold, turnIn), nil)
	}
}

// frontCorner is the front end of the base crease, frontFold that of the flat-fold
// crease, and apex where this meets the gusset crease, for paper without thickness.
func (g *packedGusset) frontCorner() geometry.Vec3 {
	sin, cos := math.Sincos(g.collapse.base)
	return geometry.Vec3{X: g.side, Y: g.depth * (1 - cos), Z: g.depth * sin}
}

func (g *packedGusset) frontFold() geometry.Vec3 {
	return geometry.Vec3{X: g.side, Y: g.depth * (1 - math.Cos(g.tuck)), Z: g.depth / 2}
}

func (g *packedGusset) apex() geometry.Vec3 {
	sin, cos := math.Sincos(g.tuck)
	return geometry.Vec3{X: g.side + g.in*g.depth/2*sin, Y: g.depth - g.depth/2*cos, Z: g.depth / 2}
}

// triangle adds a part of the gusset that is stretched to three points of space; at
// both ends of the packing they are as far apart as on the blank.
func (g *packedGusset) triangle(corners []geometry.Vec2, on [3]geometry.Vec2, in [3]geometry.Vec3, layer float64) {
	if len(corners) < 3 {
		return
	}
	down := geometry.Vec3{Y: -g.ahead(layer)}
	for i := range in {
		in[i] = in[i].Add(down)
	}
	pose := through(on[0], on[1], on[2], in[0], in[1], in[2])
	g.add(g.blank, g.index, corners, pose, nil)
	points := g.body.Facets[len(g.body.Facets)-1].Points
	a, b := on[1].Sub(on[0]), on[2].Sub(on[0])
	for i, corner := range corners {
		c := corner.Sub(on[0])
		s, t := c.Cross(b)/a.Cross(b), a.Cross(c)/a.Cross(b)
		points[i] = in[0].Add(in[1].Sub(in[0]).Scale(s)).Add(in[2].Sub(in[0]).Scale(t))
	}
}
