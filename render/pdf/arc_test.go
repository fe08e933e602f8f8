package pdf

import (
	"math"
	"testing"

	"gussetwright/geometry"
)

func (c curve) at(from geometry.Vec2, t float64) geometry.Vec2 {
	u := 1 - t
	return from.Scale(u * u * u).Add(c.leave.Scale(3 * u * u * t)).Add(c.arrive.Scale(3 * u * t * t)).Add(c.to.Scale(t * t * t))
}

// Every point of the curves is measured against the circle itself.
func TestCurvesStayOnTheArc(t *testing.T) {
	quarter := math.Tan(math.Pi / 8)
	for _, stray := range []float64{arcStray, circleStray} {
		for _, size := range []float64{0.5, 5, 40, 700, 2000} {
			for _, bulge := range []float64{0.001, 0.05, quarter, 0.7, 1, 2.5, 100, -0.001, -quarter, -1, -2.5} {
				edge := geometry.Edge{From: geometry.Vec2{X: 3, Y: -2}, To: geometry.Vec2{X: 3 + size, Y: -2 + size/3}, Bulge: bulge}
				measure(t, edge, stray)
			}
		}
	}
}

func measure(t *testing.T, edge geometry.Edge, stray float64) {
	t.Helper()
	arc := edge.Arc()
	from, worst, turned := edge.From, 0.0, 0.0
	list := curves(edge, stray)
	for _, curve := range list {
		for step := 1; step <= 32; step++ {
			before := curve.at(from, float64(step-1)/32).Sub(arc.Center)
			point := curve.at(from, float64(step)/32).Sub(arc.Center)
			worst = max(worst, math.Abs(point.Length()-arc.Radius))
			turned += math.Atan2(before.Cross(point), before.Dot(point))
		}
		from = curve.to
	}
	// The centre of a flat arc is far away and known less exactly.
	rounding := 1e-9 + 1e-13*arc.Radius
	if worst > stray*1.01+rounding {
		t.Errorf("%+v in %d curves strays by %g mm, limit %g", edge, len(list), worst, stray)
	}
	if math.Abs(turned-arc.Sweep) > 1e-6 {
		t.Errorf("%+v turns through %g, want %g", edge, turned, arc.Sweep)
	}
	if from != edge.To {
		t.Errorf("%+v ends at %v", edge, from)
	}
	for _, curve := range list {
		if each := math.Abs(arc.Sweep) / float64(len(list)); each > math.Pi/2+1e-9 {
			t.Errorf("%+v: a curve spans %g radians: %v", edge, each, curve)
		}
	}
}

// strayOf is what decides on cutting an arc; it must agree with what is measured.
func TestStrayIsWhatIsMeasured(t *testing.T) {
	for _, bulge := range []float64{0.1, 0.2, quarterBulge} {
		edge := geometry.Edge{To: geometry.Vec2{X: 1000}, Bulge: bulge}
		arc, worst := edge.Arc(), 0.0
		curve := curves(edge, math.Inf(1))[0]
		for step := range 1000 {
			worst = max(worst, math.Abs(curve.at(edge.From, float64(step)/1000).Sub(arc.Center).Length()-arc.Radius))
		}
		if got := strayOf(edge); math.Abs(got-worst) > 0.02*worst {
			t.Errorf("bulge %g: strayOf says %g mm, measured %g mm", bulge, got, worst)
		}
	}
}

func TestCirclesAreFourQuarters(t *testing.T) {
	for _, c := range []struct {
		radius float64
		want   int // curves
	}{{2.5, 4}, {18, 4}, {25, 8}} {
		count := 0
		circle := geometry.Circle(geometry.Vec2{X: 10, Y: 10}, c.radius)
		for i := range circle.Len() {
			count += len(curves(circle.Edge(i), circleStray))
		}
		if count != c.want {
			t.Errorf("a circle of radius %g mm is %d curves, want %d", c.radius, count, c.want)
		}
	}
}
