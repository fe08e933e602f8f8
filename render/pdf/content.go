package pdf

import (
	"slices"

	"gussetwright/geometry"
	"gussetwright/render/pdf/object"
	"gussetwright/render/scene"
)

// content writes the operators of a page (ISO 32000-1, annex A). It trusts its
// input: check has seen it before.
type content struct {
	data     []byte
	pen      pen
	fonts    *fonts
	lettered []*font // the faces used so far
	forms    *forms
	parts    *parts
	placed   dict // the artwork and the parts used so far, by name
	states   dict // the opacities used so far, by name
	blends   bool // something shines through
}

// pen is what the file knows of the line to come.
type pen struct {
	width float64
	dash  []float64
}

// do writes an operator after its operands.
func (c *content) do(operator string, operands ...float64) {
	for _, value := range operands {
		c.data = append(object.AppendNumber(c.data, value, object.Decimals), ' ')
	}
	c.data = append(append(c.data, operator...), '\n')
}

// named writes an operator after a name.
func (c *content) named(operator string, operand name) {
	c.data = append(append(operand.AppendTo(c.data), ' '), operator...)
	c.data = append(c.data, '\n')
}

// scale makes a millimetre the unit and puts the corner of the page in place.
// The factor has more decimals than the rest, as it acts on metres.
func (c *content) scale(corner geometry.Vec2) {
	c.matrix(geometry.Affine{
		U: geometry.Vec2{X: pointsPerMM}, V: geometry.Vec2{Y: pointsPerMM},
		Origin: corner.Scale(-pointsPerMM),
	})
}

// matrix moves what follows.
func (c *content) matrix(m geometry.Affine) {
	for _, value := range []float64{m.U.X, m.U.Y, m.V.X, m.V.Y, m.Origin.X, m.Origin.Y} {
		c.data = append(object.AppendNumber(c.data, value, 10), ' ')
	}
	c.data = append(c.data, "cm\n"...)
}

// roundJoin rounds the corners of a line. A mitred one has a spike where two
// edges meet at a sharp angle, which points at paper that nothing cuts.
const roundJoin = 1

// layer writes all items of one role as marked content of its layer.
func (c *content) layer(role scene.Role, items []scene.Item) {
	layer := name(role.Style().Name)
	c.data = append(c.data, "/OC "...)
	c.named("BDC", layer)
	c.do("q")
	if role != scene.Artwork {
		c.named("gs", stepState)
		c.named("CS", layer)
		c.do("SCN", 1)
		c.named("cs", layer)
		c.do("scn", 1)
		c.do("j", roundJoin)
	}
	c.items(items)
	c.do("Q")
	c.do("EMC")
}

// items writes items of one role with a pen that nothing is known of.
func (c *content) items(items []scene.Item) {
	c.pen = pen{}
	for _, item := range items {
		switch item := item.(type) {
		case scene.Stroke:
			c.stroke(item)
		case scene.Fill:
			c.fill(item)
		case scene.Label:
			c.label(item)
		case scene.Placed:
			c.place(item)
		case scene.Repeated:
			c.repeat(item)
		}
	}
}

func (c *content) stroke(s scene.Stroke) {
	if s.Width != c.pen.width {
		c.do("w", s.Width)
	}
	if !slices.Equal(s.Dash, c.pen.dash) {
		c.data = numbers(s.Dash...).AppendTo(c.data)
		c.data = append(c.data, ' ')
		c.do("d", 0)
	}
	c.pen = pen{s.Width, s.Dash}
	c.path(s.Path)
	c.do("S")
}

func (c *content) fill(f scene.Fill) {
	if f.Ink != nil {
		c.do("k", f.Ink.C, f.Ink.M, f.Ink.Y, f.Ink.K)
	}
	c.path(f.Path)
	c.do("f")
}

func (c *content) path(path geometry.Path) {
	stray := arcStray
	if _, _, isCircle := path.AsCircle(); isCircle {
		stray = circleStray
	}
	c.do("m", path.Vertices[0].X, path.Vertices[0].Y)
	for i := range path.Len() {
		edge := path.Edge(i)
		if edge.Bulge != 0 {
			for _, curve := range curves(edge, stray) {
				c.do("c", curve.leave.X, curve.leave.Y, curve.arrive.X, curve.arrive.Y, curve.to.X, curve.to.Y)
			}
		} else if !path.Closed || i < path.Len()-1 { // the last edge is drawn by closing
			c.do("l", edge.To.X, edge.To.Y)
		}
	}
	if path.Closed {
		c.do("h")
	}
}

func (c *content) label(l scene.Label) {
	if l.Text == "" {
		return
	}
	font := c.fonts.of(l.Bold)
	if !slices.Contains(c.lettered, font) {
		c.lettered = append(c.lettered, font)
	}
	codes := font.encode(l.Text)
	along := geometry.Polar(1, l.Turn)
	at := l.At.Sub(along.Scale(before(l.Anchor) * font.face.Advance(l.Text, l.Size)))
	if c.blends {
		c.clippedText(font, codes, l, at, along)
		return
	}
	c.text(font, codes, l.Size, at, along)
}

// text writes a line of text along a direction.
func (c *content) text(font *font, codes []byte, size float64, at, along geometry.Vec2) {
	c.do("BT")
	c.data = append(font.resource.AppendTo(c.data), ' ')
	c.do("Tf", size)
	// The direction needs more decimals than the rest: at the end of a line of
	// a metre, four would be off by a twentieth of a millimetre.
	for _, value := range []float64{along.X, along.Y, -along.Y, along.X} {
		c.data = append(object.AppendNumber(c.data, value, 8), ' ')
	}
	c.do("Tm", at.X, at.Y)
	c.data = append(binary(codes).AppendTo(c.data), ' ')
	c.do("Tj")
	c.do("ET")
}

// clipping is the way of writing in which letters bound what is drawn after them
// (ISO 32000-1, 9.3.6).
const clipping = 7

// clippedText writes a line of text as an area in the form of its letters. Where
// something shines through artwork, Ghostscript 10 cuts plain letters out of what they
// overprint, but not areas. Programs find and copy the text all the same.
func (c *content) clippedText(font *font, codes []byte, l scene.Label, at, along geometry.Vec2) {
	c.do("q")
	c.do("Tr", clipping)
	c.text(font, codes, l.Size, at, along)
	reach := font.face.Advance(l.Text, l.Size) + 2*l.Size
	c.path(geometry.Rect{Min: at, Max: at}.Inset(-reach).Path())
	c.do("f")
	c.do("Q")
}

// before returns the share of a label that stands before its point.
func before(anchor scene.Anchor) float64 {
	switch anchor {
	case scene.Middle:
		return 0.5
	case scene.End:
		return 1
	default:
		return 0
	}
}
