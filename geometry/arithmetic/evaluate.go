package arithmetic

import (
	"math"
	"strings"

	"gussetwright/geometry"
)

// DecimalMark stands before decimals where an entry is shown. Either sign is read as one,
// but where three digits follow one to three, as in "1,250" and "1.250", the other sign may
// part thousands as well: such a number is refused.
type DecimalMark rune

// The decimal marks. The General Conference on Weights and Measures allows both, as is
// customary in the language (resolution 10 of its 22nd meeting, 2003).
const (
	Point DecimalMark = '.'
	Comma DecimalMark = ','
)

// Evaluate is that of the mark Point.
func Evaluate(text string, assumed geometry.Unit) (float64, error) {
	return Point.Evaluate(text, assumed)
}

// Evaluate returns the length in millimetres that the text comes to. A bare number
// that is added to a length, and a sum of bare numbers alone, are in the unit
// assumed. The error is an *Error.
func (m DecimalMark) Evaluate(text string, assumed geometry.Unit) (float64, error) {
	reader := reader{source: []rune(text), measure: lengths(assumed), mark: m}
	return reader.result()
}

// EvaluateNumber is that of the mark Point.
func EvaluateNumber(text, unit string) (float64, error) { return Point.EvaluateNumber(text, unit) }

// EvaluateNumber returns what the text comes to where the entry is no length: a weight, a
// grammage, a share. It comes to the unit of the entry, in which a bare number is meant.
// In an entry in "g" or "kg" numbers may have any unit of weight (g, kg, oz, lb), in one
// in "µm" any of thickness (µm, mm, cm, in), and in one in "g/m²" the unit may be written
// in other ways, such as "gsm". Any other unit, such as "%", may only stand behind the
// whole sum. The error is an *Error.
func (m DecimalMark) EvaluateNumber(text, unit string) (float64, error) {
	if measure, known := measureIn(unit); known {
		reader := reader{source: []rune(text), measure: measure, mark: m}
		return reader.result()
	}
	sum := strings.TrimRight(text, " ")
	if start := len(sum) - len(unit); unit != "" && start >= 0 && strings.EqualFold(sum[start:], unit) {
		sum = sum[:start]
	}
	reader := reader{source: []rune(sum), measure: bare(unit), mark: m}
	return reader.result()
}

// result returns what the whole text comes to, in the unit of the measure.
func (r *reader) result() (float64, error) {
	total, err := r.whole()
	if err != nil {
		return 0, err
	}
	return r.finite(r.measured(total), 0)
}

// value is what a part of the sum comes to: a bare number, or one that has a unit.
type value struct {
	amount  float64
	hasUnit bool
}

func (r *reader) measured(v value) float64 {
	if v.hasUnit {
		return v.amount
	}
	return v.amount * r.measure.assumed
}

// add returns a + sign × b. Where one of them has a unit, so has the other.
func (r *reader) add(a, b value, sign float64) value {
	if a.hasUnit == b.hasUnit {
		return value{a.amount + sign*b.amount, a.hasUnit}
	}
	return value{r.measured(a) + sign*r.measured(b), true}
}

func (r *reader) multiply(a, b value, at int) (value, error) {
	if a.hasUnit && b.hasUnit {
		return value{}, r.fail(at, r.measure.twice, remedyFactor)
	}
	return value{a.amount * b.amount, a.hasUnit || b.hasUnit}, nil
}

func (r *reader) divide(a, b value, at int) (value, error) {
	if b.hasUnit {
		return value{}, r.fail(at, r.measure.below, remedyFraction)
	}
	if b.amount == 0 {
		return value{}, r.fail(at, problemByNought, remedyByNought)
	}
	return value{a.amount / b.amount, a.hasUnit}, nil
}

func (r *reader) finite(number float64, at int) (float64, error) {
	if math.IsNaN(number) || math.IsInf(number, 0) {
		return 0, r.fail(at, problemHuge, remedySmaller)
	}
	return number, nil
}
