package fold_test

import (
	"math"
	"slices"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
)

// facetsOf returns the facets of a panel.
func facetsOf(body *fold.Body, panel string) []*fold.Facet {
	var list []*fold.Facet
	for i := range body.Facets {
		if body.Facets[i].Panel == panel {
			list = append(list, &body.Facets[i])
		}
	}
	return list
}

// turned returns how far what lies below the base crease of a column is turned from
// the line of the body above it: positive to the inside.
func turned(body *fold.Body, column string) float64 {
	above, below := facetsOf(body, column)[0].Pose, facetsOf(body, column+"-base")[0].Pose
	// The free edge goes from straight on toward the reverse.
	on := above.Up.Dot(below.Up)
	inward := below.Up.Dot(above.Out()) // down is −Up, the reverse −Out
	return math.Atan2(inward, on)
}

// linked returns how far the gusset flap is turned in when the flap of the face is
// turned by b, found by vectors alone: the panel edge below the base crease must stay
// at 45° to the base corner crease, as on the blank. The gusset flap hangs on the
// upright y axis of a corner at the origin, the face's flap on the x axis, and z is up.
func linked(b float64) float64 {
	y, x := geometry.Vec3{Y: 1}, geometry.Vec3{X: 1}
	corner := geometry.Vec3{X: 1, Z: -1}.Unit().Turn(x, b)
	apart := func(a float64) float64 {
		edge := geometry.Vec3{Z: -1}.Turn(y, -a)
		return math.Acos(edge.Dot(corner)) - math.Pi/4
	}
	// The angle grows up to where the edge points most away and then falls to its
	// value at a quarter turn, where edge and base crease are one: look below that.
	low, high := 1e-12, math.Pi/2-1e-12
	if math.Abs(b) < 1e-12 {
		return 0
	}
	for range 200 {
		middle := (low + high) / 2
		if apart(middle) > 0 == (apart(low) > 0) && apart(middle) != 0 {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}

// While the gusset flaps are turned in the base corners move as the vectors say, and
// the two flaps of the faces spread outward alike.
func TestBaseCornerLinkage(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Paper.Caliper = 1 // µm: layers are out of the way
	l := fold.Fold(lay(t, spec))
	stage := stageOf(t, l, "base-gussets")
	for _, moment := range []float64{0.05, 0.2, 0.4, 0.6, 0.8, 0.95} {
		body := l.Pose(stage, moment)
		front, back := turned(&body, "front"), turned(&body, "back")
		if front >= 0 || math.Abs(front-back) > 1e-9 {
			t.Errorf("at %v the flaps are turned by %v and %v, want both outward", moment, front, back)
		}
		want := linked(front)
		for _, gusset := range []string{"gusset-right", "gusset-left"} {
			if got := turned(&body, gusset); math.Abs(got-want) > 1e-7 {
				t.Errorf("at %v: front flap %.4f°, %s %.4f°, want %.4f°", moment, front*180/math.Pi, gusset, got*180/math.Pi, want*180/math.Pi)
			}
		}
	}
}

// The vectors and the closed form sin a + cos a · cos b = 1 agree at the angles that
// it was first tabulated for (to a thousandth of a degree).
func TestLinkageValues(t *testing.T) {
	for a, b := range map[float64]float64{1: 10.674, 10: 32.955, 30: 54.736, 45: 65.530, 60: 74.458, 89: 89.500} {
		for _, side := range []float64{1, -1} {
			if got := linked(side*b*math.Pi/180) * 180 / math.Pi; math.Abs(got-a) > 0.001 {
				t.Errorf("flap %v°: gusset flap %.4f°, want %v°", side*b, got, a)
			}
		}
	}
}

// The corner of a flap folds to the reverse of it, as its mountain crease says, and
// paper stays joined around every base corner but for layers.
func TestCornersFoldInward(t *testing.T) {
	laid := lay(t, styles()["block"])
	l := fold.Fold(laid)
	for _, name := range []string{"base-gussets", "base-front", "base-back"} {
		stage := stageOf(t, l, name)
		for _, moment := range []float64{0.1, 0.3, 0.5, 0.7, 0.9} {
			body := l.Pose(stage, moment)
			for _, panel := range []string{"front-base", "back-base"} {
				parts := facetsOf(&body, panel)
				flap := parts[0].Pose
				for _, corner := range parts[1:] {
					reach := 0.0
					for _, p := range corner.Points {
						reach = min(reach, p.Sub(flap.Origin).Dot(flap.Out()))
					}
					highest := math.Inf(-1)
					for _, p := range corner.Points {
						highest = max(highest, p.Sub(flap.Origin).Dot(flap.Out()))
					}
					if reach >= 0 || highest > 1e-9 {
						t.Errorf("%s at %v: a corner of %s reaches %v mm to the print side", name, moment, panel, highest)
					}
				}
			}
		}
	}
	if !slices.ContainsFunc(laid.Pieces[0].Lines, func(line blank.Line) bool {
		return line.Role == blank.RoleBaseCorner && line.Fold == blank.Mountain
	}) {
		t.Error("the base corner creases are no mountains")
	}
}
