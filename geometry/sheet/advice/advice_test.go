package advice_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/check"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/sheet"
	"gussetwright/geometry/sheet/advice"
)

// says joins what near misses say.
func says(near []advice.NearMiss) string {
	var list []string
	for i := range near {
		list = append(list, near[i].Phrase().String())
	}
	return strings.Join(list, "; ")
}

// The worked example, common practice, no published source: the blank 700 × 480 lies
// once on 1000 × 700 with the gripper of 20 on the long edge, twice with it on the
// short one. Half a millimetre more face makes it 701 × 480, too long for either: 1 mm
// more than 700, of which a face takes 2, a gusset 2 and a seam flap 1 a millimetre.
func TestWorkedExample(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Sheet = bag.Sheet{Width: 1000, Height: 700, Gripper: 20, GripperEdge: bag.GripperLong, Grain: bag.GrainEither, GrainRule: bag.GrainRequired}
	laid := blank.Lay(spec)
	plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
	near := advice.Near(&laid, &plan)
	want := "2-up with the gripper on the short edge; 2-up if the face width were 230 mm instead of 240 mm"
	if got := says(near); got != want {
		t.Errorf("got %q", got)
	}

	spec.Body.Width = 240.5
	laid = blank.Lay(spec)
	plan = sheet.Lay(spec.Sheet, laid.SheetPiece())
	rows := advice.Rank(&laid, laid.SheetPiece(), []sheet.Stock{{Usual: sheet.Usual{Name: "100 × 70 cm", Width: 1000, Height: 700}}}, sheet.ByWaste)
	if len(rows) != 1 || rows[0].Plan.Up() != 1 || !rows[0].Reason.Empty() {
		t.Fatalf("%+v", rows)
	}
	changes := []struct {
		path     string
		from, to float64
	}{{"bag.seam_flap_mm", 20, 19}, {"bag.width_mm", 240.5, 240}, {"bag.gusset_mm", 100, 99.5}}
	if len(rows[0].Near) != len(changes) {
		t.Fatalf("%d near misses: %s", len(rows[0].Near), says(rows[0].Near))
	}
	for i, w := range changes {
		n := rows[0].Near[i]
		if len(n.Changes) != 1 || n.Changes[0].Path != w.path || n.Changes[0].From != w.from || math.Abs(n.Changes[0].To-w.to) > 1e-9 ||
			math.Abs(n.Exact[0]-(w.from-w.to)) > 1e-6 || n.Edge != bag.GripperShort || n.Plan.Up() != 2 {
			t.Errorf("near miss %d is %q, want %v", i, n.Phrase(), w)
		}
	}
}

// A sheet on which nothing fits says by how much, and what would make it fit.
func TestReasonAndRemedy(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Sheet.Gripper, spec.Print.Bleed = 12, 3
	laid := blank.Lay(spec) // 700 × 480
	stock := []sheet.Stock{{Usual: sheet.Usual{Name: "697 × 497", Width: 697, Height: 497}}}
	row := advice.Rank(&laid, laid.SheetPiece(), stock, sheet.ByWaste)[0]
	if got := row.Reason.String(); got != "3 mm too long with the gripper on the long edge" {
		t.Errorf("reason %q", got)
	}
	want := "1-up if the seam flap were 17 mm instead of 20 mm; 1-up if the face width were 238.5 mm instead of 240 mm; " +
		"1-up if the gusset were 98.5 mm instead of 100 mm"
	if got := says(row.Near); got != want {
		t.Errorf("near misses\n%s, want\n%s", got, want)
	}
}

// Worked out by hand: the blank 700 × 480 is 28 too wide for a sheet of 672. A seam flap
// of 20 may give 8 of them (check warns below 12), two faces of 240 may give 24 and two
// gussets of 100 give 10: none does it alone.
func TestTwoChanges(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Sheet.Gripper = 8
	laid := blank.Lay(spec)
	stock := []sheet.Stock{{Usual: sheet.Usual{Width: 672, Height: 500}}}
	row := advice.Rank(&laid, laid.SheetPiece(), stock, sheet.ByWaste)[0]
	if len(row.Near) != 1 || len(row.Near[0].Changes) != 2 {
		t.Fatalf("near misses: %s", says(row.Near))
	}
	lacking := 0.0
	times := map[string]float64{"bag.width_mm": 2, "bag.gusset_mm": 2, "bag.seam_flap_mm": 1}
	for i, c := range row.Near[0].Changes {
		lacking += times[c.Path] * row.Near[0].Exact[i]
	}
	if math.Abs(lacking-28) > 1e-6 {
		t.Errorf("%s: takes %g off, want 28", says(row.Near), lacking)
	}
	if got := row.Near[0].Phrase().String(); !strings.HasPrefix(got, "1-up if the ") || !strings.Contains(got, " and the ") {
		t.Errorf("got %q", got)
	}
}

// Whatever is proposed can be entered, holds what it says when all is drawn anew, and
// makes no finding that the bag does not have already; less than that does not hold.
func TestAdviceOfRandomBags(t *testing.T) {
	random := rand.New(rand.NewPCG(19, 20))
	proposals, pairs := 0, 0
	for range 70 {
		spec := geomtest.RandomBag(random)
		spec.Sheet.Gap, spec.Sheet.Gripper = 4+6*random.Float64(), 10+8*random.Float64()
		laid := blank.Lay(spec)
		piece := laid.SheetPiece()
		piece.Grain = []sheet.GrainRule{sheet.GrainRequired, sheet.GrainPreferred}[random.IntN(2)]
		for _, row := range advice.Rank(&laid, piece, sheet.UsualStock(), sheet.ByPaper) {
			for i := range row.Near {
				proposals++
				pairs += len(row.Near[i].Changes) / 2
				verify(t, &laid, piece, &row.Plan, &row.Near[i])
			}
		}
		plan := sheet.Lay(spec.Sheet, piece)
		near := advice.Near(&laid, &plan)
		for i := range near {
			verify(t, &laid, piece, &plan, &near[i])
		}
	}
	t.Logf("%d proposals, %d of two changes", proposals, pairs)
	if proposals < 500 || pairs < 30 {
		t.Errorf("%d proposals, %d of two changes: the tries are too tame", proposals, pairs)
	}
}

func verify(t *testing.T, laid *blank.Blank, like sheet.Piece, before *sheet.Plan, n *advice.NearMiss) {
	t.Helper()
	lay := func(spec bag.Spec) (blank.Blank, sheet.Plan) {
		spec.Body.Seams = map[int]bag.Seams{1: bag.SeamsOne, 2: bag.SeamsTwo}[laid.Seams]
		drawn := blank.Lay(spec)
		piece := drawn.SheetPiece()
		piece.Grain = like.Grain
		return drawn, sheet.Lay(spec.Sheet, piece)
	}
	spec := laid.Spec
	n.Apply(&spec)
	drawn, plan := lay(spec)
	if spec.Validate() != nil || plan.Up() <= before.Up() || plan.Up() != n.Plan.Up() {
		t.Errorf("%q on %g × %g: %d up, before %d, %v", n.Phrase(), spec.Sheet.Width, spec.Sheet.Height, plan.Up(), before.Up(), spec.Validate())
	}
	first := *laid
	first.Spec.Sheet = n.Plan.Sheet
	first.Spec.Sheet.Gap, first.Spec.Sheet.Side, first.Spec.Sheet.Tail, first.Spec.Sheet.Gripper =
		laid.Spec.Sheet.Gap, laid.Spec.Sheet.Side, laid.Spec.Sheet.Tail, laid.Spec.Sheet.Gripper
	known := map[string]bool{}
	for _, f := range check.Inspect(&first, &plan) {
		known[f.Code] = true
	}
	for _, f := range check.Inspect(&drawn, &plan) {
		if f.Severity != check.Note && !known[f.Code] {
			t.Errorf("%q makes the finding %s", n.Phrase(), f.Code)
		}
	}
	if len(n.Changes) != 1 {
		return
	}
	// A hair less than the exact amount holds no more than before. Where outlines reach
	// into each other that is not strictly so: the search for how they do can miss a place.
	hair := 0.02
	if n.Plan.Nested {
		hair = 0.5
	}
	field, _ := bag.FieldAt(n.Changes[0].Path)
	field.SetNumber(&spec, n.Changes[0].From-n.Exact[0]+hair)
	if _, less := lay(spec); less.Up() > before.Up() && n.Exact[0] > hair {
		t.Errorf("%q: a hair less than %g holds %d too", n.Phrase(), n.Exact[0], less.Up())
	}
}

// Without bleed in the piece its entry is never proposed; with it, it is.
func TestBleedIsProposedWhereItCounts(t *testing.T) {
	spec := geomtest.WorkedExample() // 700 × 480
	spec.Sheet = bag.Sheet{Width: 705, Height: 600, Gripper: 10, GripperEdge: bag.GripperLong, Grain: bag.GrainEither, GrainRule: bag.GrainRequired}
	spec.Print.Bleed = 3
	laid := blank.Lay(spec)
	piece := laid.SheetPiece()
	piece.Bleed = 3 // 700 + 2 × 3 > 705
	plan := sheet.Lay(spec.Sheet, piece)
	if near := says(advice.Near(&laid, &plan)); !strings.Contains(near, "1-up if the bleed were 2.5 mm instead of 3 mm") {
		t.Errorf("near misses: %s", near)
	}
	plan = sheet.Lay(spec.Sheet, laid.SheetPiece())
	if near := says(advice.Near(&laid, &plan)); strings.Contains(near, "bleed") {
		t.Errorf("near misses: %s", near)
	}
}

func BenchmarkRank(b *testing.B) {
	for _, bench := range []struct {
		name string
		spec bag.Spec
		rule sheet.GrainRule
	}{
		{"default", bag.Default(), sheet.GrainRequired},
		{"default-grain-free", bag.Default(), sheet.GrainFree},
		{"two-seams", bag.OfSize(420, 120, 360), sheet.GrainRequired},
		{"small-grain-free", bag.OfSize(120, 60, 160), sheet.GrainFree},
		{"tiny-grain-free", bag.OfSize(60, 30, 80), sheet.GrainFree},
	} {
		b.Run(bench.name, func(b *testing.B) {
			laid := blank.Lay(bench.spec)
			piece := laid.SheetPiece()
			piece.Grain = bench.rule
			for b.Loop() {
				advice.Rank(&laid, piece, sheet.UsualStock(), sheet.ByWaste)
			}
		})
	}
}
