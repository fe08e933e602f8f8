package fold_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/bag"
)

func TestTry(t *testing.T) {
	random := rand.New(rand.NewPCG(21, 22))
	list := styles()
	for i := range 400 { list[fmt.Sprint("random", i)] = geomtest.RandomBag(random) }
	stops := map[string]int{}
	for name, spec := range list {
		laid := lay(t, spec)
		l := fold.Fold(laid)
		if l.Foldable < len(l.Stages) { stops[l.Stages[l.Foldable].Name+l.Obstacle.String()]++ }
		var g fold.Gauge
		for i, s := range l.Stages[:l.Foldable] {
			for m := range 40 {
				b := l.Pose(i, float64(m)/39)
				if d := g.Crossing(&b); d > b.Caliper {
					fmt.Println(name, s.Name, m, d, b.Caliper, spec.Body, spec.Handle.Kind, len(laid.Pieces))
					fold.Debug(laid, i, float64(m)/39)
					break
				}
			}
			mm := l.Measure(i, 100)
			if mm.MaxStep > 2*mm.MeanStep || mm.MaxStrain > 1e-9 { fmt.Println(name, s.Name, mm, spec.Body) }
			if i == l.Standing {
				got, want := l.Pose(i, 1), fold.Standing(laid)
				for k := range got.Facets { for c, p := range got.Facets[k].Points {
					if d := p.Sub(want.Facets[k].Points[c]).Length(); d > 0 { t.Fatalf("%s %v", name, d) } } }
			}
			if i+1 < l.Foldable {
				got, want := l.Pose(i, 1), l.Pose(i+1, 0)
				if i == l.Standing { continue }
				for k := range got.Facets { for c, p := range got.Facets[k].Points {
					if d := p.Sub(want.Facets[k].Points[c]).Length(); d > 1e-6 { t.Errorf("%s after %s %v %s %d", name, s.Name, d,  got.Facets[k].Panel, k); break } } }
			}
		}
	}
	fmt.Println(stops)
	_ = bag.BaseBlock
}
