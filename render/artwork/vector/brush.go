package vector

import (
	"image"
	"image/color"
	"math"
	"sort"

	"gussetwright/geometry"
)

// brush gives pixels their colour.
type brush interface {
	// paint writes the premultiplied colours of neighbouring pixels, the first at
	// (x, y), four bytes each.
	paint(x, y int, pixels []uint8)
}

// brush returns the brush for a paint without its opacity.
func (r *renderer) brush(p Paint) brush {
	if p.Kind == Blend {
		return newBlendBrush(p.Gradient, r.view)
	}
	return plainBrush(p.Colour.opaque())
}

// plainBrush paints in one colour, without a look at the place.
type plainBrush color.NRGBA

func (b plainBrush) paint(_, _ int, pixels []uint8) {
	for ; len(pixels) >= 4; pixels = pixels[4:] {
		pixels[0], pixels[1], pixels[2], pixels[3] = b.R, b.G, b.B, 255
	}
}

// layerBrush paints what another picture shows in the same place.
type layerBrush struct{ picture *image.RGBA }

func (b layerBrush) paint(x, y int, pixels []uint8) {
	copy(pixels, b.picture.Pix[b.picture.PixOffset(x, y):])
}

// lay paints what the scanner holds onto a picture, as far as the mask lets it be
// seen.
func (r *renderer) lay(onto *image.RGBA, through *mask, evenOdd bool, with brush, opacity float64) {
	plain, isPlain := with.(plainBrush)
	fully := isPlain && opacity == 1
	line := make([]uint8, 4*r.scanner.Area().Dx())
	if isPlain {
		plain.paint(0, 0, line)
	}
	r.scanner.Scan(evenOdd, func(y, from, to int, cover float32) {
		start := onto.PixOffset(from, y)
		pixels := onto.Pix[start : start+4*(to-from)]
		alpha := through.row(y, from, to)
		if fully && cover == 1 && alpha == nil {
			copy(pixels, line)
			return
		}
		if !isPlain {
			with.paint(from, y, line[:len(pixels)])
		}
		share := uint32(float64(cover)*opacity*255 + 0.5)
		switch {
		case alpha == nil && isPlain:
			castPlain(pixels, line, share)
			return
		case alpha == nil:
			cast(pixels, line, share)
			return
		}
		for i, seen := range alpha {
			cast(pixels[4*i:4*i+4], line[4*i:4*i+4], over255(share*uint32(seen)))
		}
	})
}

// cast lays premultiplied colours over others, by a share of 255.
func cast(onto, colours []uint8, share uint32) {
	if share == 0 {
		return
	}
	for i := 0; i+4 <= len(onto); i += 4 {
		from, to := colours[i:i+4:i+4], onto[i:i+4:i+4]
		left := 255 - over255(uint32(from[3])*share)
		to[0] = uint8(min(over255(uint32(from[0])*share)+over255(uint32(to[0])*left), 255))
		to[1] = uint8(min(over255(uint32(from[1])*share)+over255(uint32(to[1])*left), 255))
		to[2] = uint8(min(over255(uint32(from[2])*share)+over255(uint32(to[2])*left), 255))
		to[3] = uint8(min(over255(uint32(from[3])*share)+over255(uint32(to[3])*left), 255))
	}
}

// castPlain does the same for one colour that is not seen through.
func castPlain(onto, colour []uint8, share uint32) {
	r, g, b := uint32(colour[0])*share+128, uint32(colour[1])*share+128, uint32(colour[2])*share+128
	a, left := 255*share+128, 255-share
	part := func(add uint32, under uint8) uint8 { // add and 128 are within 65 535 with it
		v := add + uint32(under)*left
		return uint8((v + v>>8) >> 8)
	}
	for i := 0; i+4 <= len(onto); i += 4 {
		to := onto[i : i+4 : i+4]
		to[0], to[1], to[2], to[3] = part(r, to[0]), part(g, to[1]), part(b, to[2]), part(a, to[3])
	}
}

// blendBrush paints a gradient.
type blendBrush struct {
	gradient *Gradient
	back     geometry.Affine // from pixels to the plane of the gradient
	solid    bool            // the plane can be gone back to
	table    [][4]uint8      // the colours before, along and after the gradient
}

// tableSize is into how many colours a gradient is cut: more than pixels across most
// pictures, so that hard stops stay sharp.
const tableSize = 4096

func newBlendBrush(g *Gradient, view geometry.Affine) *blendBrush {
	b := &blendBrush{gradient: g, table: make([][4]uint8, tableSize+2)}
	b.back, b.solid = view.After(g.Place).Inverse()
	for i := range b.table {
		b.table[i] = g.at((float64(i) - 0.5) / tableSize)
	}
	return b
}

// at returns the premultiplied colour at a share of the gradient. Colours are mixed
// before they are multiplied by their opacity (SVG 1.1, 13.2.4).
func (g *Gradient) at(share float64) [4]uint8 {
	next := sort.Search(len(g.Stops), func(i int) bool { return g.Stops[i].At > share })
	before, after := g.Stops[max(next-1, 0)], g.Stops[min(next, len(g.Stops)-1)]
	part := 0.0
	if after.At > before.At {
		part = (share - before.At) / (after.At - before.At)
	}
	mix := func(a, b float64) float64 { return a + (b-a)*part }
	alpha := mix(before.Opacity, after.Opacity)
	channel := func(a, b uint8) uint8 { return uint8(mix(float64(a), float64(b))*alpha + 0.5) }
	return [4]uint8{
		channel(before.Colour.R, after.Colour.R), channel(before.Colour.G, after.Colour.G),
		channel(before.Colour.B, after.Colour.B), uint8(alpha*255 + 0.5),
	}
}

func (b *blendBrush) paint(x, y int, pixels []uint8) {
	if !b.solid {
		clear(pixels)
		return
	}
	at := b.back.At(geometry.Vec2{X: float64(x) + 0.5, Y: float64(y) + 0.5})
	share := b.along
	if b.gradient.Radial {
		share = b.around
	}
	for ; len(pixels) >= 4; pixels = pixels[4:] {
		place := math.Floor(share(at)*tableSize) + 1
		copy(pixels, b.table[int(min(max(place, 0), tableSize+1))][:])
		at = at.Add(b.back.U)
	}
}

// along returns how far along the line of the gradient a point lies.
func (b *blendBrush) along(p geometry.Vec2) float64 {
	line := b.gradient.To.Sub(b.gradient.From)
	return p.Sub(b.gradient.From).Dot(line) / line.Dot(line)
}

// around returns at which share between its two circles a circle passes the point.
// The first circle lies within the second, so there is exactly one outside of it.
func (b *blendBrush) around(p geometry.Vec2) float64 {
	g := b.gradient
	way, grow := g.To.Sub(g.From), g.ToRadius-g.FromRadius
	p = p.Sub(g.From)
	// The point is as far from From + t·way as the radius FromRadius + t·grow.
	a := way.Dot(way) - grow*grow
	half := p.Dot(way) + g.FromRadius*grow
	c := p.Dot(p) - g.FromRadius*g.FromRadius
	root := math.Sqrt(max(half*half-a*c, 0))
	return (half - root) / a // a is negative, so this is the greater one
}
