package arithmetic_test

import (
	"errors"
	"math"
	"math/big"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/arithmetic"
)

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9*max(1, math.Abs(b)) }

// An inch is 25.4 mm exactly (international yard and pound agreement of 1959); the
// rest is school arithmetic.
func TestEvaluate(t *testing.T) {
	tests := []struct {
		text    string
		assumed geometry.Unit
		want    float64
	}{
		{"240", geometry.Millimetre, 240},
		{"240", geometry.Centimetre, 2400},
		{"2*120+10", geometry.Millimetre, 250},
		{"2*120+10", geometry.Centimetre, 2500},
		{"24 cm + 3", geometry.Millimetre, 243},
		{"24 cm + 3", geometry.Inch, 316.2},
		{"3 + 24cm", geometry.Millimetre, 243},
		{"24cm - 3", geometry.Millimetre, 237},
		{"9 1/2 in", geometry.Millimetre, 241.3},
		{"9 1/2\" + 1/2\"", geometry.Millimetre, 254},
		{"9 1/2 * 2", geometry.Inch, 482.6},
		{"1/2 in * 3", geometry.Millimetre, 38.1},
		{"(240+100)*2", geometry.Millimetre, 680},
		{"2 × (240 + 100) + 20", geometry.Millimetre, 700},
		{"2·(24 cm + 10 cm)", geometry.Millimetre, 680},
		{"240/2", geometry.Millimetre, 120},
		{"240 / 2", geometry.Millimetre, 120},
		{"240÷2", geometry.Millimetre, 120},
		{"24 cm/2", geometry.Millimetre, 120},
		{"24 cm / 2 + 1 in", geometry.Millimetre, 145.4},
		{"240/2/2", geometry.Millimetre, 60},
		{"10/4*2", geometry.Millimetre, 5},
		{"24,5 cm", geometry.Millimetre, 245},
		{"24,5+0,5", geometry.Centimetre, 250},
		{"24.5+.5", geometry.Centimetre, 250},
		{"10 - 2 - 3", geometry.Millimetre, 5},
		{"10-2*3", geometry.Millimetre, 4},
		{"-5+8", geometry.Millimetre, 3},
		{"8−5", geometry.Millimetre, 3},
		{"2*-3", geometry.Millimetre, -6},
		{"-(2+3)", geometry.Millimetre, -5},
		{"((((7))))", geometry.Millimetre, 7},
		{"1e2+1", geometry.Millimetre, 101},
		{"  24 cm  ", geometry.Millimetre, 240},
		{"0.24m", geometry.Millimetre, 240},
	}
	for _, test := range tests {
		got, err := arithmetic.Evaluate(test.text, test.assumed)
		if err != nil || !near(got, test.want) {
			t.Errorf("%q in %s: got %v, %v; want %v", test.text, test.assumed, got, err, test.want)
		}
	}
}

func TestEvaluateNumber(t *testing.T) {
	tests := []struct {
		text, unit string
		want       float64
	}{
		{"170", "g/m²", 170},
		{"170 g/m²", "g/m²", 170},
		{"2*85 G/M²", "g/m²", 170},
		{"170 g/m² + 1", "g/m²", 171},
		{"170gsm", "g/m²", 170},
		{"170 g/m2", "g/m²", 170},
		{"170 G/M^2 * 2", "g/m²", 340},
		{"170 g", "g/m²", 170},
		{"150 µm", "µm", 150},
		{"0,15 mm", "µm", 150},
		{"0.15 mm + 20 μm + 1", "µm", 171},
		{"0.01 in", "µm", 254}, // an inch is 25.4 mm exactly (international yard and pound agreement of 1959)
		{"3 kN/m", "kN/m", 3},
		{"5%", "%", 5},
		{"2,5 + 2,5 %", "%", 5},
		{"15°", "°", 15},
		{"3 * 500", "", 1500},
		{"1/2", "", 0.5},
	}
	for _, test := range tests {
		got, err := arithmetic.EvaluateNumber(test.text, test.unit)
		if err != nil || !near(got, test.want) {
			t.Errorf("%q in %q: got %v, %v; want %v", test.text, test.unit, got, err, test.want)
		}
	}
}

func TestComplaintsNamePlaceAndRemedy(t *testing.T) {
	tests := []struct {
		text    string
		at      int
		problem string
		remedy  string
	}{
		{"", 1, "no number", "write a number"},
		{"   ", 4, "no number", "write a number"},
		{"240+", 5, "no number", "write a number"},
		{"240 + * 2", 7, "no number", "write a number"},
		{"*2", 1, "no number", "write a number"},
		{"abc", 1, `"a" is not a number`, "write a number"},
		{"2*abc", 3, `"a" is not a number`, "write a number"},
		{"240 kg", 5, `"kg" is not a unit`, "mm, cm, m or in"},
		{"10 + 24 xm", 9, `"xm" is not a unit`, "mm, cm, m or in"},
		{"1.2.3", 1, `"1.2.3" is not a number`, "write a number"},
		{"10+1,240", 4, `"1,240" may be 1.24 or 1240`, "without the comma"},
		{"(240", 1, "opened and not closed", "close it"},
		{"2*(3+(4)", 3, "opened and not closed", "close it"},
		{"240)", 4, "closed that was not opened", "open it with ("},
		{"24 cm * 2 cm", 7, "an area", "take the unit off"},
		{"240/(1-1)", 4, "divided by 0", "another number"},
		{"240 / 2 cm", 5, "cannot divide", "without spaces"},
		{"240 240", 5, `"2" does not belong here`, "between"},
		{"240 (2)", 5, `"(" does not belong here`, "between"},
		{"240\x00 2", 4, `"\x00" does not belong here`, "between"},
		{"240 # 2", 5, `"#" does not belong here`, "between"},
		{strings.Repeat("(", 30) + "1" + strings.Repeat(")", 30), 21, "more than 20 brackets", "shorter"},
		{strings.Repeat("1+", 200) + "1", 201, "longer than 200", "shorter"},
		{"1e300 * 1e300", 1, "more than a computer", "smaller"},
		{"1e400", 1, "is not a number", "write a number"},
	}
	for _, test := range tests {
		got, err := arithmetic.Evaluate(test.text, geometry.Millimetre)
		var complaint *arithmetic.Error
		if !errors.As(err, &complaint) {
			t.Errorf("%q: got %v, %v; want a complaint", test.text, got, err)
			continue
		}
		if complaint.At != test.at {
			t.Errorf("%q: stopped at character %d, want %d (%v)", test.text, complaint.At, test.at, err)
		}
		if !strings.Contains(complaint.Problem.String(), test.problem) || !strings.Contains(complaint.Remedy.String(), test.remedy) {
			t.Errorf("%q: %v; want %q and %q", test.text, err, test.problem, test.remedy)
		}
	}
}

func TestNumbersTakeNoOtherUnit(t *testing.T) {
	tests := []struct{ text, unit, says string }{
		{"170 mm", "g/m²", `"mm" is not a unit of grammage; write g/m², for example 170 g/m²`},
		{"5 %", "g/m²", `"%" is not a unit of grammage`},
		{"5 g/m", "g/m²", `"g/m" is not a unit of grammage`},
		{"80 lb", "g/m²", "a basis weight in pounds means another grammage for every kind of paper; write the grammage in g/m²"},
		{"80# text", "g/m²", "a basis weight in pounds"},
		{"60 LBS", "g/m²", "a basis weight in pounds"},
		{"24 cm", "g", `"cm" is not a unit of weight; write g, kg, oz or lb`},
		{"1.4 t", "g", `"t" is not a unit of weight`},
		{"1.4 kg/m", "g", `"kg/m" is not a unit of weight`},
		{"1.4 kg 200", "g", `"2" does not belong here`},
		{"2 kg * 3 kg", "g", "both have a unit; take the unit off one of the two"},
		{"12 kg / 2 kg", "g", "what has a unit cannot divide"},
		{"150 g", "µm", `"g" is not a unit of thickness; write µm, mm or in`},
		{"17 cm", "%", `"cm" does not belong to this number; write the value in %`},
		{"5 % + 1", "%", `"%" does not belong to this number; write the value in %`},
		{"12 €", "", `"€" does not belong to this number; write the number alone`},
		{"240 # 2", "g", `"#" does not belong here`},
	}
	for _, test := range tests {
		got, err := arithmetic.EvaluateNumber(test.text, test.unit)
		if err == nil || !strings.Contains(err.Error(), test.says) {
			t.Errorf("%q in %s: got %v, %v; want %q", test.text, test.unit, got, err, test.says)
		}
	}
}

// A comma before three digits is refused where it may part thousands, also above a stroke.
func TestCommaBeforeThreeDigits(t *testing.T) {
	for text, want := range map[string]float64{"0,125": 0.125, "1240,125": 1240.125, "12,5": 12.5, "12,50": 12.5, "1,2345": 1.2345} {
		if got, err := arithmetic.Evaluate(text, geometry.Millimetre); err != nil || got != want {
			t.Errorf("%q: got %v, %v; want %v", text, got, err, want)
		}
	}
	for text, says := range map[string]string{
		"1,240":      `"1,240" may be 1.24 or 1240`,
		"1,400 kg":   `"1,400" may be 1.4 or 1400`,
		"12,000":     `"12,000" may be 12 or 12000`,
		"1,240/2":    `"1,240" may be 1.24 or 1240`,
		"9 1,240/2":  `"1,240" may be 1.24 or 1240`,
		"1,240,125":  `"1,240,125" is not a number`,
		"2 * -1,250": `"1,250" may be 1.25 or 1250`,
	} {
		if got, err := arithmetic.EvaluateNumber(text, "g"); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: got %v, %v; want %q", text, got, err, says)
		}
	}
}

func TestComplaintInAnotherLanguage(t *testing.T) {
	german := map[string]string{
		"Character %d: %s; %s":                                 "Zeichen %d: %s; %s",
		"there is no number":                                   "da steht keine Zahl",
		"write a number, such as 240 or 24.5":                  "eine Zahl schreiben, etwa 240 oder 24,5",
		"%q is not a unit of length":                           "%q ist keine Längeneinheit",
		"write mm, cm, m or in, for example 24 cm or 9 1/2 in": "mm, cm, m oder in schreiben",
	}
	translate := func(text string) string {
		if found, known := german[text]; known {
			return found
		}
		t.Errorf("not translated: %q", text)
		return text
	}
	tests := []struct{ text, want string }{
		{"240+", "Zeichen 5: da steht keine Zahl; eine Zahl schreiben, etwa 240 oder 24,5"},
		{"240 kg", `Zeichen 5: "kg" ist keine Längeneinheit; mm, cm, m oder in schreiben`},
	}
	for _, test := range tests {
		_, err := arithmetic.Evaluate(test.text, geometry.Millimetre)
		var complaint *arithmetic.Error
		if !errors.As(err, &complaint) || complaint.In(translate) != test.want {
			t.Errorf("%q: %v", test.text, err)
		}
	}
}

// randomSum writes a random sum and returns its exact value, reckoned with the
// rational numbers of math/big as the sum is written.
func randomSum(random *rand.Rand, depth int) (string, *big.Rat) {
	if depth == 0 || random.IntN(3) == 0 {
		hundredths := random.IntN(50_000) + 1
		return strconv.FormatFloat(float64(hundredths)/100, 'f', 2, 64), big.NewRat(int64(hundredths), 100)
	}
	left, a := randomSum(random, depth-1)
	right, b := randomSum(random, depth-1)
	switch random.IntN(4) {
	case 0:
		return "(" + left + " + " + right + ")", new(big.Rat).Add(a, b)
	case 1:
		return "(" + left + "-" + right + ")", new(big.Rat).Sub(a, b)
	case 2:
		return "(" + left + "*" + right + ")", new(big.Rat).Mul(a, b)
	}
	if b.Sign() == 0 {
		return left, a
	}
	return "(" + left + " / " + right + ")", new(big.Rat).Quo(a, b)
}

// The rational arithmetic of the Go standard library is exact.
func TestEvaluateAgainstRationalNumbers(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 1))
	for range 2000 {
		text, exact := randomSum(random, 3)
		want, _ := exact.Float64()
		got, err := arithmetic.Evaluate(text, geometry.Millimetre)
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		// A difference of nearly equal terms loses digits; what is left is far below
		// the hundredth of a millimetre in which anything is made.
		if math.Abs(got-want) > 1e-6*max(1, math.Abs(want)) {
			t.Fatalf("%q: got %v, want %v", text, got, want)
		}
	}
}

func FuzzEvaluate(f *testing.F) {
	for _, seed := range []string{
		"2*120+10", "24 cm + 3", "9 1/2 in", "(240+100)*2", "240/2", "24,5", "1e2", "-(3)", "1/2\"*3", "((", "1,000", "5 %", "1.4 kg", "3 lb + 4 oz", "170gsm", "80#", "0.15 mm", "5,500; 3 000", "3.000", "3'000", "1.250,5", "1\u202f250", "1'250.5'3",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, unit := range geometry.Units() {
			got, err := arithmetic.Evaluate(text, unit)
			if err == nil && (math.IsNaN(got) || math.IsInf(got, 0)) {
				t.Fatalf("%q comes to %v without a complaint", text, got)
			}
			checkComplaint(t, err)
			again, errAgain := arithmetic.Evaluate(" ("+text+") ", unit)
			if err == nil && errAgain == nil && again != got {
				t.Fatalf("%q comes to %v, and to %v in brackets", text, got, again)
			}
		}
		for _, unit := range []string{"%", "g", "kg", "g/m²", "µm"} {
			got, err := arithmetic.EvaluateNumber(text, unit)
			if err == nil && (math.IsNaN(got) || math.IsInf(got, 0)) {
				t.Fatalf("%q in %s comes to %v without a complaint", text, unit, got)
			}
			checkComplaint(t, err)
		}
		// With points and commas exchanged, a text means the same where the mark is the other.
		point, errPoint := arithmetic.Point.EvaluateNumber(text, "%")
		comma, errComma := arithmetic.Comma.EvaluateNumber(strings.NewReplacer(".", ",", ",", ".").Replace(text), "%")
		if (errPoint == nil) != (errComma == nil) || point != comma {
			t.Fatalf("%q is %v, %v, and with the other marks %v, %v", text, point, errPoint, comma, errComma)
		}
		// So many kilograms are a thousand times as many grams.
		weight := "(" + text + ") * 1 kg"
		inGrams, err := arithmetic.EvaluateNumber(weight, "g")
		inKilograms, _ := arithmetic.EvaluateNumber(weight, "kg")
		if err == nil && math.Abs(inKilograms*1000-inGrams) > 1e-9*math.Abs(inGrams) {
			t.Fatalf("%q is %v g and %v kg", weight, inGrams, inKilograms)
		}
		// What ParseLength reads is read alike, but for what it takes a sign in.
		want, err := geometry.ParseLength(text, geometry.Millimetre)
		got, own := arithmetic.Evaluate(text, geometry.Millimetre)
		if err == nil && own == nil && !strings.ContainsAny(text, "+-") && got != want {
			t.Fatalf("%q comes to %v, and as one length to %v", text, got, want)
		}
	})
}

func checkComplaint(t *testing.T, err error) {
	t.Helper()
	if err == nil {
		return
	}
	var complaint *arithmetic.Error
	if !errors.As(err, &complaint) {
		t.Fatalf("error %v of type %T", err, err)
	}
	if complaint.At < 1 || complaint.At > len([]rune(complaint.Text))+1 || complaint.Remedy.String() == "" {
		t.Fatalf("complaint %+v names no place or no remedy", complaint)
	}
}

func BenchmarkEvaluate(b *testing.B) {
	for b.Loop() {
		if _, err := arithmetic.Evaluate("2*(24 cm + 10 cm) + 20", geometry.Millimetre); err != nil {
			b.Fatal(err)
		}
	}
}
