package page

import (
	"errors"
	"strings"
	"testing"
)

// What is just within a limit is read, and one more is not.
func TestValueLimitsAreExact(t *testing.T) {
	nested := func(levels int) string { return strings.Repeat("[", levels) + strings.Repeat("]", levels) }
	for _, c := range []struct {
		name, text string
		left       int
		want       error
	}{
		{"as deep as may be", nested(deepest + 1), mostValues, nil}, // the outermost is at depth 0
		{"one deeper", nested(deepest + 2), mostValues, errDeep},
		{"as many as may be", "[" + strings.Repeat("1 ", 99) + "]", 100, nil},
		{"one more", "[" + strings.Repeat("1 ", 100) + "]", 100, errMany},
	} {
		l := lexer{[]byte(c.text), 0, &c.left}
		if _, err := l.value(0); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", c.name, err, c.want)
		}
	}
}
