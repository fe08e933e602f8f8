package vector

import (
	"context"
	"fmt"
	"strings"
	"testing"
)

// What is just within a limit is read, and one more is refused with an error that names
// the limit and says what to do.
func TestLimitsAreExact(t *testing.T) {
	leaf := `<path d="M0 0h1v1z"/>`
	nested := func(open, closing string) func(int) string {
		return func(count int) string {
			return head + small + strings.Repeat(open, count) + leaf + strings.Repeat(closing, count) + `</svg>`
		}
	}
	sized := func(count int) string {
		return fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" width="%dmm" height="1mm">%s</svg>`, count, leaf)
	}
	for _, c := range []struct {
		name   string
		most   int
		file   func(count int) string
		remedy string
	}{
		{"bytes", mostBytes, func(count int) string {
			file := head + small + leaf + `</svg>`
			return file + strings.Repeat(" ", count-len(file))
		}, "simplify its paths"},
		{"elements", mostElements, func(count int) string {
			return head + small + strings.Repeat("<g/>", count-1) + `</svg>` // and the root
		}, "simplify the drawing"},
		{"elements within each other", mostDepth, func(count int) string {
			return head + small + strings.Repeat("<g>", count-1) + strings.Repeat("</g>", count-1) + `</svg>`
		}, "ungroup"},
		{"groups with an opacity", mostGroups, nested(`<g opacity=".9">`+leaf, `</g>`), "ungroup some"},
		{"drawings within each other", mostClips, nested(`<svg>`+leaf, `</svg>`), "release some clips"},
		{"lines of one path", mostInPath, func(count int) string {
			return head + small + `<path d="M0 0` + strings.Repeat("h1 ", count) + `"/></svg>`
		}, "simplify the path"},
		{"style rules", mostRules, func(count int) string {
			return head + small + `<style>` + strings.Repeat("a,", count-1) + `a{fill:red}</style>` + leaf + `</svg>`
		}, "simplify the drawing"},
		{"length of a side", largest, sized, "set its width"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if _, err := Read(context.Background(), []byte(c.file(c.most))); err != nil {
				t.Errorf("%d are refused: %v", c.most, err)
			}
			_, err := Read(context.Background(), []byte(c.file(c.most+1)))
			if err == nil {
				t.Fatalf("%d are read", c.most+1)
			}
			for _, part := range []string{fmt.Sprint(c.most), c.remedy} {
				if !strings.Contains(err.Error(), part) {
					t.Errorf("%v, want an error with %q", err, part)
				}
			}
		})
	}
}
