package arithmetic_test

import (
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/text/language"
	"golang.org/x/text/message"
	"golang.org/x/text/number"

	"gussetwright/geometry/arithmetic"
)

func TestEvaluateCount(t *testing.T) {
	tests := []struct {
		text       string
		pointParts bool
		want       float64
	}{
		{"3000", false, 3000},
		{"3,000", false, 3000},
		{"3,000", true, 3000},
		{"3 000", false, 3000},
		{"3\u00a0000", false, 3000},
		{"3\u202f000", false, 3000},
		{"3'000", false, 3000},
		{"3’000", false, 3000},
		{"3.000", true, 3000},
		{"1.234.567", false, 1234567},
		{"1,234,567", true, 1234567},
		{"10,000,000", false, 10_000_000},
		{"12,500 * 2", false, 25_000},
		{"2*1 500 + 10", false, 3010},
		{"(2,500 + 500)/2", false, 1500},
		{"1/2", false, 0.5},
		{"2,5", false, 2.5},
		{"0,500", false, 0.5},
		{"1,000.5", false, 1000.5},
		{"1.000,50", true, 1000.5},
		{"1234,567", false, 1234.567},
		{"1.5", true, 1.5},
		{"5e3", false, 5000},
	}
	for _, test := range tests {
		got, err := arithmetic.EvaluateCount(test.text, test.pointParts)
		if err != nil || got != test.want {
			t.Errorf("%q (points part thousands: %v): got %v, %v; want %v", test.text, test.pointParts, got, err, test.want)
		}
	}
}

func TestCountsThatAreRefused(t *testing.T) {
	for text, says := range map[string]string{
		"3.000":      `character 1: "3.000" may be 3 or 3000; write it without the point`,
		"2 * 2.500":  `character 5: "2.500" may be 2.5 or 2500`,
		"1,000,50":   `"1,000,50" is not a number`,
		"1'000'5":    `"1'000" is not a number`,
		"500 2000":   `"2" does not belong here`,
		"3000 bags":  `"bags" does not belong to this number; write the number alone`,
		"":           "there is no number",
		"3 000 00":   `"0" does not belong here`,
		"1'000,50.0": `"." does not belong here`,
	} {
		if got, err := arithmetic.EvaluateCount(text, false); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: got %v, %v; want %q", text, got, err, says)
		}
	}
}

// Counts are read as they are written in the locales of the Unicode CLDR, of which the
// Go text package has the data.
func TestCountsOfManyLocales(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 1))
	for _, locale := range []string{"en", "en-GB", "de", "de-AT", "de-CH", "fr", "fr-CH", "it", "es", "pt", "nl", "sv", "nb", "fi", "da", "pl", "cs", "tr", "ru"} {
		printer := message.NewPrinter(language.MustParse(locale))
		pointParts := strings.Contains(printer.Sprint(number.Decimal(1234567)), ".")
		for range 200 {
			count := random.IntN(10_000_000) + 1
			text := printer.Sprint(number.Decimal(count))
			got, err := arithmetic.EvaluateCount(text, pointParts)
			if err != nil || got != float64(count) {
				t.Errorf("%s: %q comes to %v, %v", locale, text, got, err)
			}
		}
	}
}

func TestEvaluateCounts(t *testing.T) {
	tests := []struct {
		text       string
		pointParts bool
		want       []float64
	}{
		{"", false, nil},
		{" , ; ", false, nil},
		{"500", false, []float64{500}},
		{"500, 2000, 5000", false, []float64{500, 2000, 5000}},
		{"500,2000,5000", false, []float64{500, 2000, 5000}},
		{"500;2000;500", false, []float64{500, 2000, 500}},
		{"500\n2000", false, []float64{500, 2000}},
		{"5,000", false, []float64{5000}},
		{"2,000, 5,000", false, []float64{2000, 5000}},
		{"1,050", false, []float64{1050}},
		{"5,500; 10,000", false, []float64{5500, 10_000}},
		{"5 500; 10 000", false, []float64{5500, 10_000}},
		{"5 000, 10 000", false, []float64{5000, 10_000}},
		{"5'500, 10'000", false, []float64{5500, 10_000}},
		{"5.500, 10.000", true, []float64{5500, 10_000}},
		{"2*500, 3000", false, []float64{1000, 3000}},
		{"5000,500", false, []float64{5000, 500}},
	}
	for _, test := range tests {
		got, err := arithmetic.EvaluateCounts(test.text, test.pointParts)
		if err != nil || !slices.Equal(got, test.want) {
			t.Errorf("%q: got %v, %v; want %v", test.text, got, err, test.want)
		}
	}
}

func TestListsThatAreRefused(t *testing.T) {
	for text, says := range map[string]string{
		"5,500":            `character 1: "5,500" may be the list 5; 500 or the number 5500; write 5; 500 or 5500`,
		"5 500":            `"5 500" may be the list 5; 500 or the number 5500`,
		"200, 5,500, 9000": `character 6: "5,500" may be the list 5; 500`,
		"500, 750 900":     `character 6: "750 900" may be the list 750; 900 or the number 750900`,
		"10,000,500":       `may be the list 10; 000; 500 or the number 10000500`,
		"5.500, 7000":      `character 1: "5.500" may be 5.5 or 5500`,
		"500, x, 7":        `character 6: "x" is not a number`,
		"500; 2000 bags":   `character 11: "bags" does not belong`,
		"5,500; 7 + ":      `character 12: there is no number`,
	} {
		if got, err := arithmetic.EvaluateCounts(text, false); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: got %v, %v; want %q", text, got, err, says)
		}
	}
}

func FuzzCounts(f *testing.F) {
	for _, seed := range []string{"500, 2000, 5000", "5,500", "5,500; 10,000", "3'000", "3.000", "1.000,5", "2*(1 500)", "10 000, x", "; ,", "1,000,50", "１,000"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, pointParts := range []bool{false, true} {
			one, err := arithmetic.EvaluateCount(text, pointParts)
			checkComplaint(t, err)
			list, listErr := arithmetic.EvaluateCounts(text, pointParts)
			checkComplaint(t, listErr)
			// A list of one is that count, unless its comma parts no thousands.
			if err == nil && listErr == nil && len(list) == 1 && !strings.Contains(text, ",") && list[0] != one {
				t.Fatalf("%q is the count %v and the list %v", text, one, list)
			}
			if listErr != nil {
				continue
			}
			// What is read can be written as a plain list, and is read alike.
			var plain []string
			for _, count := range list {
				if count < 0 {
					return
				}
				plain = append(plain, strconv.FormatFloat(count, 'f', -1, 64))
			}
			again, err := arithmetic.EvaluateCounts(strings.Join(plain, "; "), false)
			if written := strings.Join(plain, "; "); len(written) <= 200 && !strings.Contains(written, ".") && (err != nil || !slices.Equal(again, list)) {
				t.Fatalf("%q is %v, and %q is %v, %v", text, list, written, again, err)
			}
		}
	})
}
