package blank

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// PanelArea is a rectangle on a panel.
type PanelArea struct {
	Panel string
	Box   geometry.Rect
}

// GluedTurnIns returns what of the turn-ins is glued on with its print side, so that it
// must stay free of ink. Turn-ins are folded first, so what is glued to the inside of the
// bag below the top fold does not meet the reverse of the paper but the print side of a
// turn-in: the seam flap on the first panel, and the patch of a handle. The areas end one
// bleed before the edges of what lies on them, so that no white shows (common practice, no
// published source). They do not reach beyond the piece.
func (p *Piece) GluedTurnIns(spec bag.Spec) []PanelArea {
	var areas []PanelArea
	for i := range p.Panels {
		turnIn := &p.Panels[i]
		if turnIn.Row != RowTurnIn || turnIn.Column == "seam-flap" {
			continue
		}
		for j := range p.Glue {
			over, lies := turnIn.under(&p.Glue[j])
			if !lies {
				continue
			}
			if box := turnIn.coveredBy(over, spec.Print.Bleed); !box.Empty() {
				areas = append(areas, PanelArea{turnIn.ID, box})
			}
		}
	}
	return areas
}

// under returns the box of what is glued over the turn-in, as it would lie on the piece
// with the turn-in still up.
func (turnIn *Panel) under(glue *GlueArea) (box geometry.Rect, lies bool) {
	seam := glue.Role == GlueSeam && turnIn.Box.Min.X <= geometry.Tolerance
	patch := glue.Role == GluePatch && glue.Panel == turnIn.Column
	if !seam && !patch {
		return geometry.Rect{}, false
	}
	box = glue.Shape.Bounds()
	if seam {
		by := turnIn.Box.Min.X - box.Min.X
		box.Min.X, box.Max.X = box.Min.X+by, box.Max.X+by
	}
	fold := turnIn.Box.Min.Y
	box.Min.Y, box.Max.Y = 2*fold-box.Max.Y, 2*fold-box.Min.Y
	return box, true
}

// coveredBy returns what of the turn-in is covered with room to spare: at its own cut edges
// there is nothing to spare.
func (turnIn *Panel) coveredBy(over geometry.Rect, spare float64) geometry.Rect {
	own, box := turnIn.Box, over.Inset(spare)
	if over.Min.X <= own.Min.X+geometry.Tolerance {
		box.Min.X = own.Min.X
	}
	box.Min.Y = max(box.Min.Y, own.Min.Y+spare)
	box.Max.X = min(box.Max.X, own.Max.X)
	if over.Max.Y >= own.Max.Y-geometry.Tolerance {
		box.Max.Y = own.Max.Y
	}
	return box
}
