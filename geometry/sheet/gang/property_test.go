package gang_test

import (
	"context"
	"math/rand/v2"
	"os"
	"slices"
	"testing"
	"time"

	"gussetwright/geometry/sheet/gang"
)

func TestScratch(t *testing.T) {
	for _, forms := range []int{0, 1, 2, 3} {
		for _, size := range []struct {
			items int
			most  float64
		}{{2, 6}, {4, 6}, {8, 6}, {4, 20}, {8, 20}, {8, 60}} {
			random := rand.New(rand.NewPCG(1, 9))
			var gaps, times []float64
			proven, fail, nf := 0, 0, 0
			n := 20
			if os.Getenv("N") != "" {
				n = 60
			}
			for range n {
				j := randomJob(random, size.items, size.most)
				start := time.Now()
				r, err := gang.Solve(context.Background(), j.sheet, j.items, gang.Options{MostForms: forms})
				times = append(times, time.Since(start).Seconds()*1000)
				if err != nil {
					fail++
					continue
				}
				verify(t, j, r)
				nf += len(r.Forms)
				if forms == 0 && r.Sheets > j.separately() {
					t.Errorf("worse %d %d", r.Sheets, j.separately())
				}
				gaps = append(gaps, float64(r.Sheets)/float64(r.Bound))
				if r.Proven {
					proven++
				}
			}
			slices.Sort(gaps)
			slices.Sort(times)
			if len(gaps) == 0 {
				gaps = []float64{0}
			}
			mean := 0.0
			for _, g := range gaps {
				mean += g
			}
			t.Logf("forms %d items %d most %g: median %.4f mean %.4f p90 %.4f max %.4f proven %d fail %d of %d, forms %.1f; ms median %.0f p90 %.0f max %.0f", forms, size.items, size.most,
				gaps[len(gaps)/2], mean/float64(len(gaps)), gaps[len(gaps)*9/10], gaps[len(gaps)-1], proven, fail, n, float64(nf)/float64(len(gaps)), times[n/2], times[n*9/10], times[n-1])
		}
	}
}
