package geometry_test

import (
	"math"
	"strings"
	"testing"

	"gussetwright/geometry"
)

// An inch is 25.4 mm exactly (international yard and pound agreement of 1959);
// the rest is decimal.
func TestParseLength(t *testing.T) {
	tests := []struct {
		text    string
		assumed geometry.Unit
		want    float64
	}{
		{"240", geometry.Millimetre, 240},
		{"240", geometry.Centimetre, 2400},
		{"10", geometry.Inch, 254},
		{"240 mm", geometry.Inch, 240},
		{"240mm", geometry.Inch, 240},
		{"24 cm", geometry.Millimetre, 240},
		{"24 CM", geometry.Millimetre, 240},
		{"  24cm  ", geometry.Millimetre, 240},
		{"0.24 m", geometry.Millimetre, 240},
		{".5 mm", geometry.Millimetre, 0.5},
		{"5. mm", geometry.Millimetre, 5},
		{"24,5 cm", geometry.Millimetre, 245},
		{"9.5\"", geometry.Millimetre, 241.3},
		{"9.5″", geometry.Millimetre, 241.3},
		{"9 1/2 in", geometry.Millimetre, 241.3},
		{"9 1/2\"", geometry.Millimetre, 241.3},
		{"9 1/2 inches", geometry.Millimetre, 241.3},
		{"1 inch", geometry.Millimetre, 25.4},
		{"1/2", geometry.Inch, 12.7},
		{"3/8 in", geometry.Millimetre, 9.525},
		{"-9 1/2 in", geometry.Millimetre, -241.3},
		{"-1/2 in", geometry.Millimetre, -12.7},
		{"0", geometry.Millimetre, 0},
		{"1e2", geometry.Millimetre, 100},
	}
	for _, test := range tests {
		got, err := geometry.ParseLength(test.text, test.assumed)
		if err != nil || !near(got, test.want) {
			t.Errorf("%q: got %v, %v; want %v", test.text, got, err, test.want)
		}
	}
}

func TestParseLengthRefuses(t *testing.T) {
	tests := []struct{ text, says string }{
		{"", "there is no number"},
		{"   ", "there is no number"},
		{"mm", "there is no number"},
		{"5 kg", `unit "kg" is not one of mm, cm, m, in`},
		{"wide", `unit "wide" is not one of`},
		{"240 mm wide", `unit "mm wide" is not one of`},
		{"about 24 cm", `"about" is not a number`},
		{"NaN", `unit "NaN" is not one of`},
		{"NaN 1/2", `"NaN" is not a number`},
		{"Inf", `unit "Inf" is not one of`},
		{"1e999", `"1e999" is not a number`},
		{"1e308 m", "more than a computer can count"},
		{"1e10/1e-300", "more than a computer can count"},
		{"1/0", `"1/0" is not a fraction`},
		{"1/-2", `"1/-2" is not a fraction`},
		{"1/2/3", `"1/2/3" is not a fraction`},
		{"/2", `"/2" is not a number`},
		{"1/", `unit "/" is not one of`},
		{"9 1", `"9 1" is more than one number`},
		{"9 -1/2", `"9 -1/2" is more than one number`},
		{"1/2 1/2", `"1/2 1/2" is more than one number`},
		{"1 2 3", `"1 2 3" is more than one number`},
		{"240 x 100", `"240 x 100" is more than one number`},
		{"9.5.1", `"9.5.1" is not a number`},
		{"1,000 mm", `"1,000" may be 1.000 or 1000`},
		{"1,5,5", `"1,5,5" is not a number`},
	}
	for _, test := range tests {
		got, err := geometry.ParseLength(test.text, geometry.Millimetre)
		if err == nil {
			t.Errorf("%q: got %g, want an error", test.text, got)
			continue
		}
		for _, words := range []string{test.says, "write for example 240 mm"} {
			if !strings.Contains(err.Error(), words) {
				t.Errorf("%q: %q does not say %q", test.text, err, words)
			}
		}
	}
}

func TestParseLengthInAnUnknownUnit(t *testing.T) {
	if got, err := geometry.ParseLength("3", "ell"); err == nil {
		t.Errorf("got %g, want an error", got)
	}
}

func TestFormatNumber(t *testing.T) {
	tests := []struct {
		value    float64
		decimals int
		want     string
	}{
		{240, 2, "240"},
		{100, 0, "100"},
		{0, 3, "0"},
		{12.5, 3, "12.5"},
		{12.345, 1, "12.3"},
		{12.96, 1, "13"},
		{-0.0001, 2, "0"},
		{-0.4, 0, "0"},
		{-12.5, 2, "-12.5"},
		{math.Copysign(0, -1), 2, "0"},
		{0.1 + 0.2, 6, "0.3"},
		{1e7, 6, "10000000"},
		{584.2, 3, "584.2"},
	}
	for _, test := range tests {
		if got := geometry.FormatNumber(test.value, test.decimals); got != test.want {
			t.Errorf("%g with %d decimals: got %q, want %q", test.value, test.decimals, got, test.want)
		}
	}
}

// Whatever is typed, ParseLength says a finite number or why not, and reads its
// own answer again as the same length.
func FuzzParseLength(f *testing.F) {
	for _, seed := range []string{
		"240", "24 cm", "24,5 cm", "9 1/2 in", "9.5\"", "-3/8″", "0.24 m", "5 kg", "NaN", "1/0", "", "1e308 m", "9 -1/2", "\xff1", "½ in",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, assumed := range []geometry.Unit{geometry.Millimetre, geometry.Centimetre, geometry.Inch} {
			value, err := geometry.ParseLength(text, assumed)
			if err != nil {
				if value != 0 || err.Error() == "" {
					t.Errorf("%q: %g beside the error %q", text, value, err)
				}
				continue
			}
			if math.IsNaN(value) || math.IsInf(value, 0) {
				t.Errorf("%q: %g is no length", text, value)
			}
			again, err := geometry.ParseLength(geometry.FormatNumber(value, 9)+" mm", geometry.Inch)
			if err != nil || math.Abs(again-value) > 1e-9*max(1, math.Abs(value)) {
				t.Errorf("%q is %g, read again %g, %v", text, value, again, err)
			}
		}
	})
}
