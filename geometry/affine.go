package geometry

import "math"

// Affine is a motion of the plane with stretching: the point (0, 0) goes to Origin,
// (1, 0) to Origin + U and (0, 1) to Origin + V. The zero value flattens everything;
// Identity leaves all where it is.
type Affine struct{ U, V, Origin Vec2 }

// Identity returns the motion that moves nothing.
func Identity() Affine { return Affine{U: Vec2{X: 1}, V: Vec2{Y: 1}} }

// At returns where a point goes.
func (a Affine) At(p Vec2) Vec2 {
	return a.Origin.Add(a.U.Scale(p.X)).Add(a.V.Scale(p.Y))
}

// Vector returns where a displacement goes.
func (a Affine) Vector(d Vec2) Vec2 { return a.U.Scale(d.X).Add(a.V.Scale(d.Y)) }

// After returns the motion that does first and then a.
func (a Affine) After(first Affine) Affine {
	return Affine{a.Vector(first.U), a.Vector(first.V), a.At(first.Origin)}
}

// Area returns by what the motion multiplies areas, negative where it mirrors.
func (a Affine) Area() float64 { return a.U.Cross(a.V) }

// Inverse returns the motion that undoes a, and false where a flattens the plane.
func (a Affine) Inverse() (Affine, bool) {
	area := a.Area()
	if area == 0 || math.IsNaN(area) || math.IsInf(area, 0) {
		return Affine{}, false
	}
	back := Affine{
		U: Vec2{a.V.Y / area, -a.U.Y / area},
		V: Vec2{-a.V.X / area, a.U.X / area},
	}
	back.Origin = back.Vector(a.Origin).Scale(-1)
	return back, true
}

// Bounds returns the smallest upright rectangle around where the rectangle goes.
func (a Affine) Bounds(r Rect) Rect {
	first := a.At(r.Min)
	box := Rect{first, first}
	for _, corner := range []Vec2{{r.Max.X, r.Min.Y}, r.Max, {r.Min.X, r.Max.Y}} {
		p := a.At(corner)
		box = box.Union(Rect{p, p})
	}
	return box
}

// Rotation returns the turn about the origin by an angle in radians, anticlockwise.
// Quarter turns are exact.
func Rotation(angle float64) Affine {
	sin, cos := math.Sincos(angle)
	if quarters := angle / (math.Pi / 2); quarters == math.Round(quarters) {
		sin, cos = math.Round(sin), math.Round(cos)
	}
	return Affine{U: Vec2{cos, sin}, V: Vec2{-sin, cos}}
}

// Stretch returns the stretching away from the origin by x and y.
func Stretch(x, y float64) Affine { return Affine{U: Vec2{X: x}, V: Vec2{Y: y}} }

// Shift returns the motion that moves every point by d.
func Shift(d Vec2) Affine {
	moved := Identity()
	moved.Origin = d
	return moved
}
