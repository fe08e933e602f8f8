package flat

import (
	"math"

	"gussetwright/geometry"
)

// stroke adds a line along a path to the raster: width and dashes are those of the
// picture and of the drawing.
func (p *Painter) stroke(path geometry.Path, width float64, dash []float64) {
	p.trace(path)
	if p.outside(p.points, width) {
		return
	}
	p.snap(path.Closed, width)
	if period := p.scaleDash(dash); period >= leastPeriod {
		p.dashes(path.Closed, width/2, period)
		return
	}
	p.solid(path.Closed, width/2)
}

// leastPeriod is the length of a dash and its gap, in pixels, below which a line
// is painted solid.
const leastPeriod = 2

// snap moves upright and level edges by less than a pixel, so that they fill whole
// pixels.
func (p *Painter) snap(closed bool, width float64) {
	const level = 1e-6
	n := len(p.points)
	edges := n - 1
	if closed {
		edges = n
	}
	for i := range edges {
		a, b := &p.points[i], &p.points[(i+1)%n]
		if math.Abs(a.x-b.x) < level {
			a.x = middle(a.x, width)
			b.x = a.x
		}
		if math.Abs(a.y-b.y) < level {
			a.y = middle(a.y, width)
			b.y = a.y
		}
	}
}

// middle returns where the middle of a line must be to fill whole pixels: on the
// middle of a pixel for an odd width, between two for an even one.
func middle(at, width float64) float64 {
	if int(width)%2 == 1 {
		return math.Floor(at) + 0.5
	}
	return math.Round(at)
}

// solid adds an undashed line. Its edges meet in mitres and so never overlap.
func (p *Painter) solid(closed bool, half float64) {
	n := len(p.points)
	p.joints = p.joints[:0]
	for i := range n {
		before, after := (i+n-1)%n, (i+1)%n
		if !closed {
			before, after = max(i-1, 0), min(i+1, n-1)
		}
		p.joints = append(p.joints, joint(p.points[before], p.points[i], p.points[after], half))
	}
	edges := n
	if !closed {
		edges = n - 1
	}
	for i := range edges {
		j := (i + 1) % n
		a, b, da, db := p.points[i], p.points[j], p.joints[i], p.joints[j]
		p.quad(point{a.x + da.x, a.y + da.y}, point{b.x + db.x, b.y + db.y}, point{b.x - db.x, b.y - db.y}, point{a.x - da.x, a.y - da.y})
	}
}

// joint returns how far from the corner at the left side of a line lies there.
func joint(before, at, after point, half float64) point {
	in, out := left(before, at), left(at, after)
	if in == (point{}) {
		in = out
	}
	if out == (point{}) {
		out = in
	}
	turn := 1 + in.x*out.x + in.y*out.y
	if turn < 0.2 { // sharper than 37°: a mitre would be a thorn
		return point{out.x * half, out.y * half}
	}
	return point{(in.x + out.x) / turn * half, (in.y + out.y) / turn * half}
}

// left returns the unit vector to the left of the way from a to b, y down.
func left(a, b point) point {
	dx, dy := b.x-a.x, b.y-a.y
	length := math.Hypot(dx, dy)
	if length == 0 {
		return point{}
	}
	return point{-dy / length, dx / length}
}

func (p *Painter) quad(a, b, c, d point) {
	p.raster.edge(a.x, a.y, b.x, b.y)
	p.raster.edge(b.x, b.y, c.x, c.y)
	p.raster.edge(c.x, c.y, d.x, d.y)
	p.raster.edge(d.x, d.y, a.x, a.y)
}

// scaleDash turns a dash pattern into pixels, in p.dash, and returns its length. A
// pattern of an odd number is run through twice, so that dashes and gaps alternate.
func (p *Painter) scaleDash(dash []float64) (period float64) {
	p.dash = p.dash[:0]
	for range 1 + len(dash)%2 {
		for _, length := range dash {
			p.dash = append(p.dash, length*p.view.Scale)
			period += length * p.view.Scale
		}
	}
	return period
}

// dashes adds a dashed line. The pattern runs on round corners; only what is seen
// is laid out.
func (p *Painter) dashes(closed bool, half, period float64) {
	edges := len(p.points) - 1
	if closed {
		edges++
	}
	gone := 0.0 // along the path, up to the edge
	for i := range edges {
		a, b := p.points[i], p.points[(i+1)%len(p.points)]
		length := math.Hypot(b.x-a.x, b.y-a.y)
		if from, to, seen := p.seen(a, b, half); seen && length > 0 {
			p.dashEdge(a, b, length, gone, from*length, to*length, half, period)
		}
		gone += length
	}
}

// dashEdge adds the dashes of one edge between two distances from its start.
func (p *Painter) dashEdge(a, b point, length, gone, from, to, half, period float64) {
	normal := left(a, b)
	normal = point{normal.x * half, normal.y * half}
	at := func(distance float64) point {
		share := distance / length
		return point{a.x + (b.x-a.x)*share, a.y + (b.y-a.y)*share}
	}
	start := math.Floor((gone+from)/period)*period - gone
	for i := 0; start < to; i = (i + 1) % len(p.dash) {
		end := start + p.dash[i]
		if i%2 == 0 && end > from {
			c, d := at(max(start, from)), at(min(end, to))
			p.quad(point{c.x + normal.x, c.y + normal.y}, point{d.x + normal.x, d.y + normal.y},
				point{d.x - normal.x, d.y - normal.y}, point{c.x - normal.x, c.y - normal.y})
		}
		start = end
	}
}

// seen returns which part of an edge lies in the picture, as shares of it.
func (p *Painter) seen(a, b point, margin float64) (from, to float64, seen bool) {
	picture := geometry.RectAt(0, 0, p.width, p.height).Inset(-margin)
	return picture.Through(geometry.Vec2{X: a.x, Y: a.y}, geometry.Vec2{X: b.x, Y: b.y})
}
