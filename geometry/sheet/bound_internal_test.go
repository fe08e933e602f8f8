package sheet

import (
	"math/rand/v2"
	"testing"
)

// mostRods returns how many rods of 1 × length go on a board of unit squares, found
// by trying everything. Board is a bit for every square that is covered.
func mostRods(board uint64, width, height, length int, known map[uint64]int) int {
	at := 0
	for at < width*height && board&(1<<at) != 0 {
		at++
	}
	if at == width*height {
		return 0
	}
	if best, seen := known[board]; seen {
		return best
	}
	best := mostRods(board|1<<at, width, height, length, known)
	for _, step := range []int{1, width} {
		rod, x, y := uint64(0), at%width, at/width
		if step == 1 && x+length > width || step == width && y+length > height {
			continue
		}
		for i := range length {
			rod |= 1 << (at + i*step)
		}
		if board&rod == 0 {
			best = max(best, 1+mostRods(board|rod, width, height, length, known))
		}
	}
	known[board] = best
	return best
}

// The theorem that the bound of Barnes rests on says exactly how much rods leave
// empty on a board with no side shorter than they are.
func TestRodsLeaveWhatTheTheoremSays(t *testing.T) {
	for length := 2; length <= 5; length++ {
		for width := length; width <= 7; width++ {
			for height := length; height <= width; height++ {
				most := mostRods(0, width, height, length, map[uint64]int{})
				left := int64(width*height - most*length)
				if want := emptyOfRods(int64(width), int64(height), int64(length)); left != want {
					t.Errorf("rods of %d on %d × %d leave %d, reckoned %d", length, width, height, left, want)
				}
			}
		}
	}
}

// Each bound by itself holds for whatever is laid. Measuring rods anew is what takes
// most time, so it must tell more than the others somewhere.
func TestEveryBoundHoldsAndCounts(t *testing.T) {
	random := rand.New(rand.NewPCG(15, 16))
	least := map[string]int{}
	for range 800 {
		in := instance{
			width: 40 + random.Int64N(400), height: 40 + random.Int64N(300),
			long: 30 + random.Int64N(60), short: 10 + random.Int64N(30),
		}
		if in.long < in.short {
			in.long, in.short = in.short, in.long
		}
		laid := len(in.solve().cells)
		cut := in
		cut.width, cut.height = in.fullest(in.width), in.fullest(in.height)
		if laid == 0 {
			continue
		}
		bounds := map[string]int{"area": cut.areaBound(), "Barnes": cut.barnesBound(), "scales": cut.scaleBound(), "rods": in.rodBound()}
		lowest := min(bounds["area"], bounds["Barnes"], bounds["scales"], bounds["rods"])
		alone := 0
		for name, bound := range bounds {
			if bound < laid {
				t.Errorf("%+v: %d laid, bound by %s %d", in, laid, name, bound)
			}
			if bound == lowest {
				alone++
			}
		}
		for name, bound := range bounds {
			if bound == lowest && alone == 1 {
				least[name]++
			}
		}
	}
	t.Logf("alone the least: %v", least)
	if least["rods"] == 0 {
		t.Errorf("the rods never count: %v", least)
	}
}

// A search that finds nothing within its limit says so, and one that looked
// everywhere says that there is nothing.
func TestVerdicts(t *testing.T) {
	r := newRows(instance{43, 26, 7, 3})
	s := newSearch(r, r.measures(), approaches[0])
	if got := s.find(53, 20); got != undecided {
		t.Errorf("with 20 places: verdict %d", got)
	}
	if got := s.find(53, 1_000_000); got != possible || len(s.cells()) != 53 {
		t.Errorf("verdict %d, %d pieces", got, len(s.cells()))
	}
	if got := s.find(54, 1_000_000); got != impossible {
		t.Errorf("54 pieces: verdict %d", got)
	}
	// No bound forbids 37 here; only the search does.
	r = newRows(instance{100, 64, 17, 10})
	if bound := r.bound(); bound != 37 {
		t.Errorf("bound %d, want 37", bound)
	}
	for _, how := range approaches {
		s = newSearch(r, r.measures(), how)
		if s.find(37, 1_000_000) != impossible || s.find(36, 1_000_000) != possible {
			t.Errorf("approach %+v is not sure of 36", how)
		}
	}
}
