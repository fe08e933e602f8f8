package blank

import (
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
