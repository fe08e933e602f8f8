package vector

import (
	"context"
	"fmt"
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/artwork/vector/outline"
	"gussetwright/render/pdf/object"
)

// Form returns the drawing as vectors for a PDF file, in mm. Colours are those of
// the device, RGB or CMYK as the file gives them. The form asks for a group of its
// own if anything in it is seen through; whoever places it with an opacity gives it
// one in any case.
func (d *Drawing) Form(ctx context.Context) (*object.Form, error) {
	b := &book{ctx: ctx, size: d.Size, states: map[state]*object.Indirect{}, blends: map[blendKey]*object.Indirect{}, images: map[*Image]*object.Indirect{}, masks: map[*Clip]*object.Indirect{}}
	c := &canvas{book: b, names: map[*object.Indirect]object.Name{}}
	c.shapes(d.Shapes)
	if err := ctx.Err(); err != nil {
		return nil, phrase.Errorf("put the SVG file into a PDF file: %s", err)
	}
	form := &object.Form{Width: d.Size.X, Height: d.Size.Y, Content: c.data, Resources: c.resources()}
	if b.seenThrough {
		form.Group = transparency
	}
	return form, nil
}

// transparency is a group that is put together before it is shown (ISO 32000-1,
// 11.6.6).
var transparency = object.Dict{{Key: "Type", Value: object.Name("Group")}, {Key: "S", Value: object.Name("Transparency")}, {Key: "I", Value: object.Boolean(true)}}

// book holds what all contents of a form share.
type book struct {
	ctx         context.Context
	size        geometry.Vec2
	states      map[state]*object.Indirect
	blends      map[blendKey]*object.Indirect
	images      map[*Image]*object.Indirect
	masks       map[*Clip]*object.Indirect
	seenThrough bool
}

// state is what decides how much is seen of what is painted: an opacity or a mask.
// Readers do not agree about both at once.
type state struct {
	opacity float64
	mask    *object.Indirect // or nil
}

// canvas writes one content: that of the form or of a group in it.
type canvas struct {
	book  *book
	data  []byte
	names map[*object.Indirect]object.Name
	// The resources by kind, in the order in which they were first used.
	states, patterns, shadings, objects object.Dict
}

func (c *canvas) fresh() *canvas {
	return &canvas{book: c.book, names: map[*object.Indirect]object.Name{}}
}

func (c *canvas) resources() object.Dict {
	var all object.Dict
	for _, kind := range []object.Entry{{Key: "ExtGState", Value: c.states}, {Key: "Pattern", Value: c.patterns}, {Key: "Shading", Value: c.shadings}, {Key: "XObject", Value: c.objects}} {
		if len(kind.Value.(object.Dict)) > 0 {
			all = append(all, kind)
		}
	}
	return all
}

// name returns the name of a resource, having listed it.
func (c *canvas) name(list *object.Dict, prefix string, of *object.Indirect) object.Name {
	name, known := c.names[of]
	if !known {
		name = object.Name(fmt.Sprintf("%s%d", prefix, len(*list)+1))
		c.names[of] = name
		*list = append(*list, object.Entry{Key: name, Value: of})
	}
	return name
}

// do writes an operator after its operands.
func (c *canvas) do(operator string, operands ...float64) {
	for _, value := range operands {
		c.data = append(object.AppendNumber(c.data, value, object.Decimals), ' ')
	}
	c.data = append(append(c.data, operator...), '\n')
}

// named writes an operator after a name.
func (c *canvas) named(operator string, name object.Name) {
	c.data = append(append(name.AppendTo(c.data), ' '), operator...)
	c.data = append(c.data, '\n')
}

// fine is a number with more decimals than others: those of motions act on all of
// the drawing.
type fine float64

// AppendTo implements object.Object.
func (f fine) AppendTo(file []byte) []byte { return object.AppendNumber(file, float64(f), 9) }

func motion(a geometry.Affine) object.Array {
	return object.Array{fine(a.U.X), fine(a.U.Y), fine(a.V.X), fine(a.V.Y), fine(a.Origin.X), fine(a.Origin.Y)}
}

// move changes the plane in which what follows is given.
func (c *canvas) move(a geometry.Affine) {
	for _, value := range motion(a) {
		c.data = append(value.AppendTo(c.data), ' ')
	}
	c.do("cm")
}

// gs sets how much is seen of what follows.
func (c *canvas) gs(s state) {
	if s == (state{opacity: 1}) {
		return
	}
	c.book.seenThrough = true
	made := c.book.states[s]
	if made == nil {
		entries := object.Dict{{Key: "Type", Value: object.Name("ExtGState")}, {Key: "ca", Value: object.Number(s.opacity)}, {Key: "CA", Value: object.Number(s.opacity)}}
		if s.mask != nil {
			entries = append(entries, object.Entry{Key: "SMask", Value: s.mask})
		}
		made = &object.Indirect{Value: entries}
		c.book.states[s] = made
	}
	c.named("gs", c.name(&c.states, "G", made))
}

func (c *canvas) shapes(shapes []Shape) {
	for _, shape := range shapes {
		if c.book.ctx.Err() != nil {
			return
		}
		look := shape.look()
		switch shape := shape.(type) {
		case *Group:
			c.within(look.Clips, look.Opacity, look.Opacity < 1, func(c *canvas) { c.shapes(shape.Shapes) })
		case *Figure:
			c.within(look.Clips, look.Opacity, look.Opacity < 1, func(c *canvas) { c.figure(shape) })
		case *Picture:
			c.within(look.Clips, look.Opacity, false, func(c *canvas) { c.picture(shape) })
		}
	}
}

// within draws something inside of clips. Where it must be put together before it
// is shown, it becomes a group.
func (c *canvas) within(clips []*Clip, opacity float64, together bool, draw func(*canvas)) {
	c.do("q")
	defer c.do("Q")
	var soft []*Clip
	for _, clip := range clips {
		if len(clip.Parts) == 0 {
			return
		}
		if !c.clip(clip) {
			soft = append(soft, clip)
		}
	}
	s := state{opacity: opacity}
	if len(soft) == 0 && !together {
		c.gs(s)
		draw(c)
		return
	}
	inner := c.fresh()
	if len(soft) > 0 {
		inner.within(soft[1:], opacity, together, draw)
		s = state{1, c.book.mask(soft[0])}
	} else {
		draw(inner)
	}
	c.gs(s)
	c.named("Do", c.name(&c.objects, "X", inner.group()))
}

// group returns what was written as a group to be placed in another content.
func (c *canvas) group() *object.Indirect {
	form := object.Form{Width: c.book.size.X, Height: c.book.size.Y, Content: c.data, Resources: c.resources(), Group: transparency}
	return form.XObject()
}

// figure writes the fill and the stroke of a figure.
func (c *canvas) figure(f *Figure) {
	fill := func() {
		if f.Fill.shows() {
			c.painted(f.Fill, false, func() {
				c.path(f.Path)
				c.do(ruled("f", f.EvenOdd))
			})
		}
	}
	if !f.StrokeFirst {
		fill()
	}
	if f.Stroke.shows() {
		c.painted(f.Stroke.Paint, true, func() { c.stroke(f) })
	}
	if f.StrokeFirst {
		fill()
	}
}

func ruled(operator string, evenOdd bool) string {
	if evenOdd {
		return operator + "*"
	}
	return operator
}

// stroke writes a line. The plane of its pen is brought near the scale of the
// drawing, so that numbers have as many decimals as they need.
func (c *canvas) stroke(f *Figure) {
	plane, pen := f.Stroke.Plane, f.Stroke.Pen
	scale := max(plane.U.Length(), plane.V.Length())
	plane = plane.After(geometry.Stretch(1/scale, 1/scale))
	back, solid := plane.Inverse()
	if !solid {
		return
	}
	c.do("w", pen.Width*scale)
	c.do("J", float64(pen.Cap))
	c.do("j", float64(pen.Join))
	c.do("M", pen.MiterLimit)
	if len(pen.Dashes) > 0 {
		c.dash(pen, scale)
	}
	path := f.Path
	if plane != geometry.Identity() {
		c.move(plane)
		path = path.Moved(back)
	}
	if pen.Cap == outline.Square {
		path = path.Dotted(dot)
	}
	c.path(path)
	c.do("S")
}

// dot is the length in mm that the dots of square pens get: readers show no squares
// for lines without a length, as they have no direction.
const dot = 0.001

// leastPeriod is the length in mm below which dashes are written as a line: rounded
// to the decimals of the file they would have no length, which is an error.
const leastPeriod = 0.001

// dash writes the dashes of a pen. They may not begin before the line does.
func (c *canvas) dash(pen outline.Pen, scale float64) {
	var list object.Array
	period := 0.0
	for _, length := range pen.Dashes {
		list = append(list, object.Number(length*scale))
		period += 2 * length * scale // twice, as a pattern of odd length is run through
	}
	if period < 2*leastPeriod {
		return
	}
	offset := math.Mod(pen.Offset*scale, period)
	if offset < 0 {
		offset += period
	}
	c.data = append(list.AppendTo(c.data), ' ')
	c.do("d", offset)
}

// path writes the steps of a path.
func (c *canvas) path(path outline.Path) {
	operators := [...]string{outline.Move: "m", outline.Line: "l", outline.Curve: "c", outline.Close: "h"}
	for step, points := range path.All() {
		for _, p := range points {
			c.data = append(object.AppendNumber(c.data, p.X, object.Decimals), ' ')
			c.data = append(object.AppendNumber(c.data, p.Y, object.Decimals), ' ')
		}
		c.do(operators[step])
	}
}
