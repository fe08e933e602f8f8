package fold

import (
	"math"

	"gussetwright/geometry"
)

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

// rimCalipers is the width of the strip along a crease, in calipers, that is left
// out where crossings are measured.
const rimCalipers = 4

// Crossing returns how deep facets of a body pass through each other, in mm: of the
// pair that is deepest, the least way along which one would have to be moved so that
// they part. The strip of four calipers along each crease is left out: there the
// thickness of the layers is taken up, which plane facets a caliper apart cannot
// show. Holes count as paper, and each facet as the convex shape around it.
func Crossing(body *Body) float64 {
	var gauge Gauge
	return gauge.Crossing(body)
}

// Gauge measures crossings of bodies one after the other. Facets with the same
// corners on the blank are made ready once. The zero value is ready for use.
type Gauge struct {
	cores  [][]geometry.Vec2 // by facet: its corners without the strip along creases
	of     []Facet           // what they were made from
	placed []plate
}

// plate is a convex plane shape in space.
type plate struct {
	points      []geometry.Vec3
	normal      geometry.Vec3
	least, most geometry.Vec3
}

// Crossing measures as the function of that name does.
func (g *Gauge) Crossing(body *Body) float64 {
	g.prepare(body)
	for i := range g.placed {
		p := &g.placed[i]
		facet := body.facet(i)
		p.points = p.points[:0]
		p.normal = facet.Pose.Out()
		p.least = geometry.Vec3{X: math.Inf(1), Y: math.Inf(1), Z: math.Inf(1)}
		p.most = p.least.Scale(-1)
		for _, corner := range g.cores[i] {
			at := facet.Pose.At(corner)
			p.points = append(p.points, at)
			p.least = geometry.Vec3{X: min(p.least.X, at.X), Y: min(p.least.Y, at.Y), Z: min(p.least.Z, at.Z)}
			p.most = geometry.Vec3{X: max(p.most.X, at.X), Y: max(p.most.Y, at.Y), Z: max(p.most.Z, at.Z)}
		}
	}
	deepest := 0.0
	for i := range g.placed {
		for j := range i {
			deepest = max(deepest, crossing(&g.placed[i], &g.placed[j], deepest))
		}
	}
	return deepest
}

// facet returns a facet of the paper, or after those a card.
func (b *Body) facet(i int) *Facet {
	if i < len(b.Facets) {
		return &b.Facets[i]
	}
	return &b.Cards[i-len(b.Facets)]
}

// prepare makes the cores of facets that are not those of the last body.
func (g *Gauge) prepare(body *Body) {
	count := len(body.Facets) + len(body.Cards)
	if len(g.of) == count {
		same := true
		for i := range g.of {
			f := body.facet(i)
			same = same && f.Piece == g.of[i].Piece && len(f.Corners) == len(g.of[i].Corners) && f.Corners[0] == g.of[i].Corners[0]
		}
		if same {
			return
		}
	}
	g.of, g.cores, g.placed = g.of[:0], g.cores[:0], make([]plate, count)
	for i := range count {
		f := body.facet(i)
		g.of = append(g.of, *f)
		core := f.Corners
		for c, a := range f.Corners {
			b := f.Corners[(c+1)%len(f.Corners)]
			if i >= len(body.Facets) || !creased(body.Facets, i, a, b) {
				continue
			}
			inward := b.Sub(a).Unit().Left().Scale(rimCalipers * body.Caliper)
			core = clip(core, line{a.Add(inward), b.Add(inward)})
		}
		g.cores = append(g.cores, convexHull(core))
	}
}
