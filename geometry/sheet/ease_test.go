package sheet_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
)

// The worked example, common practice, no published source: the blank 700 × 480 is 20
// too long for a second one on 1000 × 700 with the gripper of 20 on the long edge, as
// 700 > 680.
func TestEaseOfTheWorkedExample(t *testing.T) {
	s := press(1000, 700, bag.GripperLong)
	tests := []struct {
		name   string
		ease   sheet.Ease
		most   float64
		amount float64
		ok     bool
	}{
		{"its width", sheet.Ease{Width: 1}, 50, 20, true},
		{"a face, which is in it twice", sheet.Ease{Width: 2}, 50, 10, true},
		{"a gusset, which is in both sides", sheet.Ease{Width: 2, Height: 0.5}, 50, 10, true},
		{"the gripper", sheet.Ease{Gripper: 1}, 20, 20, true},
		{"no more than allowed", sheet.Ease{Width: 1}, 19.99, 0, false},
		{"exactly as much as allowed", sheet.Ease{Width: 1}, 20, 20, true},
		{"what has no bearing", sheet.Ease{Height: 1}, 50, 0, false},
		{"nothing at all", sheet.Ease{}, 50, 0, false},
	}
	for _, test := range tests {
		amount, ok := test.ease.Least(s, one, 2, test.most)
		if ok != test.ok || math.Abs(amount-test.amount) > 1e-9 {
			t.Errorf("%s: %g, %v; want %g, %v", test.name, amount, ok, test.amount, test.ok)
		}
	}
	if amount, ok := (sheet.Ease{Width: 1}).Least(s, one, 1, 50); !ok || amount != 0 {
		t.Errorf("one is on the sheet already: %g, %v", amount, ok)
	}
	// Gripper and face, which counts twice, make 20 together.
	a, b, ok := sheet.Both(s, one, 2, sheet.Ease{Gripper: 1}, 12, sheet.Ease{Width: 2}, 6)
	if !ok || math.Abs(a+2*b-20) > 1e-9 {
		t.Errorf("both: %g and %g, %v", a, b, ok)
	}
	if _, _, ok := sheet.Both(s, one, 2, sheet.Ease{Gripper: 1}, 10, sheet.Ease{Width: 2}, 4.9); ok {
		t.Error("10 and 9.8 make 20")
	}
}

// The bleed stops to count where gap and margins hold it. Worked out by hand: on a width
// of 900 three pieces of 297 leave 9. Two gaps of 4 leave 1 of it for both ends, so a
// bleed of 3 must become 0.5: less than 2 for the gaps, and 0.5 at the ends.
func TestEaseOfTheBleed(t *testing.T) {
	s := loose(900, 100)
	s.Gap, s.Side = 4, 0.5
	piece := sheet.Piece{Width: 297, Height: 90, PerBag: 1, Bleed: 3}
	amount, ok := (sheet.Ease{Bleed: 1}).Least(s, piece, 3, 3)
	if !ok || math.Abs(amount-2.5) > 1e-9 {
		t.Errorf("%g, %v; want 2.5", amount, ok)
	}
}

func randomEase(random *rand.Rand) sheet.Ease {
	switch random.IntN(7) {
	case 0:
		return sheet.Ease{Width: 2}
	case 1:
		return sheet.Ease{Height: 1}
	case 2:
		return sheet.Ease{Width: 2, Height: 0.5}
	case 3:
		return sheet.Ease{Gap: 1}
	case 4:
		return sheet.Ease{Gripper: 1}
	case 5:
		return sheet.Ease{Side: 1}
	}
	return sheet.Ease{Tail: 1}
}

func randomProblem(random *rand.Rand) (bag.Sheet, sheet.Piece) {
	s := bag.Sheet{
		Width: 500 + 900*random.Float64(), Height: 400 + 700*random.Float64(), GripperEdge: bag.GripperLong,
		Gripper: 12 + 8*random.Float64(), Side: 15 * random.Float64(), Tail: 15 * random.Float64(), Gap: 12 * random.Float64(),
	}
	piece := sheet.Piece{Width: 150 + 600*random.Float64(), Height: 120 + 400*random.Float64(), PerBag: 1}
	piece.Bleed = []float64{0, 0, 3 * random.Float64()}[random.IntN(3)]
	piece.Grain = []sheet.GrainRule{sheet.GrainRequired, sheet.GrainFree}[random.IntN(2)]
	return s, piece
}

// The least amount holds what is wanted, a hair less does not, and neither does any of
// a row of smaller amounts.
func TestLeastAmountIsLeast(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 10))
	found, refused := 0, 0
	for range 3000 {
		s, piece := randomProblem(random)
		ease := randomEase(random)
		if random.IntN(6) == 0 {
			ease = sheet.Ease{Bleed: 1}
		}
		most := 12.0
		up := sheet.Lay(s, piece).Up() + 1
		holds := func(amount float64) bool { return sheet.Lay(ease.By(amount, s, piece)).Up() >= up }
		amount, ok := ease.Least(s, piece, up, most)
		if !ok {
			refused++
			if holds(most) {
				t.Errorf("%+v on %+v, %+v: %g holds %d and was not found", piece, s, ease, most, up)
			}
			continue
		}
		found++
		eased, smaller := ease.By(amount, s, piece)
		if !holds(amount) || !sheet.Holds(eased, smaller, up) {
			t.Errorf("%+v on %+v, %+v: %g does not hold %d", piece, s, ease, amount, up)
		}
		if holds(amount - 1e-4) {
			t.Errorf("%+v on %+v, %+v: a hair less than %g holds %d too", piece, s, ease, amount, up)
		}
		for k := 1; k < 20; k++ {
			if less := (amount - 1e-4) * float64(k) / 20; holds(less) {
				t.Errorf("%+v on %+v, %+v: %g holds %d, not only %g", piece, s, ease, less, up, amount)
			}
		}
	}
	if found < 200 || refused < 200 {
		t.Errorf("%d found, %d refused: the tries are too tame", found, refused)
	}
}

// No two amounts on a fine grid hold what is wanted and are a smaller share.
func TestLeastOfBothIsLeast(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 12))
	found := 0
	for range 1500 {
		s, piece := randomProblem(random)
		first, second := randomEase(random), randomEase(random)
		if first == second {
			continue
		}
		one, two := 2+8*random.Float64(), 2+8*random.Float64()
		up := sheet.Lay(s, piece).Up() + 1
		holds := func(a, b float64) bool {
			eased, smaller := first.By(a, s, piece)
			return sheet.Lay(second.By(b, eased, smaller)).Up() >= up
		}
		a, b, ok := sheet.Both(s, piece, up, first, one, second, two)
		if ok != holds(one, two) {
			t.Errorf("%+v on %+v, %+v and %+v: found is %v", piece, s, first, second, ok)
		}
		if !ok {
			continue
		}
		found++
		share := a/one + b/two
		if !holds(a, b) {
			t.Errorf("%+v on %+v: %g and %g do not hold %d", piece, s, a, b, up)
		}
		const grid = 24
		for i := range grid + 1 {
			for k := range grid + 1 {
				x, y := float64(i)/grid, float64(k)/grid
				if x+y < share-1e-6 && holds(x*one, y*two) {
					t.Errorf("%+v on %+v, %+v and %+v: %g and %g hold %d, less than %g and %g",
						piece, s, first, second, x*one, y*two, up, a, b)
				}
			}
		}
	}
	if found < 60 {
		t.Errorf("only %d found: the tries are too tame", found)
	}
}
