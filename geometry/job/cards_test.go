package job_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/job"
	"gussetwright/geometry/sheet"
)

func cuttings(spec bag.Spec) []job.Cutting {
	laid := blank.Lay(spec)
	plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
	run := job.Reckon(&laid, &plan)
	return job.CutCards(&laid, &run)
}

// Done by hand for 1050 printed bags of the worked example. Top cards of 236 × 45 on board
// of 38 × 25 in, 965.2 × 635: 4 × 14, so 2100 of them take 37.5 sheets. Base cards of
// 236 × 96 on 40 × 28 in, 1016 × 711.2: 10 × 3 across, so 1050 take 35. ISO 536: the
// weight is area times grammage.
func TestCardsByHand(t *testing.T) {
	got := cuttings(geomtest.WorkedExample())
	if len(got) != 2 || got[0].Card.Role != "top" || got[1].Card.Role != "base" {
		t.Fatalf("cuttings %+v", got)
	}
	if got[0].Sheet.Name != "38 × 25 in" || got[1].Sheet.Name != "40 × 28 in" || !got[0].Board() {
		t.Errorf("on %s and %s", got[0].Sheet.Name, got[1].Sheet.Name)
	}
	near(t, "top cards on a sheet", float64(got[0].Up), 56, 0)
	near(t, "sheets of top cards", got[0].Sheets, 38, 0)
	near(t, "kg of top cards", got[0].Kilograms, 38*0.9652*0.635*0.350, 1e-9)
	near(t, "waste", got[0].Waste, 100*(1-56*236*45/(965.2*635)), 1e-9)
	near(t, "base cards on a sheet", float64(got[1].Up), 30, 0)
	near(t, "sheets of base cards", got[1].Sheets, 35, 0)
	near(t, "kg of base cards", got[1].Kilograms, 35*1.016*0.7112*0.400, 1e-9)
}

// Patches are cut from the press sheet of the bag: 150 × 40 on 700 × 500 in rows of 17 up
// and 3 across, 2100 of them from 41.2 sheets of 170 g/m².
func TestPatchesAreCutFromThePaper(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Handle.Kind, spec.Cards.Top, spec.Cards.Base = bag.HandleTwisted, false, false
	got := cuttings(spec)
	if len(got) != 1 || got[0].Board() || got[0].Sheet.Name != "" {
		t.Fatalf("cuttings %+v", got)
	}
	near(t, "patches on a sheet", float64(got[0].Up), 51, 0)
	near(t, "sheets", got[0].Sheets, 42, 0)
	near(t, "kg", got[0].Kilograms, 42*0.7*0.5*0.170, 1e-9)
}

// inRows counts what a guillotine cuts all alike, from the definition.
func inRows(s sheet.Usual, width, height float64) float64 {
	count := func(w, h float64) float64 { return math.Floor((s.Width+1e-6)/w) * math.Floor((s.Height+1e-6)/h) }
	return max(count(width, height), count(height, width))
}

// No usual sheet wastes less than the one that is chosen.
func TestBoardWithTheLeastWaste(t *testing.T) {
	random := rand.New(rand.NewPCG(63, 1))
	looked := 0
	for range 300 {
		for _, got := range cuttings(geomtest.RandomBag(random)) {
			if !got.Board() {
				continue
			}
			looked++
			most := 0.0
			for _, s := range sheet.UsualSheets() {
				most = max(most, inRows(s, got.Card.Width, got.Card.Height)/(s.Width*s.Height))
			}
			if used := float64(got.Up) / (got.Sheet.Width * got.Sheet.Height); math.Abs(used-most) > 1e-9*most {
				t.Errorf("%+v: another sheet wastes less", got)
			}
			near(t, "up", float64(got.Up), inRows(got.Sheet, got.Card.Width, got.Card.Height), 0)
			if got.Sheets*float64(got.Up) < got.Cards || (got.Sheets-1)*float64(got.Up) >= got.Cards {
				t.Errorf("%g sheets of %d for %g cards", got.Sheets, got.Up, got.Cards)
			}
		}
	}
	if looked < 100 {
		t.Errorf("only %d cards", looked)
	}
}

// Base cards of 250 × 100 leave nothing of 50 × 35, 70 × 50 and 100 × 70 cm: the largest of
// these is the least work.
func TestLargerOfTwoBoards(t *testing.T) {
	got := cuttings(bag.OfSize(254, 104, 300))
	if base := got[len(got)-1]; base.Sheet.Name != "100 × 70 cm" || base.Up != 28 || math.Abs(base.Waste) > 1e-9 {
		t.Errorf("base cards on %+v", base)
	}
}

// A card that is left no size by its clearance is cut from nothing.
func TestCardWithoutSize(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Body.TurnIn, spec.Cards.TopEdgeMargin = 40, 40
	if got := cuttings(spec); len(got) != 1 || got[0].Card.Role != "base" {
		t.Errorf("cuttings %+v", got)
	}
}
