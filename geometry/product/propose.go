package product

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// roundTo is what proposed sizes are whole multiples of, in mm: round numbers are
// read out on the telephone and set on machines without mistakes.
const roundTo = 5

// The least sizes in mm: those of any bag, and of the gusset of a block base that
// folds and glues well.
const (
	leastWidth   = 30
	leastCreased = 10
	leastHeight  = 40
	leastGusset  = 40
)

// Proposal is a size for a bag and why it is that size.
type Proposal struct {
	Size
	Reasons []phrase.Phrase
}

// Propose returns the smallest round size that the product slides into and that can
// be made with base, base overlap and turn-in of body. The numbers in the reasons
// are written by length.
func (p Product) Propose(body bag.Body, length func(mm float64) string) Proposal {
	needs := p.Needs()
	proposal := Proposal{Size: Size{up(needs.Width), up(needs.Gusset), up(needs.Height)}}
	longer, shorter := p.foot()
	proposal.because(phrase.New("Width: %s of product and %s of ease", length(longer), length(p.Ease)))
	proposal.because(phrase.New("Gusset: %s of product and %s of ease", length(shorter), length(p.Ease)))
	proposal.because(phrase.New("Height: %s of product and %s of headroom", length(p.Height), length(p.Headroom)))
	if p.Kind != bag.ProductBottle && p.Depth > p.Width {
		proposal.because(phrase.New("The longer side lies along the face: a gusset deeper than the face is wide does not pack flat"))
	}
	if proposal.raise(&proposal.Width, leastWidth) {
		proposal.because(phrase.New("Face %s: a narrower one leaves no room for a hand", length(proposal.Width)))
	}
	if proposal.raise(&proposal.Gusset, leastCreased) {
		proposal.because(phrase.New("Gusset %s: a shallower one cannot be creased down its middle", length(proposal.Gusset)))
	}
	if proposal.raise(&proposal.Height, leastHeight) {
		proposal.because(phrase.New("Height %s: a lower bag holds nothing", length(proposal.Height)))
	}
	if body.Base != bag.BasePinch {
		proposal.giveBlock(body, length)
		if proposal.raise(&proposal.Height, proposal.Gusset/2+body.TurnInDepth()) {
			proposal.because(phrase.New("Height %s, or the turn-in reaches down to the flat-fold crease", length(proposal.Height)))
		}
	}
	return proposal
}

// giveBlock makes room for the base flaps of a block base.
func (p *Proposal) giveBlock(body bag.Body, length func(float64) string) {
	if p.raise(&p.Gusset, leastGusset) {
		p.because(phrase.New("Gusset %s: a shallower block base is hard to fold and to glue", length(p.Gusset)))
	}
	if p.raise(&p.Gusset, 2*body.BaseOverlap) {
		p.because(phrase.New("Gusset %s, or the base flaps pass the far edge of the base", length(p.Gusset)))
	}
	if body.Base == bag.BaseBlock {
		if p.raise(&p.Width, p.Gusset+2*body.BaseOverlap) {
			p.because(phrase.New("Face %s, or the corner creases of the base cross; slotted corners allow a narrower face", length(p.Width)))
		}
	}
	if p.raise(&p.Width, p.Gusset) {
		p.because(phrase.New("Face %s: as wide as the gusset is deep, or the bag does not pack flat", length(p.Width)))
	}
	if p.raise(&p.Height, p.Gusset) {
		p.because(phrase.New("Height %s: as high as the base is deep, or the bag does not pack flat", length(p.Height)))
	}
}

// raise makes one side of the bag at least so long, and tells whether it was
// shorter.
func (p *Proposal) raise(side *float64, least float64) bool {
	if least = up(least); *side >= least {
		return false
	}
	*side = least
	return true
}

func (p *Proposal) because(reason phrase.Phrase) { p.Reasons = append(p.Reasons, reason) }

// up rounds up to the next round size.
func up(length float64) float64 {
	return math.Ceil(length/roundTo-geometry.Tolerance) * roundTo
}

// LoadWarning says what is to be done about the weight of the product, or returns
// false when no weight is known.
func (p Product) LoadWarning() (phrase.Phrase, bool) {
	if p.Weight <= 0 {
		return phrase.Phrase{}, false
	}
	return phrase.New("No calculation can promise that the bag carries %s. Load a sample bag made of the real paper, lift and lower it many times, and only then confirm the load.",
		mass(p.Weight)), true
}

// mass writes a weight in g, or in kg from 1000 g on.
func mass(grams float64) string {
	if grams < 1000 {
		return geometry.FormatNumber(grams, 0) + " g"
	}
	return geometry.FormatNumber(grams/1000, 2) + " kg"
}
