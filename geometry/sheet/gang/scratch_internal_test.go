package gang

import (
	"context"
	"math/rand/v2"
	"os"
	"strconv"
	"syscall"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
)

func cpu() float64 {
	var u syscall.Rusage
	syscall.Getrusage(0, &u)
	return float64(u.Utime.Sec)*1000 + float64(u.Utime.Usec)/1000
}

func TestStages(t *testing.T) {
	most, _ := strconv.ParseFloat(os.Getenv("MOST"), 64)
	items, _ := strconv.Atoi(os.Getenv("ITEMS"))
	random := rand.New(rand.NewPCG(1, 9))
	for range 12 {
		s := bag.Sheet{Width: 1000, Height: 700, Gripper: 12, Side: 5, Tail: 8, Gap: 6, GripperEdge: bag.GripperLong}
		var list []Item
		for len(list) < items {
			usable := sheet.Usable(s)
			area := usable.Area() / (1 + random.Float64()*most)
			width := area / (60 + random.Float64()*600)
			piece := sheet.Piece{Width: width, Height: area / width, PerBag: 1, Area: area, Grain: sheet.GrainFree}
			if width > 60 && sheet.Fits(s, width, area/width) {
				list = append(list, Item{Piece: piece, Bags: 1000 + random.IntN(9000)})
			}
		}
		ctx := context.Background()
		c0 := cpu()
		p, err := newProblem(ctx, s, list)
		if err != nil {
			t.Fatal(err)
		}
		p.work = allWork
		v := solver{problem: p, ctx: ctx, sets: map[uint]run{}, shortestOf: map[uint]int{}}
		v.result = Result{Sheet: s, Items: list}
		v.separate()
		lp := func() float64 {
			_, counts := v.columns()
			sum, _, _, _ := relaxed(counts, v.demand)
			return sum
		}
		c1 := cpu()
		v.byCuts()
		a, c2 := lp(), cpu()
		v.raise(0, look)
		if os.Getenv("BIG") != "" {
			p.work = 60_000_000
			v.raise(50_000_000, look)
		} else {
			v.raise(allWork/4, look)
		}
		b, c3, w3 := lp(), cpu(), p.work
		if os.Getenv("BIG") == "" {
			v.gather(allWork/4, glance)
		}
		c, c4, w4 := lp(), cpu(), p.work
		v.roundUp()
		d, c5 := v.result.Sheets, cpu()
		if os.Getenv("BIG") == "" {
			v.fewer()
		}
		c6 := cpu()
		B := float64(v.result.Bound)
		t.Logf("bound %.0f cuts %.4f raise %.4f gather %.4f round %.4f few %.4f forms %d | ms setup %.0f cuts %.0f raise %.0f (%d) gather %.0f (%d) round %.0f few %.0f | fit %d doubt %d unfit %d", B, a/B, b/B, c/B, float64(d)/B, float64(v.result.Sheets)/B, len(v.best), c1-c0, c2-c1, c3-c2, allWork-w3, c4-c3, w3-w4, c5-c4, c6-c5,
			len(p.modes[0].fit), len(p.modes[0].doubt), len(p.modes[0].unfit))
	}
}
