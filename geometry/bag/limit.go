package bag

import (
	"math"
	"strconv"

	"gussetwright/geometry"
)

// lengthLimit is the least or the most that a length may be, in mm, as a value of a sentence.
// It is rounded to the side of what is allowed, so that it can be entered as it is told.
type lengthLimit struct {
	mm   float64
	most bool
	bare bool // its unit stands with another one, as the first in "15 to 25 mm"
}

// String returns the limit in millimetres.
func (l lengthLimit) String() string { return l.In(geometry.Millimetre) }

// In returns the limit in a unit.
func (l lengthLimit) In(unit geometry.Unit) string {
	const noise = 1e-6
	places := math.Pow10(unit.Decimals())
	scaled := l.mm / unit.Length() * places
	inward := math.Ceil(scaled - noise)
	if l.most {
		inward = math.Floor(scaled + noise)
	}
	number := geometry.FormatNumber(inward/places, unit.Decimals())
	if l.bare {
		return number
	}
	return geometry.WithUnit(number, string(unit))
}

// refusedLength is a length that was refused, in mm, as a value of a sentence: with every digit
// that tells it from the limit.
type refusedLength float64

// String returns the length in millimetres.
func (r refusedLength) String() string { return r.In(geometry.Millimetre) }

// In returns the length in a unit.
func (r refusedLength) In(unit geometry.Unit) string {
	value := float64(r) / unit.Length()
	number := exactly(value)
	if unit != geometry.Millimetre { // the division leaves digits behind that mean nothing
		number = strconv.FormatFloat(value, 'g', 8, 64)
	}
	return geometry.WithUnit(number, string(unit))
}

// givenIn returns a number that was refused as a value of a sentence.
func givenIn(value float64, unit string) any {
	if unit == string(geometry.Millimetre) {
		return refusedLength(value)
	}
	return geometry.WithUnit(exactly(value), unit)
}

// exactly writes a number with every digit, and with an exponent where that would be a
// row of zeros.
func exactly(value float64) string {
	const small, large = 1e-6, 1e12
	form := byte('f')
	if size := math.Abs(value); size != 0 && (size < small || size > large) {
		form = 'g'
	}
	return strconv.FormatFloat(value, form, -1, 64)
}
