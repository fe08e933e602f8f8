package vector

import (
	"math"
	"strings"

	"gussetwright/geometry"
	"gussetwright/render/artwork/vector/outline"
)

// figure reads a path or a basic shape.
func (r *reader) figure(n *node, f frame) ([]Shape, error) {
	if f.style.hidden || f.style.opacity == 0 {
		return nil, nil
	}
	own, placed, err := r.path(n, f)
	if err != nil || own.Empty() {
		return nil, err
	}
	if r.shapes++; r.shapes > mostShapes {
		return nil, tooMany("shapes with every use written out", mostShapes, "simplify the drawing")
	}
	figure := &Figure{Look: Look{Opacity: 1}, Path: placed, EvenOdd: f.style.evenOdd, StrokeFirst: f.style.strokeFirst}
	// Readers of PDF files may show the fill of a mere line, as thin as they can.
	if !own.Flat() {
		if figure.Fill, err = r.paint(f.style.fill, f.style.fillOpacity, own, f); err != nil {
			return nil, err
		}
	}
	if figure.Stroke, err = r.stroke(n, own, f); err != nil {
		return nil, err
	}
	if !figure.Fill.shows() && !figure.Stroke.Paint.shows() {
		return nil, nil
	}
	r.remarkFigure(n, figure, f.style)
	shapes := []Shape{figure}
	clips, err := r.clipsOf(f, shapes)
	if err != nil {
		return nil, err
	}
	return seen(together(shapes, Look{f.style.opacity, clips})), nil
}

// remarkFigure notes what of a figure is not shown, and its colours.
func (r *reader) remarkFigure(n *node, figure *Figure, s style) {
	r.remark(s)
	switch n.name {
	case "path", "line", "polyline", "polygon":
		if s.marker {
			r.notes.add(markers)
		}
	}
	if len(figure.Stroke.Pen.Dashes) > 0 && n.attribute("pathLength") != "" {
		r.notes.add(pathLength)
	}
	r.drawing.Colours.addPaint(figure.Fill)
	if figure.Stroke.shows() {
		r.drawing.Colours.addPaint(figure.Stroke.Paint)
	}
}

// path returns the path of an element in its own plane and in mm. What an element
// gives without regard to what is around it is read only once.
func (r *reader) path(n *node, f frame) (own, placed outline.Path, err error) {
	own, known := r.paths[n]
	if !known {
		var relative bool
		if own, relative, err = r.outlineOf(n, f); err != nil {
			return own, placed, err
		}
		if !relative {
			r.paths[n] = own
		}
	}
	if r.segments += len(own.Steps); r.segments > mostSegments {
		return own, placed, tooMany("lines and curves with every use written out", mostSegments, "simplify the drawing")
	}
	if err := r.work(len(own.Steps)); err != nil {
		return own, placed, err
	}
	placed = own.Moved(f.place)
	return own, placed, check(placed)
}

// check gives an error for a path that goes where nothing can be reckoned with.
func check(path outline.Path) error {
	for _, p := range path.Points {
		if !(math.Abs(p.X) <= farthest && math.Abs(p.Y) <= farthest) {
			return tooFar(p)
		}
	}
	return nil
}

// paint turns what a style asks for into a paint. own is what it covers, in the
// plane of the element.
func (r *reader) paint(asked ask, opacity float64, own outline.Path, f frame) (Paint, error) {
	switch asked.kind {
	case askColour:
		return Paint{Kind: Solid, Colour: asked.colour, Opacity: asked.opacity * opacity}, nil
	case askCurrent:
		return Paint{Kind: Solid, Colour: f.style.colour, Opacity: f.style.colourOpacity * opacity}, nil
	case askNone:
		return Paint{}, nil
	}
	id, inside := strings.CutPrefix(asked.server, "#")
	n := r.ids[id]
	switch {
	case !inside:
		r.notes.add(outsideLink)
	case n == nil:
		if asked.instead == nil {
			r.notes.add(missing)
		}
	case n.name == "linearGradient" || n.name == "radialGradient":
		return r.blend(n, opacity, own, f)
	default:
		r.notes.add(patterns)
	}
	if asked.instead == nil {
		return Paint{}, nil
	}
	return r.paint(*asked.instead, opacity, own, f)
}

// stroke turns what a style says of lines into a stroke.
func (r *reader) stroke(n *node, own outline.Path, f frame) (Stroke, error) {
	s := &f.style
	paint, err := r.paint(s.stroke, s.strokeOpacity, own, f)
	if err != nil || !paint.shows() {
		return Stroke{}, err
	}
	plane, scale := f.place, 1.0
	if even, by := similar(f.place); even {
		plane, scale = geometry.Identity(), by
	}
	if s.constant {
		plane, scale = geometry.Identity(), mmPerPixel
	}
	measure := func(l length) float64 { return l.in(f.diagonal(), s.font) * scale }
	stroke := Stroke{Paint: paint, Plane: plane, Pen: outline.Pen{
		Width: measure(s.width), Cap: s.cap, Join: s.join, MiterLimit: s.miterLimit, Offset: measure(s.dashOffset),
	}}
	total := 0.0
	dashes := make([]float64, len(s.dashes))
	for i, dash := range s.dashes {
		dashes[i] = measure(dash)
		total += dashes[i]
	}
	if total > 0 {
		stroke.Pen.Dashes = dashes
	}
	for _, v := range []float64{stroke.Pen.Width, stroke.Pen.Offset, total} {
		if !(math.Abs(v) <= farthest) {
			return stroke, tooFar(geometry.Vec2{X: v})
		}
	}
	return stroke, nil
}

// similar tells whether a motion keeps the shape of things, and by what it
// multiplies their size.
func similar(a geometry.Affine) (bool, float64) {
	u, v := a.U.Length(), a.V.Length()
	const near = 1e-6
	return math.Abs(u-v) <= near*u && math.Abs(a.U.Dot(a.V)) <= near*u*v, math.Sqrt(math.Abs(a.Area()))
}

// addPaint adds the colours of a paint to the set.
func (c *Colours) addPaint(p Paint) {
	if !p.shows() {
		return
	}
	if p.Kind == Solid {
		c.addColour(p.Colour)
		return
	}
	for _, stop := range p.Gradient.Stops {
		c.addColour(stop.Colour)
	}
}

func (c *Colours) addColour(colour Colour) {
	switch {
	case colour.Inks:
		c.CMYK = true
	case colour.R == colour.G && colour.G == colour.B:
		c.Grey = true
	default:
		c.RGB = true
	}
}
