package blank

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// cards returns the loose parts that go into one bag. A card whose place does not
// exist, such as a base card in a pinch base, is left out.
func cards(spec bag.Spec) []Card {
	var list []Card
	if spec.Cards.Top && spec.Body.TurnInDepth() > 0 {
		width, height := topCard(spec)
		list = append(list, Card{"top", 2, width, height, spec.Cards.TopGrammage})
	}
	if spec.Cards.Base && spec.Body.Base != bag.BasePinch {
		width, depth := spec.Body.Width-spec.Cards.Clearance, spec.Body.Gusset-spec.Cards.Clearance
		list = append(list, Card{"base", 1, max(width, 0), max(depth, 0), spec.Cards.BaseGrammage})
	}
	if spec.Handle.Kind.HasPatch() {
		list = append(list, Card{"patch", 2, spec.Handle.PatchWidth, spec.Handle.PatchHeight, spec.Paper.Grammage})
	}
	return list
}

// topCard returns the size of a top card: the face less the clearance, the
// turn-in less the margin by which it hides the card.
func topCard(spec bag.Spec) (width, height float64) {
	return max(spec.Body.Width-spec.Cards.Clearance, 0),
		max(spec.Body.TurnInDepth()-spec.Cards.TopEdgeMargin, 0)
}

// CardOpenings returns the openings of a card, those of the face that it is glued to,
// measured from its lower left corner. The face is the same turned over, so it does not
// matter from which side the card is seen. An opening at its edge reaches beyond it.
func (b *Blank) CardOpenings(card *Card) []geometry.Path {
	if card.Role != "top" {
		return nil
	}
	piece := &b.Pieces[0]
	face, _ := piece.Panel("front")
	box := geometry.RectAt(face.Box.Center().X-card.Width/2, piece.Levels.TopFold-card.Height, card.Width, card.Height)
	var through []geometry.Path
	for _, opening := range piece.openings(0) {
		if reachesInto(opening.box, box) {
			through = append(through, opening.outline.Translate(box.Min.Scale(-1)))
		}
	}
	return through
}

// CardArea returns the area of one card in mm², without its openings.
func (b *Blank) CardArea(card *Card) float64 {
	box := geometry.RectAt(0, 0, card.Width, card.Height)
	return box.Area() - areaWithin(b.CardOpenings(card), box)
}

// Name returns what the card is called.
func (c Card) Name() phrase.Word {
	switch c.Role {
	case "top":
		return "Top card"
	case "base":
		return "Base card"
	}
	return "Handle patch"
}
