package sheet_test

import (
	"math"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
)

// one is the blank of the worked example, face 240, gusset 100, standing height
// 360, turn-in 50, base overlap 20, seam flap 20, no relief; two is one of the
// pieces of a bag 420 × 120 × 360 with two seams, large the same bag with one.
// Common practice, no published source.
var (
	one   = sheet.Piece{Width: 700, Height: 480, PerBag: 1, Area: 700 * 480}
	two   = sheet.Piece{Width: 560, Height: 490, PerBag: 2, Area: 560 * 490}
	large = sheet.Piece{Width: 1100, Height: 490, PerBag: 1, Area: 1100 * 490}
)

func TestWorkedExample(t *testing.T) {
	tests := []struct {
		name    string
		sheet   bag.Sheet
		piece   sheet.Piece
		usable  geometry.Rect
		want    []sheet.Placement
		bags    float64
		waste   float64
		tooLong geometry.Vec2
	}{
		{
			"half sheet, gripper on the long edge: filled exactly",
			press(700, 500, bag.GripperLong), one, geometry.RectAt(0, 20, 700, 480),
			[]sheet.Placement{{X: 0, Y: 20}},
			1, 4,
			geometry.Vec2{},
		},
		{
			"full sheet, gripper on the short edge: two",
			press(1000, 700, bag.GripperShort), one, geometry.RectAt(20, 0, 980, 700),
			[]sheet.Placement{{X: 20, Y: 0, Turn: 90}, {X: 500, Y: 0, Turn: 90}},
			2, 4,
			geometry.Vec2{},
		},
		{
			"full sheet, gripper on the long edge: 700 is more than 680, so one",
			press(1000, 700, bag.GripperLong), one, geometry.RectAt(0, 20, 1000, 680),
			[]sheet.Placement{{X: 0, Y: 20}},
			1, 52,
			geometry.Vec2{},
		},
		{
			"one seam of the large bag, long edge: 100 too long",
			press(1000, 700, bag.GripperLong), large, geometry.RectAt(0, 20, 1000, 680),
			nil, 0, 100,
			geometry.Vec2{X: 100},
		},
		{
			"one seam of the large bag, short edge: 120 too long",
			press(1000, 700, bag.GripperShort), large, geometry.RectAt(20, 0, 980, 700),
			nil, 0, 100,
			geometry.Vec2{X: 120},
		},
		{
			"two seams of the large bag, long edge: both pieces on one sheet",
			press(1000, 700, bag.GripperLong), two, geometry.RectAt(0, 20, 1000, 680),
			[]sheet.Placement{{X: 0, Y: 20, Turn: 90}, {X: 490, Y: 20, Turn: 90}},
			1, 21.6,
			geometry.Vec2{},
		},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			plan := sheet.Lay(test.sheet, test.piece)
			if !plan.Usable.Min.Near(test.usable.Min) || !plan.Usable.Max.Near(test.usable.Max) {
				t.Errorf("usable %+v, want %+v", plan.Usable, test.usable)
			}
			samePlacements(t, plan.Placements, test.want)
			if plan.Up() != len(test.want) || plan.BagsPerSheet() != test.bags {
				t.Errorf("%d up, %g bags; want %d and %g", plan.Up(), plan.BagsPerSheet(), len(test.want), test.bags)
			}
			if got := plan.WastePercent(); math.Abs(got-test.waste) > 1e-9 {
				t.Errorf("waste %g %%, want %g %%", got, test.waste)
			}
			if !plan.TooLong.Near(test.tooLong) {
				t.Errorf("too long by %v, want %v", plan.TooLong, test.tooLong)
			}
			if fits := sheet.Fits(test.sheet, test.piece.Width, test.piece.Height); fits != (len(test.want) > 0) {
				t.Errorf("fits is %v", fits)
			}
		})
	}
}

func samePlacements(t *testing.T, got, want []sheet.Placement) {
	t.Helper()
	same := len(got) == len(want)
	for i := 0; same && i < len(got); i++ {
		same = math.Abs(got[i].X-want[i].X) < 1e-9 && math.Abs(got[i].Y-want[i].Y) < 1e-9 && got[i].Turn == want[i].Turn
	}
	if !same {
		t.Errorf("placed at %+v, want %+v", got, want)
	}
}

// Worked out by hand, common practice, no published source: face 320, gusset 110,
// height 400, seam flap 20 and turn-in 40 make a blank 880 × 515, which fits a
// sheet of 900 × 640 with 10 mm left at each side (7 with a bleed of 3).
func TestBlankThatJustFits(t *testing.T) {
	s := bag.Sheet{Width: 900, Height: 640, Gripper: 12, GripperEdge: bag.GripperLong, Side: 10, Tail: 5}
	if !sheet.Fits(s, 880, 515) {
		t.Error("880 × 515 does not fit between margins of 10 mm")
	}
	if sheet.Fits(s, 880.01, 515) {
		t.Error("a hundredth more fits too")
	}
	s.Side = 7
	if !sheet.Fits(s, 880+2*3, 515+2*3) {
		t.Error("with its bleed it does not fit between margins of 7 mm")
	}
}

func TestGap(t *testing.T) {
	tests := []struct {
		gap  float64
		want int
	}{{0, 4}, {6, 3}, {33.33, 3}, {33.34, 3}, {50, 3}}
	for _, test := range tests {
		s := bag.Sheet{Width: 400, Height: 150, GripperEdge: bag.GripperLong, Gap: test.gap}
		if got := sheet.Lay(s, sheet.Piece{Width: 100, Height: 150, PerBag: 1}).Up(); got != test.want {
			t.Errorf("gap %g: %d up, want %d", test.gap, got, test.want)
		}
	}
	// Three pieces and two gaps fill the sheet exactly; a hair more does not fit.
	s := bag.Sheet{Width: 312, Height: 150, GripperEdge: bag.GripperLong, Gap: 6}
	plan := sheet.Lay(s, sheet.Piece{Width: 100, Height: 150, PerBag: 1})
	samePlacements(t, plan.Placements, []sheet.Placement{{X: 0}, {X: 106}, {X: 212}})
	s.Gap = 6.001
	if got := sheet.Lay(s, sheet.Piece{Width: 100, Height: 150, PerBag: 1}).Up(); got != 2 {
		t.Errorf("gap 6.001: %d up, want 2", got)
	}
}

func TestUprightWinsATie(t *testing.T) {
	s := bag.Sheet{Width: 600, Height: 600, GripperEdge: bag.GripperLong}
	if plan := sheet.Lay(s, sheet.Piece{Width: 300, Height: 200, PerBag: 1}); plan.Up() != 6 || plan.Turn != 0 {
		t.Errorf("%d up, turned by %d; want 6 and 0", plan.Up(), plan.Turn)
	}
}

// Nearest miss: 1100 × 690 is 100 too wide upright on 1000 × 700, and turned by
// 400 too high.
func TestNearestMissIsReported(t *testing.T) {
	s := bag.Sheet{Width: 1000, Height: 700, GripperEdge: bag.GripperLong}
	for _, piece := range []sheet.Piece{{Width: 1100, Height: 690}, {Width: 690, Height: 1100}} {
		plan := sheet.Lay(s, piece)
		if !plan.TooLong.Near(geometry.Vec2{X: 100}) || plan.Turn != 0 || plan.Placements != nil {
			t.Errorf("%+v: too long by %v, turn %d, placements %v", piece, plan.TooLong, plan.Turn, plan.Placements)
		}
	}
}

func TestGrainTurnsWithThePiece(t *testing.T) {
	tests := []struct {
		turn        int
		onBag, want bag.Grain
	}{
		{0, bag.GrainHeight, bag.GrainHeight},
		{0, bag.GrainWidth, bag.GrainWidth},
		{90, bag.GrainHeight, bag.GrainWidth},
		{90, bag.GrainWidth, bag.GrainHeight},
	}
	for _, test := range tests {
		if got := (sheet.Plan{Turn: test.turn}).GrainAlong(test.onBag); got != test.want {
			t.Errorf("turn %d, along the %s of the bag: %s of the sheet, want %s", test.turn, test.onBag, got, test.want)
		}
	}
}

func TestPieceWithoutASize(t *testing.T) {
	plan := sheet.Lay(press(1000, 700, bag.GripperLong), sheet.Piece{})
	if plan.Up() != 0 || plan.BagsPerSheet() != 0 || sheet.Fits(plan.Sheet, 0, 10) {
		t.Errorf("%d up, %g bags", plan.Up(), plan.BagsPerSheet())
	}
}
