package entry

import (
	"slices"
	"testing"
	"unicode/utf8"
)

// Lines end at usual spaces alone, not inside of a number in groups.
func TestLinesDoNotEndInsideOfANumber(t *testing.T) {
	letters := func(text string) float32 { return float32(utf8.RuneCountInString(text)) }
	r := measured("1 to 10\u00a0000\u00a0000 bags", 1, letters)
	for width, want := range map[float32][]string{
		12: {"1 to", "10\u00a0000\u00a0000", "bags"},
		15: {"1 to 10\u00a0000\u00a0000", "bags"},
	} {
		if got := r.lines(width); !slices.Equal(got, want) {
			t.Errorf("in %g letters: %q, want %q", width, got, want)
		}
	}
}
