package fold

import (
	"fmt"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"sort"
)

func Debug(laid *blank.Blank, stage int, moment float64) {
	l := Fold(laid)
	body := l.Pose(stage, moment)
	var g Gauge
	g.Crossing(&body)
	type pair struct {
		d float64
		s string
	}
	var ps []pair
	for i := range g.plates {
		for j := range i {
			if d := crossing(&g.plates[i], &g.plates[j], 0); d > body.Caliper*0.5 {
				ps = append(ps, pair{d, fmt.Sprint(i, body.facet(i).Panel, " / ", j, body.facet(j).Panel)})
			}
		}
	}
	sort.Slice(ps, func(i, j int) bool { return ps[i].d > ps[j].d })
	for k, p := range ps {
		if k < 6 {
			fmt.Printf("      %.3f %s\n", p.d, p.s)
		}
	}
	_ = bag.BaseBlock
}
