package vector

import (
	"strings"

	"gussetwright/geometry"
	"gussetwright/render/pdf/object"
)

// painted sets the paint for the operators that draw writes, and takes it back.
func (c *canvas) painted(p Paint, stroke bool, draw func()) {
	operator := func(of string) string { // capitals are for lines
		if stroke {
			return strings.ToUpper(of)
		}
		return of
	}
	c.do("q")
	s := state{opacity: p.Opacity}
	if p.Kind == Blend && p.Gradient.seenThrough() {
		s = state{1, c.book.fade(p.Gradient, p.Opacity)}
	}
	c.gs(s)
	switch {
	case p.Kind == Blend:
		c.named(operator("cs"), "Pattern")
		c.named(operator("scn"), c.name(&c.patterns, "P", c.book.pattern(p.Gradient)))
	case p.Colour.Inks:
		c.do(operator("k"), p.Colour.C, p.Colour.M, p.Colour.Y, p.Colour.K)
	default:
		c.do(operator("rg"), float64(p.Colour.R)/255, float64(p.Colour.G)/255, float64(p.Colour.B)/255)
	}
	draw()
	c.do("Q")
}

// seenThrough tells whether the gradient changes how much is seen of it.
func (g *Gradient) seenThrough() bool {
	for _, stop := range g.Stops {
		if stop.Opacity != 1 {
			return true
		}
	}
	return false
}

// blendKey is by what a gradient is known that was written before.
type blendKey struct {
	radial               bool
	from, to             geometry.Vec2
	fromRadius, toRadius float64
	place                geometry.Affine
	stops                *Stop
	fade                 float64 // the opacity of a mask, 0 for a pattern
}

func (g *Gradient) key(fade float64) blendKey {
	return blendKey{g.Radial, g.From, g.To, g.FromRadius, g.ToRadius, g.Place, &g.Stops[0], fade}
}

// pattern returns a gradient as a pattern to paint with (ISO 32000-1, 8.7.4).
func (b *book) pattern(g *Gradient) *object.Indirect {
	key := g.key(0)
	if known := b.blends[key]; known != nil {
		return known
	}
	space, colour := object.Name("DeviceCMYK"), func(s Stop) []float64 { return []float64{s.Colour.C, s.Colour.M, s.Colour.Y, s.Colour.K} }
	for _, stop := range g.Stops {
		if !stop.Colour.Inks { // colours of the screen and of the press mix on the screen
			space, colour = "DeviceRGB", func(s Stop) []float64 {
				return []float64{float64(s.Colour.R) / 255, float64(s.Colour.G) / 255, float64(s.Colour.B) / 255}
			}
		}
	}
	plane, shading := g.shading(space, colour)
	made := &object.Indirect{Value: object.Dict{
		{Key: "Type", Value: object.Name("Pattern")},
		{Key: "PatternType", Value: object.Integer(2)},
		{Key: "Shading", Value: shading},
		{Key: "Matrix", Value: motion(plane)},
	}}
	b.blends[key] = made
	return made
}

// fade returns a soft mask of how much is seen along a gradient that has an opacity
// as a whole too.
func (b *book) fade(g *Gradient, opacity float64) *object.Indirect {
	key := g.key(opacity)
	if known := b.blends[key]; known != nil {
		return known
	}
	plane, shading := g.shading("DeviceGray", func(s Stop) []float64 { return []float64{s.Opacity * opacity} })
	c := &canvas{book: b, names: map[*object.Indirect]object.Name{}}
	c.move(plane)
	c.named("sh", c.name(&c.shadings, "S", &object.Indirect{Value: shading}))
	made := b.luminosity(c)
	b.blends[key] = made
	return made
}

// shading returns a gradient as a shading (ISO 32000-1, 8.7.4.5.3 and 4) in a plane
// that has about the scale of the drawing.
func (g *Gradient) shading(space object.Name, colour func(Stop) []float64) (geometry.Affine, object.Dict) {
	scale := max(g.Place.U.Length(), g.Place.V.Length())
	plane := g.Place.After(geometry.Stretch(1/scale, 1/scale))
	kind := object.Integer(2)
	places := []float64{g.From.X, g.From.Y, g.To.X, g.To.Y}
	if g.Radial {
		kind = 3
		places = []float64{g.From.X, g.From.Y, g.FromRadius, g.To.X, g.To.Y, g.ToRadius}
	}
	coordinates := make(object.Array, len(places))
	for i, v := range places {
		coordinates[i] = fine(v * scale)
	}
	return plane, object.Dict{
		{Key: "ShadingType", Value: kind},
		{Key: "ColorSpace", Value: space},
		{Key: "Coords", Value: coordinates},
		{Key: "Function", Value: along01(g.Stops, colour)},
		{Key: "Extend", Value: object.Array{object.Boolean(true), object.Boolean(true)}},
	}
}

// sliver is the share of a gradient that shows a colour which counts only before or
// after it: the function of a shading has one value at each end.
const sliver = 1e-6

// along01 returns the colours of the stops as a function of 0 to 1: a straight line
// between each two, stitched together (ISO 32000-1, 7.10.3 and 4).
func along01(stops []Stop, colour func(Stop) []float64) object.Dict {
	var parts, bounds, encode object.Array
	at := 0.0
	part := func(to float64, from, until Stop) {
		if to <= at {
			return
		}
		if len(parts) > 0 {
			bounds = append(bounds, fine(at))
		}
		at = to
		encode = append(encode, object.Integer(0), object.Integer(1))
		parts = append(parts, object.Dict{
			{Key: "FunctionType", Value: object.Integer(2)},
			{Key: "Domain", Value: object.Numbers(0, 1)},
			{Key: "C0", Value: object.Numbers(colour(from)...)},
			{Key: "C1", Value: object.Numbers(colour(until)...)},
			{Key: "N", Value: object.Integer(1)},
		})
	}
	first, last := stops[0], stops[len(stops)-1]
	part(max(first.At, sliver), first, first)
	for i := 1; i < len(stops); i++ {
		part(min(stops[i].At, 1-sliver), stops[i-1], stops[i])
	}
	part(1, last, last)
	return object.Dict{
		{Key: "FunctionType", Value: object.Integer(3)},
		{Key: "Domain", Value: object.Numbers(0, 1)},
		{Key: "Functions", Value: parts},
		{Key: "Bounds", Value: bounds},
		{Key: "Encode", Value: encode},
	}
}
