package geometry_test

import (
	"math"
	"testing"

	"gussetwright/geometry"
)

func TestVec2(t *testing.T) {
	v, w := geometry.Vec2{X: 3, Y: 4}, geometry.Vec2{X: -2, Y: 5}
	tests := []struct {
		name      string
		got, want any
	}{
		{"sum", v.Add(w), geometry.Vec2{X: 1, Y: 9}},
		{"difference", v.Sub(w), geometry.Vec2{X: 5, Y: -1}},
		{"scaled", v.Scale(2), geometry.Vec2{X: 6, Y: 8}},
		{"middle", v.Mid(w), geometry.Vec2{X: 0.5, Y: 4.5}},
		{"left", v.Left(), geometry.Vec2{X: -4, Y: 3}},
		{"scalar product", v.Dot(w), 14.0},
		{"vector product", v.Cross(w), 23.0},
		{"length", v.Length(), 5.0},
		{"angle", geometry.Vec2{Y: 2}.Angle(), math.Pi / 2},
		{"no direction", geometry.Vec2{}.Unit(), geometry.Vec2{}},
		{"the same point", v.Near(v.Add(geometry.Vec2{X: geometry.Tolerance / 2})), true},
		{"another point", v.Near(v.Add(geometry.Vec2{X: geometry.Tolerance * 2})), false},
	}
	for _, test := range tests {
		if test.got != test.want {
			t.Errorf("%s: got %v, want %v", test.name, test.got, test.want)
		}
	}
	if unit := v.Unit(); !near(unit.X, 0.6) || !near(unit.Y, 0.8) {
		t.Errorf("unit: got %v, want (0.6, 0.8)", unit)
	}
	if p := geometry.Polar(2, math.Pi/6); !near(p.X, math.Sqrt(3)) || !near(p.Y, 1) {
		t.Errorf("polar: got %v, want (√3, 1)", p)
	}
}

func TestRect(t *testing.T) {
	r := geometry.RectAt(10, 20, 30, 40)
	tests := []struct {
		name      string
		got, want any
	}{
		{"width", r.Width(), 30.0},
		{"height", r.Height(), 40.0},
		{"area", r.Area(), 1200.0},
		{"centre", r.Center(), geometry.Vec2{X: 25, Y: 40}},
		{"smaller", r.Inset(5), geometry.RectAt(15, 25, 20, 30)},
		{"larger", r.Inset(-5), geometry.RectAt(5, 15, 40, 50)},
		{"union", r.Union(geometry.RectAt(0, 30, 5, 5)), geometry.RectAt(0, 20, 40, 40)},
		{"not empty", r.Empty(), false},
		{"empty across", r.Inset(15).Empty(), true},
		{"turned inside out", r.Inset(18).Empty(), true},
		{"border", r.Contains(geometry.Vec2{X: 10, Y: 60}), true},
		{"outside", r.Contains(geometry.Vec2{X: 10, Y: 60.001}), false},
		{"outline", r.Path().Area(), 1200.0},
	}
	for _, test := range tests {
		if test.got != test.want {
			t.Errorf("%s: got %v, want %v", test.name, test.got, test.want)
		}
	}
}
