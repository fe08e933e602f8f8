package geometry

import "math"

// Vec3 is a point or a displacement in space, in millimetres: x to the right seen
// from the front of the bag, y away from the viewer, z up.
type Vec3 struct{ X, Y, Z float64 }

// Add returns v + w.
func (v Vec3) Add(w Vec3) Vec3 { return Vec3{v.X + w.X, v.Y + w.Y, v.Z + w.Z} }

// Sub returns v − w.
func (v Vec3) Sub(w Vec3) Vec3 { return Vec3{v.X - w.X, v.Y - w.Y, v.Z - w.Z} }

// Scale returns v stretched by the factor k.
func (v Vec3) Scale(k float64) Vec3 { return Vec3{v.X * k, v.Y * k, v.Z * k} }

// Dot returns the scalar product, its products rounded one by one as in Vec2.Dot.
func (v Vec3) Dot(w Vec3) float64 {
	return float64(v.X*w.X) + float64(v.Y*w.Y) + float64(v.Z*w.Z)
}

// Cross returns the vector product: it stands on both and points to where a right
// thumb does when the fingers turn from v to w.
func (v Vec3) Cross(w Vec3) Vec3 {
	return Vec3{
		float64(v.Y*w.Z) - float64(v.Z*w.Y),
		float64(v.Z*w.X) - float64(v.X*w.Z),
		float64(v.X*w.Y) - float64(v.Y*w.X),
	}
}

// Length returns the distance of v from the origin.
func (v Vec3) Length() float64 { return math.Sqrt(v.Dot(v)) }

// Mid returns the point half way between v and w.
func (v Vec3) Mid(w Vec3) Vec3 { return Vec3{(v.X + w.X) / 2, (v.Y + w.Y) / 2, (v.Z + w.Z) / 2} }

// Near tells whether v and w are the same point within Tolerance.
func (v Vec3) Near(w Vec3) bool { return v.Sub(w).Length() <= Tolerance }

// Unit returns the vector of length 1 in the direction of v, or the zero vector
// when v has no direction.
func (v Vec3) Unit() Vec3 {
	length := v.Length()
	if length == 0 {
		return Vec3{}
	}
	return v.Scale(1 / length)
}

// Turn returns v turned about the axis, a unit vector through the origin, by an
// angle in radians: the way the fingers of a right hand point whose thumb lies
// along the axis (the rotation formula of Rodrigues, 1840).
func (v Vec3) Turn(axis Vec3, angle float64) Vec3 {
	sin, cos := math.Sincos(angle)
	return v.Scale(cos).Add(axis.Cross(v).Scale(sin)).Add(axis.Scale(axis.Dot(v) * (1 - cos)))
}
