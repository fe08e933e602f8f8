package words

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/arithmetic"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// Lengths, numbers and texts that are a number with its unit are written as the window
// does, at any depth of a phrase; names, and what is quoted, stay as they are.
func TestNumbersInPhrases(t *testing.T) {
	tests := []struct {
		phrase          phrase.Phrase
		english, german string
	}{
		{phrase.New("make it %s", geometry.Length(82.5)), "make it 82.5 mm", "make it 82,5 mm"},
		{phrase.New("%s to %s", geometry.BareLength(1.5), geometry.Length(20)), "1.5 to 20 mm", "1,5 to 20 mm"},
		{phrase.New("%g and %.2f, %5.1f", 0.25, 1.5, 2.5), "0.25 and 1.50,   2.5", "0,25 and 1,50,   2,5"},
		{phrase.New("over %s", phrase.New("about %s", "3.5 kg")), "over about 3.5 kg", "over about 3,5 kg"},
		{phrase.New("%s × %s", "0.12", "7.5%"), "0.12 × 7.5%", "0,12 × 7,5%"},
		{phrase.New("%s now", "82.5 × 40.25 mm"), "82.5 × 40.25 mm now", "82,5 × 40,25 mm now"},
		{phrase.New("%q may be %s or %s", "1.250", "1.25", "1250"), `"1.250" may be 1.25 or 1250`, `"1.250" may be 1,25 or 1250`},
		{phrase.New("%s, %s, %s", "leaf.1.5.svg", "v1.5", "1.5.svg"), "leaf.1.5.svg, v1.5, 1.5.svg", "leaf.1.5.svg, v1.5, 1.5.svg"},
		{phrase.New("%d of %s: %s", 3, phrase.Word("1.5 mm"), ""), "3 of 1.5 mm: ", "3 of 1.5 mm: "},
		{phrase.New("nothing with 1.5 in it"), "nothing with 1.5 in it", "nothing with 1.5 in it"},
	}
	for _, language := range []string{"en", "de"} {
		speak(t, language)
		for _, test := range tests {
			want := test.english
			if language == "de" {
				want = test.german
			}
			if got := test.phrase.With(writer().Value).In(asItIs); got != want {
				t.Errorf("%s: %q, want %q", language, got, want)
			}
		}
	}
	span := phrase.New("%s to %s", geometry.BareLength(82.5), geometry.Length(100.5))
	if got := Of(span); got != "82,5 bis 100,5 mm" {
		t.Errorf("in German %q", got)
	}
	if got := Measured(span, geometry.Inch); got != "3,248 bis 3,957 in" {
		t.Errorf("in German and in inches %q", got)
	}
}

func asItIs(text string) string { return text }

func TestNumbersInErrors(t *testing.T) {
	speak(t, "de")
	spec := bag.Default()
	spec.Body.Width, spec.Body.Height = 29.5, 0.25
	_, typed := arithmetic.Comma.Evaluate("1.250", geometry.Millimetre)
	system := errors.New("disk 1.5 mm")
	for _, test := range []struct {
		err  error
		want []string
	}{
		{spec.Validate(), []string{"29,5 mm", "0,25 mm"}},
		{phrase.Errorf("open: %s", spec.Validate()), []string{"open: ", "29,5 mm", "0,25 mm"}},
		{errors.Join(phrase.Errorf("it is %g", 0.5), system), []string{"it is 0,5\ndisk 1.5 mm"}},
		{fmt.Errorf("look at 1.5: %w", system), []string{"look at 1.5: disk 1.5 mm"}},
		{typed, []string{`"1.250"`, "1,25 or 1250"}},
	} {
		for _, want := range test.want {
			if got := phrase.ErrorIn(writer().Error(test.err), asItIs); !strings.Contains(got, want) {
				t.Errorf("%q lacks %q", got, want)
			}
		}
	}
	if got := Error(typed); !strings.Contains(got, "1,25 oder 1250") {
		t.Errorf("%q is said", got)
	}
}
