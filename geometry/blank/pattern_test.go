package blank_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
)

// foldsFlat tells whether the bag packs flat at all: the corner creases of a flap
// do not cross, the gussets do not meet, the flat-fold crease lies on the body.
func foldsFlat(b bag.Body) bool {
	if b.Base == bag.BasePinch {
		return true
	}
	return b.BaseFlap() <= b.Width/2 && b.Gusset <= b.Width && b.Gusset <= b.Height
}

// sectors returns the angles between neighbouring creases at a point, in degrees.
func sectors(spokes []blank.Spoke) []float64 {
	angles := make([]float64, len(spokes))
	for i := range spokes {
		next := spokes[(i+1)%len(spokes)].Angle
		turn := next - spokes[i].Angle
		if turn <= 0 {
			turn += 2 * math.Pi
		}
		angles[i] = turn * 180 / math.Pi
	}
	return angles
}

// Kawasaki: a point folds flat only if every second sector sums to 180°.
// Maekawa: the numbers of its mountains and valleys differ by 2. Both are theorems
// of origami mathematics (Kawasaki 1989, Maekawa 1983; years from memory).
func TestEveryPointFoldsFlat(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	points := 0
	for tried := 0; tried < 300; {
		spec := geomtest.RandomBag(random)
		if !foldsFlat(spec.Body) {
			continue
		}
		tried++
		for _, pattern := range blank.Patterns(spec) {
			for i := range pattern.Points {
				if !pattern.Interior(i) {
					continue
				}
				points++
				spokes := pattern.Around(i)
				odd, mountains, valleys := 0.0, 0, 0
				for k, angle := range sectors(spokes) {
					if k%2 == 1 {
						odd += angle
					}
					if pattern.Edges[spokes[k].Edge].Fold == blank.Mountain {
						mountains++
					} else {
						valleys++
					}
				}
				if math.Abs(odd-180) > 1e-6 {
					t.Errorf("%s at %v: every second sector sums to %g°, want 180° (Kawasaki)", pattern.Name, pattern.Points[i], odd)
				}
				if difference := mountains - valleys; difference != 2 && difference != -2 {
					t.Errorf("%s at %v: %d mountains, %d valleys (Maekawa)", pattern.Name, pattern.Points[i], mountains, valleys)
				}
			}
		}
		if t.Failed() {
			t.Fatalf("with %+v", spec.Body)
		}
	}
	if points < 1000 {
		t.Errorf("only %d points looked at", points)
	}
}

// Where the gusset crease meets the flat-fold crease the sectors are 90, 45, 90
// and 135 degrees (Balkcom and others, "Folding paper shopping bags", 2009, on
// the usual creases; the numbers follow from Kawasaki's theorem).
func TestSectorsAtTheGusset(t *testing.T) {
	spec := geomtest.WorkedExample()
	pattern := blank.Patterns(spec)[0]
	for i, p := range pattern.Points {
		if p.X != 290 || p.Y != 120 {
			continue
		}
		angles := sectors(pattern.Around(i))
		for k := range angles {
			angles[k] = math.Round(angles[k]*1e9) / 1e9
		}
		slices.Sort(angles)
		if want := []float64{45, 90, 90, 135}; !slices.Equal(angles, want) {
			t.Errorf("sectors %v, want %v", angles, want)
		}
		return
	}
	t.Fatal("no point where the gusset crease meets the flat-fold crease")
}

// Euler's formula for a connected plane graph: points − edges + faces = 1, the
// outer face not counted; and the faces have the area of the outline.
func TestPatternIsAPlaneGraph(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	for range 200 {
		spec := geomtest.RandomBag(random)
		for _, pattern := range blank.Patterns(spec) {
			if got := len(pattern.Points) - len(pattern.Edges) + len(pattern.Faces); got != 1 {
				t.Fatalf("points − edges + faces = %d, want 1, with %+v", got, spec.Body)
			}
		}
	}
}
