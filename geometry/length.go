package geometry

import (
	"math"
	"strconv"
	"strings"

	"gussetwright/geometry/phrase"
)

// Unit is a unit of length that a user may type.
type Unit string

// The units of length that ParseLength reads.
const (
	Millimetre Unit = "mm"
	Centimetre Unit = "cm"
	Inch       Unit = "in"
)

// Units returns the units in which lengths can be shown.
func Units() []Unit { return []Unit{Millimetre, Centimetre, Inch} }

// Length returns how many millimetres the unit is long.
func (u Unit) Length() float64 { return millimetres[u] }

// Decimals returns how many digits after the point show a length in this unit to a
// tenth of a millimetre.
func (u Unit) Decimals() int {
	switch u {
	case Centimetre:
		return 2
	case Inch:
		return 3
	}
	return 1
}

// millimetres holds the length of each unit. An inch is 25.4 mm exactly
// (international yard and pound agreement of 1959).
var millimetres = map[Unit]float64{
	Millimetre: 1, Centimetre: 10, Inch: 25.4,
	"m": 1000, "\"": 25.4, "″": 25.4, "inch": 25.4, "inches": 25.4,
}

// ParseLength reads a length such as "240", "24 cm", "24,5 cm", "9 1/2 in" or
// "9.5\"" and returns millimetres. A bare number is in the unit assumed. A comma is
// a decimal comma, except before three digits, where it might part thousands. The error says
// which part was not understood and which units are.
func ParseLength(text string, assumed Unit) (float64, error) {
	number, unit := splitUnit(strings.TrimSpace(text))
	if unit == "" {
		unit = string(assumed)
	}
	factor, known := millimetres[Unit(strings.ToLower(unit))]
	if !known {
		return 0, phrase.Errorf("length %q: unit %q is not one of mm, cm, m, in; write for example 240 mm, 24 cm or 9 1/2 in", text, unit)
	}
	value, err := parseMixed(number)
	if err != nil {
		return 0, phrase.Errorf("length %q: %s; write for example 240 mm, 24 cm or 9 1/2 in", text, err)
	}
	if math.IsInf(value*factor, 0) {
		return 0, phrase.Errorf("length %q: more than a computer can count; write for example 240 mm, 24 cm or 9 1/2 in", text)
	}
	return value * factor, nil
}

// splitUnit cuts the text where the digits end.
func splitUnit(text string) (number, unit string) {
	end := strings.LastIndexAny(text, "0123456789.") + 1
	return strings.TrimSpace(text[:end]), strings.TrimSpace(text[end:])
}

// parseMixed reads a decimal number, a fraction, or a whole number and a fraction.
func parseMixed(text string) (float64, error) {
	words := strings.Fields(text)
	if len(words) == 0 {
		return 0, phrase.Errorf("there is no number")
	}
	if len(words) > 2 {
		return 0, phrase.Errorf("%q is more than one number", text)
	}
	first, err := parseFraction(words[0])
	if err != nil {
		return 0, err
	}
	if len(words) == 1 {
		return first, nil
	}
	second, err := parseFraction(words[1])
	if err != nil {
		return 0, err
	}
	if !strings.Contains(words[1], "/") || strings.Contains(words[0], "/") || strings.ContainsAny(words[1], "+-") {
		return 0, phrase.Errorf("%q is more than one number", text)
	}
	return first + math.Copysign(second, first), nil
}

func parseFraction(text string) (float64, error) {
	whole, decimals, hasComma := strings.Cut(text, ",")
	if hasComma && len(decimals) == 3 && !strings.Contains(decimals, ",") {
		return 0, phrase.Errorf("%q may be %s or %s%s; write it without the comma", text, whole+"."+decimals, whole, decimals)
	}
	above, below, isFraction := strings.Cut(strings.Replace(text, ",", ".", 1), "/")
	value, err := strconv.ParseFloat(above, 64)
	if err != nil || math.IsNaN(value) || math.IsInf(value, 0) {
		return 0, phrase.Errorf("%q is not a number", text)
	}
	if !isFraction {
		return value, nil
	}
	divisor, err := strconv.ParseFloat(below, 64)
	if err != nil || divisor <= 0 || math.IsInf(divisor, 0) || math.IsNaN(divisor) {
		return 0, phrase.Errorf("%q is not a fraction", text)
	}
	return value / divisor, nil
}

// WithUnit writes a number and its unit as they stand in print: degrees and percent
// close to the number, other units after a space, nothing for no unit.
func WithUnit(number, unit string) string {
	switch unit {
	case "":
		return number
	case "°", "%":
		return number + unit
	}
	return number + " " + unit
}

// FormatNumber writes a number with at most the given decimals and no trailing
// zeros, as dimensions stand on a drawing.
func FormatNumber(value float64, decimals int) string {
	text := strconv.FormatFloat(value, 'f', decimals, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return text
}
