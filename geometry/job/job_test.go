package job_test

import (
	"fmt"
	"math"
	"math/rand/v2"
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
	near(t, "grams of cards", got.CardGrams, (2*(236*45-2*math.Pi*2.5*2.5)*350+236*96*400)/1e6, 1e-9)
	// Spacing 120, rise 180 twice, knots 35 twice: 550 mm; two for each of 1000 bags.
	near(t, "rope of a handle", got.RopePerHandle, 550, 0)
	near(t, "rope in metres", got.RopeMetres, 1100, 1e-9)
	near(t, "volume in litres", got.Volume, 8.64, 1e-12)
}

// Film of 16 g/m² (common practice, no published source) on all of the print side
// but where glue must hold. By hand for the worked example with a pinch base of
// 20 mm: the seam flap is 20 wide and 20 + 360 high, less the slant of its lower end,
// ½ · 20 · 20; the base row of the back and as much above it are 240 × 20 each, drawn in
// by 2 on all sides.
func TestFilmIsWeighed(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Body.Base, spec.Cards.Base = bag.BasePinch, false
	bare := reckon(spec)
	near(t, "film on bare paper", bare.FilmGrams, 0, 0)
	const glued = 20*380 - 200 + 2*236*16
	for _, film := range []bag.Lamination{bag.LaminationGloss, bag.LaminationMatt} {
		spec.Paper.Lamination = film
		got := reckon(spec)
		near(t, "film", got.FilmGrams, (bare.PaperArea-glued)*16/1e6, 1e-9)
		near(t, "bag", got.BagGrams, bare.BagGrams+got.FilmGrams, 1e-9)
		near(t, "paper", got.PaperGrams, bare.PaperGrams, 0)
		near(t, "paper of all sheets", got.PaperKilograms, bare.PaperKilograms, 0)
	}
}

// Sheets and rule count whole bags. The pieces of a bag with two seams that are three up
// lie each on a sheet of its own, 3 bags on two sheets: 1050 bags take 350 sheets of each
// form, and 40 more of each to make ready. With two up both lie on one sheet.
func TestFormsOfTwoPieces(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Body.Seams, spec.Run.MakeReady = bag.SeamsTwo, 40
	laid := blank.Lay(spec)
	width, height := laid.Pieces[0].Width, laid.Pieces[0].Height
	for _, test := range []struct {
		up, forms, bags, sheets int
	}{{1, 2, 1, 2 * (1050 + 40)}, {2, 1, 1, 1050 + 40}, {3, 2, 3, 2 * (350 + 40)}, {4, 1, 2, 525 + 40}} {
		spec.Sheet.Width, spec.Sheet.Height = float64(test.up)*width, height+20
		if spec.Sheet.Width < spec.Sheet.Height {
			spec.Sheet.GripperEdge = bag.GripperShort // still along the width
		} else {
			spec.Sheet.GripperEdge = bag.GripperLong
		}
		plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
		if plan.Up() != test.up {
			t.Fatalf("%d up, want %d", plan.Up(), test.up)
		}
		laid.Spec = spec
		got := job.Reckon(&laid, &plan)
		near(t, "forms", float64(got.Forms), float64(test.forms), 0)
		near(t, "sheets", got.Sheets, float64(test.sheets), 0)
		near(t, "make-ready", got.MakeReadySheets, float64(40*test.forms), 0)
		near(t, "cutting rule", got.DieCutMetres, float64(test.bags)*got.CutMetres, 1e-9)
		near(t, "creasing rule", got.DieCreaseMetres, float64(test.bags)*got.CreaseMetres, 1e-9)
	}
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

// So is that of a slit of 22 with round ends, 1.5 wide: two in both layers of both faces.
// Its rule runs all round it.
func TestSlitsFallOut(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Handle.Kind = bag.HandleNone
	whole := reckon(spec)
	spec.Handle.Kind = bag.HandleTape
	taped := reckon(spec)
	near(t, "area of the slits", whole.PaperArea-taped.PaperArea, 8*(20.5*1.5+math.Pi*0.75*0.75), 1e-6)
	near(t, "rule for the slits", taped.CutMetres-whole.CutMetres, 8*(2*20.5+math.Pi*1.5)/1000, 1e-9)
	near(t, "tape of one handle", taped.RopePerHandle, 120+2*180+2*35, 1e-9)
}

// glueByHand returns the length in m and the area in mm² of the glue of the worked example,
// done by hand. The base flaps are 70 long, the base 100 deep, and glue stays 2 from edges
// and folds.
//
// The seam flap is glued up to the top fold, 430 high, and its turn-in of 50 on the reverse,
// each less the slant of its end. Each envelope corner, half of a square of 70, is left with
// two legs of 70 − 2 − 2 − 2√2; so is what it lies on of a gusset flap, but that under the
// back flap lacks the half square over a side of 36 − 2√2 that the front flap has covered.
// The flaps overlap by 40, of which 36 are left, 140 − 4√2 wide in the middle and 36 less at
// both edges. The turn-in is 240, 100, 240 and 100 × 50, the two cards are 236 × 45; in each
// two holes of 5 stay free on both faces, with 2 around them.
func glueByHand() (length, area float64) {
	leg := 66 - 2*math.Sqrt2
	half, taken := leg*leg/2, (36-2*math.Sqrt2)*(36-2*math.Sqrt2)/4
	middle := 140 - 4*math.Sqrt2
	free := 2 * math.Pi * 4.5 * 4.5
	area = 20*430 - 20*70/2 + 20*50 - 20*50/2 // seam flap
	area += 4*half + 2*half + 2*(half-taken)  // corners and gusset flaps
	area += 36 * (2*middle - 36) / 2          // overlap
	area += 680*50 - 2*free + 2*(236*45-free) // turn-in and cards
	return (430 + 50 + 8*leg + middle + 680 + 2*236) / 1000, area
}

func TestGlueByHand(t *testing.T) {
	got := reckon(geomtest.WorkedExample())
	length, area := glueByHand()
	near(t, "length in m", got.GlueMetres, length, 1e-9)
	near(t, "area in mm²", got.GlueArea, area, 1e-6)
	near(t, "grams at 40 g/m²", got.GlueGrams, area*40/1e6, 1e-9)
	near(t, "kg for 1050 bags", got.GlueKilograms, 1050*area*40/1e9, 1e-9)
}

// The outline of the worked example: 680 along base and top, 480 on the left, 360 on the
// right, and the slants of the seam flap, 70 and 50 over 20. It is alone on its sheet.
func TestRuleByHand(t *testing.T) {
	got := reckon(geomtest.WorkedExample())
	cut := (2*680 + 480 + 360 + math.Hypot(20, 70) + math.Hypot(20, 50)) / 1000
	near(t, "cutting rule of a bag", got.CutMetres, cut, 1e-9)
	near(t, "cutting rule in the die", got.DieCutMetres, cut, 1e-9)
	near(t, "creasing rule in the die", got.DieCreaseMetres, got.CreaseMetres, 1e-9)
}

// No bag is printed too few, and one sheet of each form less would not do.
func TestSheetsHoldTheRun(t *testing.T) {
	random := rand.New(rand.NewPCG(61, 1))
	looked := 0
	for range 300 {
		spec := geomtest.RandomBag(random)
		spec.Run = bag.Run{Quantity: float64(1 + random.IntN(3000)), Spoilage: 20 * random.Float64(), MakeReady: float64(random.IntN(200))}
		laid := blank.Lay(spec)
		plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
		got := job.Reckon(&laid, &plan)
		if plan.Up() == 0 {
			continue
		}
		looked++
		pieces := (got.Sheets - got.MakeReadySheets) * float64(plan.Up())
		needed := got.BagsPrinted * float64(laid.PiecesPerBag())
		if pieces < needed || got.BagsPrinted < got.Quantity {
			t.Errorf("%g pieces for %g bags of %d", pieces, got.BagsPrinted, laid.PiecesPerBag())
		}
		if laid.PiecesPerBag() == 1 && pieces-float64(plan.Up()) >= needed {
			t.Errorf("%g sheets are more than %g bags take", got.Sheets, got.BagsPrinted)
		}
	}
	if looked < 100 {
		t.Errorf("only %d bags fit their sheet", looked)
	}
}

func TestNothingFitsNoSheets(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Sheet.Width = 300
	if got := reckon(spec); got.Sheets != 0 || got.PaperKilograms != 0 || got.Forms != 0 || got.DieCutMetres != 0 {
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

func BenchmarkReckon(b *testing.B) {
	spec := bag.Default()
	laid := blank.Lay(spec)
	plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
	b.ReportAllocs()
	for b.Loop() {
		job.Reckon(&laid, &plan)
	}
}
