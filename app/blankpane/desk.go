package blankpane

import (
	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/render/dieline"
	"gussetwright/render/scene"
)

// desk is where the pieces of a blank lie side by side. Its coordinates are in mm,
// x to the right and y up; the left edge of the first piece is x = 0 and the base
// crease of every piece y = 0, so that a change of the base flap moves its free
// edge and nothing else.
type desk struct {
	laid  *blank.Blank
	moves []geometry.Vec2 // where the lower left corner of each piece lies
	media geometry.Rect   // the pieces with their dimensions
}

// layOut puts the pieces on the desk as they are seen in a view: the dimensions, in its
// lettering, stand between the pieces.
func layOut(laid *blank.Blank, v view) desk {
	screen := dieline.Screen{Letter: v.mm(), Plain: v.plain}
	drawings := make([]scene.Drawing, len(laid.Pieces))
	for i := range laid.Pieces {
		drawings[i].Media = screen.Media(laid, i)
	}
	d := desk{laid: laid, moves: scene.Row(drawings), media: scene.RowMedia(drawings)}
	down := geometry.Vec2{Y: -laid.Pieces[0].Levels.Base}
	for i := range d.moves {
		d.moves[i] = d.moves[i].Add(down)
	}
	d.media = geometry.Rect{Min: d.media.Min.Add(down), Max: d.media.Max.Add(down)}
	return d
}

// at returns where a point of a piece lies on the desk. A piece that is not there
// counts as the first.
func (d desk) at(piece int, p geometry.Vec2) geometry.Vec2 {
	if piece < 0 || piece >= len(d.moves) {
		piece = 0
	}
	return p.Add(d.moves[piece])
}

// nearest returns the piece at or beside which a point lies, and where on it.
func (d desk) nearest(p geometry.Vec2) (piece int, at geometry.Vec2) {
	for i := range d.moves {
		if i == 0 || p.X >= d.moves[i].X-scene.RowGap/2 {
			piece = i
		}
	}
	return piece, p.Sub(d.moves[piece])
}

// panel returns the panel on which a point lies, or "".
func (d desk) panel(p geometry.Vec2) string {
	index, at := d.nearest(p)
	piece := &d.laid.Pieces[index]
	for i := range piece.Panels {
		if piece.Panels[i].Box.Contains(at) && piece.Panels[i].Shape.Contains(at) {
			return piece.Panels[i].ID
		}
	}
	return ""
}
