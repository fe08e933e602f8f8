package geometry_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gussetwright/geometry"
)

// near tells whether two numbers agree to a relative 1e-12, or 1e-12 near zero.
func near(got, want float64) bool {
	return math.Abs(got-want) <= 1e-12*max(1, math.Abs(want))
}

func vertex(x, y, bulge float64) geometry.Vertex {
	return geometry.Vertex{Vec2: geometry.Vec2{X: x, Y: y}, Bulge: bulge}
}

func closed(vertices ...geometry.Vertex) geometry.Path {
	return geometry.Path{Vertices: vertices, Closed: true}
}

// quarter is the bulge of a quarter circle: the tangent of a quarter of 90°.
var quarter = math.Tan(math.Pi / 8)

// slot is a hand hole 90 × 30 with round ends.
func slot() geometry.Path {
	return closed(vertex(15, 0, 0), vertex(75, 0, 1), vertex(75, 30, 0), vertex(15, 30, 1))
}

// roundedSquare is a square of side 10 with corners of radius 2.
func roundedSquare() geometry.Path {
	return closed(
		vertex(2, 0, 0), vertex(8, 0, quarter), vertex(10, 2, 0), vertex(10, 8, quarter),
		vertex(8, 10, 0), vertex(2, 10, quarter), vertex(0, 8, 0), vertex(0, 2, quarter))
}

// scalloped is the same square with corners cut out by quarter circles.
func scalloped() geometry.Path {
	path := roundedSquare()
	for i := range path.Vertices {
		path.Vertices[i].Bulge = -path.Vertices[i].Bulge
	}
	return path
}

// Areas and lengths are those of school geometry: πr² and 2πr, and a square of
// side a loses (4 − π)r² by rounded corners and πr² by scalloped ones.
func TestAreaAndLengthOfPathsWithArcs(t *testing.T) {
	tests := []struct {
		name         string
		path         geometry.Path
		area, length float64
	}{
		{"empty", geometry.Path{Closed: true}, 0, 0},
		{"circle", geometry.Circle(geometry.Vec2{X: 40, Y: -7}, 2.5), math.Pi * 2.5 * 2.5, 2 * math.Pi * 2.5},
		{"rectangle", geometry.RectAt(5, 6, 240, 360).Path(), 240 * 360, 2 * (240 + 360)},
		{"triangle", geometry.Polygon(geometry.Vec2{}, geometry.Vec2{X: 3}, geometry.Vec2{Y: 4}), 6, 12},
		{"clockwise triangle", geometry.Polygon(geometry.Vec2{}, geometry.Vec2{Y: 4}, geometry.Vec2{X: 3}), -6, 12},
		{"slot", slot(), 60*30 + math.Pi*15*15, 2*60 + 2*math.Pi*15},
		{"rounded square", roundedSquare(), 100 - (4-math.Pi)*4, 4*6 + 2*math.Pi*2},
		{"scalloped square", scalloped(), 100 - math.Pi*4, 4*6 + 2*math.Pi*2},
		{"half disc", closed(vertex(5, 0, 1), vertex(-5, 0, 0)), math.Pi * 25 / 2, math.Pi*5 + 10},
	}
	for _, test := range tests {
		if got := test.path.Area(); !near(got, test.area) {
			t.Errorf("%s: area %.15g, want %.15g", test.name, got, test.area)
		}
		if got := test.path.Length(); !near(got, test.length) {
			t.Errorf("%s: length %.15g, want %.15g", test.name, got, test.length)
		}
	}
}

// The area of a circle segment with the central angle θ is r²(θ − sin θ)/2
// (school geometry). The chord is laid anywhere, at any turn.
func TestAreaOfCircleSegments(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		radius := 0.5 + 100*random.Float64()
		angle := 0.05 + 6*random.Float64()
		start := 2 * math.Pi * random.Float64()
		center := geometry.Vec2{X: 200 * random.Float64(), Y: -200 * random.Float64()}
		from := center.Add(geometry.Polar(radius, start))
		to := center.Add(geometry.Polar(radius, start+angle))
		path := closed(geometry.Vertex{Vec2: from, Bulge: math.Tan(angle / 4)}, geometry.Vertex{Vec2: to})
		want := radius * radius * (angle - math.Sin(angle)) / 2
		if got := path.Area(); math.Abs(got-want) > 1e-9*radius*radius {
			t.Errorf("radius %g, angle %g: area %.12g, want %.12g", radius, angle, got, want)
		}
		arc := path.Edge(0).Arc()
		if !arc.Center.Near(center) || math.Abs(arc.Radius-radius) > 1e-9*radius || math.Abs(arc.Sweep-angle) > 1e-9 {
			t.Errorf("arc %+v, want centre %v, radius %g, sweep %g", arc, center, radius, angle)
		}
		if !arc.At(0).Near(from) || !arc.At(1).Near(to) {
			t.Errorf("arc runs from %v to %v, want %v to %v", arc.At(0), arc.At(1), from, to)
		}
	}
}

func TestBounds(t *testing.T) {
	tests := []struct {
		name string
		path geometry.Path
		want geometry.Rect
	}{
		{"empty", geometry.Path{}, geometry.Rect{}},
		{"rectangle", geometry.RectAt(-5, 6, 240, 360).Path(), geometry.RectAt(-5, 6, 240, 360)},
		{"circle", geometry.Circle(geometry.Vec2{X: 40, Y: -7}, 2.5), geometry.RectAt(37.5, -9.5, 5, 5)},
		{"slot", slot(), geometry.RectAt(0, 0, 90, 30)},
		{"rounded square", roundedSquare(), geometry.RectAt(0, 0, 10, 10)},
		{"scalloped square", scalloped(), geometry.RectAt(0, 0, 10, 10)},
		{"half disc to the right", closed(vertex(0, -5, 1), vertex(0, 5, 0)), geometry.RectAt(0, -5, 5, 10)},
		{"half disc to the left", closed(vertex(0, -5, -1), vertex(0, 5, 0)), geometry.RectAt(-5, -5, 5, 10)},
		{"open arc", geometry.Path{Vertices: []geometry.Vertex{vertex(1, 0, quarter), vertex(0, 1, 0)}}, geometry.RectAt(0, 0, 1, 1)},
	}
	for _, test := range tests {
		got := test.path.Bounds()
		if !got.Min.Near(test.want.Min) || !got.Max.Near(test.want.Max) {
			t.Errorf("%s: got %+v, want %+v", test.name, got, test.want)
		}
	}
}

// No point of an arc may leave the bounds, and the bounds may not be wider than
// the points are.
func TestBoundsOfArcsAreTight(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	const steps = 20000
	for range 100 {
		edge := geometry.Edge{
			From:  geometry.Vec2{X: random.Float64(), Y: random.Float64()},
			To:    geometry.Vec2{X: random.Float64(), Y: random.Float64()},
			Bulge: 6*random.Float64() - 3,
		}
		got, arc := edge.Bounds(), edge.Arc()
		sampled := geometry.Rect{Min: edge.From, Max: edge.From}
		for i := range steps + 1 {
			p := arc.At(float64(i) / steps)
			sampled = sampled.Union(geometry.Rect{Min: p, Max: p})
		}
		// Between two samples an arc rises by r·(1 − cos(step/2)) at most.
		slack := arc.Radius*(1-math.Cos(arc.Sweep/steps/2)) + 1e-9
		for _, off := range []float64{
			sampled.Min.X - got.Min.X, sampled.Min.Y - got.Min.Y,
			got.Max.X - sampled.Max.X, got.Max.Y - sampled.Max.Y,
		} {
			if off < -1e-9 || off > slack {
				t.Errorf("%+v: bounds %+v, points span %+v", edge, got, sampled)
				break
			}
		}
	}
}

func TestAsCircle(t *testing.T) {
	center := geometry.Vec2{X: 12, Y: 34}
	got, radius, ok := geometry.Circle(center, 2.5).Translate(geometry.Vec2{X: 1, Y: -4}).AsCircle()
	if want := (geometry.Vec2{X: 13, Y: 30}); !ok || !got.Near(want) || radius != 2.5 {
		t.Errorf("got %v, %g, %v; want %v, 2.5, true", got, radius, ok, want)
	}
	open := geometry.Circle(center, 2.5)
	open.Closed = false
	others := map[string]geometry.Path{
		"slot":      slot(),
		"open":      open,
		"empty":     {Closed: true},
		"half disc": closed(vertex(5, 0, 1), vertex(-5, 0, 0)),
		"clockwise": closed(vertex(5, 0, -1), vertex(-5, 0, -1)),
	}
	for name, path := range others {
		if _, _, ok := path.AsCircle(); ok {
			t.Errorf("%s passes for a circle", name)
		}
	}
}

func TestContains(t *testing.T) {
	// An L with its notch at the upper right.
	shape := geometry.Polygon(geometry.Vec2{}, geometry.Vec2{X: 10}, geometry.Vec2{X: 10, Y: 4},
		geometry.Vec2{X: 4, Y: 4}, geometry.Vec2{X: 4, Y: 10}, geometry.Vec2{Y: 10})
	tests := []struct {
		x, y float64
		want bool
	}{
		{2, 2, true},
		{9, 3, true},
		{3, 9, true},
		{2, 4, true},
		{5, 5, false},
		{9, 9, false},
		{-1, 2, false},
		{11, 2, false},
		{2, 11, false},
		{2, -1, false},
		{-1, 4, false},
	}
	for _, test := range tests {
		if got := shape.Contains(geometry.Vec2{X: test.x, Y: test.y}); got != test.want {
			t.Errorf("(%g, %g): got %v, want %v", test.x, test.y, got, test.want)
		}
	}
	if (geometry.Path{Closed: true}).Contains(geometry.Vec2{}) {
		t.Error("an empty path contains a point")
	}
}

func TestOpenPathHasOneEdgeLess(t *testing.T) {
	path := geometry.Path{Vertices: []geometry.Vertex{vertex(0, 0, 0), vertex(3, 0, 0), vertex(3, 4, 0)}}
	if path.Len() != 2 || path.Length() != 7 {
		t.Errorf("open: %d edges, length %g; want 2 and 7", path.Len(), path.Length())
	}
	path.Closed = true
	if path.Len() != 3 || path.Length() != 12 {
		t.Errorf("closed: %d edges, length %g; want 3 and 12", path.Len(), path.Length())
	}
	if n := (geometry.Path{}).Len(); n != 0 {
		t.Errorf("empty: %d edges", n)
	}
}

func TestTranslateMovesACopy(t *testing.T) {
	path := roundedSquare()
	moved := path.Translate(geometry.Vec2{X: 7, Y: -3})
	if !near(moved.Area(), path.Area()) || !moved.Bounds().Min.Near(geometry.Vec2{X: 7, Y: -3}) {
		t.Errorf("moved to %+v with area %g", moved.Bounds(), moved.Area())
	}
	if !path.Bounds().Min.Near(geometry.Vec2{}) {
		t.Error("the original moved too")
	}
}
