package fold

import (
	"math"
	"slices"

	"gussetwright/geometry"
)

// rimCalipers is the width of the strip along a crease, in calipers, that is left
// out where crossings are measured.
const rimCalipers = 4

// Crossing returns how deep facets of a body pass through each other, in mm: of the
// pair that is deepest, the least way along which one would have to be moved so that
// they part. The strip of four calipers along each crease is left out: there the
// thickness of the layers is taken up, which plane facets a caliper apart cannot
// show. Holes count as paper, and each facet as the convex shape around it. What has
// passed through all but a little would have little way to go on, so a motion is to
// be measured at moments close to each other.
func Crossing(body *Body) float64 {
	var gauge Gauge
	return gauge.Crossing(body)
}

// Gauge measures crossings of bodies one after the other. Facets with the same
// corners on the blank are made ready once. The zero value is ready for use.
type Gauge struct {
	cores  []core
	plates []plate
}

// core is a facet without the strips along its creases.
type core struct {
	corners []geometry.Vec2 // of the facet
	inner   []geometry.Vec2 // convex, anticlockwise
	spanned [2]int          // corners that span the facet from the first
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
	for i := range g.plates {
		g.plates[i].set(body.facet(i), &g.cores[i])
	}
	deepest := 0.0
	for i := range g.plates {
		for j := range i {
			deepest = max(deepest, crossing(&g.plates[i], &g.plates[j], deepest))
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
	known := len(g.cores) == count
	for i := 0; known && i < count; i++ {
		known = slices.Equal(g.cores[i].corners, body.facet(i).Corners)
	}
	if known {
		return
	}
	g.cores, g.plates = make([]core, count), make([]plate, count)
	for i := range count {
		f := body.facet(i)
		inner := f.Corners
		for c, a := range f.Corners {
			b := f.Corners[(c+1)%len(f.Corners)]
			if i < len(body.Facets) && creased(body.Facets, i, a, b) {
				inward := b.Sub(a).Unit().Left().Scale(rimCalipers * body.Caliper)
				inner = clip(inner, line{a.Add(inward), b.Add(inward)})
			}
		}
		g.cores[i] = core{f.Corners, convexHull(inner), spanning(f.Corners)}
	}
}

// spanning returns the two corners that make the largest triangle with the first.
func spanning(corners []geometry.Vec2) [2]int {
	best, found := 0.0, [2]int{1, 2}
	second := 1
	for i := range corners {
		if corners[i].Sub(corners[0]).Length() > corners[second].Sub(corners[0]).Length() {
			second = i
		}
	}
	for i := range corners {
		if area := math.Abs(corners[second].Sub(corners[0]).Cross(corners[i].Sub(corners[0]))); area > best {
			best, found = area, [2]int{second, i}
		}
	}
	return found
}

// set puts the core of a facet where its points are, stretched as these are.
func (p *plate) set(f *Facet, of *core) {
	p.normal = f.Pose.Out()
	p.points = p.points[:0]
	p.least = geometry.Vec3{X: math.Inf(1), Y: math.Inf(1), Z: math.Inf(1)}
	p.most = p.least.Scale(-1)
	i, k := of.spanned[0], of.spanned[1]
	a, b := f.Corners[i].Sub(f.Corners[0]), f.Corners[k].Sub(f.Corners[0])
	inA, inB := f.Points[i].Sub(f.Points[0]), f.Points[k].Sub(f.Points[0])
	area := a.Cross(b)
	for _, corner := range of.inner {
		c := corner.Sub(f.Corners[0])
		at := f.Points[0].Add(inA.Scale(c.Cross(b) / area)).Add(inB.Scale(a.Cross(c) / area))
		p.points = append(p.points, at)
		p.least = geometry.Vec3{X: min(p.least.X, at.X), Y: min(p.least.Y, at.Y), Z: min(p.least.Z, at.Z)}
		p.most = geometry.Vec3{X: max(p.most.X, at.X), Y: max(p.most.Y, at.Y), Z: max(p.most.Z, at.Z)}
	}
}
