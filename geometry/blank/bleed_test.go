package blank_test

import (
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
)

// lowAndWide returns a bag so low, with a seam flap so wide, that the slanted ends of the
// flap would cross at the angle that is asked for.
func lowAndWide(t *testing.T) bag.Spec {
	t.Helper()
	spec := bag.Default()
	b := &spec.Body
	b.Width, b.Gusset, b.Height, b.TurnIn, b.BaseOverlap = 47.6, 216.3, 40, 239.3, 154.2
	b.SeamFlap, b.SeamRelief, b.Chamfer, b.Seams = 47.9, 0.8, 5, bag.SeamsOne
	b.Base, b.SlotWidth, b.Top = bag.BaseSlotted, 8.5, bag.TopTurnIn
	if err := spec.Validate(); err != nil {
		t.Fatal(err)
	}
	return spec
}

func TestSlantsOfTheSeamFlapDoNotCross(t *testing.T) {
	spec := lowAndWide(t)
	laid := blank.Lay(spec)
	piece := &laid.Pieces[0]
	var ends []float64 // of the slants, on the way round against the clock
	for _, v := range piece.Outline.Vertices {
		if v.X > piece.Box().Max.X-geometry.Tolerance {
			ends = append(ends, v.Y)
		}
	}
	if len(ends) != 2 || ends[0] >= ends[1] {
		t.Errorf("the flap ends from %v, want two heights in order", ends)
	}
}

// However wide the bleed is beside the edges of the flap, there is an outline that lies
// at least the bleed outside of the blank on all four sides.
func TestBleedOfALowBag(t *testing.T) {
	laid := blank.Lay(lowAndWide(t))
	piece := &laid.Pieces[0]
	for _, bleed := range []float64{0.5, 3, 9, 20} {
		outline := piece.BleedOutline(bleed)
		if outline.Len() < 4 {
			t.Errorf("bleed of %g mm: an outline of %d edges", bleed, outline.Len())
			continue
		}
		got, want := outline.Bounds().Inset(-geometry.Tolerance), piece.Outline.Bounds().Inset(-bleed)
		if !got.Contains(want.Min) || !got.Contains(want.Max) {
			t.Errorf("bleed of %g mm: %v, want at least %v", bleed, got, want)
		}
	}
}
