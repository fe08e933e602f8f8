package solid

import (
	"math"

	"gussetwright/geometry"
)

// pen is how a line is drawn.
type pen struct {
	width  float64 // pixels
	colour packed
	part   uint32  // of 256, how much it covers
	lift   float64 // mm it is drawn nearer than it lies, so that it shows on its own surface
	hidden bool    // drawn through whatever lies before it
	dash   float64 // pixels of dashes and of gaps; 0 for a whole line
}

// line draws an edge of the paper.
func (c *canvas) line(l *lens, s stroke, p pen) {
	a, b := l.seen(s.from), l.seen(s.to)
	if a.Z < l.near && b.Z < l.near {
		return
	}
	if a.Z < l.near {
		a = a.Add(b.Sub(a).Scale((l.near - a.Z) / (b.Z - a.Z)))
	} else if b.Z < l.near {
		b = b.Add(a.Sub(b).Scale((l.near - b.Z) / (a.Z - b.Z)))
	}
	ax, ay := l.pixel(a)
	bx, by := l.pixel(b)
	start, end := geometry.Vec2{X: ax, Y: ay}, geometry.Vec2{X: bx, Y: by}
	along := end.Sub(start)
	length := along.Length()
	if length < 1e-6 {
		return
	}
	near := l.nearnessOf(s, start, along, a.Z, b.Z)
	lift := 1 + p.lift*2/(a.Z+b.Z)
	near = affine{near.base * lift, near.x * lift, near.y * lift}
	if p.dash <= 0 {
		c.stretch(start, end, near, p)
		return
	}
	for at := 0.0; at < length; at += 2 * p.dash {
		stop := min(at+p.dash, length)
		c.stretch(start.Add(along.Scale(at/length)), start.Add(along.Scale(stop/length)), near, p)
	}
}

// nearnessOf returns one over the distance of a line. Away from its middle it follows
// the plane of the paper, so that the line shows through no other layer; of paper
// seen nearly edge on it follows the line alone. start and along are on the picture,
// first and last the distances of the ends.
func (l *lens) nearnessOf(s stroke, start, along geometry.Vec2, first, last float64) affine {
	offset := s.from.Sub(l.eye)
	const grazing = 0.15 // sine of the angle between paper and line of sight
	if k := s.normal.Dot(offset); math.Abs(k) > grazing*offset.Length() {
		n := l.over(s.normal)
		return affine{n.base / k, n.x / k, n.y / k}
	}
	// One over the distance grows evenly along the line on the picture.
	rate := (1/last - 1/first) / along.Dot(along)
	return affine{1/first - rate*along.Dot(start), rate * along.X, rate * along.Y}
}

// stretch fills a straight stretch of a line.
func (c *canvas) stretch(start, end geometry.Vec2, near affine, p pen) {
	side := end.Sub(start).Unit().Left().Scale(p.width / 2)
	c.flat = append(c.flat[:0], start.Add(side), start.Sub(side), end.Sub(side), end.Add(side))
	c.scan.begin()
	c.scan.polygon(c.flat, c.height)
	c.scan.fill(c.width, turnOf(c.flat), func(row, left, right int) {
		n := near.at(row, left)
		for i := row*c.width + left; i < row*c.width+right; i++ {
			if p.hidden || float32(n) >= c.nearness[i] {
				c.colours[i] = mix(c.colours[i], p.colour, p.part)
			}
			n += near.x
		}
	})
}

// turnOf returns the winding of a polygon on the picture, y down.
func turnOf(corners []geometry.Vec2) int {
	twice := 0.0 // the area
	origin := corners[0]
	for i := 2; i < len(corners); i++ {
		twice += corners[i-1].Sub(origin).Cross(corners[i].Sub(origin))
	}
	if twice > 0 {
		return -1
	}
	return 1
}

// ring draws a circle of a given breadth around a pixel, over everything.
func (c *canvas) ring(x, y, radius, breadth float64, colour packed) {
	const steps = 40
	c.scan.begin()
	for _, edge := range []struct{ radius, turn float64 }{{radius + breadth/2, -1}, {radius - breadth/2, 1}} {
		if edge.radius <= 0 {
			continue
		}
		c.flat = c.flat[:0]
		for step := range steps {
			sin, cos := math.Sincos(edge.turn * 2 * math.Pi * float64(step) / steps)
			c.flat = append(c.flat, geometry.Vec2{X: x + edge.radius*cos, Y: y + edge.radius*sin})
		}
		c.scan.polygon(c.flat, c.height)
	}
	c.scan.fill(c.width, 1, func(row, left, right int) {
		for i := row*c.width + left; i < row*c.width+right; i++ {
			c.colours[i] = colour
		}
	})
}
