package blank

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// gluer gathers the glue areas of a piece, and what of them stays free of glue.
type gluer struct {
	areas    []GlueArea
	openings []opening
}

func (g *gluer) add(role GlueRole, side Side, panel string, shape geometry.Path) {
	if len(shape.Vertices) < 3 || shape.Area() <= geometry.Tolerance {
		return
	}
	area := GlueArea{Role: role, Side: side, Panel: panel, Shape: shape}
	box := shape.Bounds()
	for i := range g.openings {
		if reachesInto(g.openings[i].box, box) {
			area.Openings = append(area.Openings, g.openings[i].outline)
		}
	}
	g.areas = append(g.areas, area)
}

func (g *gluer) addRect(role GlueRole, side Side, panel string, r geometry.Rect) {
	if !r.Empty() {
		g.add(role, side, panel, r.Path())
	}
}

// glue returns what is glued on a piece that has its openings, as each style needs it.
func (f *frame) glue(piece *Piece, spec bag.Spec) []GlueArea {
	g := gluer{areas: make([]GlueArea, 0, 24), openings: f.glueFree(piece)}
	// The turn-in of the flap shows the print side to the inside of the bag.
	g.add(GlueSeam, PrintSide, "seam-flap", band(f.flap, 0, f.levels.TopFold))
	for _, c := range f.columns {
		if c.kind == seamFlap {
			if f.hasTurnIn() {
				g.add(GlueTurnIn, ReverseSide, panelID(c.name, RowTurnIn), band(f.flap, f.levels.TopFold, f.levels.Top))
			}
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

// glueFree returns what glue keeps off: the openings of the faces with the margin around
// them, and where others lie on these: mirrored about the top fold, as a turn-in too short
// to have them is seen through those of the face, and on a seam flap so wide that it
// reaches them.
func (f *frame) glueFree(piece *Piece) []opening {
	var free []opening
	first := f.columns[0]
	flap := f.columns[len(f.columns)-1]
	for _, opening := range piece.openings(glueMargin) {
		center := opening.box.Center()
		if center.Y > f.levels.TopFold {
			continue
		}
		free = append(free, opening, opening.moved(geometry.Vec2{Y: 2 * (f.levels.TopFold - center.Y)}))
		if center.X < first.right() {
			free = append(free, opening.moved(geometry.Vec2{X: flap.left - first.left}))
		}
	}
	return free
}

func (f *frame) glueBase(g *gluer, c column) {
	if f.hasBlock() {
		f.glueBlock(g, c)
		return
	}
	if c.name != "back" {
		return
	}
	flap := geometry.RectAt(c.left, 0, c.width, f.levels.Base)
	onto := geometry.RectAt(c.left, f.levels.Base, c.width, min(f.levels.Base, f.body.Height))
	g.addRect(GluePinch, PrintSide, panelID(c.name, RowBase), flap.Inset(glueMargin))
	g.addRect(GluePinch, PrintSide, c.name, onto.Inset(glueMargin))
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
