package coverage_test

import (
	"image"
	"math"
	"math/rand/v2"
	"testing"

	"gussetwright/geometry"
	"gussetwright/render/artwork/vector/coverage"
)

// covered returns the coverage of every pixel.
func covered(t testing.TB, s *coverage.Scanner, evenOdd bool) map[image.Point]float32 {
	t.Helper()
	pixels := map[image.Point]float32{}
	last := image.Pt(-1<<30, -1<<30)
	s.Scan(evenOdd, func(y, from, to int, cover float32) {
		if cover <= 0 || cover > 1 || from >= to || !image.Rect(from, y, to, y+1).In(s.Area()) {
			t.Errorf("a run from %d to %d in row %d with %g", from, to, y, cover)
		}
		if y < last.Y || y == last.Y && from < last.X {
			t.Errorf("the run at (%d, %d) comes after that before %v", from, y, last)
		}
		last = image.Pt(to, y)
		for x := from; x < to; x++ {
			pixels[image.Pt(x, y)] = cover
		}
	})
	return pixels
}

func sum(pixels map[image.Point]float32) (total float64) {
	for _, cover := range pixels {
		total += float64(cover)
	}
	return total
}

func box(x, y, width, height float64) []geometry.Vec2 {
	return []geometry.Vec2{{X: x, Y: y}, {X: x + width, Y: y}, {X: x + width, Y: y + height}, {X: x, Y: y + height}}
}

func TestBoxesAreExact(t *testing.T) {
	var s coverage.Scanner
	s.Reset(image.Rect(-5, -5, 15, 15))
	s.Polygon(box(1.25, -2.5, 3.5, 4.125))
	pixels := covered(t, &s, false)
	for _, c := range []struct {
		x, y int
		want float32
	}{{2, 0, 1}, {1, 0, 0.75}, {4, 0, 0.75}, {2, -3, 0.5}, {2, 1, 0.625}, {1, -3, 0.375}, {0, 0, 0}, {5, 0, 0}} {
		if got := pixels[image.Pt(c.x, c.y)]; math.Abs(float64(got-c.want)) > 1e-6 {
			t.Errorf("pixel (%d, %d) is covered by %g, want %g", c.x, c.y, got, c.want)
		}
	}
}

// The sum of all pixels is the area of a polygon, wherever it is cut off.
func TestSumIsArea(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 2))
	var s coverage.Scanner
	for range 300 {
		center := geometry.Vec2{X: random.Float64() * 60, Y: random.Float64() * 60}
		radius := 1 + random.Float64()*20
		var polygon []geometry.Vec2
		count := 3 + random.IntN(40)
		start := random.Float64()
		for i := range count {
			polygon = append(polygon, center.Add(geometry.Polar(radius, start+2*math.Pi*float64(i)/float64(count))))
		}
		want := radius * radius * float64(count) / 2 * math.Sin(2*math.Pi/float64(count))
		s.Reset(image.Rect(-30, -30, 100, 100))
		s.Polygon(polygon)
		if got := sum(covered(t, &s, false)); math.Abs(got-want) > 0.01*want+0.02 {
			t.Errorf("%d corners, radius %.3f: covers %.4f, want %.4f", count, radius, got, want)
		}
		// The same in two halves.
		halves := 0.0
		for _, half := range []image.Rectangle{image.Rect(-30, -30, 30, 100), image.Rect(30, -30, 100, 100)} {
			s.Reset(half)
			s.Polygon(polygon)
			halves += sum(covered(t, &s, false))
		}
		if math.Abs(halves-want) > 0.01*want+0.02 {
			t.Errorf("%d corners, radius %.3f: halves cover %.4f, want %.4f", count, radius, halves, want)
		}
	}
}

func TestRules(t *testing.T) {
	reversed := func(polygon []geometry.Vec2) []geometry.Vec2 {
		return []geometry.Vec2{polygon[3], polygon[2], polygon[1], polygon[0]}
	}
	outer, inner, beside := box(0.5, 0.5, 10, 10), box(3.25, 3.5, 4, 4), box(6.5, 5.5, 10, 3)
	star := []geometry.Vec2{}
	for i := range 5 {
		star = append(star, geometry.Vec2{X: 20, Y: 20}.Add(geometry.Polar(15, float64(i)*4*math.Pi/5)))
	}
	// The star of radius R has a pentagon of radius R·cos 72°/cos 36° in the middle,
	// and is ten triangles from the middle to a point and a corner of that.
	r := 15 * math.Cos(2*math.Pi/5) / math.Cos(math.Pi/5)
	whole, pentagon := 5*15*r*math.Sin(math.Pi/5), 2.5*r*r*math.Sin(2*math.Pi/5)
	cases := []struct {
		name             string
		polygons         [][]geometry.Vec2
		nonZero, evenOdd float64
	}{
		{"twice", [][]geometry.Vec2{outer, outer}, 100, 0},
		{"twice, one turned", [][]geometry.Vec2{outer, reversed(outer)}, 0, 0},
		{"within", [][]geometry.Vec2{outer, inner}, 100, 84},
		{"a hole", [][]geometry.Vec2{outer, reversed(inner)}, 84, 84},
		{"beside", [][]geometry.Vec2{outer, beside}, 100 + 30 - 12, 100 + 30 - 24},
		{"beside, turned", [][]geometry.Vec2{outer, reversed(beside)}, 100 + 30 - 24, 100 + 30 - 24},
		{"star", [][]geometry.Vec2{star}, whole, whole - pentagon},
		{"nothing", nil, 0, 0},
	}
	var s coverage.Scanner
	for _, c := range cases {
		for _, evenOdd := range []bool{false, true} {
			s.Reset(image.Rect(0, 0, 40, 40))
			for _, polygon := range c.polygons {
				s.Polygon(polygon)
			}
			want := c.nonZero
			if evenOdd {
				want = c.evenOdd
			}
			if got := sum(covered(t, &s, evenOdd)); math.Abs(got-want) > 0.01*whole {
				t.Errorf("%s, even-odd %t: covers %.3f, want %.3f", c.name, evenOdd, got, want)
			}
		}
	}
}

// Polygons that touch leave no seam between them.
func TestNoSeams(t *testing.T) {
	var s coverage.Scanner
	s.Reset(image.Rect(0, 0, 40, 40))
	for i := range 7 {
		a, b := float64(i)*5, float64(i+1)*5
		s.Polygon([]geometry.Vec2{{X: a, Y: 3}, {X: b, Y: 3}, {X: b + 4.3, Y: 37}, {X: a + 4.3, Y: 37}})
	}
	pixels := covered(t, &s, false)
	for y := 3; y < 37; y++ {
		for x := 6; x < 34; x++ {
			if got := pixels[image.Pt(x, y)]; got < 0.999 {
				t.Fatalf("pixel (%d, %d) is covered by %g", x, y, got)
			}
		}
	}
}

// What lies outside, far away or is no number does no harm.
func TestOutside(t *testing.T) {
	var s coverage.Scanner
	s.Reset(image.Rect(10, 10, 20, 20))
	s.Polygon(box(-1e9, -1e9, 2e9, 2e9))
	if got := sum(covered(t, &s, false)); math.Abs(got-100) > 1e-3 {
		t.Errorf("a polygon all around covers %g, want 100", got)
	}
	for _, far := range [][]geometry.Vec2{
		box(100, 0, 50, 50), box(-100, 0, 50, 50), box(0, 100, 50, 50), box(0, -100, 50, 50), box(11, 12, 0, 5), box(11, 12, 5, 0),
		{{X: math.NaN(), Y: 12}, {X: 12, Y: math.NaN()}, {X: math.Inf(1), Y: 14}},
		{{X: 15, Y: 15}},
		nil,
	} {
		s.Reset(image.Rect(10, 10, 20, 20))
		s.Polygon(far)
		if got := sum(covered(t, &s, true)); got != 0 {
			t.Errorf("%v covers %g", far, got)
		}
	}
	s.Reset(image.Rectangle{})
	s.Polygon(box(0, 0, 5, 5))
	covered(t, &s, false)
	// A diamond reaching out at all four sides: a square of 10 less its corners.
	s.Reset(image.Rect(10, 10, 20, 20))
	s.Polygon([]geometry.Vec2{{X: 15, Y: 7}, {X: 23, Y: 15}, {X: 15, Y: 23}, {X: 7, Y: 15}})
	if got := sum(covered(t, &s, false)); math.Abs(got-(100-4*2)) > 0.05 {
		t.Errorf("the diamond covers %g, want 92", got)
	}
}

func TestStop(t *testing.T) {
	rows := 0
	s := coverage.Scanner{Stop: func() bool { rows++; return rows > 3 }}
	s.Reset(image.Rect(0, 0, 10, 10))
	s.Polygon(box(0, 0, 10, 10))
	if got := sum(covered(t, &s, false)); got != 30 {
		t.Errorf("%g pixels before it stopped, want 30", got)
	}
	rows = -100
	s.Reset(image.Rect(0, 0, 10, 10))
	s.Polygon(box(0, 0, 1, 1))
	if got := sum(covered(t, &s, false)); got != 1 {
		t.Errorf("%g pixels after it was stopped and reset, want 1", got)
	}
}
