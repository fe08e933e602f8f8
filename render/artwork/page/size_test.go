package page_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"gussetwright/render/artwork/page"
	"gussetwright/render/limits"
)

// A page of the longest side is read and a longer one refused, with its size, the most
// and what to do. A unit is 1/72 inch times UserUnit: 14 173 units of 20 points are
// 99 999 mm, and one more is beyond 100 m.
func TestPageSizeLimitsAreExact(t *testing.T) {
	for _, c := range []struct {
		width, unit float64
		parts       []string // of the error; none where there is none
	}{
		{limits.PageUnits, 1, nil},
		{limits.PageUnits + 1, 1, []string{"5080 mm", "make the page smaller"}},
		{14_173, 20, nil},
		{14_174, 20, []string{"100005 × 705.556 mm", "100000 mm", "make the page smaller"}},
	} {
		data := onePage(fmt.Sprintf("/MediaBox[0 0 %g 100]/UserUnit %g/Resources<<>>", c.width, c.unit), "0 0 9 9 re f")
		_, err := page.Read(context.Background(), data, 1)
		if (err == nil) != (c.parts == nil) {
			t.Errorf("%g units of %g points: %v", c.width, c.unit, err)
			continue
		}
		for _, part := range c.parts {
			if !strings.Contains(err.Error(), part) {
				t.Errorf("%g units of %g points: %v, want an error with %q", c.width, c.unit, err, part)
			}
		}
	}
}
