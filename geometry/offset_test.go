package geometry_test

import (
	"math"
	"testing"

	"gussetwright/geometry"
)

func corner() geometry.Path {
	return geometry.Polygon(geometry.Vec2{}, geometry.Vec2{X: 100}, geometry.Vec2{X: 100, Y: 40},
		geometry.Vec2{X: 40, Y: 40}, geometry.Vec2{X: 40, Y: 90}, geometry.Vec2{Y: 90})
}

// Moving every edge out by d adds a strip P·d along the perimeter and d² at every
// right-angled corner that points out, and takes d² at every one that points in:
// A + P·d + 4d² for a rectangle (4 corners) and for an L (5 − 1).
func TestOffsetAreaOfRightAngledShapes(t *testing.T) {
	shapes := map[string]geometry.Path{
		"rectangle": geometry.RectAt(10, -20, 700, 480).Path(),
		"L":         corner(),
	}
	for name, shape := range shapes {
		for _, d := range []float64{3, 0.5, 0, -0.5, -5} {
			want := shape.Area() + shape.Length()*d + 4*d*d
			moved := shape.Offset(d)
			if !near(moved.Area(), want) {
				t.Errorf("%s by %g: area %.12g, want %.12g", name, d, moved.Area(), want)
			}
			if !near(moved.Length(), shape.Length()+8*d) {
				t.Errorf("%s by %g: length %.12g, want %.12g", name, d, moved.Length(), shape.Length()+8*d)
			}
			was, is := shape.Bounds().Inset(-d), moved.Bounds()
			if !is.Min.Near(was.Min) || !is.Max.Near(was.Max) {
				t.Errorf("%s by %g: bounds %+v, want %+v", name, d, is, was)
			}
		}
	}
}

// A regular polygon with n sides and the inner radius r has the area
// n·r²·tan(π/n) (school geometry), and its mitred offset is the same polygon with
// the inner radius r + d.
func TestOffsetOfRegularPolygons(t *testing.T) {
	for n := 3; n <= 12; n++ {
		area := func(inner float64) float64 { return float64(n) * inner * inner * math.Tan(math.Pi/float64(n)) }
		const inner = 50.0
		outer := inner / math.Cos(math.Pi/float64(n))
		var points []geometry.Vec2
		for i := range n {
			points = append(points, geometry.Polar(outer, 2*math.Pi*float64(i)/float64(n)))
		}
		shape := geometry.Polygon(points...)
		for _, d := range []float64{-10, 0, 3} {
			if got := shape.Offset(d).Area(); math.Abs(got-area(inner+d)) > 1e-9*area(inner) {
				t.Errorf("%d sides by %g: area %.12g, want %.12g", n, d, got, area(inner+d))
			}
		}
	}
}

func TestOffsetPassesOverNeedlessCorners(t *testing.T) {
	shape := geometry.Polygon(geometry.Vec2{}, geometry.Vec2{X: 5}, geometry.Vec2{X: 5}, geometry.Vec2{X: 10},
		geometry.Vec2{X: 10, Y: 10}, geometry.Vec2{X: 2, Y: 10}, geometry.Vec2{Y: 10}, geometry.Vec2{})
	got := shape.Offset(1)
	if len(got.Vertices) != 4 || !near(got.Area(), 144) {
		t.Errorf("got %d corners with area %g, want 4 and 144", len(got.Vertices), got.Area())
	}
}

func TestOffsetThatLeavesNothing(t *testing.T) {
	square := geometry.RectAt(0, 0, 10, 10).Path()
	for name, got := range map[string]geometry.Path{
		"half the width":  square.Offset(-5),
		"more than half":  square.Offset(-6),
		"far too much":    square.Offset(-1000),
		"a line":          geometry.Polygon(geometry.Vec2{}, geometry.Vec2{X: 10}).Offset(1),
		"nothing at all":  geometry.Path{Closed: true}.Offset(1),
		"an arm of the L": corner().Offset(-20),
	} {
		if len(got.Vertices) != 0 {
			t.Errorf("%s: %d corners are left", name, len(got.Vertices))
		}
	}
}

func TestOffsetKeepsTheOriginal(t *testing.T) {
	square := geometry.RectAt(0, 0, 10, 10).Path()
	square.Offset(3)
	if got := square.Area(); got != 100 {
		t.Errorf("the original has the area %g now", got)
	}
}
