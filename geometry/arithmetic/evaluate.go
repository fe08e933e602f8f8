package arithmetic

import (
	"math"
	"strings"

	"gussetwright/geometry"
)

// Evaluate returns the length in millimetres that the text comes to. A bare number
// that is added to a length, and a sum of bare numbers alone, are in the unit
// assumed. The error is an *Error.
func Evaluate(text string, assumed geometry.Unit) (float64, error) {
	reader := reader{source: []rune(text), lengths: true, assumed: assumed.Length()}
	result, err := reader.whole()
	if err != nil {
		return 0, err
	}
	return reader.finite(reader.millimetres(result), 0)
}

// EvaluateNumber returns what the text comes to where the entry is no length: a
// grammage, a share, a count. The unit of the entry may stand behind the sum, such
// as "%" or "g/m²"; no other may. The error is an *Error.
func EvaluateNumber(text, unit string) (float64, error) {
	sum := strings.TrimRight(text, " ")
	if start := len(sum) - len(unit); unit != "" && start >= 0 && strings.EqualFold(sum[start:], unit) {
		sum = sum[:start]
	}
	reader := reader{source: []rune(sum)}
	result, err := reader.whole()
	if err != nil {
		return 0, err
	}
	return reader.finite(result.amount, 0)
}

// value is what a part of the sum comes to: a bare number, or a length in mm.
type value struct {
	amount   float64
	isLength bool
}

func (r *reader) millimetres(v value) float64 {
	if v.isLength {
		return v.amount
	}
	return v.amount * r.assumed
}

// add returns a + sign × b. Where one of them is a length, so is the other.
func (r *reader) add(a, b value, sign float64) value {
	if a.isLength == b.isLength {
		return value{a.amount + sign*b.amount, a.isLength}
	}
	return value{r.millimetres(a) + sign*r.millimetres(b), true}
}

func (r *reader) multiply(a, b value, at int) (value, error) {
	if a.isLength && b.isLength {
		return value{}, r.fail(at, problemArea, remedyFactor)
	}
	return value{a.amount * b.amount, a.isLength || b.isLength}, nil
}

func (r *reader) divide(a, b value, at int) (value, error) {
	if b.isLength {
		return value{}, r.fail(at, problemByLength, remedyFraction)
	}
	if b.amount == 0 {
		return value{}, r.fail(at, problemByNought, remedyByNought)
	}
	return value{a.amount / b.amount, a.isLength}, nil
}

func (r *reader) finite(number float64, at int) (float64, error) {
	if math.IsNaN(number) || math.IsInf(number, 0) {
		return 0, r.fail(at, problemHuge, remedySmaller)
	}
	return number, nil
}
