package fold

import ("fmt";"sort";"gussetwright/geometry/blank")

func Debug(laid *blank.Blank, stage int, moment float64) {
	l := Fold(laid)
	body := l.Pose(stage, moment)
	var g Gauge
	g.Crossing(&body)
	type pair struct{ d float64; s string }
	var ps []pair
	for i := range g.plates { for j := range i {
		if d := crossing(&g.plates[i], &g.plates[j], 0); d > body.Caliper*0.8 { ps = append(ps, pair{d, fmt.Sprint(i, body.facet(i).Panel, g.plates[i].points, " / ", j, body.facet(j).Panel, g.plates[j].points)}) }
	}}
	sort.Slice(ps, func(i,j int) bool { return ps[i].d>ps[j].d })
	for k, p := range ps { if k < 3 { fmt.Printf("  %.3f    %.3f %s\n", moment, p.d, p.s) } }
}
