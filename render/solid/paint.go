package solid

import (
	"math"

	"gussetwright/geometry"
)

// canvas is what a picture is drawn on: for each sample its colour and one over
// the distance of what is seen there, 0 for nothing.
type canvas struct {
	width, height int
	colours       []packed
	nearness      []float32
	scan          scanner
	loop          []geometry.Vec3 // seen from the camera, reused
	clipped       []geometry.Vec3
	flat          []geometry.Vec2 // on the picture, reused
}

// resize makes room for a picture and clears it.
func (c *canvas) resize(width, height int) {
	c.width, c.height = width, height
	if n := width * height; cap(c.colours) < n {
		c.colours, c.nearness = make([]packed, n), make([]float32, n)
	} else {
		c.colours, c.nearness = c.colours[:n], c.nearness[:n]
		for row := 0; row < n; row += width { // all at once the collector of garbage, and the window, might wait
			clear(c.nearness[row : row+width])
		}
	}
}

// affine is a quantity that grows evenly over the picture.
type affine struct{ base, x, y float64 }

// at returns the quantity at the middle of the first pixel of a run.
func (a affine) at(row, left int) float64 {
	return a.base + a.x*(float64(left)+0.5) + a.y*(float64(row)+0.5)
}

// paint is how the pixels of a shape are coloured. On a plane in perspective one
// over the distance grows evenly over the picture, and so do the coordinates u and
// v on the plane divided by the distance.
type paint struct {
	nearness, u, v affine
	// Brightness in parts of 256: shade + shadeU·u + shadeV·v.
	shade, shadeU, shadeV float64
	colour                packed
	level                 *level  // nil for plain colour
	height                float64 // of the piece, where v is 0 at its lower edge
	tint                  packed
	tintPart              uint32 // of 256
	least, most           float64
}

// plane returns the paint of a plane, without colour, and whether it is seen from
// its normal side. ok is false when the plane is seen edge on.
func (l *lens) plane(s *surface) (p paint, facing, ok bool) {
	offset := s.pose.Origin.Sub(l.eye)
	k := s.normal.Dot(offset)
	if math.Abs(k) < 1e-9*(1+offset.Length()) {
		return p, false, false
	}
	n := l.over(s.normal)
	p.nearness = affine{n.base / k, n.x / k, n.y / k}
	along := func(axis geometry.Vec3) affine {
		a, start := l.over(axis), -offset.Dot(axis)
		return affine{a.base + start*p.nearness.base, a.x + start*p.nearness.x, a.y + start*p.nearness.y}
	}
	p.u, p.v = along(s.pose.Right), along(s.pose.Up)
	return p, k < 0, true
}

// over returns how the component along axis of the rays through the pixels grows
// over the picture.
func (l *lens) over(axis geometry.Vec3) affine {
	right, up := axis.Dot(l.right)/l.focal, axis.Dot(l.up)/l.focal
	return affine{axis.Dot(l.toward) - right*l.x + up*l.y, right, -up}
}

// trace adds a closed loop in space to the shape being filled, cut off at the near
// plane. It returns the least and greatest nearness of its corners.
func (c *canvas) trace(l *lens, loop []geometry.Vec3) (least, most float64) {
	c.loop = c.loop[:0]
	behind := false
	for _, p := range loop {
		seen := l.seen(p)
		behind = behind || seen.Z < l.near
		c.loop = append(c.loop, seen)
	}
	corners := c.loop
	if behind {
		corners = c.clipNear(l.near)
	}
	c.flat = c.flat[:0]
	least, most = math.Inf(1), 0
	for _, p := range corners {
		x, y := l.pixel(p)
		c.flat = append(c.flat, geometry.Vec2{X: x, Y: y})
		least, most = min(least, 1/p.Z), max(most, 1/p.Z)
	}
	c.scan.polygon(c.flat, c.height)
	return least, most
}

// clipNear cuts the loop at the near plane.
func (c *canvas) clipNear(near float64) []geometry.Vec3 {
	c.clipped = c.clipped[:0]
	for i, a := range c.loop {
		b := c.loop[(i+1)%len(c.loop)]
		if a.Z >= near {
			c.clipped = append(c.clipped, a)
		}
		if (a.Z >= near) != (b.Z >= near) {
			c.clipped = append(c.clipped, a.Add(b.Sub(a).Scale((near-a.Z)/(b.Z-a.Z))))
		}
	}
	return c.clipped
}

// fill paints a surface where nothing nearer is drawn yet.
func (c *canvas) fill(l *lens, s *surface, p *paint, facing bool) {
	c.scan.begin()
	for i, loop := range s.loops {
		least, most := c.trace(l, loop)
		if i == 0 {
			p.least, p.most = least, most
		}
	}
	turn := 1
	if !facing {
		turn = -1
	}
	switch {
	case p.level != nil:
		c.scan.fill(c.width, turn, func(row, left, right int) { c.textured(p, row, left, right) })
	case p.shadeU != 0 || p.shadeV != 0:
		c.scan.fill(c.width, turn, func(row, left, right int) { c.graded(p, row, left, right) })
	default:
		c.scan.fill(c.width, turn, func(row, left, right int) { c.plain(p, row, left, right) })
	}
}

// within keeps the nearness between those of the corners: slivers seen nearly edge
// on would otherwise run away from the rounding of their plane.
func (p *paint) within(nearness float64) float64 { return min(max(nearness, p.least), p.most) }

func (c *canvas) textured(p *paint, row, left, right int) {
	start := row * c.width
	colours, near := c.colours[start+left:start+right], c.nearness[start+left:start+right]
	near = near[:len(colours)]
	n, u, v := p.nearness.at(row, left), p.u.at(row, left), p.v.at(row, left)
	scale := p.level.scale
	for i := range colours {
		if nearness := float32(p.within(n)); nearness > near[i] {
			near[i] = nearness
			distance := 1 / float64(nearness)
			atU, atV := u*distance, v*distance
			colour := p.level.at(atU*scale, (p.height-atV)*scale)
			if p.tintPart != 0 {
				colour = mix(colour, p.tint, p.tintPart)
			}
			colours[i] = shaded(colour, part(p.shade+p.shadeU*atU+p.shadeV*atV))
		}
		n, u, v = n+p.nearness.x, u+p.u.x, v+p.v.x
	}
}

func (c *canvas) graded(p *paint, row, left, right int) {
	start := row * c.width
	n, u, v := p.nearness.at(row, left), p.u.at(row, left), p.v.at(row, left)
	for i := start + left; i < start+right; i++ {
		if nearness := float32(p.within(n)); nearness > c.nearness[i] {
			c.nearness[i] = nearness
			distance := 1 / float64(nearness)
			c.colours[i] = shaded(p.colour, part(p.shade+(p.shadeU*u+p.shadeV*v)*distance))
		}
		n, u, v = n+p.nearness.x, u+p.u.x, v+p.v.x
	}
}

func (c *canvas) plain(p *paint, row, left, right int) {
	start := row * c.width
	n := p.nearness.at(row, left)
	colour := shaded(p.colour, part(p.shade))
	for i := start + left; i < start+right; i++ {
		if nearness := float32(p.within(n)); nearness > c.nearness[i] {
			c.nearness[i] = nearness
			c.colours[i] = colour
		}
		n += p.nearness.x
	}
}

// part returns a brightness within 0 and 256.
func part(v float64) uint32 { return uint32(min(max(v, 0), 256)) }
