package quotestep

import (
	"testing"

	"gussetwright/app/document"
	"gussetwright/app/steppage/pagetest"
	"gussetwright/geometry/bag"
)

// BenchmarkReckon is what is done beside the window after a change in the quote step.
func BenchmarkReckon(b *testing.B) {
	priced, family := pagetest.PricedBag(), pagetest.FamilyBag()
	for name, spec := range map[string]bag.Spec{"priced": priced, "family": family} {
		snapshot, err := document.Derive(spec)
		if err != nil {
			b.Fatal(err)
		}
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				reckon(quoteOrder{snapshot})
			}
		})
	}
}
