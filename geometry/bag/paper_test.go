package bag_test

import (
	"math"
	"testing"

	"gussetwright/geometry/bag"
)

// A glossary of paper terms gives this example of the definition of bulk in
// ISO 534 (thickness by grammage): 150 g/m² × 1.3 cm³/g = 195 µm.
func TestCaliperFromBulk(t *testing.T) {
	paper := bag.Paper{Kind: bag.PaperBoard, Grammage: 150}
	if paper.Bulk() != 1.3 {
		t.Fatalf("the example needs a bulk of 1.3 cm³/g, board has %g", paper.Bulk())
	}
	if got := paper.CaliperMicrons(); math.Abs(got-195) > 1e-9 {
		t.Errorf("got %g µm, want 195", got)
	}
	if got := paper.Thickness(); math.Abs(got-0.195) > 1e-12 {
		t.Errorf("got %g mm, want 0.195", got)
	}
}

func TestMeasuredCaliperWins(t *testing.T) {
	paper := bag.Paper{Kind: bag.PaperBoard, Grammage: 150, Caliper: 210}
	if got := paper.CaliperMicrons(); got != 210 {
		t.Errorf("got %g µm, want 210", got)
	}
}

// Every kind of paper that can be chosen has a bulk. The spans are values from
// memory, to be replaced by the data sheets of mills.
func TestBulkOfEveryKind(t *testing.T) {
	spans := map[bag.PaperKind][2]float64{
		bag.PaperGloss:    {0.72, 0.80},
		bag.PaperMatt:     {0.82, 0.95},
		bag.PaperUncoated: {1.20, 1.30},
		bag.PaperKraft:    {1.25, 1.45},
		bag.PaperBoard:    {1.15, 1.60},
	}
	for _, name := range field(t, "paper.kind").Options {
		span, known := spans[bag.PaperKind(name)]
		if got := (bag.Paper{Kind: bag.PaperKind(name)}).Bulk(); !known || got < span[0] || got > span[1] {
			t.Errorf("%s: bulk %g cm³/g, want %v", name, got, span)
		}
	}
}
