package outline_test

import (
	"math"
	"testing"

	"gussetwright/geometry"
	"gussetwright/render/artwork/vector/outline"
)

func at(x, y float64) geometry.Vec2 { return geometry.Vec2{X: x, Y: y} }

// circle returns a circle of four curves with the usual handles (4/3·tan 22.5°).
func circle(radius float64) outline.Path {
	var p outline.Path
	handle := 4.0 / 3 * math.Tan(math.Pi/8)
	p.Move(at(radius, 0))
	for i := range 4 {
		a, b := geometry.Polar(radius, float64(i)*math.Pi/2), geometry.Polar(radius, float64(i+1)*math.Pi/2)
		p.Curve(a.Add(a.Left().Scale(handle)), b.Sub(b.Left().Scale(handle)), b)
	}
	p.Close()
	return p
}

func area(polygon []geometry.Vec2) float64 {
	sum := 0.0
	for i, p := range polygon {
		sum += p.Cross(polygon[(i+1)%len(polygon)])
	}
	return sum / 2
}

var everywhere = geometry.RectAt(-1e6, -1e6, 2e6, 2e6)

func TestBoundsFollowCurves(t *testing.T) {
	turned := geometry.Rotation(0.7).After(geometry.Stretch(2, 1))
	box, ok := circle(10).Bounds(turned)
	// The ellipse of half axes a and b turned by φ is √(a²cos²φ + b²sin²φ) wide.
	wide := math.Hypot(20*math.Cos(0.7), 10*math.Sin(0.7))
	high := math.Hypot(20*math.Sin(0.7), 10*math.Cos(0.7))
	want := geometry.RectAt(-wide, -high, 2*wide, 2*high)
	if !ok || box.Min.Sub(want.Min).Length() > 0.02 || box.Max.Sub(want.Max).Length() > 0.02 {
		t.Errorf("the box is %v, want %v", box, want)
	}
	if _, ok := (outline.Path{}).Bounds(turned); ok {
		t.Error("an empty path has a box")
	}
	// A curve whose derivative is straight in x: the cube root of nothing.
	var p outline.Path
	p.Move(at(0, 0))
	p.Curve(at(1, 3), at(2, 3), at(3, 0))
	if box, _ := p.Bounds(geometry.Identity()); math.Abs(box.Max.Y-2.25) > 1e-12 { // ¾ of the handles' height
		t.Errorf("the curve reaches up to %g, want 2.25", box.Max.Y)
	}
}

func TestRectangles(t *testing.T) {
	var square outline.Path
	square.Move(at(1, 1))
	square.Line(at(3, 1))
	square.Line(at(3, 2))
	square.Line(at(1, 2))
	square.Close()
	if box, is := square.Rectangle(geometry.Stretch(2, -1)); !is || box != geometry.RectAt(2, -2, 4, 1) {
		t.Errorf("a rectangle is %v, %t", box, is)
	}
	if _, is := square.Rectangle(geometry.Rotation(0.1)); is {
		t.Error("a turned rectangle is upright")
	}
	if _, is := circle(1).Rectangle(geometry.Identity()); is {
		t.Error("a circle is a rectangle")
	}
	crossed := square.Moved(geometry.Identity())
	crossed.Points[2], crossed.Points[3] = crossed.Points[3], crossed.Points[2]
	if _, is := crossed.Rectangle(geometry.Identity()); is {
		t.Error("a bow tie is a rectangle")
	}
}

func TestFlatPaths(t *testing.T) {
	var line outline.Path
	line.Move(at(1, 1))
	line.Line(at(4, 5))
	line.Line(at(7, 9))
	line.Close()
	if !line.Flat() || circle(1).Flat() || line.Joined(circle(1)).Flat() {
		t.Error("only what lies on a line is flat")
	}
}

func TestStrandsStayNearCurves(t *testing.T) {
	for _, tolerance := range []float64{0.1, 0.01, 0.001} {
		flat := outline.Flattening{By: geometry.Identity(), Tolerance: tolerance, Seen: everywhere}
		flat.Strands(circle(100), func(s outline.Strand) {
			if !s.Closed || !s.Drawn {
				t.Errorf("the strand is closed %t, drawn %t", s.Closed, s.Drawn)
			}
			for i, p := range s.Points {
				middle := p.Mid(s.Points[(i+1)%len(s.Points)])
				if stray := 100 - middle.Length(); stray > tolerance || stray < -0.03 { // the curve itself strays by 0.027
					t.Errorf("a line strays by %g, want up to %g", stray, tolerance)
				}
			}
			if most := 20 / math.Sqrt(tolerance); float64(len(s.Points)) > most*2 {
				t.Errorf("%d lines for a tolerance of %g", len(s.Points), tolerance)
			}
		})
	}
	// What lies aside is one line for each curve.
	aside := outline.Flattening{By: geometry.Identity(), Tolerance: 0.01, Seen: geometry.RectAt(500, 0, 10, 10)}
	aside.Strands(circle(100), func(s outline.Strand) {
		if len(s.Points) != 4 {
			t.Errorf("%d points for what is not seen", len(s.Points))
		}
	})
}

// traced returns the areas of all polygons of a pen and their sum.
func traced(t *testing.T, path outline.Path, pen outline.Pen) (sum float64, count int) {
	t.Helper()
	tracer := outline.Tracer{Pen: pen, Tolerance: 0.001, Seen: everywhere, Take: func(polygon []geometry.Vec2) {
		one := area(polygon)
		if one < -1e-9 {
			t.Errorf("a polygon runs clockwise: %v", polygon)
		}
		sum += one
		count++
	}}
	flat := outline.Flattening{By: geometry.Identity(), Tolerance: 0.001, Seen: everywhere}
	flat.Strands(path, tracer.Trace)
	return sum, count
}

// The polygons of a pen overlap only inside of corners, so their sum is known for
// lines without corners and for single corners.
func TestPensCoverWhatTheyShould(t *testing.T) {
	path := func(points ...geometry.Vec2) outline.Path {
		var p outline.Path
		p.Move(points[0])
		for _, q := range points[1:] {
			p.Line(q)
		}
		return p
	}
	straight, corner := path(at(0, 0), at(10, 0)), path(at(0, 0), at(10, 0), at(10, 10))
	sharp := path(at(0, 0), at(10, 0), at(0, 1))
	cases := []struct {
		name string
		path outline.Path
		pen  outline.Pen
		want float64
	}{
		{"butt", straight, outline.Pen{Width: 2}, 20},
		{"square", straight, outline.Pen{Width: 2, Cap: outline.Square}, 24},
		{"round", straight, outline.Pen{Width: 2, Cap: outline.RoundCap}, 20 + math.Pi},
		{"mitre", corner, outline.Pen{Width: 2, MiterLimit: 4}, 40 + 1},
		{"mitre beyond its limit", corner, outline.Pen{Width: 2, MiterLimit: 1.4}, 40 + 0.5},
		{"bevel", corner, outline.Pen{Width: 2, Join: outline.Bevel}, 40 + 0.5},
		{"round corner", corner, outline.Pen{Width: 2, Join: outline.RoundJoin}, 40 + math.Pi/4},
		// The corner turns by π − atan 0.1; its mitre is tan of half the turn in area.
		{"sharp mitre", sharp, outline.Pen{Width: 2, MiterLimit: 30}, 2*(10+math.Hypot(10, 1)) + math.Tan((math.Pi-math.Atan(0.1))/2)},
		// Along a curve the wedges outside add up to a sector of all its turns.
		{"circle", circle(10), outline.Pen{Width: 2}, 2*2*math.Pi*10 + math.Pi},
		{"dot", path(at(5, 5), at(5, 5)), outline.Pen{Width: 2, Cap: outline.RoundCap}, math.Pi},
		{"square dot", path(at(5, 5), at(5, 5)), outline.Pen{Width: 2, Cap: outline.Square}, 4},
		{"no dot", path(at(5, 5), at(5, 5)), outline.Pen{Width: 2}, 0},
		{"mere move", path(at(5, 5)), outline.Pen{Width: 2, Cap: outline.RoundCap}, 0},
		{"dashes", straight, outline.Pen{Width: 2, Dashes: []float64{3, 1}}, 2 * (3 + 3 + 2)},
		{"dashes from within", straight, outline.Pen{Width: 2, Dashes: []float64{3, 1}, Offset: 2}, 2 * (1 + 3 + 3)},
		{"dashes from before", straight, outline.Pen{Width: 2, Dashes: []float64{3, 1}, Offset: -1}, 2 * (3 + 3 + 1)},
		{"odd dashes", straight, outline.Pen{Width: 2, Dashes: []float64{3}}, 2 * (3 + 3)},
		{"dots", straight, outline.Pen{Width: 1, Cap: outline.RoundCap, Dashes: []float64{0, 2.5}}, 4 * math.Pi / 4},
		{"dashes round a circle", circle(10), outline.Pen{Width: 1, Dashes: []float64{math.Pi, math.Pi}}, 10*math.Pi + math.Pi/8},
	}
	for _, c := range cases {
		if got, _ := traced(t, c.path, c.pen); math.Abs(got-c.want) > 0.01+c.want*0.001 {
			t.Errorf("%s covers %.4f, want %.4f", c.name, got, c.want)
		}
	}
}

// A dash that runs through the start of a closed part is not cut there.
func TestDashesRunThroughTheStart(t *testing.T) {
	var square outline.Path
	square.Move(at(0, 0))
	square.Line(at(10, 0))
	square.Line(at(10, 10))
	square.Line(at(0, 10))
	square.Close()
	pen := outline.Pen{Width: 2, MiterLimit: 4, Dashes: []float64{6, 4}, Offset: 3}
	// Every corner is in the middle of a dash of six, which thus has a mitre.
	if got, _ := traced(t, square, pen); math.Abs(got-4*(12+1)) > 1e-9 {
		t.Errorf("the dashes cover %.4f, want 52", got)
	}
	// One dash all the way round has four corners and no ends.
	pen = outline.Pen{Width: 2, MiterLimit: 4, Cap: outline.Square, Dashes: []float64{500, 1}}
	if got, _ := traced(t, square, pen); math.Abs(got-(80+4)) > 1e-9 {
		t.Errorf("the dash covers %.4f, want 84", got)
	}
}

// Pens as wide as a land have round ends with an end.
func TestWidePens(t *testing.T) {
	var line outline.Path
	line.Move(at(0, 0))
	line.Line(at(1, 0))
	for _, width := range []float64{1e7, 1e20, 1e-20} {
		want := math.Pi/4*width*width + width
		if got, _ := traced(t, line, outline.Pen{Width: width, Cap: outline.RoundCap}); math.Abs(got-want) > want/100 {
			t.Errorf("a pen of %g covers %g, want %g", width, got, want)
		}
	}
}

// Billions of dashes are a line.
func TestDashesWithoutEnd(t *testing.T) {
	var line outline.Path
	line.Move(at(0, 0))
	line.Line(at(1e4, 0))
	if got, count := traced(t, line, outline.Pen{Width: 1, Dashes: []float64{1e-9, 1e-9}}); got != 1e4 || count != 1 {
		t.Errorf("%d polygons cover %g", count, got)
	}
}
