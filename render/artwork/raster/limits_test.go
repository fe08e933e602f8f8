package raster

import (
	"image"
	"strings"
	"testing"
)

// What is just within a limit is read, and one more is refused with an error that names
// the value, the limit and what to do. The heads are made up: such pictures take gigabytes.
func TestLimitsAreExact(t *testing.T) {
	for _, c := range []struct {
		name   string
		header header
		parts  []string // of the error; none where there is none
	}{
		{"longest side", header{size: image.Pt(65_535, 6103)}, nil},
		{"a side too long", header{size: image.Pt(65_536, 1)}, []string{"65536 × 1 pixels", "65535 a side", "fewer pixels"}},
		{"a height too long", header{size: image.Pt(1, 65_536)}, []string{"1 × 65536 pixels", "65535 a side", "fewer pixels"}},
		{"most pixels", header{size: image.Pt(20_000, 20_000)}, nil},
		{"a row too many", header{size: image.Pt(20_000, 20_001)}, []string{"20000 × 20001 pixels", "400 million", "fewer pixels"}},
		{"most memory", header{size: image.Pt(9, 9), memory: 2 << 30}, nil},
		{"a megabyte too much", header{size: image.Pt(9, 9), memory: 2<<30 + 1<<20}, []string{"2049 MB", "2048 MB", "8 bits a channel"}},
		{"no pixels", header{size: image.Pt(0, 9)}, []string{"0 × 9", "save it again"}},
	} {
		err := standard.check(&c.header)
		if (err == nil) != (c.parts == nil) {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		for _, part := range c.parts {
			if !strings.Contains(err.Error(), part) {
				t.Errorf("%s: %v, want an error with %q", c.name, err, part)
			}
		}
	}
}
