package check

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// leastCard is the shortest side of a card that can be cut and put in place, mm.
const leastCard = 10

// cards looks at whether the cards that were asked for have a place.
func (l *inspection) cards() {
	c := l.spec.Cards
	top, base := l.place("front-base"), l.place("front-base")
	if panel, found := l.blank.Pieces[0].Panel("front-turn-in"); found {
		top = panel.Box.Center()
	}
	if c.Top && l.spec.Body.TurnInDepth() == 0 {
		l.noPlace("top cards", "there is no turn-in to hide them", "turn the top in, or leave the top cards out", top)
	}
	if c.Base && l.spec.Body.Base == bag.BasePinch {
		l.noPlace("base card", "a pinch base has no floor", "choose a block base, or leave the base card out", base)
	}
	for _, card := range l.blank.Cards {
		if card.Role == "patch" || min(card.Width, card.Height) >= leastCard {
			continue
		}
		at := base
		if card.Role == "top" {
			at = top
		}
		l.find(Error, "card-too-small", at,
			sentence("the %s card comes out %s × %s, less than %s on one side", phrase.Word(card.Role), mm(card.Width), mm(card.Height), mm(leastCard)),
			sentence("make its place larger, the card clearance smaller, or leave the card out"))
	}
	if (c.Top || c.Base) && c.Clearance < 2*l.spec.Paper.Thickness() {
		l.find(Warning, "card-tight", base,
			sentence("the card clearance of %s is less than two thicknesses of the paper", mm(c.Clearance)),
			sentence("make the clearance %s to %s", geometry.BareLength(2), mm(5)))
	}
}

func (l *inspection) noPlace(what, why phrase.Word, remedy string, at geometry.Vec2) {
	l.find(Warning, "card-without-place", at, sentence("the %s cannot be put in: %s", what, why), sentence(remedy))
}
