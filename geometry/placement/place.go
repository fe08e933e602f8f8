package placement

import (
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
)

// place is one field of one piece that artwork is put on.
type place struct {
	piece  int
	name   string        // a panel, or the piece as a whole
	box    geometry.Rect // without bleed
	turned bool          // stands on its head on the blank to be upright on the folded bag
}

// placesOf returns the fields that Artwork.On names on this bag, none where the bag
// has no such part.
func placesOf(b *blank.Blank, on string) []place {
	switch on {
	case bag.OnBlank:
		return pieces(b, func(int) bool { return true })
	case bag.OnFrontPiece:
		return pieces(b, func(i int) bool { return len(b.Pieces) == 2 && i == 0 })
	case bag.OnBackPiece:
		return pieces(b, func(i int) bool { return len(b.Pieces) == 2 && i == 1 })
	case bag.OnFaces:
		return panels(b, "front", "back")
	case bag.OnGussets:
		return panels(b, "gusset-left", "gusset-right")
	}
	return panels(b, on)
}

func pieces(b *blank.Blank, wanted func(int) bool) []place {
	var found []place
	for i := range b.Pieces {
		if wanted(i) {
			found = append(found, place{piece: i, name: b.Pieces[i].Name, box: b.Pieces[i].Box()})
		}
	}
	return found
}

func panels(b *blank.Blank, names ...string) []place {
	var found []place
	for _, name := range names {
		for i := range b.Pieces {
			if panel, here := b.Pieces[i].Panel(name); here {
				found = append(found, place{i, name, panel.Box, panel.Row == blank.RowTurnIn})
			}
		}
	}
	return found
}

// Has tells whether the bag has the place that artwork is put on.
func Has(b *blank.Blank, on string) bool { return len(placesOf(b, on)) > 0 }

// PanelAt returns the panel of a piece at a point that artwork can be put on, and
// false where there is none: on the seam flap or beside the paper.
func PanelAt(piece *blank.Piece, at geometry.Vec2) (string, bool) {
	for i := range piece.Panels {
		panel := &piece.Panels[i]
		if panel.Box.Contains(at) && slices.Contains(bag.ArtworkPlaces(), panel.ID) {
			return panel.ID, true
		}
	}
	return "", false
}
