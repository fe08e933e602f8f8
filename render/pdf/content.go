package pdf

import (
	"slices"

	"gussetwright/geometry"
	"gussetwright/render/scene"
)

// content writes the operators of a page (ISO 32000-1, annex A). It trusts its
// input: check has seen it before.
type content struct {
	data     []byte
	pen      pen
	fonts    *fonts
	lettered []*font // the faces used so far
}

// pen is what the file knows of the line to come.
type pen struct {
	width float64
	dash  []float64
}

// do writes an operator after its operands.
func (c *content) do(operator string, operands ...float64) {
	for _, value := range operands {
		c.data = append(appendNumber(c.data, value, decimals), ' ')
	}
	c.data = append(append(c.data, operator...), '\n')
}

// named writes an operator after a name.
func (c *content) named(operator string, operand name) {
	c.data = append(append(operand.appendTo(c.data), ' '), operator...)
	c.data = append(c.data, '\n')
}

// scale makes a millimetre the unit and puts the corner of the page in place.
// The factor has more decimals than the rest, as it acts on metres.
func (c *content) scale(corner geometry.Vec2) {
	for _, value := range []float64{pointsPerMM, 0, 0, pointsPerMM, -corner.X * pointsPerMM, -corner.Y * pointsPerMM} {
		c.data = append(appendNumber(c.data, value, 10), ' ')
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
	c.pen = pen{}
	for _, item := range items {
		switch item := item.(type) {
		case scene.Stroke:
			c.stroke(item)
		case scene.Fill:
			c.fill(item)
		case scene.Label:
			c.label(item)
		}
	}
	c.do("Q")
	c.do("EMC")
}

func (c *content) stroke(s scene.Stroke) {
	if s.Width != c.pen.width {
		c.do("w", s.Width)
	}
	if !slices.Equal(s.Dash, c.pen.dash) {
		c.data = numbers(s.Dash...).appendTo(c.data)
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
	c.do("BT")
	c.data = append(font.resource.appendTo(c.data), ' ')
	c.do("Tf", l.Size)
	// The direction needs more decimals than the rest: at the end of a line of
	// a metre, four would be off by a twentieth of a millimetre.
	for _, value := range []float64{along.X, along.Y, -along.Y, along.X} {
		c.data = append(appendNumber(c.data, value, 8), ' ')
	}
	c.do("Tm", at.X, at.Y)
	c.data = append(binary(codes).appendTo(c.data), ' ')
	c.do("Tj")
	c.do("ET")
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
