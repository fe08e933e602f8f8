package blank

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// gluer gathers the glue areas of a piece.
type gluer struct{ areas []GlueArea }

func (g *gluer) add(role GlueRole, side Side, panel string, shape geometry.Path) {
	if len(shape.Vertices) >= 3 && shape.Area() > geometry.Tolerance {
		g.areas = append(g.areas, GlueArea{role, side, panel, shape})
	}
}

func (g *gluer) addRect(role GlueRole, side Side, panel string, r geometry.Rect) {
	if !r.Empty() {
		g.add(role, side, panel, r.Path())
	}
}

// glue returns what is glued on this piece, as each style needs it.
func (f *frame) glue(spec bag.Spec) []GlueArea {
	g := gluer{make([]GlueArea, 0, 20)}
	g.add(GlueSeam, PrintSide, "seam-flap", f.flap)
	for _, c := range f.columns {
		if c.kind == seamFlap {
			continue
		}
		f.glueBase(&g, c)
		if f.hasTurnIn() {
			f.glueTurnIn(&g, c, spec)
		}
		if c.kind == face && spec.Handle.Kind.HasPatch() {
			f.gluePatch(&g, c, spec.Handle)
		}
	}
	return g.areas
}

func (f *frame) glueBase(g *gluer, c column) {
	id := panelID(c.name, RowBase)
	base, overlap := f.levels.Base, f.body.BaseOverlap
	switch {
	case !f.hasBlock():
		if c.name == "back" {
			g.addRect(GluePinch, PrintSide, id, geometry.RectAt(c.left, 0, c.width, base))
			g.addRect(GluePinch, PrintSide, c.name, geometry.RectAt(c.left, base, c.width, base))
		}
	case c.kind == gusset:
		g.add(GlueBaseGusset, PrintSide, id, f.baseShape(c))
	default:
		corner := 0.0
		if f.body.Base == bag.BaseBlock {
			corner = min(base, c.width/2)
			f.glueCorners(g, c, id, corner)
		}
		if c.name == "front" {
			g.add(GlueBase, PrintSide, id, overlapShape(c, base, min(2*overlap, base), corner, f.slot/2))
		}
	}
}

// glueCorners adds the envelope corners of a base flap, which lie on the gusset
// base flaps print side to print side.
func (f *frame) glueCorners(g *gluer, c column, id string, corner float64) {
	base := f.levels.Base
	g.add(GlueBaseCorner, PrintSide, id, geometry.Polygon(
		geometry.Vec2{X: c.left, Y: base - corner}, geometry.Vec2{X: c.left + corner, Y: base - corner}, geometry.Vec2{X: c.left, Y: base},
	))
	g.add(GlueBaseCorner, PrintSide, id, geometry.Polygon(
		geometry.Vec2{X: c.right(), Y: base - corner}, geometry.Vec2{X: c.right(), Y: base}, geometry.Vec2{X: c.right() - corner, Y: base - corner},
	))
}

// overlapShape returns the strip at the free edge of the front base flap that the
// back flap covers: as deep as both overlaps, between the base corner creases or
// the slots.
func overlapShape(c column, base, depth, corner, margin float64) geometry.Path {
	low, high := margin, margin
	if corner > 0 {
		low, high = corner, max(base-depth, 0)
	}
	return geometry.Polygon(
		geometry.Vec2{X: c.left + low, Y: 0}, geometry.Vec2{X: c.right() - low, Y: 0},
		geometry.Vec2{X: c.right() - high, Y: depth}, geometry.Vec2{X: c.left + high, Y: depth},
	)
}

// glueTurnIn adds the hem, which holds on the reverse, and the top card under it.
func (f *frame) glueTurnIn(g *gluer, c column, spec bag.Spec) {
	id := panelID(c.name, RowTurnIn)
	depth := f.levels.Top - f.levels.TopFold
	g.addRect(GlueTurnIn, ReverseSide, id, geometry.RectAt(c.left, f.levels.TopFold, c.width, depth))
	if c.kind != face || !spec.Cards.Top {
		return
	}
	width, height := topCard(spec)
	g.addRect(GlueTopCard, ReverseSide, c.name,
		geometry.RectAt(c.left+(c.width-width)/2, f.levels.TopFold-height, width, height))
}

// gluePatch adds the patch of a glued handle on the inside of the face.
func (f *frame) gluePatch(g *gluer, c column, h bag.Handle) {
	g.addRect(GluePatch, ReverseSide, c.name, geometry.RectAt(
		c.left+(c.width-h.PatchWidth)/2, f.levels.TopFold-h.Drop-h.PatchHeight, h.PatchWidth, h.PatchHeight))
}
