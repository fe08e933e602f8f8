package sheet_test

import (
	"math"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
)

func TestRankOrder(t *testing.T) {
	pieces := []sheet.Piece{one, two, large, {Width: 900, Height: 700, PerBag: 1, Area: 900 * 700}, {Width: 3000, Height: 2000, PerBag: 1, Area: 6e6}}
	for _, piece := range pieces {
		ranked := sheet.Rank(press(0, 0, bag.GripperLong), piece)
		if len(ranked) != len(sheet.UsualSheets()) {
			t.Fatalf("%+v: %d sheets ranked, want all %d", piece, len(ranked), len(sheet.UsualSheets()))
		}
		for i := 1; i < len(ranked); i++ {
			before, after := ranked[i-1].Plan, ranked[i].Plan
			switch {
			case before.Up() == 0 && after.Up() > 0:
				t.Errorf("%+v: %s holds one and comes after %s, which holds none", piece, ranked[i].Name, ranked[i-1].Name)
			case after.Up() > 0 && after.WastePercent() < before.WastePercent():
				t.Errorf("%+v: %s wastes less than %s before it", piece, ranked[i].Name, ranked[i-1].Name)
			case before.Up() == 0 && after.TooLong.X+after.TooLong.Y < before.TooLong.X+before.TooLong.Y:
				t.Errorf("%+v: %s is a nearer miss than %s before it", piece, ranked[i].Name, ranked[i-1].Name)
			}
		}
	}
}

// Worked example, common practice, no published source: the blank 700 × 480 goes
// twice on 100 × 70 cm with the gripper on the short edge only, and once on
// 70 × 50 cm with the gripper on the long edge only.
func TestRankTakesTheBetterGripperEdge(t *testing.T) {
	found := 0
	for _, r := range sheet.Rank(press(0, 0, bag.GripperLong), one) {
		want := map[string]struct {
			edge bag.GripperEdge
			up   int
		}{"100 × 70 cm": {bag.GripperShort, 2}, "70 × 50 cm": {bag.GripperLong, 1}}
		expected, named := want[r.Name]
		if !named {
			continue
		}
		found++
		if r.Plan.Up() != expected.up || r.Plan.Sheet.GripperEdge != expected.edge {
			t.Errorf("%s: %d up, gripped at the %s edge; want %d and %s", r.Name,
				r.Plan.Up(), r.Plan.Sheet.GripperEdge, expected.up, expected.edge)
		}
		if r.Plan.Sheet.Width != r.Width || r.Plan.Sheet.Height != r.Height {
			t.Errorf("%s is planned as %g × %g", r.Name, r.Plan.Sheet.Width, r.Plan.Sheet.Height)
		}
	}
	if found != 2 {
		t.Errorf("%d of the two sheets are ranked", found)
	}
}

// No plan of the list may hold fewer than either gripper edge allows, or miss by
// more.
func TestRankIsNoWorseThanEitherEdge(t *testing.T) {
	for _, piece := range []sheet.Piece{one, two, large} {
		for _, r := range sheet.Rank(press(0, 0, bag.GripperShort), piece) {
			for _, edge := range []bag.GripperEdge{bag.GripperLong, bag.GripperShort} {
				other := sheet.Lay(press(r.Width, r.Height, edge), piece)
				if other.Up() > r.Plan.Up() {
					t.Errorf("%+v on %s: %d up, the %s edge gives %d", piece, r.Name, r.Plan.Up(), edge, other.Up())
				}
				if r.Plan.Up() == 0 && other.TooLong.X+other.TooLong.Y < r.Plan.TooLong.X+r.Plan.TooLong.Y {
					t.Errorf("%+v on %s: misses by %v, the %s edge by %v", piece, r.Name, r.Plan.TooLong, edge, other.TooLong)
				}
			}
		}
	}
}

// Worked out by hand; what a bag takes stands beside each sheet.
func TestCriteria(t *testing.T) {
	piece := sheet.Piece{Width: 300, Height: 200, PerBag: 1, Area: 300 * 200}
	stock := []sheet.Stock{
		{Usual: sheet.Usual{Name: "exact", Width: 600, Height: 400}, Price: 9}, // 4 up, 0.06 m² and 2.25 a bag
		{Usual: sheet.Usual{Name: "cheap", Width: 700, Height: 400}, Price: 4}, // 4 up, 0.07 m² and 1.00 a bag
		{Usual: sheet.Usual{Name: "unknown", Width: 500, Height: 300}},         // 2 up, 0.075 m² a bag
		{Usual: sheet.Usual{Name: "small", Width: 290, Height: 200}, Price: 1},
	}
	tests := []struct {
		by   sheet.Criterion
		want []string
	}{
		{sheet.ByWaste, []string{"exact", "cheap", "unknown", "small"}},
		{sheet.ByPaper, []string{"exact", "cheap", "unknown", "small"}},
		{sheet.ByCost, []string{"cheap", "exact", "unknown", "small"}},
	}
	for _, test := range tests {
		ranked := sheet.RankStock(bag.Sheet{}, piece, stock, test.by)
		for i, want := range test.want {
			if ranked[i].Name != want {
				t.Errorf("criterion %d: %s is number %d, want %s", test.by, ranked[i].Name, i+1, want)
			}
		}
		if test.by == sheet.ByCost {
			cheap, exact := ranked[0], ranked[1]
			if cheap.SheetsPerThousand() != 250 || cheap.PaperPerThousand() != 70 || cheap.CostPerThousand() != 1000 {
				t.Errorf("1000 bags: %g sheets, %g m², %g", cheap.SheetsPerThousand(), cheap.PaperPerThousand(), cheap.CostPerThousand())
			}
			if exact.PaperPerThousand() != 60 || exact.CostPerThousand() != 2250 {
				t.Errorf("1000 bags: %g m², %g", exact.PaperPerThousand(), exact.CostPerThousand())
			}
			if !math.IsInf(ranked[2].CostPerThousand(), 1) || !math.IsInf(ranked[3].PaperPerThousand(), 1) {
				t.Error("what is not known has a cost")
			}
		}
	}
	// Two pieces a bag: of three on a sheet, one bag and a piece are made, or three bags
	// of two sheets, 2 × 0.18 m² for 3.
	piece.PerBag = 2
	three := sheet.RankStock(bag.Sheet{}, piece, []sheet.Stock{{Usual: sheet.Usual{Width: 900, Height: 200}}}, sheet.ByPaper)[0]
	if got := three.PaperPerThousand(); math.Abs(got-120) > 1e-9 {
		t.Errorf("1000 bags take %g m², want 120", got)
	}
}

// A sheet of the user's own list whose grain is known is laid along it.
func TestStockWithGrain(t *testing.T) {
	piece := sheet.Piece{Width: 300, Height: 200, PerBag: 1, Area: 6e4, Fibres: bag.GrainHeight}
	stock := []sheet.Stock{
		{Usual: sheet.Usual{Name: "long grain", Width: 650, Height: 430}, Grain: bag.GrainWidth},
		{Usual: sheet.Usual{Name: "short grain", Width: 650, Height: 430}, Grain: bag.GrainHeight},
	}
	ranked := sheet.RankStock(bag.Sheet{}, piece, stock, sheet.ByWaste)
	if ranked[0].Name != "short grain" || ranked[0].Plan.Up() != 4 || ranked[1].Plan.Up() != 3 || ranked[1].Plan.Turn != 90 {
		t.Errorf("%s %d up, %s %d up", ranked[0].Name, ranked[0].Plan.Up(), ranked[1].Name, ranked[1].Plan.Up())
	}
}

func TestReason(t *testing.T) {
	tests := []struct {
		sheet bag.Sheet
		want  string
	}{
		{press(1000, 700, bag.GripperLong), ""},
		{press(700, 499, bag.GripperLong), "1 mm too long with the gripper on the long edge"},
		{press(719.5, 490, bag.GripperShort), "0.5 mm too long with the gripper on the short edge"},
		{press(690, 495, bag.GripperLong), "10 mm too wide and 5 mm too high with the gripper on the long edge"},
		{press(690, 470, bag.GripperShort), "30 mm too wide and 10 mm too high with the gripper on the short edge"},
	}
	for _, test := range tests {
		plan := sheet.Lay(test.sheet, one)
		if got := plan.Reason().String(); got != test.want {
			t.Errorf("%g × %g: %q, want %q", test.sheet.Width, test.sheet.Height, got, test.want)
		}
	}
}
