package sheet_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
)

// Pieces stay in the usable area and keep gap and bleed, whatever is asked.
func TestMixedPlansOfRandomSheets(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	gained, proven := 0, 0
	const tries = 5000
	for range tries {
		s := randomSheet(random)
		piece := randomPiece(random, s)
		piece.Width, piece.Height = max(piece.Width, 40), max(piece.Height, 40)
		piece.Area = piece.Width * piece.Height
		piece.Bleed = []float64{0, 0, 3, 10 * random.Float64()}[random.IntN(4)]
		alike := sheet.Lay(s, piece)
		piece.Grain = []sheet.GrainRule{sheet.GrainPreferred, sheet.GrainFree}[random.IntN(2)]
		plan := sheet.Lay(s, piece)
		insideAndApart(t, plan)
		keepsBleed(t, plan)
		if plan.Up() < alike.Up() || plan.Bound < plan.Up() || plan.Proven != (plan.Bound == plan.Up()) {
			t.Errorf("%+v on %+v: %d up of at most %d, %d all alike", piece, s, plan.Up(), plan.Bound, alike.Up())
		}
		if plan.Up() == alike.Up() && plan.Across() > 0 {
			t.Errorf("%+v on %+v: %d pieces lie across and gain nothing", piece, s, plan.Across())
		}
		if plan.Up() != alike.Up() {
			gained++
			if plan.Across() == 0 || 2*plan.Across() > plan.Up() {
				t.Errorf("%+v on %+v: %d of %d pieces lie across", piece, s, plan.Across(), plan.Up())
			}
		}
		if plan.Proven {
			proven++
		}
	}
	t.Logf("%d of %d plans gain by pieces that lie across, %d are proven", gained, tries, proven)
	if gained < tries/20 || proven < tries*98/100 {
		t.Errorf("of %d plans %d gain and %d are proven", tries, gained, proven)
	}
}

// keepsBleed checks that the ink of every piece ends on the sheet, and before the
// gripper.
func keepsBleed(t *testing.T, plan sheet.Plan) {
	t.Helper()
	s := plan.Sheet
	printed := geometry.RectAt(0, s.Gripper, s.Width, s.Height-s.Gripper)
	if sheet.GripOf(s) == sheet.GripLeft {
		printed = geometry.RectAt(s.Gripper, 0, s.Width-s.Gripper, s.Height)
	}
	for i := range plan.Placements {
		ink := plan.Box(i).Inset(-plan.Piece.Bleed)
		if !printed.Contains(ink.Min) || !printed.Contains(ink.Max) {
			t.Errorf("the bleed of piece %d, %+v, leaves %+v", i, ink, printed)
		}
	}
}

// Worked out by hand: with 3 mm of bleed and a gripper of 3, a sheet of 1000 × 700
// without margins leaves 994 × 691, and neighbours are 6 apart: 244 + 6 go 4 times into
// 994 + 6, and 342.5 + 6 twice into 691 + 6. A hair more does not.
func TestBleedTakesRoom(t *testing.T) {
	s := loose(1000, 700)
	s.Gripper = 3
	piece := sheet.Piece{Width: 244, Height: 342.5, PerBag: 1, Bleed: 3}
	if plan := sheet.Lay(s, piece); plan.Up() != 8 || !plan.Usable.Min.Near(geometry.Vec2{X: 3, Y: 6}) {
		t.Errorf("%d up in %+v", plan.Up(), plan.Usable)
	}
	piece.Width += 0.01
	if plan := sheet.Lay(s, piece); plan.Up() == 8 {
		t.Error("a hundredth wider fits too")
	}
}

func TestGrainOfTheSheet(t *testing.T) {
	// 300 × 200 goes 2 × 2 times upright on 650 × 430, and on its side 3 × 1 times.
	s := loose(650, 430)
	tests := []struct {
		rule          sheet.GrainRule
		fibres, sheet bag.Grain
		up, turn      int
	}{
		{sheet.GrainRequired, bag.GrainHeight, bag.GrainHeight, 4, 0},
		{sheet.GrainRequired, bag.GrainHeight, bag.GrainWidth, 3, 90},
		{sheet.GrainRequired, bag.GrainWidth, bag.GrainHeight, 3, 90},
		{sheet.GrainRequired, bag.GrainHeight, "", 4, 0},
		{sheet.GrainPreferred, bag.GrainHeight, bag.GrainWidth, 4, 0},
		{sheet.GrainFree, bag.GrainHeight, bag.GrainWidth, 4, 0},
	}
	for _, test := range tests {
		piece := sheet.Piece{Width: 300, Height: 200, PerBag: 1, Grain: test.rule, Fibres: test.fibres, SheetFibres: test.sheet}
		plan := sheet.Lay(s, piece)
		if plan.Up() != test.up || plan.Turn != test.turn {
			t.Errorf("%+v: %d up, turned by %d", test, plan.Up(), plan.Turn)
		}
		if along := plan.GrainAlong(test.fibres); test.rule == sheet.GrainRequired && test.sheet != "" && (along != test.sheet || plan.Across() != 0) {
			t.Errorf("%+v: fibres along the %s, %d across", test, along, plan.Across())
		}
		if test.rule != sheet.GrainRequired && plan.Across() != 4 {
			t.Errorf("%+v: %d across, want all 4", test, plan.Across())
		}
	}
	// Where both turns hold as many, the grain decides under preference only.
	even := sheet.Piece{Width: 300, Height: 200, PerBag: 1, Fibres: bag.GrainHeight, SheetFibres: bag.GrainWidth, Grain: sheet.GrainPreferred}
	if plan := sheet.Lay(loose(600, 600), even); plan.Turn != 90 || plan.Across() != 0 {
		t.Errorf("preferred: turned by %d, %d across", plan.Turn, plan.Across())
	}
	even.Grain = sheet.GrainFree
	if plan := sheet.Lay(loose(600, 600), even); plan.Turn != 0 {
		t.Errorf("free: turned by %d", plan.Turn)
	}
}

// Four pieces of 3 × 2 lie around a hole on 5 × 5, and no guillotine parts them.
func TestGuillotine(t *testing.T) {
	pinwheel := sheet.Lay(loose(500, 500), free(300, 200))
	if pinwheel.Up() != 4 || pinwheel.Guillotine() {
		t.Errorf("%d up, parted by straight cuts: %v", pinwheel.Up(), pinwheel.Guillotine())
	}
	rows := sheet.Lay(loose(500, 300), free(240, 140))
	if rows.Up() != 4 || !rows.Guillotine() {
		t.Errorf("%d up, parted by straight cuts: %v", rows.Up(), rows.Guillotine())
	}
	// Two stand beside three that lie: straight cuts part them all the same.
	mixed := sheet.Lay(loose(500, 600), free(300, 200))
	if mixed.Up() != 5 || mixed.Across() != 2 || !mixed.Guillotine() {
		t.Errorf("%d up, parted by straight cuts: %v", mixed.Up(), mixed.Guillotine())
	}
}

// Motion moves the corners of a piece to those of its box.
func TestMotion(t *testing.T) {
	for _, turn := range []int{0, 90, 180, 270} {
		plan := sheet.Plan{Piece: sheet.Piece{Width: 30, Height: 20}, Placements: []sheet.Placement{{X: 5, Y: 7, Turn: turn}}}
		motion, box := plan.Motion(0), plan.Box(0)
		first := map[int]geometry.Vec2{
			0: box.Min, 90: {X: box.Max.X, Y: box.Min.Y}, 180: box.Max, 270: {X: box.Min.X, Y: box.Max.Y},
		}[turn]
		if !motion.At(geometry.Vec2{}).Near(first) {
			t.Errorf("turn %d: the lower left corner goes to %v, want %v", turn, motion.At(geometry.Vec2{}), first)
		}
		if got := motion.Bounds(geometry.RectAt(0, 0, 30, 20)); !got.Min.Near(box.Min) || !got.Max.Near(box.Max) || math.Abs(motion.Area()-1) > 1e-12 {
			t.Errorf("turn %d: the piece goes to %+v, want %+v", turn, got, box)
		}
	}
}

// Two pieces a bag: seven pieces on a sheet make three bags with one left over, or,
// front and back on sheets of their own, seven bags on two sheets.
func TestWholeBags(t *testing.T) {
	s := loose(700, 100)
	plan := sheet.Lay(s, sheet.Piece{Width: 100, Height: 100, PerBag: 2, Area: 1e4})
	way, ok := plan.WholeBags()
	if plan.Up() != 7 || !ok || way != (sheet.Way{Sheets: 2, Bags: 7}) || len(plan.Ways()) != 2 || plan.Ways()[0] != (sheet.Way{Sheets: 1, Bags: 3}) {
		t.Errorf("%d up: %+v of %+v", plan.Up(), way, plan.Ways())
	}
	if got := way.SheetsFor(8); got != 4 {
		t.Errorf("8 bags take %d sheets of both kinds, want 4", got)
	}
	// An even number lies together.
	s.Width = 600
	plan = sheet.Lay(s, plan.Piece)
	if way, _ := plan.WholeBags(); way != (sheet.Way{Sheets: 1, Bags: 3}) || way.SheetsFor(7) != 3 {
		t.Errorf("6 up: %+v, 7 bags on %d sheets", way, way.SheetsFor(7))
	}
	// One piece a sheet makes one bag of two sheets, none of one.
	s.Width = 150
	plan = sheet.Lay(s, plan.Piece)
	if ways := plan.Ways(); len(ways) != 1 || ways[0] != (sheet.Way{Sheets: 2, Bags: 1}) {
		t.Errorf("1 up: %+v", ways)
	}
	s.Width = 100
	s.Height = 99
	plan = sheet.Lay(s, plan.Piece)
	if _, ok := plan.WholeBags(); ok {
		t.Error("bags out of nothing")
	}
	plan.Piece.PerBag = 0
	if plan.Ways() != nil {
		t.Error("bags of no pieces")
	}
}
