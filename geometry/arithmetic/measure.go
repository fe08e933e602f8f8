package arithmetic

import (
	"math"
	"strings"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
)

// measure is what an entry holds: which units may stand behind its numbers, and what is
// said about others.
type measure struct {
	assumed float64 // the size of the unit in which a bare number is meant
	signs   string  // of units, that are neither letters nor usual signs
	// size returns how large a unit is, by its name in small letters; nil where numbers
	// have none.
	size   func(unit string) (size float64, known bool)
	refuse func(unit string) (problem, remedy phrase.Phrase)
	twice  phrase.Phrase // two numbers with units multiplied
	below  phrase.Phrase // a number with a unit divides
}

// lengths returns the measure of lengths, which come to millimetres.
func lengths(assumed geometry.Unit) measure {
	return measure{
		assumed: assumed.Length(),
		size: func(unit string) (float64, bool) {
			length, err := geometry.ParseLength("1"+unit, geometry.Millimetre)
			return length, err == nil && !math.IsNaN(length)
		},
		refuse: func(unit string) (problem, remedy phrase.Phrase) {
			return phrase.New("%q is not a unit of length", unit), remedyUnit
		},
		twice: problemArea, below: problemByLength,
	}
}

// A pound is 453.59237 g exactly, and has 16 ounces (international yard and pound
// agreement of 1959; NIST SP 811, appendix B).
const (
	kilogram = 1000.0
	pound    = 453.59237
	ounce    = pound / 16
)

// grams holds the units of weight.
var grams = map[string]float64{
	"g": 1, "gram": 1, "grams": 1, "kg": kilogram, "kilogram": kilogram, "kilograms": kilogram,
	"oz": ounce, "ounce": ounce, "ounces": ounce, "lb": pound, "lbs": pound, "pound": pound, "pounds": pound,
}

// micrometres holds the units of the caliper of paper. An inch is 25.4 mm exactly
// (international yard and pound agreement of 1959). There are two letters for micro.
var micrometres = map[string]float64{
	"µm": 1, "μm": 1, "um": 1, "mm": 1000, "cm": 10_000, "in": 25_400, "inch": 25_400, "\"": 25_400, "″": 25_400,
}

// gramsPerSquareMetre holds the ways to write the unit of grammage; in a shop "170 g" is
// said of paper.
var gramsPerSquareMetre = map[string]float64{"g/m²": 1, "g/m2": 1, "g/m^2": 1, "gsm": 1, "g": 1}

// basisWeights are the units in which the paper of North America is sold: the weight of
// 500 sheets, whose size depends on the kind of paper.
var basisWeights = map[string]bool{"lb": true, "lbs": true, "pound": true, "pounds": true, "#": true}

// measureIn returns the measure of an entry in a unit, if the unit has others beside it.
// What it reads comes to that unit.
func measureIn(unit string) (m measure, known bool) {
	m = measure{assumed: 1, twice: problemTwice, below: problemBelow}
	switch unit {
	case "g", "kg":
		m.size = sizes(grams, grams[unit])
		m.refuse = func(other string) (problem, remedy phrase.Phrase) {
			return phrase.New("%q is not a unit of weight", other), remedyWeight
		}
	case "g/m²":
		m.size, m.signs = sizes(gramsPerSquareMetre, 1), "#"
		m.refuse = func(other string) (problem, remedy phrase.Phrase) {
			if basisWeights[strings.ToLower(other)] {
				return problemBasisWeight, remedyBasisWeight
			}
			return phrase.New("%q is not a unit of grammage", other), remedyGrammage
		}
	case "µm":
		m.size = sizes(micrometres, 1)
		m.refuse = func(other string) (problem, remedy phrase.Phrase) {
			return phrase.New("%q is not a unit of thickness", other), remedyThickness
		}
	default:
		return measure{}, false
	}
	return m, true
}

// sizes returns the sizes of units in one of them.
func sizes(units map[string]float64, own float64) func(string) (float64, bool) {
	return func(unit string) (float64, bool) {
		size, known := units[unit]
		return size / own, known
	}
}

// bare returns the measure of numbers behind which no other unit than one may stand, and
// that only at the end; "" for none at all.
func bare(unit string) measure {
	remedy := remedyAlone
	if unit != "" {
		remedy = phrase.New("write the value in %s", unit)
	}
	return measure{assumed: 1, refuse: func(other string) (phrase.Phrase, phrase.Phrase) {
		return phrase.New("%q does not belong to this number", other), remedy
	}}
}
