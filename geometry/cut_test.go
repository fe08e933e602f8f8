package geometry_test

import (
	"math"
	"testing"

	"gussetwright/geometry"
)

// Both sides of a cut together are the whole. Areas of a unit square by hand.
func TestCutLeft(t *testing.T) {
	square := []geometry.Vec2{{}, {X: 1}, {X: 1, Y: 1}, {Y: 1}}
	for _, test := range []struct {
		name        string
		from, along geometry.Vec2
		left        float64 // area
	}{
		{"upright", geometry.Vec2{X: 0.25}, geometry.Vec2{Y: 3}, 0.25},
		{"downward", geometry.Vec2{X: 0.25}, geometry.Vec2{Y: -0.1}, 0.75},
		{"through corners", geometry.Vec2{}, geometry.Vec2{X: 1, Y: 1}, 0.5},
		{"across a corner", geometry.Vec2{Y: 0.5}, geometry.Vec2{X: 1, Y: 1}, 0.125},
		{"beside it", geometry.Vec2{X: -1}, geometry.Vec2{Y: 1}, 0},
		{"around it", geometry.Vec2{X: 2}, geometry.Vec2{Y: 1}, 1},
	} {
		area := func(shape []geometry.Vec2) float64 {
			if len(shape) < 3 {
				return 0
			}
			return geometry.Polygon(shape...).Area()
		}
		left, right := area(geometry.CutLeft(square, test.from, test.along)), area(geometry.CutLeft(square, test.from, test.along.Scale(-1)))
		if math.Abs(left-test.left) > 1e-12 || math.Abs(left+right-1) > 1e-12 {
			t.Errorf("%s: %g to the left and %g to the right, want %g to the left", test.name, left, right, test.left)
		}
	}
}
