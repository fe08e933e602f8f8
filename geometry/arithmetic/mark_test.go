package arithmetic_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/arithmetic"
)

// marks are both decimal marks.
func marks() []arithmetic.DecimalMark {
	return []arithmetic.DecimalMark{arithmetic.Point, arithmetic.Comma}
}

// What cannot mean anything else is read alike, whatever the decimal mark of the window.
func TestBothDecimalMarksAreRead(t *testing.T) {
	for text, want := range map[string]float64{
		"82.5": 82.5, "82,5": 82.5, "82,50 mm": 82.5, "8,25 cm": 82.5, "0.125": 0.125, "0,125": 0.125,
		"1234,567": 1234.567, "1234.567": 1234.567, "12,3456": 12.3456, "2*82,5 + 10.5": 175.5,
		"1,250.5": 1250.5, "1.250,5": 1250.5, "1.234.567,5": 1234567.5, "1.250,5 - 1,000.25": 250.25,
		"1\u00a0250": 1250, "1\u202f250,5 mm": 1250.5, "1'250": 1250, "1’250.5": 1250.5,
		"1 250/1000 mm": 1.25,
	} {
		for _, mark := range marks() {
			got, err := mark.Evaluate(text, geometry.Millimetre)
			if err != nil || math.Abs(got-want) > 1e-9 {
				t.Errorf("%q with decimals behind %q: got %v, %v; want %v", text, mark, got, err, want)
			}
		}
	}
}

// A sign before three digits is a decimal mark where decimals are shown behind it, and the
// other one is refused: it may be a thousand times as much.
func TestTheOtherMarkBeforeThreeDigits(t *testing.T) {
	for _, test := range []struct {
		text string
		mark arithmetic.DecimalMark
		want float64
		says string
	}{
		{"1.250", arithmetic.Point, 1.25, ""},
		{"1,250", arithmetic.Comma, 1.25, ""},
		{"1,255 + 12,345", arithmetic.Comma, 13.6, ""},
		{"1,250", arithmetic.Point, 0, `"1,250" may be 1.25 or 1250; write it without the comma`},
		{"1.250", arithmetic.Comma, 0, `"1.250" may be 1.25 or 1250; write it without the point`},
		{"5 + 2*12.500 mm", arithmetic.Comma, 0, `character 7: "12.500" may be 12.5 or 12500`},
		{"1/2.500", arithmetic.Comma, 0, `"2.500" may be 2.5 or 2500`},
		{"9 1.250/4", arithmetic.Comma, 0, `"1.250" may be 1.25 or 1250`},
		{"1.250.5", arithmetic.Comma, 0, `"1.250.5" is not a number`},
		{"1,250,5", arithmetic.Point, 0, `is not a number`},
		{"1'250'5", arithmetic.Point, 0, `"'" does not belong here`},
		{"240 240", arithmetic.Comma, 0, `"2" does not belong here`},
	} {
		got, err := test.mark.Evaluate(test.text, geometry.Millimetre)
		if test.says == "" {
			if err != nil || math.Abs(got-test.want) > 1e-9 {
				t.Errorf("%q with decimals behind %q: got %v, %v; want %v", test.text, test.mark, got, err, test.want)
			}
			continue
		}
		if err == nil || !strings.Contains(err.Error(), test.says) {
			t.Errorf("%q with decimals behind %q: got %v, %v; want %q", test.text, test.mark, got, err, test.says)
		}
	}
}

// Weights, grammages and shares are read as lengths are.
func TestNumbersWithBothMarks(t *testing.T) {
	for _, unit := range []string{"", "%", "g", "kg", "g/m²", "µm"} {
		for _, mark := range marks() {
			if got, err := mark.EvaluateNumber("1.250,5 "+unit, unit); err != nil || got != 1250.5 {
				t.Errorf("%s: got %v, %v", unit, got, err)
			}
			other := map[arithmetic.DecimalMark]string{arithmetic.Point: "1,250", arithmetic.Comma: "1.250"}[mark]
			if got, err := mark.EvaluateNumber(other, unit); err == nil {
				t.Errorf("%s with decimals behind %q: %q comes to %v", unit, mark, other, got)
			}
		}
	}
}

// No number is taken for a thousand times as much or as little as another reader of the
// same mark takes it: what strconv reads, once the mark is a point, is read alike or refused.
func TestNothingIsOutByAThousand(t *testing.T) {
	random := rand.New(rand.NewPCG(22, 2003))
	for range 5000 {
		value := math.Round(random.Float64()*1e7) / math.Pow10(random.IntN(5))
		text := strconv.FormatFloat(value, 'f', random.IntN(5), 64)
		want, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		for _, mark := range marks() {
			own := strings.Replace(text, ".", string(mark), 1)
			if got, err := mark.Evaluate(own, geometry.Millimetre); err != nil || math.Abs(got-want) > 1e-9*want {
				t.Errorf("%q with decimals behind %q: got %v, %v; want %v", own, mark, got, err, want)
			}
			other := arithmetic.Point
			if mark == arithmetic.Point {
				other = arithmetic.Comma
			}
			foreign := strings.Replace(text, ".", string(other), 1)
			if got, err := mark.Evaluate(foreign, geometry.Millimetre); err == nil && math.Abs(got-want) > 1e-9*want {
				t.Errorf("%q with decimals behind %q: got %v, want %v or a complaint", foreign, mark, got, want)
			}
		}
	}
}
