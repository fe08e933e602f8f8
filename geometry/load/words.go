package load

import (
	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
)

// Caution returns what must stand beside every estimate.
func Caution() phrase.Phrase {
	return phrase.New("an estimate from the tensile strength of the paper, without seam, base and glue; only a test of samples tells what the bag carries, and local rules may ask for one")
}

// Sentence says what the bag might carry and which place decides.
func (e Estimate) Sentence() phrase.Phrase {
	return phrase.New("about %s, decided by %s", kilograms(e.Kilograms), e.Weakest.Name)
}

// Basis says what strength the estimate starts from.
func (e Estimate) Basis() phrase.Phrase {
	strength := geometry.FormatNumber(e.Strength, 2) + " kN/m"
	if e.Measured {
		return phrase.New("paper of %s as entered, safety factor %d", strength, Safety)
	}
	return phrase.New("paper of %s, estimated from its kind and grammage, safety factor %d", strength, Safety)
}

// Against compares the estimate with the weight of the product in grams, 0 where it is
// not known. It returns what is so and what to do about it, and false where the estimate
// holds the product.
func (e Estimate) Against(grams float64) (message, remedy phrase.Phrase, over bool) {
	if grams <= 1000*e.Kilograms {
		return phrase.Phrase{}, phrase.Phrase{}, false
	}
	return phrase.New("the product weighs %s, but by the strength of its paper the bag carries about %s; %s gives way first", kilograms(grams/1000), kilograms(e.Kilograms), e.Weakest.Name),
		phrase.New("take a stronger paper or more layers of it there, and confirm the load with a test of samples"), true
}

// kilograms writes a weight; an estimate has no more than one decimal.
func kilograms(weight float64) string { return geometry.FormatNumber(weight, 1) + " kg" }
