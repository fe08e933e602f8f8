package solid

import (
	"cmp"
	"encoding/binary"
	"image"
	"image/color"
	"math"
	"slices"

	"gussetwright/geometry"
	"gussetwright/render/spares"
)

// MostPixels bounds the size of a picture: 100 million pixels take 400 MB.
const MostPixels = 100_000_000

// mostSamples is the greatest number of samples along each side of a pixel.
const mostSamples = 4

// View says what a picture shows.
type View struct {
	Width, Height int // pixels, at least 1
	// Samples along each side of a pixel: 1 for a draft with rough edges, 2 for a
	// fine picture, up to 4. 0 counts as 1.
	Samples   int
	Camera    Camera
	Frame     Frame // what fits into the picture at zoom 1; zero for the whole scene
	Model     *Model
	Textures  []*Texture // by piece; a piece without one is plain paper
	Paper     Paper
	Look      Look
	Reference Reference
	Side      int    // where the reference stands, see SideFor
	Highlight string // a panel that stands out, or ""
	Marker    *Place // a place that is marked, or nil
	Creases   []Crease
	Patches   []Patch
	Steps     bool // with a shade beside every edge that lies on other paper
	Faded     bool // with little contrast: the bag is out of date
}

// lens returns the lens of the view for pixels.
func (v *View) lens() lens {
	frame := v.Frame
	if frame.Radius <= 0 {
		frame = v.Model.Frame(v.Reference, v.Side)
	}
	return newLens(v.Camera, frame, v.Width, v.Height)
}

// Scale returns how many pixels a mm takes in the middle of the scene.
func (v *View) Scale() float64 {
	l := v.lens()
	frame := v.Frame
	if frame.Radius <= 0 {
		frame = v.Model.Frame(v.Reference, v.Side)
	}
	return l.focal / l.seen(frame.Middle).Z
}

// Closest returns the zoom at which a box, given by its least and greatest coordinates,
// just fits into the picture from where the camera looks.
func (v *View) Closest(least, greatest geometry.Vec3) float64 {
	plain := *v
	plain.Camera.Zoom, plain.Camera.Shift = 1, geometry.Vec2{}
	l := plain.lens()
	reach := 0.0 // of the box, as a share of the way from the middle to the edge
	for _, p := range cornersOf(least, greatest) {
		x, y := l.pixel(l.seen(p))
		reach = max(reach, math.Abs(x-l.x)/l.x, math.Abs(y-l.y)/l.y)
	}
	return fill / max(reach, 1e-9)
}

// Span returns what a box, given by its least and greatest coordinates, takes up of the
// picture: mm in the middle of the scene, from where the camera looks, y up.
func (v *View) Span(least, greatest geometry.Vec3) geometry.Rect {
	l, scale := v.lens(), v.Scale()
	at := func(p geometry.Vec3) geometry.Rect {
		x, y := l.pixel(l.seen(p))
		spot := geometry.Vec2{X: (x - l.x) / scale, Y: (l.y - y) / scale}
		return geometry.Rect{Min: spot, Max: spot}
	}
	span := at(least)
	for _, p := range cornersOf(least, greatest) {
		span = span.Union(at(p))
	}
	return span
}

// cornersOf returns the corners of a box.
func cornersOf(least, greatest geometry.Vec3) (corners [8]geometry.Vec3) {
	for i := range corners {
		corners[i] = least
		if i&1 != 0 {
			corners[i].X = greatest.X
		}
		if i&2 != 0 {
			corners[i].Y = greatest.Y
		}
		if i&4 != 0 {
			corners[i].Z = greatest.Z
		}
	}
	return corners
}

// shading is what the shadow on the ground follows from.
type shading struct {
	model   *Model
	made    int // the body of the model
	beside  Reference
	side    int
	azimuth float64
}

// Renderer draws views. The zero value is ready for use.
type Renderer struct {
	canvas canvas
	order  []int
	shade  shadow
	shaded shading // what shade was reckoned for

	spare spares.Pictures
}

// Draw returns the picture of a view. It is the caller's until it is given back with
// Recycle.
func (r *Renderer) Draw(v View) *image.RGBA {
	v.Width, v.Height = max(v.Width, 1), max(v.Height, 1)
	samples := min(max(v.Samples, 1), mostSamples)
	picture := r.spare.Take(v.Width, v.Height)
	l, beside := v.lens().scaled(float64(samples)), v.Reference.place(v.Model, v.Side)
	c := &r.canvas
	c.resize(v.Width*samples, v.Height*samples)
	c.ground(v.Look)
	lit := lightsFor(v.Camera.Azimuth)
	r.surfaces(&v, &l, lit, v.Model.surfaces)
	c.tiles(&v, &l, lit, v.Model.tiles)
	if beside != nil {
		r.surfaces(&v, &l, lit, beside.surfaces)
		c.tiles(&v, &l, lit, beside.tiles)
	}
	if from := (shading{v.Model, v.Model.made, v.Reference, v.Side, v.Camera.Azimuth}); r.shaded != from {
		r.shade.reckon(v.Model, beside, lit.main)
		r.shaded = from
	}
	r.shade.lay(c, &l, v.Look.Shadow)
	c.patches(&v, &l)
	if v.Steps {
		c.steps(&v, &l)
	}
	c.strokes(&v, &l, float64(samples))
	c.creases(&v, &l, float64(samples))
	c.highlight(&v, &l, float64(samples))
	c.marker(&v, &l, float64(samples))
	c.resolve(picture, samples, &v)
	return picture
}

// Recycle takes a picture that nobody looks at any more, to be drawn over. It may be
// called from any goroutine.
func (r *Renderer) Recycle(picture *image.RGBA) { r.spare.Give(picture) }

// surfaces draws the plane shapes, the nearest first since that hides most of the
// others. The order has no bearing on what is seen.
func (r *Renderer) surfaces(v *View, l *lens, lit lights, surfaces []surface) {
	r.order = r.order[:0]
	for i := range surfaces {
		r.order = append(r.order, i)
	}
	slices.SortFunc(r.order, func(a, b int) int {
		return cmp.Compare(l.seen(surfaces[a].middle).Z, l.seen(surfaces[b].middle).Z)
	})
	for _, i := range r.order {
		s := &surfaces[i]
		if s.finest > 0 && l.focal < s.finest*l.seen(s.middle).Z {
			continue
		}
		p, facing, ok := l.plane(s)
		if !ok {
			continue
		}
		v.colour(&p, s, l, lit, facing)
		r.canvas.fill(l, s, &p, facing)
	}
}

// colour chooses how a surface is painted on the side that is seen.
func (v *View) colour(p *paint, s *surface, l *lens, lit lights, facing bool) {
	normal := s.normal
	if !facing {
		normal = normal.Scale(-1)
	}
	p.shade = 256 * lit.brightness(normal)
	p.colour = packOpaque(v.Paper.Print)
	switch s.material {
	case edge:
		p.shade *= edgeShade
		return
	case sheet:
		p.level, p.height = sheetTexture().levelFor(l.focal/l.seen(s.middle).Z), 297
		return
	case card:
		p.colour = packOpaque(v.Paper.Reverse)
		p.grade(s, insideBelow, insideAbove, v.Model)
		return
	}
	if !facing {
		p.colour = packOpaque(v.Paper.Reverse)
	} else if s.piece >= 0 && s.piece < len(v.Textures) && v.Textures[s.piece] != nil {
		t := v.Textures[s.piece]
		p.level, p.height = t.levelFor(l.focal/l.seen(s.middle).Z), t.height
	}
	below, above := outsideFoot, 1.0
	if facing == s.turnedIn {
		below, above = insideBelow, insideAbove
	}
	p.grade(s, below, above, v.Model)
	if v.Highlight != "" && s.panel == v.Highlight {
		const strength = 72
		p.tint, p.tintPart = pack(v.Look.Accent), strength
		p.colour = mix(p.colour, p.tint, strength)
	}
}

// grade lets the brightness of a standing bag rise from below on the ground to above at
// its top. It grows by as much for each mm however the paper lies, and paper that stands
// less high loses less on the ground: a sheet that lies flat has all the light. So nothing
// jumps while a bag is folded.
func (p *paint) grade(s *surface, below, above float64, m *Model) {
	rate := p.shade * (above - below) / m.walls // for each mm up
	p.shade *= 1 - (1-below)*min(m.height/m.walls, 1)
	p.shade += rate * s.pose.Origin.Z
	p.shadeU, p.shadeV = rate*s.pose.Right.Z, rate*s.pose.Up.Z
}

// The colours of round things: our own choice.
var (
	textileColour = color.RGBA{138, 122, 106, 255}
	metalColour   = color.RGBA{226, 230, 234, 255}
	plasterColour = color.RGBA{214, 203, 190, 255}
	glassColour   = color.RGBA{62, 84, 62, 255}
	foilColour    = color.RGBA{120, 58, 52, 255}
)

// tiles draws round surfaces.
func (c *canvas) tiles(v *View, l *lens, lit lights, tiles []tile) {
	colours := [...]packed{
		textile: pack(textileColour), paperCord: pack(v.Paper.Reverse), metal: pack(metalColour),
		plaster: pack(plasterColour), glass: pack(glassColour), foil: pack(foilColour),
	}
	for i := range tiles {
		t := &tiles[i]
		light := lit.round(t.normal)
		if t.stuff == metal || t.stuff == glass {
			light = lit.gleam(t.normal, t.corners[0].Sub(l.eye).Unit())
		}
		c.fillTile(l, t, shaded(colours[t.stuff], part(256*light)))
	}
}

// backgroundAt returns the background at a share of the height of the picture.
func (l Look) backgroundAt(row, height int) packed {
	return mix(packOpaque(l.Above), packOpaque(l.Below), uint32(256*row/height))
}

// ground fills the canvas with the background.
func (c *canvas) ground(look Look) {
	for row := range c.height {
		colour := look.backgroundAt(row, c.height)
		line := c.colours[row*c.width : (row+1)*c.width]
		for i := range line {
			line[i] = colour
		}
	}
}

// fading is how far a picture that is out of date goes to the background, of 256.
const fading = 150

// resolve makes each pixel of the picture the mean of its samples.
func (c *canvas) resolve(picture *image.RGBA, samples int, v *View) {
	width, height := picture.Rect.Dx(), picture.Rect.Dy()
	for y := range height {
		out := picture.Pix[y*picture.Stride : y*picture.Stride+4*width]
		row := c.colours[y*samples*c.width:]
		background := v.Look.backgroundAt(y, height)
		for x := 0; len(out) >= 4; x++ {
			var colour packed
			switch samples {
			case 1:
				colour = row[x]
			case 2:
				colour = meanOfFour(row[2*x], row[2*x+1], row[c.width+2*x], row[c.width+2*x+1])
			default:
				colour = c.meanOf(row[x*samples:], samples)
			}
			if v.Faded {
				colour = mix(colour, background, fading)
			}
			binary.LittleEndian.PutUint32(out, colour|0xff000000)
			out = out[4:]
		}
	}
}

// meanOf returns the mean of a square of samples.
func (c *canvas) meanOf(from []packed, samples int) packed {
	var red, green, blue uint32
	for y := range samples {
		for _, p := range from[y*c.width : y*c.width+samples] {
			red, green, blue = red+p&255, green+p>>8&255, blue+p>>16&255
		}
	}
	n := uint32(samples * samples)
	return (red+n/2)/n | (green+n/2)/n<<8 | (blue+n/2)/n<<16
}
