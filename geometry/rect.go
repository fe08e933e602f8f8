package geometry

// Rect is an upright rectangle: Min is its lower left corner, Max its upper right.
type Rect struct{ Min, Max Vec2 }

// RectAt returns the rectangle with its lower left corner at (x, y).
func RectAt(x, y, width, height float64) Rect {
	return Rect{Vec2{x, y}, Vec2{x + width, y + height}}
}

// Width returns the extent along x.
func (r Rect) Width() float64 { return r.Max.X - r.Min.X }

// Height returns the extent along y.
func (r Rect) Height() float64 { return r.Max.Y - r.Min.Y }

// Area returns width times height.
func (r Rect) Area() float64 { return r.Width() * r.Height() }

// Center returns the middle of the rectangle.
func (r Rect) Center() Vec2 { return r.Min.Mid(r.Max) }

// Inset returns the rectangle with every side moved inward by d, outward when
// d is negative.
func (r Rect) Inset(d float64) Rect {
	return Rect{Vec2{r.Min.X + d, r.Min.Y + d}, Vec2{r.Max.X - d, r.Max.Y - d}}
}

// Empty tells whether nothing is left between the sides.
func (r Rect) Empty() bool { return r.Max.X <= r.Min.X || r.Max.Y <= r.Min.Y }

// Contains tells whether p lies in the rectangle or on its border.
func (r Rect) Contains(p Vec2) bool {
	return p.X >= r.Min.X-Tolerance && p.X <= r.Max.X+Tolerance &&
		p.Y >= r.Min.Y-Tolerance && p.Y <= r.Max.Y+Tolerance
}

// Union returns the smallest rectangle around both.
func (r Rect) Union(s Rect) Rect {
	return Rect{
		Vec2{min(r.Min.X, s.Min.X), min(r.Min.Y, s.Min.Y)},
		Vec2{max(r.Max.X, s.Max.X), max(r.Max.Y, s.Max.Y)},
	}
}

// Through returns where the line from a to b runs inside the rectangle, as shares of
// its length, and whether it does (the line clipping of Liang and Barsky, 1984).
func (r Rect) Through(a, b Vec2) (enter, leave float64, hit bool) {
	leave = 1
	for _, side := range [4][2]float64{
		{a.X - b.X, a.X - r.Min.X},
		{b.X - a.X, r.Max.X - a.X},
		{a.Y - b.Y, a.Y - r.Min.Y},
		{b.Y - a.Y, r.Max.Y - a.Y},
	} {
		speed, room := side[0], side[1]
		switch {
		case speed == 0 && room < 0:
			return 0, 0, false
		case speed < 0:
			enter = max(enter, room/speed)
		case speed > 0:
			leave = min(leave, room/speed)
		}
	}
	return enter, leave, enter < leave
}

// Path returns the outline of the rectangle, anticlockwise from Min.
func (r Rect) Path() Path {
	return Polygon(r.Min, Vec2{r.Max.X, r.Min.Y}, r.Max, Vec2{r.Min.X, r.Max.Y})
}
