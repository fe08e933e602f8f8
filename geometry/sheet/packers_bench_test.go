package sheet_test

import (
	"testing"

	"gussetwright/geometry/sheet"
)

// BenchmarkOtherPackers lays the blanks that two packers from the npm registry laid as
// well, and reports how many come to lie on all the sheets: ours, those of the packer
// that finds more on a sheet, and on how many sheets ours are fewer or more.
func BenchmarkOtherPackers(b *testing.B) {
	_, cases := packers(b)
	var ours, theirs, fewer, more int
	for b.Loop() {
		ours, theirs, fewer, more = 0, 0, 0, 0
		for _, c := range cases {
			up := sheet.Lay(loose(float64(c[0]), float64(c[1])), free(float64(c[2]), float64(c[3]))).Up()
			best := max(c[4], c[5])
			ours += up
			theirs += best
			if up < best {
				fewer++
			}
			if up > best {
				more++
			}
		}
	}
	b.ReportMetric(float64(ours), "blanks")
	b.ReportMetric(float64(theirs), "packers-blanks")
	b.ReportMetric(float64(fewer), "fewer-sheets")
	b.ReportMetric(float64(more), "more-sheets")
}
