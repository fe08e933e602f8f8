package geometry

import "math"

// Vec2 is a point or a displacement in the plane of the blank, in millimetres.
type Vec2 struct{ X, Y float64 }

// Add returns v + w.
func (v Vec2) Add(w Vec2) Vec2 { return Vec2{v.X + w.X, v.Y + w.Y} }

// Sub returns v − w.
func (v Vec2) Sub(w Vec2) Vec2 { return Vec2{v.X - w.X, v.Y - w.Y} }

// Scale returns v stretched by the factor k.
func (v Vec2) Scale(k float64) Vec2 { return Vec2{v.X * k, v.Y * k} }

// Dot returns the scalar product. The products are rounded one by one, so that
// processors with a fused multiply-add give the same last digit as the others.
func (v Vec2) Dot(w Vec2) float64 { return float64(v.X*w.X) + float64(v.Y*w.Y) }

// Cross returns the z component of the vector product: positive when w lies
// anticlockwise of v.
func (v Vec2) Cross(w Vec2) float64 { return float64(v.X*w.Y) - float64(v.Y*w.X) }

// Length returns the distance of v from the origin.
func (v Vec2) Length() float64 { return math.Hypot(v.X, v.Y) }

// Angle returns the direction of v in radians, −π to π from the x axis.
func (v Vec2) Angle() float64 { return math.Atan2(v.Y, v.X) }

// Mid returns the point half way between v and w.
func (v Vec2) Mid(w Vec2) Vec2 { return Vec2{(v.X + w.X) / 2, (v.Y + w.Y) / 2} }

// Left returns v turned by a quarter turn anticlockwise.
func (v Vec2) Left() Vec2 { return Vec2{-v.Y, v.X} }

// Near tells whether v and w are the same point within Tolerance.
func (v Vec2) Near(w Vec2) bool { return v.Sub(w).Length() <= Tolerance }

// Unit returns the vector of length 1 in the direction of v, or the zero
// vector when v has no direction.
func (v Vec2) Unit() Vec2 {
	length := v.Length()
	if length == 0 {
		return Vec2{}
	}
	return v.Scale(1 / length)
}

// Polar returns the vector of the given length in the direction angle (radians).
func Polar(length, angle float64) Vec2 {
	return Vec2{length * math.Cos(angle), length * math.Sin(angle)}
}
