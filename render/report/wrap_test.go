package report_test

import (
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"gussetwright/render/report"
	"gussetwright/render/typeface"
)

func TestWrap(t *testing.T) {
	of := func(text string) float64 { return typeface.Advance(text, 10, false) }
	for _, c := range []struct {
		name, text string
		width      float64
		want       []string
	}{
		{"nothing", "", 100, []string{""}},
		{"as wide as the text", "turn-in of 40 mm", of("turn-in of 40 mm"), []string{"turn-in of 40 mm"}},
		{"a hair less", "turn-in of 40 mm", of("turn-in of 40 mm") - 0.01, []string{"turn-in of 40", "mm"}},
		{"spaces run together", "  one \t two  ", 1000, []string{"one two"}},
		{"ends of line stay", "one\r\ntwo\n\nthree", 1000, []string{"one", "two", "", "three"}},
		{"after a hyphen", "turn-in", of("turn-"), []string{"turn-", "in"}},
		{"not within a range", "20–25", of("20–2"), []string{"20–2", "5"}},
		{"no break at a no-break space", "a 40\u00A0mm", of("a 40\u00A0m"), []string{"a", "40\u00A0mm"}},
		{"a long word is broken", "aaaaaa bb", of("aaa"), []string{"aaa", "aaa", "bb"}},
		{"its end takes what follows", "aaaaa b", of("aaaa"), []string{"aaaa", "a b"}},
		{"no room at all", "ab c", 0, []string{"a", "b", "c"}},
		{"less than none", "ab", -5, []string{"a", "b"}},
		{"marks stay with their letters", "e\u0301e\u0301", 0, []string{"e\u0301", "e\u0301"}},
	} {
		if got := report.Wrap(c.text, c.width, 10, false); !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// bare is a text without white space, which is all that may go missing at a break.
func bare(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) {
			return -1
		}
		return r
	}, text)
}

// Whatever the text, no letter is lost and no line is too long that could be broken.
func FuzzWrap(f *testing.F) {
	f.Add("Crease and fold the turn-in to the inside", 30.0)
	f.Add("Donaudampfschifffahrtsgesellschaft 紙袋\u0301 ", 7.5)
	f.Add("\n\n-/–", -1.0)
	f.Fuzz(func(t *testing.T, text string, width float64) {
		if !utf8.ValidString(text) {
			text = strings.ToValidUTF8(text, "\uFFFD")
		}
		lines := report.Wrap(text, width, 3.5, true)
		if got := bare(strings.Join(lines, "")); got != bare(text) {
			t.Errorf("%q became %q", text, lines)
		}
		for _, line := range lines {
			letters := 0
			for _, r := range line {
				if !unicode.Is(unicode.Mn, r) {
					letters++
				}
			}
			if typeface.Advance(line, 3.5, true) > width+1e-6 && letters > 1 && width > 0 {
				t.Errorf("%q is longer than %g", line, width)
			}
		}
	})
}
