package geometry_test

import (
	"math"
	"testing"

	"gussetwright/geometry"
)

func TestVec3(t *testing.T) {
	v, w := geometry.Vec3{X: 2, Y: 3, Z: 6}, geometry.Vec3{X: -1, Y: 4, Z: 1}
	tests := []struct {
		name      string
		got, want any
	}{
		{"sum", v.Add(w), geometry.Vec3{X: 1, Y: 7, Z: 7}},
		{"difference", v.Sub(w), geometry.Vec3{X: 3, Y: -1, Z: 5}},
		{"scaled", v.Scale(-2), geometry.Vec3{X: -4, Y: -6, Z: -12}},
		{"middle", v.Mid(w), geometry.Vec3{X: 0.5, Y: 3.5, Z: 3.5}},
		{"scalar product", v.Dot(w), 16.0},
		{"vector product", v.Cross(w), geometry.Vec3{X: -21, Y: -8, Z: 11}},
		{"length", v.Length(), 7.0},
		{"no direction", geometry.Vec3{}.Unit(), geometry.Vec3{}},
		{"the same point", v.Near(v.Add(geometry.Vec3{Z: geometry.Tolerance / 2})), true},
		{"another point", v.Near(v.Add(geometry.Vec3{Z: geometry.Tolerance * 2})), false},
	}
	for _, test := range tests {
		if test.got != test.want {
			t.Errorf("%s: got %v, want %v", test.name, test.got, test.want)
		}
	}
	if unit := v.Unit(); !near(unit.Length(), 1) || !near(unit.Z, 6.0/7) {
		t.Errorf("unit: got %v", unit)
	}
}

// A turn keeps lengths and what lies along the axis; a third of a turn about the
// space diagonal moves each axis to the next.
func TestVec3Turn(t *testing.T) {
	diagonal := geometry.Vec3{X: 1, Y: 1, Z: 1}.Unit()
	got := geometry.Vec3{X: 1}.Turn(diagonal, 2*math.Pi/3)
	if !got.Near(geometry.Vec3{Y: 1}) {
		t.Errorf("x axis turned about the diagonal: got %v, want the y axis", got)
	}
	v := geometry.Vec3{X: 3, Y: -2, Z: 5}
	turned := v.Turn(diagonal, 1.234)
	if !near(turned.Length(), v.Length()) || !near(turned.Dot(diagonal), v.Dot(diagonal)) {
		t.Errorf("turned to %v: length %v of %v, along the axis %v of %v", turned,
			turned.Length(), v.Length(), turned.Dot(diagonal), v.Dot(diagonal))
	}
	if back := turned.Turn(diagonal, -1.234); !back.Near(v) {
		t.Errorf("turned there and back: got %v, want %v", back, v)
	}
}
