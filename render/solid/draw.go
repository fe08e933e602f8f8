package solid

import (
	"cmp"
	"encoding/binary"
	"image"
	"image/color"
	"slices"
	"sync"

	"gussetwright/geometry"
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
	Model     *Model
	Textures  []*Texture // by piece; a piece without one is plain paper
	Paper     Paper
	Look      Look
	Reference Reference
	Highlight string // a panel that stands out, or ""
	Marker    *Place // a place that is marked, or nil
	Faded     bool   // with little contrast: the bag is out of date
}

// lens returns the lens of the view for pixels, and the thing beside the bag.
func (v *View) lens() (lens, *object) {
	middle, radius := v.Model.extent(v.Reference)
	return newLens(v.Camera, middle, radius, v.Width, v.Height), v.Reference.place(v.Model)
}

// shading is what the shadow on the ground follows from.
type shading struct {
	model   *Model
	beside  Reference
	azimuth float64
}

// Renderer draws views. The zero value is ready for use.
type Renderer struct {
	canvas canvas
	order  []int
	shade  *shadow
	shaded shading // what shade was reckoned for

	lock  sync.Mutex
	spare []*image.RGBA
}

// Draw returns the picture of a view. It is the caller's until it is given back with
// Recycle.
func (r *Renderer) Draw(v View) *image.RGBA {
	v.Width, v.Height = max(v.Width, 1), max(v.Height, 1)
	samples := min(max(v.Samples, 1), mostSamples)
	picture := r.blankPicture(v.Width, v.Height)
	l, beside := v.lens()
	l = l.scaled(float64(samples))
	c := &r.canvas
	c.resize(v.Width*samples, v.Height*samples)
	c.ground(v.Look)
	lit := lightsFor(v.Camera.Azimuth)
	if from := (shading{v.Model, v.Reference, v.Camera.Azimuth}); r.shade == nil || r.shaded != from {
		r.shade, r.shaded = newShadow(v.Model, beside, lit.main), from
	}
	r.shade.lay(c, &l, v.Look.Shadow)

	r.surfaces(&v, &l, lit, v.Model.surfaces)
	c.tiles(&v, &l, lit, v.Model.tiles)
	if beside != nil {
		r.surfaces(&v, &l, lit, beside.surfaces)
		c.tiles(&v, &l, lit, beside.tiles)
	}
	c.strokes(&v, &l, float64(samples))
	c.highlight(&v, &l, float64(samples))
	c.marker(&v, &l, float64(samples))
	c.resolve(picture, samples, v.Faded)
	return picture
}

// Recycle takes a picture that nobody looks at any more, to be drawn over. It may be
// called from any goroutine.
func (r *Renderer) Recycle(picture *image.RGBA) {
	const most = 3
	r.lock.Lock()
	defer r.lock.Unlock()
	if picture != nil && len(r.spare) < most {
		r.spare = append(r.spare, picture)
	}
}

// blankPicture returns a spare picture of the size, or a new one. Spares of another
// size are dropped.
func (r *Renderer) blankPicture(width, height int) *image.RGBA {
	r.lock.Lock()
	defer r.lock.Unlock()
	for len(r.spare) > 0 {
		last := r.spare[len(r.spare)-1]
		r.spare = r.spare[:len(r.spare)-1]
		if last.Rect == image.Rect(0, 0, width, height) {
			return last
		}
	}
	return image.NewRGBA(image.Rect(0, 0, width, height))
}

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
	p.colour = pack(v.Paper.Print)
	switch s.material {
	case edge:
		p.shade *= 0.93
		return
	case sheet:
		p.level, p.height = sheetTexture().levelFor(l.focal/l.seen(s.middle).Z), 297
		return
	case card:
		p.colour = pack(v.Paper.Reverse)
		p.grade(s, insideBelow, insideAbove, v.Model.height)
		return
	}
	if !facing {
		p.colour = pack(v.Paper.Reverse)
	} else if s.piece >= 0 && s.piece < len(v.Textures) && v.Textures[s.piece] != nil {
		t := v.Textures[s.piece]
		p.level, p.height = t.levelFor(l.focal/l.seen(s.middle).Z), t.height
	}
	below, above := outsideFoot, 1.0
	if facing == s.turnedIn {
		below, above = insideBelow, insideAbove
	}
	p.grade(s, below, above, v.Model.height)
	if v.Highlight != "" && s.panel == v.Highlight {
		const strength = 72
		p.tint, p.tintPart = pack(v.Look.Accent), strength
		p.colour = mix(p.colour, p.tint, strength)
	}
}

// grade lets the brightness rise from below on the ground to above at the height.
func (p *paint) grade(s *surface, below, above, height float64) {
	rate := p.shade * (above - below) / height // for each mm up
	p.shade *= below
	p.shade += rate * s.pose.Origin.Z
	p.shadeU, p.shadeV = rate*s.pose.Right.Z, rate*s.pose.Up.Z
}

// The colours of round things: our own choice.
var (
	textileColour = color.RGBA{138, 122, 106, 255}
	metalColour   = color.RGBA{226, 230, 234, 255}
	figureColour  = color.RGBA{226, 205, 188, 255}
)

// tiles draws round surfaces.
func (c *canvas) tiles(v *View, l *lens, lit lights, tiles []tile) {
	colours := [...]packed{
		textile: pack(textileColour), paperCord: pack(v.Paper.Reverse), metal: pack(metalColour), figure: pack(figureColour),
	}
	for i := range tiles {
		t := &tiles[i]
		light := lit.round(t.normal)
		if t.stuff == metal {
			light = lit.gleam(t.normal, t.corners[0].Sub(l.eye).Unit())
		}
		c.fillTile(l, t, shaded(colours[t.stuff], part(256*light)))
	}
}

// strokes draws the edges of the paper as fine lines, so that white stands out
// against white.
func (c *canvas) strokes(v *View, l *lens, samples float64) {
	p := pen{width: 0.9 * samples, colour: pack(v.Look.Ink), part: 84, lift: 0.05}
	for _, s := range v.Model.strokes {
		c.line(l, s.from, s.to, p)
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
		p := pen{width: 2.4 * samples, colour: colour, part: 256, lift: 0.6}
		if hidden {
			p = pen{width: 1.2 * samples, colour: colour, part: 150, hidden: true, dash: 5 * samples}
		}
		for _, s := range v.Model.bordersOf(v.Highlight) {
			c.line(l, s.from, s.to, p)
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
			all = append(all, stroke{from: a, to: f.Points[(c+1)%len(f.Points)]})
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

// ground fills the canvas with the background.
func (c *canvas) ground(look Look) {
	above, below := pack(look.Above), pack(look.Below)
	for row := range c.height {
		colour := mix(above, below, uint32(256*row/c.height))
		line := c.colours[row*c.width : (row+1)*c.width]
		for i := range line {
			line[i] = colour
		}
	}
}

// resolve makes each pixel of the picture the mean of its samples.
func (c *canvas) resolve(picture *image.RGBA, samples int, faded bool) {
	width, height := picture.Rect.Dx(), picture.Rect.Dy()
	for y := range height {
		out := picture.Pix[y*picture.Stride : y*picture.Stride+4*width]
		row := c.colours[y*samples*c.width:]
		// Out of date: halfway to the background, which lies at the edge of the row.
		away := row[0]
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
			if faded {
				colour = mix(colour, away, 150)
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

// Where returns where a place on the blank lies in space: on the facet that covers
// it, or the closest one.
func (m *Model) Where(place Place) (geometry.Vec3, bool) {
	best, found := -1, false
	least := 0.0
	for i := range m.body.Facets {
		f := &m.body.Facets[i]
		if f.Piece != place.Piece {
			continue
		}
		if away := distance(f.Corners, place.At); !found || away < least {
			best, least, found = i, away, true
		}
	}
	if !found {
		return geometry.Vec3{}, false
	}
	return m.body.Facets[best].Pose.At(place.At), true
}
