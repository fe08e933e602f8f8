package words

import (
	"math"
	"slices"
	"strings"
	"testing"

	"golang.org/x/text/language"
	printing "golang.org/x/text/message"
	"golang.org/x/text/number"

	"gussetwright/geometry/arithmetic"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/render/dieline"
	"gussetwright/render/scene"
)

// speak makes the window speak a language until the test ends.
func speak(t *testing.T, language string) {
	t.Helper()
	load := func(language string) {
		if err := Load(language); err != nil {
			t.Fatal(err)
		}
	}
	load(language)
	t.Cleanup(func() { load(english) })
}

// The decimal mark is that of the Unicode CLDR, of which the Go text package has the data.
func TestDecimalMarkOfEveryLanguage(t *testing.T) {
	for _, code := range codes() {
		speak(t, code)
		want := strings.Trim(printing.NewPrinter(language.Make(code)).Sprint(number.Decimal(0.5)), "05")
		if got := string(DecimalMark()); got != want {
			t.Errorf("%s: decimals stand behind %q, want %q", code, got, want)
		}
	}
}

func TestNumbersInTheLanguageOfTheWindow(t *testing.T) {
	tests := []struct {
		say             func() string
		english, german string
	}{
		{func() string { return Number(82.5, 1) }, "82.5", "82,5"},
		{func() string { return Number(82, 1) }, "82", "82"},
		{func() string { return Number(-0.04, 1) }, "0", "0"},
		{func() string { return Number(1250.25, 2) }, "1250.25", "1250,25"},
		{func() string { return Number(12_500, 0) }, "12\u00a0500", "12\u00a0500"},
		{func() string { return Number(-1_234_567.891, 2) }, "-1\u00a0234\u00a0567.89", "-1\u00a0234\u00a0567,89"},
		{func() string { return Number(math.Inf(1), 2) }, "+Inf", "+Inf"},
		{func() string { return Plain(12_500.5, 2) }, "12500.5", "12500,5"},
		{func() string { return Exact(29.999999, 8) }, "29.999999", "29,999999"},
		{func() string { return Exact(1.5e12, 8) }, "1.5e+12", "1,5e+12"},
		{func() string { return Money(0.5, 6) }, "0.50", "0,50"},
		{func() string { return Money(0.012345, 4) }, "0.0123", "0,0123"},
		{func() string { return Money(12_345.678, 2) }, "12\u00a0345.68", "12\u00a0345,68"},
		{func() string { return PlainMoney(12_345, 6) }, "12345.00", "12345,00"},
	}
	for _, language := range []string{"en", "de"} {
		speak(t, language)
		for i, test := range tests {
			want := test.english
			if language == "de" {
				want = test.german
			}
			if got := test.say(); got != want {
				t.Errorf("%s, case %d: %q, want %q", language, i, got, want)
			}
		}
	}
	if DecimalMark() != arithmetic.Comma {
		t.Error("the window has stopped to speak German")
	}
}

// Of a drawing only the numbers on dimensions change.
func TestDimensionsOnADrawing(t *testing.T) {
	spec := bag.OfSize(240, 110.5, 360)
	spec.Name, spec.Body.SeamRelief = "tea 1.5", 0
	laid := blank.Lay(spec)
	drawn := func() scene.Drawing {
		return dieline.Screen{Letter: 3, Voice: DrawingVoice()}.Draw(&laid, 0)
	}
	written := func(drawing scene.Drawing, text string) bool {
		return slices.ContainsFunc(drawing.Items, func(item scene.Item) bool {
			label, is := item.(scene.Label)
			return is && label.Role == scene.Dimensions && label.Text == text
		})
	}
	if got := drawn(); !written(got, "D/2 55.25") || got.Title != "tea 1.5" {
		t.Errorf("in English D/2 55.25 is missing, or the title is %q", got.Title)
	}
	speak(t, "de")
	if got := drawn(); !written(got, "D/2 55,25") || written(got, "D/2 55.25") || got.Title != "tea 1.5" {
		t.Errorf("in German D/2 55,25 is missing, or the title is %q", got.Title)
	}
}
