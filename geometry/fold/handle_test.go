package fold_test

import (
	"math"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
)

// The loop of a handle is as long as the rope that is ordered for it, less the
// knots: spacing + 2 × rise. Chords stand for its bend, so it comes out a little short.
func TestHandleLength(t *testing.T) {
	for _, kind := range []bag.HandleKind{bag.HandleRope, bag.HandleTape} {
		for _, rise := range []float64{20, 60, 180} {
			spec := geomtest.WorkedExample()
			spec.Handle.Kind, spec.Handle.Rise = kind, rise
			body := fold.Standing(lay(t, spec))
			longest := 0.0
			for _, cord := range body.Cords {
				length := 0.0
				// The ends that lead through the paper or lie over a slit do not count.
				for i := 2; i < len(cord.Path)-1; i++ {
					length += cord.Path[i].Sub(cord.Path[i-1]).Length()
				}
				longest = max(longest, length)
			}
			want := spec.Handle.Spacing + 2*rise
			if longest > want || longest < want*0.998 {
				t.Errorf("%s, rise %v: the loop is %v mm long, want %v", kind, rise, longest, want)
			}
		}
	}
}

// A tape is a little narrower than its slits and covers them outside; its ends lie behind
// them, inside. It has no eyelets, though the switch is left on.
func TestTape(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Handle.Kind, spec.Handle.Eyelets, spec.Handle.SlitHeight = bag.HandleTape, true, 30
	body := fold.Standing(lay(t, spec))
	inside, outside := 0, 0
	for _, cord := range body.Cords {
		if cord.Stuff != fold.Textile || 2*cord.Wide >= 30 || 2*cord.Wide < 25 {
			t.Errorf("%v, %v wide", cord.Stuff, 2*cord.Wide)
		}
		low, depth := math.Inf(1), cord.Path[0].Y
		for _, p := range cord.Path {
			low = min(low, p.Z)
		}
		if want := spec.Body.Height - spec.Handle.Drop - 15; math.Abs(low-want) > 1e-9 {
			t.Errorf("it begins %v above the ground, the slit at %v", low, want)
		}
		if depth > 0 && depth < spec.Body.Gusset {
			inside++
		} else {
			outside++
		}
	}
	if inside != 4 || outside != 2 {
		t.Errorf("%d ends inside and %d loops outside, want 4 and 2", inside, outside)
	}
}
