package sheetstep

import (
	"testing"

	"gussetwright/app/settings"
	"gussetwright/geometry/bag"
)

// BenchmarkRanking is the work beside the window, BenchmarkShowRanking what the window
// then takes to show it.
func BenchmarkRanking(b *testing.B) {
	d := newDesk(b, bag.Default())
	order := rankOrder{d.Doc.State().Snapshot, settings.LeastWaste}
	for b.Loop() {
		rank(order)
	}
}

func BenchmarkShowRanking(b *testing.B) {
	d := newDesk(b, bag.Default())
	d.all = true
	small := d.Doc.State().Spec
	small.Body.Width, small.Body.Height = 150, 200
	made := []rankResult{d.result}
	d.Doc.Set(small)
	made = append(made, rank(rankOrder{d.Doc.State().Snapshot, settings.LeastWaste}))
	i := 0
	for b.Loop() {
		d.result = made[i%2]
		d.fillRanking(d.Doc.State())
		i++
	}
}
