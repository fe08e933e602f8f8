package sheet_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/sheet"
)

// loose is a sheet without gripper, margins and gap.
func loose(width, height float64) bag.Sheet {
	return bag.Sheet{Width: width, Height: height, GripperEdge: bag.GripperLong}
}

// free is a piece of which some may lie across others.
func free(width, height float64) sheet.Piece {
	return sheet.Piece{Width: width, Height: height, PerBag: 1, Area: width * height, Grain: sheet.GrainFree}
}

// Instances of the pallet loading problem that the literature knows as hard: some are
// laid by no pattern of blocks in blocks. The instances and their best numbers are
// values from memory, as they are used since K. A. Dowsland, "An exact algorithm for
// the pallet loading problem", Eur. J. Oper. Res. 31 (1987), and E. G. Birgin,
// R. Morabito & F. H. Nishihara, "A note on an L-approach for solving the
// manufacturer's pallet loading problem", J. Oper. Res. Soc. 56 (2005). Each is proven
// here besides: as many pieces lie on the sheet as a bound allows.
func TestPublishedInstances(t *testing.T) {
	tests := []struct {
		width, height, long, short float64
		want                       int
	}{
		{43, 26, 7, 3, 53},
		{49, 28, 8, 3, 57},
		{61, 35, 10, 3, 71},
		{67, 37, 11, 3, 75},
		{61, 38, 6, 5, 77},
		{61, 38, 10, 3, 77},
		{63, 44, 8, 5, 69},
		{108, 65, 10, 7, 100},
		{57, 44, 12, 5, 41},
		{40, 25, 7, 3, 47},
		{52, 33, 9, 4, 47},
		{56, 52, 12, 5, 48},
		{42, 39, 9, 4, 45},
		{124, 81, 21, 10, 47},
		{87, 47, 7, 6, 97},
		{141, 71, 13, 8, 96},
		{81, 39, 9, 7, 49},
		{100, 64, 17, 10, 36},
	}
	for _, test := range tests {
		// Ten times as large, so that the sides are usual ones.
		s, piece := loose(10*test.width, 10*test.height), free(10*test.long, 10*test.short)
		plan := sheet.Lay(s, piece)
		insideAndApart(t, plan)
		if plan.Up() != test.want || !plan.Proven || plan.Bound != test.want {
			t.Errorf("%+v: %d up of at most %d", test, plan.Up(), plan.Bound)
		}
		// Turned over and with a gap taken from every piece it is the same problem.
		const gap = 4
		s = loose(10*test.height-gap, 10*test.width-gap)
		s.Gap = gap
		piece.Width, piece.Height = piece.Height-gap, piece.Width-gap
		turned := sheet.Lay(s, piece)
		insideAndApart(t, turned)
		if turned.Up() != test.want || !turned.Proven {
			t.Errorf("%+v with a gap: %d up of at most %d", test, turned.Up(), turned.Bound)
		}
	}
}

// everyLayout returns the most pieces on a little board of unit squares, found by
// trying everything: at the first free square a piece lies, stands, or does not cover
// it. It shares nothing with the package.
func everyLayout(width, height, long, short int) int {
	board := make([]bool, width*height)
	known := map[string]int{}
	fits := func(x, y, w, h int) bool {
		if x+w > width || y+h > height {
			return false
		}
		for row := y; row < y+h; row++ {
			for column := x; column < x+w; column++ {
				if board[row*width+column] {
					return false
				}
			}
		}
		return true
	}
	cover := func(x, y, w, h int, covered bool) {
		for row := y; row < y+h; row++ {
			for column := x; column < x+w; column++ {
				board[row*width+column] = covered
			}
		}
	}
	var most func(at int) int
	most = func(at int) int {
		for at < len(board) && board[at] {
			at++
		}
		if at == len(board) {
			return 0
		}
		key := make([]byte, 0, len(board))
		for _, covered := range board[at:] {
			if covered {
				key = append(key, 1)
			} else {
				key = append(key, 0)
			}
		}
		if best, seen := known[string(key)]; seen {
			return best
		}
		x, y := at%width, at/width
		board[at] = true
		best := most(at + 1)
		board[at] = false
		for _, size := range [2][2]int{{long, short}, {short, long}} {
			if fits(x, y, size[0], size[1]) {
				cover(x, y, size[0], size[1], true)
				best = max(best, 1+most(at))
				cover(x, y, size[0], size[1], false)
			}
		}
		known[string(key)] = best
		return best
	}
	return most(0)
}

func TestAgainstEveryLayout(t *testing.T) {
	mixed := 0
	for long := 2; long <= 5; long++ {
		for short := 1; short <= long; short++ {
			for width := long; width <= 8; width++ {
				for height := short; height <= min(width, 7); height++ {
					want := everyLayout(width, height, long, short)
					const unit = 100
					plan := sheet.Lay(loose(unit*float64(width), unit*float64(height)), free(unit*float64(long), unit*float64(short)))
					if plan.Up() != want || !plan.Proven {
						t.Errorf("%d × %d on %d × %d: %d up of at most %d, want %d", long, short, width, height, plan.Up(), plan.Bound, want)
					}
					if plan.Up() > max((width/long)*(height/short), (width/short)*(height/long)) {
						mixed++
					}
				}
			}
		}
	}
	if mixed < 40 {
		t.Errorf("only %d layouts lie and stand: the boards are too tame", mixed)
	}
}

// areaBound and barnesBound are written here anew, from their definitions, for sides
// in whole millimetres.
func areaBound(width, height, long, short int) int { return width * height / (long * short) }

// F. W. Barnes, "Packing the maximum number of m × n tiles in a large p × q
// rectangle", Discrete Mathematics 26 (1979): as rods of 1 × n leave at least so much
// empty, tiles do.
func barnesBound(width, height, long, short int) int {
	empty := 0
	for _, n := range []int{long, short} {
		r, s := width%n, height%n
		empty = max(empty, min(r*s, (n-r)*(n-s)))
	}
	for count := areaBound(width, height, long, short); ; count-- {
		if width*height-count*long*short >= empty {
			return count
		}
	}
}

// packers is what two general-purpose packers from the npm registry find; the script
// beside the data says how it was made.
func packers(t testing.TB) (names []string, cases [][6]int) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(geomtest.Root(t), "testdata", "sheet", "packers.json"))
	if err != nil {
		t.Fatal(err)
	}
	var file struct {
		Packers []string `json:"packers"`
		Cases   [][6]int `json:"cases"`
	}
	if err := json.Unmarshal(data, &file); err != nil {
		t.Fatal(err)
	}
	return file.Packers, file.Cases
}

func TestNeverBelowOtherPackers(t *testing.T) {
	names, cases := packers(t)
	if len(names) != 2 || len(cases) != 2000 {
		t.Fatalf("%d packers, %d cases", len(names), len(cases))
	}
	better, open := [2]int{}, 0
	for _, c := range cases {
		plan := sheet.Lay(loose(float64(c[0]), float64(c[1])), free(float64(c[2]), float64(c[3])))
		for i, name := range names {
			switch other := c[4+i]; {
			case plan.Up() < other:
				t.Errorf("%v: %d up, %s finds %d", c, plan.Up(), name, other)
			case plan.Up() > other:
				better[i]++
			}
		}
		long, short := max(c[2], c[3]), min(c[2], c[3])
		if least := min(areaBound(c[0], c[1], long, short), barnesBound(c[0], c[1], long, short)); plan.Up() > least || plan.Bound > least {
			t.Errorf("%v: %d up and bound %d, above the bounds by area and of Barnes, %d", c, plan.Up(), plan.Bound, least)
		}
		if plan.Proven != (plan.Up() == plan.Bound) || plan.Up() > plan.Bound {
			t.Errorf("%v: %d up of %d, proven %v", c, plan.Up(), plan.Bound, plan.Proven)
		}
		if !plan.Proven {
			open++
		}
	}
	t.Logf("more than %s in %d cases, than %s in %d; %d of %d not proven", names[0], better[0], names[1], better[1], open, len(cases))
	if open > len(cases)/100 {
		t.Errorf("%d of %d plans are not proven", open, len(cases))
	}
}

// A plan of which no one knows whether it is the best says so.
func TestPlanThatIsNotProvenSaysSo(t *testing.T) {
	// Some three thousand pieces: far beyond what is searched.
	plan := sheet.Lay(loose(1000, 1000), free(20.3, 15.7))
	insideAndApart(t, plan)
	if plan.Proven || plan.Bound <= plan.Up() || plan.Up() < 3000 {
		t.Errorf("%d up of at most %d, proven %v", plan.Up(), plan.Bound, plan.Proven)
	}
}
