package foldedpane

import (
	"slices"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/render/printed"
)

// The first picture after a change does not wait for textures as fine as those of the
// picture that follows it.
func TestDraftTakesCoarsePaper(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	if b.artist.papered.scale <= 1 {
		t.Fatal("the fine textures are no finer than coarse ones, so this test shows nothing")
	}
	var scales []float64
	var qualities []printed.Quality
	b.Pane.request = func(o order) {
		made := b.artist.draw(o)
		scales, qualities = append(scales, b.artist.papered.scale), append(qualities, b.artist.papered.quality)
		b.Pane.show(made)
	}
	before := b.artist.papered.scale
	spec := b.doc.State().Spec
	spec.Body.Width++
	b.doc.Set(spec)
	if !slices.Equal(scales, []float64{1, before}) || !slices.Equal(qualities, []printed.Quality{printed.Draft, printed.Fine}) {
		t.Errorf("textures of %v pixels per mm in qualities %v, want 1 and then %g", scales, qualities, before)
	}
	// Where the bag is the same, a draft takes the fine textures that are there.
	scales = nil
	b.turn(1, 0)
	if scales[0] != before {
		t.Errorf("turning the bag takes textures of %g pixels per mm, though those of %g are there", scales[0], before)
	}
}
