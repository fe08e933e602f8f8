package solid

import (
	"math"
	"math/rand/v2"
	"testing"

	"gussetwright/geometry"
)

func box(left, low, right, high float64) []geometry.Vec2 {
	return []geometry.Vec2{{X: left, Y: low}, {X: right, Y: low}, {X: right, Y: high}, {X: left, Y: high}}
}

func reversed(loop []geometry.Vec2) []geometry.Vec2 {
	turned := make([]geometry.Vec2, len(loop))
	for i, p := range loop {
		turned[len(loop)-1-i] = p
	}
	return turned
}

// areaOf returns the sum of the areas of triangles; a clockwise one counts against it.
func areaOf(points []geometry.Vec2, triangles [][3]int) float64 {
	sum := 0.0
	for _, t := range triangles {
		sum += points[t[1]].Sub(points[t[0]]).Cross(points[t[2]].Sub(points[t[0]])) / 2
	}
	return sum
}

// The areas are those of rectangles added up by hand.
func TestCoverArea(t *testing.T) {
	tests := []struct {
		name  string
		loops [][]geometry.Vec2
		want  float64
	}{
		{"a rectangle", [][]geometry.Vec2{box(0, 0, 30, 20)}, 600},
		{"a hole", [][]geometry.Vec2{box(0, 0, 30, 20), reversed(box(5, 5, 10, 15))}, 550},
		{"two holes side by side", [][]geometry.Vec2{box(0, 0, 30, 20), reversed(box(5, 5, 10, 15)), reversed(box(20, 5, 25, 15))}, 500},
		{"holes that overlap", [][]geometry.Vec2{box(0, 0, 30, 20), reversed(box(5, 5, 15, 15)), reversed(box(10, 10, 20, 18))}, 600 - 100 - 80 + 25},
		{"a hole through the border", [][]geometry.Vec2{box(0, 0, 30, 20), reversed(box(25, 5, 40, 15))}, 550},
		{"a hole along the border", [][]geometry.Vec2{box(0, 0, 30, 20), reversed(box(25, 0, 30, 15))}, 525},
		{"a hole that is all", [][]geometry.Vec2{box(0, 0, 30, 20), reversed(box(0, 0, 30, 20))}, 0},
		{"a hole beside", [][]geometry.Vec2{box(0, 0, 30, 20), reversed(box(40, 0, 50, 20))}, 600},
		{"teeth", [][]geometry.Vec2{{{X: 0, Y: 0}, {X: 40, Y: 0}, {X: 40, Y: 20}, {X: 30, Y: 10}, {X: 20, Y: 20}, {X: 10, Y: 10}, {X: 0, Y: 20}}}, 600},
		{"the same corner twice", [][]geometry.Vec2{{{X: 0, Y: 0}, {X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 10}}}, 50},
		{"no breadth", [][]geometry.Vec2{box(0, 0, 0, 20)}, 0},
		{"no height", [][]geometry.Vec2{box(0, 5, 30, 5)}, 0},
	}
	var c coverer
	for _, test := range tests {
		if got := areaOf(c.cover(test.loops)); math.Abs(got-test.want) > 1e-6 {
			t.Errorf("%s: got an area of %g, want %g", test.name, got, test.want)
		}
	}
}

// Round shapes cover what they wind round once, each point by one triangle: checked
// with the winding number of random points (the sum of signed crossings of a ray).
func TestCoverFollowsTheWinding(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	blob := func() []geometry.Vec2 {
		center, n := geometry.Vec2{X: random.Float64() * 60, Y: random.Float64() * 60}, 3+random.IntN(12)
		loop := make([]geometry.Vec2, n)
		for i := range loop {
			loop[i] = center.Add(geometry.Polar(5+random.Float64()*30, 2*math.Pi*float64(i)/float64(n)))
		}
		return loop
	}
	var c coverer
	looked := [2]int{}
	for round := range 300 {
		loops := [][]geometry.Vec2{blob()}
		for range random.IntN(4) {
			loops = append(loops, reversed(blob()))
		}
		points, triangles := c.cover(loops)
		for _, corners := range triangles {
			if areaOf(points, [][3]int{corners}) < -1e-9 {
				t.Fatalf("round %d: a triangle runs clockwise", round)
			}
		}
		for range 100 {
			p := geometry.Vec2{X: random.Float64()*100 - 20, Y: random.Float64()*100 - 20}
			want := 0
			if winding(loops, p) == 1 {
				want = 1
			}
			got, near := 0, false
			for _, corners := range triangles {
				in, edge := holds(points[corners[0]], points[corners[1]], points[corners[2]], p)
				near = near || edge
				if in {
					got++
				}
			}
			if near {
				continue // on an edge
			}
			looked[want]++
			if got != want {
				t.Fatalf("round %d: %v is covered %d times, want %d; loops %v", round, p, got, want, loops)
			}
		}
	}
	if looked[0] < 3000 || looked[1] < 2000 {
		t.Errorf("only %v points looked at outside and inside", looked)
	}
}

func winding(loops [][]geometry.Vec2, p geometry.Vec2) int {
	sum := 0
	for _, loop := range loops {
		for i, a := range loop {
			b := loop[(i+1)%len(loop)]
			switch side := b.Sub(a).Cross(p.Sub(a)); {
			case a.Y <= p.Y && b.Y > p.Y && side > 0:
				sum++
			case a.Y > p.Y && b.Y <= p.Y && side < 0:
				sum--
			}
		}
	}
	return sum
}

// holds tells whether a point lies in a triangle, and whether it lies so near an edge
// that rounding decides.
func holds(a, b, c, p geometry.Vec2) (in, edge bool) {
	in = true
	for _, side := range [][2]geometry.Vec2{{a, b}, {b, c}, {c, a}} {
		along := side[1].Sub(side[0])
		away := along.Unit().Cross(p.Sub(side[0]))
		in = in && away > 0
		on := along.Unit().Dot(p.Sub(side[0]))
		edge = edge || math.Abs(away) < 1e-5 && on > -1e-5 && on < along.Length()+1e-5
	}
	return in, edge
}

// Triangles share whole edges: each edge runs once each way, or lies on the border.
func TestCoverLeavesNoLooseEnds(t *testing.T) {
	hole := make([]geometry.Vec2, 28)
	for i := range hole {
		hole[i] = geometry.Vec2{X: 10, Y: 12}.Add(geometry.Polar(4, -2*math.Pi*float64(i)/28))
	}
	outer := box(0, 0, 50, 30)
	loops := [][]geometry.Vec2{outer, hole, reversed(box(20, 8, 30, 18)), reversed(box(35, 18, 45, 24))}
	var c coverer
	points, triangles := c.cover(loops)
	runs := map[[2]int]int{}
	for _, corners := range triangles {
		for k := range corners {
			runs[[2]int{corners[k], corners[(k+1)%3]}]++
		}
	}
	for run, count := range runs {
		if count != 1 {
			t.Errorf("edge %v runs %d times the same way", run, count)
		}
		if runs[[2]int{run[1], run[0]}] == 1 {
			continue
		}
		middle, least := points[run[0]].Mid(points[run[1]]), math.Inf(1)
		for _, loop := range loops {
			for i, a := range loop {
				along := loop[(i+1)%len(loop)].Sub(a)
				if on := along.Unit().Dot(middle.Sub(a)); on > 0 && on < along.Length() {
					least = min(least, math.Abs(along.Unit().Cross(middle.Sub(a))))
				}
			}
		}
		if least > 1e-6 {
			t.Errorf("edge %v to %v has a triangle on one side only", points[run[0]], points[run[1]])
		}
	}
}
