package fold

import "math"

// Motion is what is measured of a stage.
type Motion struct {
	MaxStrain   float64 // greatest change of a distance between two corners of a facet, as a share of it
	MaxCrossing float64 // mm, see Crossing
	// A step is the way from one moment to the next of the corner that goes farthest, in mm.
	MaxStep, MeanStep float64
}

// Measure follows a stage through evenly spaced moments, at least two, its beginning
// and its end among them. A stage that cannot be folded has no motion.
func (l *Lesson) Measure(stage, moments int) Motion {
	var m Motion
	if stage < 0 || stage >= l.Foldable {
		return m
	}
	moments = max(moments, 2)
	var gauge Gauge
	before := l.Pose(stage, 0)
	for i := range moments {
		body := l.Pose(stage, float64(i)/float64(moments-1))
		step := farthest(&before, &body)
		m.MaxStep = max(m.MaxStep, step)
		m.MeanStep += step / float64(moments-1)
		m.MaxStrain = max(m.MaxStrain, Strain(&body))
		m.MaxCrossing = max(m.MaxCrossing, gauge.Crossing(&body))
		before = body
	}
	return m
}

// farthest returns how far the corner went that went farthest.
func farthest(from, to *Body) float64 {
	most := 0.0
	for i := range from.Facets {
		for c, p := range from.Facets[i].Points {
			most = max(most, to.Facets[i].Points[c].Sub(p).Length())
		}
	}
	for i := range min(len(from.Cards), len(to.Cards)) {
		for c, p := range from.Cards[i].Points {
			most = max(most, to.Cards[i].Points[c].Sub(p).Length())
		}
	}
	return most
}

// Strain returns the greatest change of the distance between two corners of a facet,
// as a share of that on the blank: what the edges and diagonals of its triangles are
// pulled or pressed by. Distances under a hundredth of a mm are left out.
func Strain(body *Body) float64 {
	most := 0.0
	for i := range body.Facets {
		f := &body.Facets[i]
		for c, a := range f.Corners {
			for d := range c {
				if flat := a.Sub(f.Corners[d]).Length(); flat > 0.01 {
					most = max(most, math.Abs(f.Points[c].Sub(f.Points[d]).Length()/flat-1))
				}
			}
		}
	}
	return most
}
