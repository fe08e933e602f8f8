package gang

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"testing"

	"gussetwright/geometry/geomtest"
)

// TestRelaxedAgainstSolver compares the simplex method with what the solver named in
// testdata/gang/programs.json found for the same programs, and checks by weak duality
// that the prices prove the sum.
func TestRelaxedAgainstSolver(t *testing.T) {
	data, err := os.ReadFile(filepath.Join(geomtest.Root(t), "testdata", "gang", "programs.json"))
	if err != nil {
		t.Fatal(err)
	}
	var outside struct {
		Solver string
		Cases  []struct {
			Wanted   []int
			Patterns [][]int
			Relaxed  float64
		}
	}
	if err := json.Unmarshal(data, &outside); err != nil || len(outside.Cases) < 50 {
		t.Fatalf("%d cases: %v", len(outside.Cases), err)
	}
	for i, c := range outside.Cases {
		sum, runs, prices, ok := relaxed(c.Patterns, c.Wanted)
		if !ok || math.Abs(sum-c.Relaxed) > 1e-6*c.Relaxed {
			t.Errorf("case %d: sum %g, %s found %g", i, sum, outside.Solver, c.Relaxed)
		}
		if proof := worth(prices, c.Wanted); math.Abs(proof-sum) > 1e-6*sum {
			t.Errorf("case %d: prices prove %g of %g", i, proof, sum)
		}
		for _, p := range c.Patterns {
			if w := worth(prices, p); w > 1+1e-6 {
				t.Errorf("case %d: pattern %v is worth %g", i, p, w)
			}
		}
		for row, wanted := range c.Wanted {
			made := 0.0
			for j, r := range runs {
				made += r * float64(c.Patterns[j][row])
			}
			if made < float64(wanted)*(1-1e-7) {
				t.Errorf("case %d: makes %g of %d", i, made, wanted)
			}
		}
	}
}

func TestRelaxedWithoutColumn(t *testing.T) {
	if _, _, _, ok := relaxed([][]int{{1, 0}}, []int{2, 3}); ok {
		t.Error("a demand that is in no column was met")
	}
	if sum, _, _, ok := relaxed([][]int{{1, 0}}, []int{0, 0}); !ok || sum != 0 {
		t.Errorf("no demand takes %g sheets, ok %v", sum, ok)
	}
}

// TestMeasuresAreDualFeasible takes every row of a few sides that fits in a room: in no
// measure may it be longer than the room.
func TestMeasuresAreDualFeasible(t *testing.T) {
	rooms := [][]int64{{100, 50, 34, 33, 20}, {97, 49, 48, 25, 13, 11}, {60, 30, 20, 15, 12}, {101, 70, 31, 30, 17}}
	for _, r := range rooms {
		a := axis{room: r[0]}
		for _, side := range r[1:] {
			a.add(side, 9, true)
		}
		a.cutDown()
		for i, m := range a.measures() {
			var longest func(at int, room int64) float64
			longest = func(at int, room int64) float64 {
				if at == len(m) {
					return 0
				}
				best := 0.0
				for n := int64(0); n*a.sides[at].length <= room; n++ {
					best = max(best, float64(n)*m[at]+longest(at+1, room-n*a.sides[at].length))
				}
				return best
			}
			if l := longest(0, a.room); l > 1+1e-9 {
				t.Errorf("room %d: measure %d (%v) makes a row %g long", r[0], i, m, l)
			}
		}
	}
}
