package gang_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
	"gussetwright/geometry/sheet/gang"
)

// tiny is a job on a sheet of few unit squares.
type tiny struct {
	width, height int
	pieces        [][2]int
	bags          []int
	free          bool // pieces may lie and stand
}

func (b tiny) job() job {
	const unit = 50
	j := job{sheet: bag.Sheet{Width: float64(unit * b.width), Height: float64(unit * b.height), GripperEdge: bag.GripperLong}}
	for i, p := range b.pieces {
		piece := sheet.Piece{
			Width: float64(unit * p[0]), Height: float64(unit * p[1]), PerBag: 1, Area: float64(unit * unit * p[0] * p[1]),
			Fibres: bag.GrainHeight, SheetFibres: bag.GrainHeight,
		}
		if b.free {
			piece.Grain = sheet.GrainFree
		}
		j.items = append(j.items, gang.Item{Name: fmt.Sprint(p), Piece: piece, Bags: b.bags[i]})
	}
	return j
}

// layable returns all counts, up to those wanted, that fit on one sheet: every square in
// turn is covered by some piece or left free.
func (b tiny) layable() map[[3]int]bool {
	found := map[[3]int]bool{}
	seen := map[string]bool{}
	covered := make([]byte, b.width*b.height)
	var counts [3]int
	var fill func(at int)
	fill = func(at int) {
		for at < len(covered) && covered[at] == 1 {
			at++
		}
		key := fmt.Sprint(at, counts) + string(covered)
		if seen[key] {
			return
		}
		seen[key] = true
		found[counts] = true
		if at == len(covered) {
			return
		}
		for i, p := range b.pieces {
			for turn := 0; turn < 2 && (turn == 0 || b.free); turn++ {
				w, h := p[turn], p[1-turn]
				if counts[i] < b.bags[i] && b.cover(covered, at, w, h, 0, 1) {
					counts[i]++
					fill(at)
					counts[i]--
					b.cover(covered, at, w, h, 1, 0)
				}
			}
		}
		covered[at] = 1
		fill(at + 1)
		covered[at] = 0
	}
	fill(0)
	return found
}

// cover changes all squares of a rectangle from one state to the other, if it lies on
// the sheet and all are in that state.
func (b tiny) cover(covered []byte, at, w, h int, from, to byte) bool {
	x, y := at%b.width, at/b.width
	if x+w > b.width || y+h > b.height {
		return false
	}
	for pass := range 2 {
		for i := range w * h {
			square := &covered[(y+i/w)*b.width+x+i%w]
			if pass == 0 && *square != from {
				return false
			}
			if pass == 1 {
				*square = to
			}
		}
	}
	return true
}

// least returns the least sheets of any forms, and of one form or 0 when there is none.
func (b tiny) least() (any, one int) {
	layable := b.layable()
	known := map[[3]int]int{{}: 0}
	var sheets func(left [3]int) int
	sheets = func(left [3]int) int {
		if n, ok := known[left]; ok {
			return n
		}
		known[left] = 1 << 20
		best := 1 << 20
		for counts := range layable {
			rest, less := left, false
			for i, n := range counts {
				rest[i] = max(0, left[i]-n)
				less = less || rest[i] < left[i]
			}
			if less {
				best = min(best, 1+sheets(rest))
			}
		}
		known[left] = best
		return best
	}
	var wanted [3]int
	copy(wanted[:], b.bags)
	for run := 1; run <= 20 && one == 0; run++ {
		var counts [3]int
		for i, d := range b.bags {
			counts[i] = (d + run - 1) / run
		}
		if layable[counts] {
			one = run
		}
	}
	return sheets(wanted), one
}

// TestTinyJobsAgainstAllLayouts compares with the optimum found by going through all
// layouts and all ways to use them.
func TestTinyJobsAgainstAllLayouts(t *testing.T) {
	random := rand.New(rand.NewPCG(21, 22))
	proven, unproven, alone := 0, 0, 0
	for range 60 {
		b := tiny{width: 4 + random.IntN(3), height: 3 + random.IntN(2), free: random.IntN(2) == 0}
		for range 2 + random.IntN(2) {
			b.pieces = append(b.pieces, [2]int{1 + random.IntN(3), 1 + random.IntN(3)})
			b.bags = append(b.bags, 1+random.IntN(8))
		}
		any, one := b.least()
		j := b.job()
		r, err := gang.Solve(context.Background(), j.sheet, j.items, gang.Options{})
		if err != nil {
			t.Fatalf("%+v: %v", b, err)
		}
		verify(t, j, r)
		if r.Bound > any || r.Sheets < any {
			t.Errorf("%+v: %d sheets, bound %d, the optimum is %d", b, r.Sheets, r.Bound, any)
		}
		if proven++; r.Sheets != any {
			unproven++
			t.Logf("%+v: %d sheets, the optimum is %d", b, r.Sheets, any)
		}
		r, err = gang.Solve(context.Background(), j.sheet, j.items, gang.Options{MostForms: 1})
		if (err == nil) != (one > 0) {
			t.Errorf("%+v on one form: %v, the optimum is %d", b, err, one)
			continue
		}
		if err == nil {
			alone++
			verify(t, j, r)
			if r.Sheets != one || r.Bound > one {
				t.Errorf("%+v on one form: %d sheets, bound %d, the optimum is %d", b, r.Sheets, r.Bound, one)
			}
		}
	}
	if unproven > 3 || alone < 20 {
		t.Errorf("%d of %d tiny jobs miss the optimum; %d have one form", unproven, proven, alone)
	}
}
