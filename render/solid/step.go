package solid

import (
	"math"

	"gussetwright/geometry"
)

// brim is an edge at which the paper of a facet ends: cut, or folded back onto itself.
type brim struct {
	facet, corner  int // index of the facet, and of the corner at which the edge begins
	back, backFrom int // the same of the facet that is folded back; −1 for none
}

// doubled is the cosine of how far from folded flat, 26°, paper counts as folded back.
const doubled = 0.9

// The shade beside an edge of paper that lies on other paper: our own choice.
const (
	stepReach = 0.035 // how far it reaches, as a share of the height of the bag
	stepDark  = 0.42  // of the light is lost right at the edge
	stepLeast = 0.4   // calipers that a layer lies below another at least
)

// steps draws a shade along each brim on the paper below it, so that one sees which of
// two layers in the same light is the upper one.
func (c *canvas) steps(v *View, l *lens) {
	m := v.Model
	for _, b := range m.brims {
		p, facing, ok := l.plane(&m.surfaces[b.facet])
		if ok && b.back >= 0 && m.isAbove(b) != facing {
			b.facet, b.corner = b.back, b.backFrom
			p, facing, ok = l.plane(&m.surfaces[b.facet])
		}
		if ok {
			c.step(l, m, b, &p, facing)
		}
	}
}

// isAbove tells whether the facet of a fold lies on its other facet, seen from the print
// side of the first.
func (m *Model) isAbove(b brim) bool {
	f, back := &m.body.Facets[b.facet], &m.body.Facets[b.back]
	return middleOf(back.Points).Sub(f.Points[b.corner]).Dot(f.Pose.Out()) < 0
}

// step shades what lies below the plane of a facet beside one of its edges: most right
// at the edge and right below the plane, nothing at the reach.
func (c *canvas) step(l *lens, m *Model, at brim, p *paint, facing bool) {
	f, reach := &m.body.Facets[at.facet], stepReach*m.walls
	a, b := f.Corners[at.corner], f.Corners[(at.corner+1)%len(f.Corners)]
	out := b.Sub(a).Unit().Left().Scale(-1)
	aside := out.Scale(reach)
	c.scan.begin()
	c.trace(l, []geometry.Vec3{f.Pose.At(a), f.Pose.At(a.Add(aside)), f.Pose.At(b.Add(aside)), f.Pose.At(b)})
	turn := 1
	if !facing {
		turn = -1
	}
	start, normal, least := out.Dot(a), f.Pose.Out(), stepLeast*m.body.Caliper
	c.scan.fill(c.width, turn, func(row, left, right int) {
		n, u, v := p.nearness.at(row, left), p.u.at(row, left), p.v.at(row, left)
		for i := left; i < right; i++ {
			if behind := float64(c.nearness[row*c.width+i]); n > behind && behind > 0 {
				ray := l.ray(float64(i)+0.5, float64(row)+0.5)
				below := (1/behind - 1/n) * math.Abs(normal.Dot(ray))
				beside := (u*out.X+v*out.Y)/n - start
				if below > least && below < reach && beside < reach {
					left := (1 - below/reach) * (1 - max(beside, 0)/reach)
					colour := &c.colours[row*c.width+i]
					*colour = shaded(*colour, part(256*(1-stepDark*left*left)))
				}
			}
			n, u, v = n+p.nearness.x, u+p.u.x, v+p.v.x
		}
	})
}
