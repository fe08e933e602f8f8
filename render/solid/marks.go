package solid

import "slices"

// strokes draws the edges of the paper as fine lines, so that white stands out
// against white.
func (c *canvas) strokes(v *View, l *lens, samples float64) {
	p := pen{width: 0.9 * samples, colour: pack(v.Look.Ink), part: 84, lift: 0.05}
	for _, s := range v.Model.strokes {
		c.line(l, s, p)
	}
}

// highlight draws the border of the panel that stands out: whole where it is seen,
// dashed where something lies before it.
func (c *canvas) highlight(v *View, l *lens, samples float64) {
	if v.Highlight == "" {
		return
	}
	colour := pack(v.Look.Accent)
	for _, hidden := range []bool{true, false} {
		p := pen{width: 2.4 * samples, colour: colour, part: 256, lift: 0.3}
		if hidden {
			p = pen{width: 1.2 * samples, colour: colour, part: 150, hidden: true, dash: 5 * samples}
		}
		for _, s := range v.Model.bordersOf(v.Highlight) {
			c.line(l, s, p)
		}
	}
}

// bordersOf returns the edges of a panel without those between two of its facets.
func (m *Model) bordersOf(panel string) []stroke {
	var all, kept []stroke
	for i := range m.body.Facets {
		f := &m.body.Facets[i]
		if f.Panel != panel {
			continue
		}
		for c, a := range f.Points {
			all = append(all, stroke{a, f.Points[(c+1)%len(f.Points)], f.Pose.Out()})
		}
	}
	for _, s := range all {
		if !slices.ContainsFunc(all, func(o stroke) bool { return o.from.Near(s.to) && o.to.Near(s.from) }) {
			kept = append(kept, s)
		}
	}
	return kept
}

// marker draws a ring around the marked place; open where the place is hidden.
func (c *canvas) marker(v *View, l *lens, samples float64) {
	if v.Marker == nil {
		return
	}
	at, found := v.Model.Where(*v.Marker)
	if !found {
		return
	}
	seen := l.seen(at)
	if seen.Z < l.near {
		return
	}
	x, y := l.pixel(seen)
	halo, accent := pack(v.Look.Halo), pack(v.Look.Accent)
	c.ring(x, y, 11*samples, 6*samples, halo)
	c.ring(x, y, 11*samples, 3*samples, accent)
	if !c.covered(x, y, 1/(seen.Z-1)) {
		c.ring(x, y, 2*samples, 5.5*samples, halo)
		c.ring(x, y, 1.5*samples, 3*samples, accent)
	}
}

// covered tells whether something nearer is drawn at a pixel.
func (c *canvas) covered(x, y, nearness float64) bool {
	column, row := int(x), int(y)
	if x < 0 || y < 0 || column >= c.width || row >= c.height {
		return false
	}
	return float64(c.nearness[row*c.width+column]) > nearness
}
