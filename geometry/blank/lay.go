package blank

import (
	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
)

// Lay draws the blank of a bag whose Spec has passed Validate. It decides the
// number of seams where that is left to it. It never fails: what is drawn but
// cannot be made is for package check to say.
func Lay(spec bag.Spec) Blank {
	blank := Blank{Spec: spec, Seams: seams(spec)}
	if blank.Seams == 1 {
		blank.Pieces = []Piece{layPiece(spec, oneSeam(spec.Body))}
	} else {
		blank.Pieces = []Piece{
			layPiece(spec, frontPiece(spec.Body)),
			layPiece(spec, backPiece(spec.Body)),
		}
	}
	blank.Cards = cards(spec)
	return blank
}

// seams returns the number of seams: two automatically only when the blank with
// one seam does not fit the sheet and the pieces with two do.
func seams(spec bag.Spec) int {
	switch spec.Body.Seams {
	case bag.SeamsOne:
		return 1
	case bag.SeamsTwo:
		return 2
	}
	b := spec.Body
	height := b.BaseFlap() + b.Height + b.TurnInDepth()
	one := 2*(b.Width+b.Gusset) + b.SeamFlap - b.SeamRelief
	two := b.Width + b.Gusset + b.SeamFlap - b.SeamRelief
	if !sheet.Fits(spec.Sheet, one, height) && sheet.Fits(spec.Sheet, two, height) {
		return 2
	}
	return 1
}

// layPiece draws one piece from its columns.
func layPiece(spec bag.Spec, layout layout) Piece {
	frame := newFrame(spec.Body, spec.Paper.Thickness(), layout.columns)
	piece := Piece{
		Name: layout.name, Count: 1,
		Width: frame.width(), Height: frame.levels.Top, Levels: frame.levels,
	}
	piece.Outline = frame.outline()
	piece.Panels = frame.panels()
	piece.Lines = frame.lines(piece.Outline)
	frame.pierce(&piece, spec.Handle)
	piece.Glue = frame.glue(&piece, spec)
	return piece
}
