package fold_test

import (
	"math"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/fold"
)

// plate returns a rectangle of cut paper at a pose.
func plate(width, height float64, pose fold.Pose) fold.Facet {
	f := fold.Facet{Panel: "plate", Pose: pose}
	for _, v := range geometry.RectAt(0, 0, width, height).Path().Vertices {
		f.Corners = append(f.Corners, v.Vec2)
		f.Points = append(f.Points, pose.At(v.Vec2))
	}
	return f
}

func facing(origin, right, up geometry.Vec3) fold.Pose {
	return fold.Pose{Origin: origin, Right: right, Up: up}
}

// Depths that follow from the drawing: a plate of 100 × 100 on the ground and another
// that stands on edge, leans or lies.
func TestCrossing(t *testing.T) {
	x, y, z := geometry.Vec3{X: 1}, geometry.Vec3{Y: 1}, geometry.Vec3{Z: 1}
	ground := plate(100, 100, facing(geometry.Vec3{}, x, y))
	lean := geometry.Vec3{Y: math.Sqrt2 / 2, Z: math.Sqrt2 / 2}
	for name, test := range map[string]struct {
		other fold.Facet
		want  float64
	}{
		"stands through the middle":  {plate(20, 60, facing(geometry.Vec3{X: 40, Y: 50, Z: -7}, x, z)), 7},
		"pokes through from above":   {plate(20, 60, facing(geometry.Vec3{X: 40, Y: 50, Z: -53}, x, z)), 7},
		"leans through":              {plate(20, 60, facing(geometry.Vec3{X: 40, Y: 30, Z: -5}, x, lean)), 5},
		"cuts the edge":              {plate(20, 60, facing(geometry.Vec3{X: 97, Y: 50, Z: -30}, x, z)), 3},
		"stands on it":               {plate(20, 60, facing(geometry.Vec3{X: 40, Y: 50}, x, z)), 0},
		"stands beside it":           {plate(20, 60, facing(geometry.Vec3{X: 101, Y: 50, Z: -30}, x, z)), 0},
		"lies on it":                 {plate(20, 60, facing(geometry.Vec3{X: 40, Y: 20, Z: 0.1}, x, y)), 0},
		"lies in it":                 {plate(20, 60, facing(geometry.Vec3{X: 40, Y: 20}, x, y)), 0},
		"crosses at a turned corner": {plate(200, 200, facing(geometry.Vec3{X: 98, Y: -50, Z: -100}, y, z)), 2},
	} {
		body := fold.Body{Facets: []fold.Facet{ground, test.other}, Caliper: 0.1}
		if got := fold.Crossing(&body); math.Abs(got-test.want) > 1e-9 {
			t.Errorf("%s: %v mm, want %v", name, got, test.want)
		}
		body.Facets[0], body.Facets[1] = body.Facets[1], body.Facets[0]
		if got := fold.Crossing(&body); math.Abs(got-test.want) > 1e-9 {
			t.Errorf("%s, the other way round: %v mm, want %v", name, got, test.want)
		}
	}
}

// A gusset flap that is tilted about its middle, so that half of it stands out through
// the closed front flap, is found.
func TestCrossingNoticesAWrongFold(t *testing.T) {
	l := fold.Fold(lay(t, styles()["block"]))
	body := l.Pose(stageOf(t, l, "base-front"), 1)
	before := fold.Crossing(&body)
	flap := facetsOf(&body, "gusset-right-base")[0]
	middle := middleOn(flap.Corners).Y
	flap.Pose = flap.Pose.Turn(geometry.Vec2{Y: middle}, geometry.Vec2{X: 1, Y: middle}, -0.4)
	for c, corner := range flap.Corners {
		flap.Points[c] = flap.Pose.At(corner)
	}
	if after := fold.Crossing(&body); before > body.Caliper || after < 5 {
		t.Errorf("crossing %.3f mm and, with a flap pushed through, %.3f", before, after)
	}
}

// Strain is that of the distance that changes most: here an edge of 100 drawn out to
// 101 and, on one side only, the diagonals with it.
func TestStrain(t *testing.T) {
	f := plate(100, 100, facing(geometry.Vec3{}, geometry.Vec3{X: 1}, geometry.Vec3{Y: 1}))
	body := fold.Body{Facets: []fold.Facet{f}}
	if got := fold.Strain(&body); got != 0 {
		t.Errorf("strain %v of paper as it is", got)
	}
	f.Points[1].X, f.Points[2].X = 101, 101
	if got := fold.Strain(&body); math.Abs(got-0.01) > 1e-12 {
		t.Errorf("strain %v, want 0.01", got)
	}
}
