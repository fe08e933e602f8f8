package gang_test

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"gussetwright/geometry/sheet/gang"
)

// benchmarkGang gangs random jobs of so many items and reports how long they take and
// how far the sheets are above the bound.
func benchmarkGang(b *testing.B, items int, most float64, options gang.Options) {
	random := rand.New(rand.NewPCG(1, 9))
	jobs := make([]job, 12)
	for i := range jobs {
		jobs[i] = randomJob(random, items, most)
	}
	times := make([]time.Duration, len(jobs))
	gap, found := 0.0, 0
	for b.Loop() {
		gap, found = 0, 0
		for i, j := range jobs {
			start := time.Now()
			r, err := gang.Solve(context.Background(), j.sheet, j.items, options)
			times[i] = time.Since(start)
			if err == nil {
				gap += float64(r.Sheets) / float64(r.Bound)
				found++
			}
		}
	}
	slices.Sort(times)
	b.ReportMetric(float64(times[len(times)/2])/1e6, "median-ms")
	b.ReportMetric(float64(times[len(times)-1])/1e6, "worst-ms")
	b.ReportMetric(gap/float64(max(1, found)), "sheets/bound")
}

func BenchmarkGangThree(b *testing.B) { benchmarkGang(b, 3, 12, gang.Options{}) }

func BenchmarkGangEight(b *testing.B) { benchmarkGang(b, 8, 30, gang.Options{}) }

func BenchmarkGangEightSmall(b *testing.B) { benchmarkGang(b, 8, 60, gang.Options{}) }

func BenchmarkGangEightOnTwoForms(b *testing.B) {
	benchmarkGang(b, 8, 30, gang.Options{MostForms: 2})
}
