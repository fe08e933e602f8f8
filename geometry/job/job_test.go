package job_test

import (
	"fmt"
	"math"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/job"
	"gussetwright/geometry/sheet"
)

func reckon(spec bag.Spec) job.Job {
	laid := blank.Lay(spec)
	plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
	return job.Reckon(&laid, &plan)
}

func near(t *testing.T, what string, got, want, slack float64) {
	t.Helper()
	if math.Abs(got-want) > slack {
		t.Errorf("%s = %.9g, want %.9g", what, got, want)
	}
}

// Done by hand for the worked example (common practice, no published source) on
// half sheets of 700 × 500, paper of 150 g/m², 1000 bags and 5 % spoilage:
// 1050 bags, one up, so 1050 sheets; 1050 × 0.7 m × 0.5 m × 150 g/m² = 55.125 kg.
// The outline is 700 × 480 less the slants of the seam flap: its ends fall 70
// (base row) and 50 (turn-in) over 20, so ½ · 20 · (70 + 50) = 1200 mm² less;
// eight holes of 5 take π · 5² / 4 each.
func TestByHand(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Paper.Grammage = 150
	got := reckon(spec)
	near(t, "bags printed", got.BagsPrinted, 1050, 0)
	near(t, "sheets", got.Sheets, 1050, 0)
	near(t, "paper in kg", got.PaperKilograms, 55.125, 1e-9)
	area := 700*480 - 1200 - 8*math.Pi*25/4
	near(t, "paper in one bag", got.PaperArea, area, 1e-6)
	// ISO 536: grammage is mass per area.
	near(t, "grams of paper", got.PaperGrams, area*150/1e6, 1e-9)
	// Two top cards of 236 × 45 at 350 g/m², a base card of 236 × 96 at 400 g/m².
	near(t, "grams of cards", got.CardGrams, (2*236*45*350+236*96*400)/1e6, 1e-9)
	// Spacing 120, rise 180 twice, knots 35 twice: 550 mm; two for each of 1000 bags.
	near(t, "rope of a handle", got.RopePerHandle, 550, 0)
	near(t, "rope in metres", got.RopeMetres, 1100, 1e-9)
	near(t, "volume in litres", got.Volume, 8.64, 1e-12)
}

// Packed flat the worked example is as wide as its face and as high as it stands. Most
// layers lie beside the seam just below the front edge of the base, counted by hand:
// back, two halves of the gusset, front with seam flap, its strip below the flat-fold
// crease with seam flap, 7; and of the base the gusset flap, the front flap, its corner
// and both of the seam flap, 5. Paper of 150 g/m² with a bulk of 0.76 is 114 µm thick.
func TestPackedSize(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Paper.Grammage = 150
	got := reckon(spec)
	near(t, "packed width", got.PackedWidth, 240, 1e-6)
	near(t, "packed height", got.PackedHeight, 360, 1e-6)
	near(t, "packed thickness", got.PackedThickness, 12*0.114, 1e-6)
	spec.Body.Height, spec.Body.TurnIn = 90, 30 // lower than the base is deep
	if got := reckon(spec); got.PackedThickness != 0 {
		t.Errorf("a bag that does not pack is %v mm thick", got.PackedThickness)
	}
}

// Film of 16 g/m² (common practice, no published source) on all of the print side
// but where glue must hold. By hand for the worked example with a pinch base of
// 20 mm: the seam flap is 20 wide and 20 + 360 + 50 high, less the slants of its ends,
// ½ · 20 · (20 + 50); the base row of the back and as much above it are 240 × 20 each.
func TestFilmIsWeighed(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Body.Base, spec.Cards.Base = bag.BasePinch, false
	bare := reckon(spec)
	near(t, "film on bare paper", bare.FilmGrams, 0, 0)
	const glued = 20*430 - 700 + 2*240*20
	for _, film := range []bag.Lamination{bag.LaminationGloss, bag.LaminationMatt} {
		spec.Paper.Lamination = film
		got := reckon(spec)
		near(t, "film", got.FilmGrams, (bare.PaperArea-glued)*16/1e6, 1e-9)
		near(t, "bag", got.BagGrams, bare.BagGrams+got.FilmGrams, 1e-9)
		near(t, "paper", got.PaperGrams, bare.PaperGrams, 0)
		near(t, "paper of all sheets", got.PaperKilograms, bare.PaperKilograms, 0)
	}
}

func TestTwoPiecesTakeTwoPlaces(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Body.Seams = bag.SeamsTwo
	spec.Sheet = bag.Sheet{Width: 1000, Height: 700, Gripper: 20, GripperEdge: bag.GripperLong, Grain: bag.GrainEither, GrainRule: bag.GrainRequired}
	got := reckon(spec)
	laid := blank.Lay(spec)
	plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
	near(t, "sheets", got.Sheets, math.Ceil(1050*2/float64(plan.Up())), 0)
}

// Holes are paper that falls out: the area of a hand hole with round ends is a
// rectangle and a circle, in both layers of both faces.
func TestHandHoleFallsOut(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Handle.Kind = bag.HandleNone
	whole := reckon(spec).PaperArea
	spec.Handle.Kind = bag.HandleHandHole
	spec.Body.TurnIn, spec.Handle.Drop = 50, 35
	near(t, "area of the hand holes", whole-reckon(spec).PaperArea, 4*(60*30+math.Pi*15*15), 1e-6)
}

func TestNothingFitsNoSheets(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Sheet.Width = 300
	if got := reckon(spec); got.Sheets != 0 || got.PaperKilograms != 0 {
		t.Errorf("%g sheets and %g kg for a bag that fits no sheet", got.Sheets, got.PaperKilograms)
	}
}

func ExampleReckon() {
	spec := bag.Default()
	laid := blank.Lay(spec)
	plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
	run := job.Reckon(&laid, &plan)
	fmt.Printf("%g sheets, %.1f g a bag, %.0f m of rope\n", run.Sheets, run.BagGrams, run.RopeMetres)
	// Output: 1050 sheets, 73.3 g a bag, 1100 m of rope
}
