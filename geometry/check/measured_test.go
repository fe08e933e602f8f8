package check_test

import (
	"math/rand/v2"
	"regexp"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/check"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/sheet"
)

// No finding says millimetres to someone who works in inches: when lengths are said in
// them no other number with a unit of length is left.
func TestFindingsAreMeasured(t *testing.T) {
	millimetres := regexp.MustCompile(`\d\s*mm\b`)
	random := rand.New(rand.NewPCG(3, 4))
	measured := map[string]bool{}
	for range 300 {
		laid := blank.Lay(geomtest.RandomBag(random))
		plan := sheet.Lay(laid.Spec.Sheet, laid.SheetPiece())
		for _, finding := range check.Inspect(&laid, &plan) {
			for _, said := range []phrase.Phrase{finding.Message, finding.Remedy, plan.Reason()} {
				inches := said.With(geometry.Inch.Spell).String()
				if millimetres.MatchString(inches) {
					t.Fatalf("%s says in inches %q", finding.Code, inches)
				}
				if inches != said.String() {
					measured[finding.Code] = true
				}
			}
		}
	}
	if len(measured) < 10 {
		t.Errorf("only %d findings have lengths in them", len(measured))
	}
}
