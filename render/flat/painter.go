package flat

import (
	"image"
	"image/color"
	"math"

	"gussetwright/geometry"
	"gussetwright/render/scene"
)

// View is the part of a drawing that a picture shows.
type View struct {
	Scale  float64       // pixels per millimetre
	Origin geometry.Vec2 // the point of the drawing in the upper left corner, mm
	// Pen is how many pixels wide a line of 0.25 mm is painted at every scale;
	// 0 paints lines as wide as they are.
	Pen float64
}

// At returns the pixel in which a point of the drawing lies, y down.
func (v View) At(p geometry.Vec2) (x, y float64) {
	return (p.X - v.Origin.X) * v.Scale, (v.Origin.Y - p.Y) * v.Scale
}

// penWidth is the line width in mm that View.Pen stands for: that of creases.
const penWidth = 0.25

// Painter paints drawings. It keeps buffers and the outlines of glyphs from picture
// to picture, and so belongs to one goroutine at a time. Its zero value is ready.
type Painter struct {
	raster        filler
	width, height float64 // of the picture
	picture       *image.RGBA
	view          View
	glyphs        map[glyphKey]*glyph
	points        []point
	joints        []point
	dash          []float64
}

// filler fills outlines; raster is the one that is used.
type filler interface {
	reset(width, height int)
	edge(x0, y0, x1, y1 float64)
	fill(picture *image.RGBA, ink color.NRGBA)
}

// point is a place in the picture in pixels, y down.
type point struct{ x, y float64 }

// Begin turns to a picture and a view of it.
func (p *Painter) Begin(picture *image.RGBA, view View) {
	if p.raster == nil {
		p.raster = &raster{}
	}
	p.picture, p.view = picture, view
	p.width, p.height = float64(picture.Rect.Dx()), float64(picture.Rect.Dy())
	p.raster.reset(picture.Rect.Dx(), picture.Rect.Dy())
}

// Clear paints the whole picture in one colour.
func (p *Painter) Clear(c color.NRGBA) {
	brush := newBrush(c)
	row := p.picture.Pix[:4*p.picture.Rect.Dx()]
	brush.run(row, 1)
	for y := 1; y < p.picture.Rect.Dy(); y++ {
		copy(p.picture.Pix[y*p.picture.Stride:], row)
	}
}

// Fill paints the inside of closed paths, as one area where they touch.
func (p *Painter) Fill(c color.NRGBA, paths ...geometry.Path) {
	for _, path := range paths {
		p.fill(path)
	}
	p.raster.fill(p.picture, c)
}

// Outline paints a line of the given width in pixels along a path.
func (p *Painter) Outline(c color.NRGBA, path geometry.Path, width float64) {
	p.stroke(path, width, nil)
	p.raster.fill(p.picture, c)
}

// Shadow paints a soft shadow round a closed path, a little below it, out to the
// given number of pixels. What lies on the path must be painted afterwards.
func (p *Painter) Shadow(c color.NRGBA, path geometry.Path, reach float64) {
	const rings = 5
	c.A /= rings
	lowered := path.Translate(geometry.Vec2{Y: -reach / 4 / p.view.Scale})
	for ring := range rings {
		p.stroke(lowered, 2*reach*float64(ring+1)/rings, nil)
		p.raster.fill(p.picture, c)
	}
}

// Draw paints those items of a drawing whose layers are shown, in drawing order. Where
// artwork lies under them they get the halo of the palette.
func (p *Painter) Draw(drawing scene.Drawing, palette *Palette, shown Layers) {
	p.halos(drawing, palette, shown)
	for _, c := range coats(drawing, palette, shown) {
		for _, item := range drawing.Items {
			if c.takes(item) {
				p.add(item)
			}
		}
		p.raster.fill(p.picture, c.ink)
	}
}

// coat is what is painted in one go: the items of a role, of dimensions those on the
// paper or those beyond it.
type coat struct {
	ink   color.NRGBA
	takes func(scene.Item) bool
}

// coats returns the coats of a drawing, lowest first.
func coats(drawing scene.Drawing, palette *Palette, shown Layers) []coat {
	var list []coat
	for _, role := range scene.Roles() {
		if !shown.Has(role) {
			continue
		}
		of := func(item scene.Item) bool { return item.Layer() == role }
		if role != scene.Dimensions || palette.Beyond.A == 0 {
			list = append(list, coat{palette.Ink[role], of})
			continue
		}
		list = append(list,
			coat{palette.Ink[role], func(item scene.Item) bool { return of(item) && onPaper(item, drawing.Trim) }},
			coat{palette.Beyond, func(item scene.Item) bool { return of(item) && !onPaper(item, drawing.Trim) }})
	}
	return list
}

// onPaper tells whether an item stands on the paper.
func onPaper(item scene.Item, paper geometry.Rect) bool {
	switch item := item.(type) {
	case scene.Stroke:
		return paper.Contains(item.Path.Bounds().Center())
	case scene.Fill:
		return paper.Contains(item.Path.Bounds().Center())
	case scene.Label:
		return paper.Contains(item.At)
	}
	return false
}

func (p *Painter) add(item scene.Item) {
	switch item := item.(type) {
	case scene.Stroke:
		p.stroke(item.Path, p.pen(item.Width), item.Dash)
	case scene.Fill:
		p.fill(item.Path)
	case scene.Label:
		p.write(item)
	}
}

// pen returns the width in pixels of a line: whole pixels, at least one, so that
// upright and level lines fill whole pixels and stay crisp.
func (p *Painter) pen(millimetres float64) float64 {
	pixels := millimetres * p.view.Scale
	if p.view.Pen > 0 {
		pixels = millimetres / penWidth * p.view.Pen
	}
	return max(1, math.Round(pixels))
}

// trace lays a path into points; arcs become chords.
func (p *Painter) trace(path geometry.Path) {
	p.points = p.points[:0]
	if len(path.Vertices) == 0 {
		return
	}
	last := path.Len()
	for i := range last {
		edge := path.Edge(i)
		x, y := p.view.At(edge.From)
		p.points = append(p.points, point{x, y})
		if !scene.Straight(edge) {
			p.traceArc(edge.Arc())
		}
	}
	if !path.Closed {
		x, y := p.view.At(path.Vertices[last].Vec2)
		p.points = append(p.points, point{x, y})
	}
}

// traceArc adds the points between the ends of an arc, so close that chords stay
// within a fiftieth of a pixel: a chord over the angle a rises r·(1 − cos a/2) ≈ r·a²/8.
func (p *Painter) traceArc(arc geometry.Arc) {
	const rise = 0.02
	const most = 1000
	radius := arc.Radius * p.view.Scale
	steps := int(min(math.Ceil(math.Abs(arc.Sweep)/math.Sqrt(8*rise/max(radius, rise))), most))
	for step := 1; step < steps; step++ {
		x, y := p.view.At(arc.At(float64(step) / float64(steps)))
		p.points = append(p.points, point{x, y})
	}
}

// fill adds the inside of a path to the raster.
func (p *Painter) fill(path geometry.Path) {
	p.trace(path)
	if p.outside(p.points, 0) {
		return
	}
	if len(p.points) == 3 {
		p.settle()
	}
	area := 0.0
	last := p.points[len(p.points)-1]
	for _, next := range p.points {
		area += last.x*next.y - next.x*last.y
		last = next
	}
	for _, next := range p.points {
		// All outlines run the way that quad runs.
		if area < 0 {
			p.raster.edge(last.x, last.y, next.x, next.y)
		} else {
			p.raster.edge(next.x, next.y, last.x, last.y)
		}
		last = next
	}
}

// settle moves an arrowhead so that its tip stands on the pixel on which the lines
// that it belongs to were put by snap.
func (p *Painter) settle() {
	tip := p.points[0]
	width := p.pen(0)
	dx, dy := middle(tip.x, width)-tip.x, middle(tip.y, width)-tip.y
	for i := range p.points {
		p.points[i].x += dx
		p.points[i].y += dy
	}
}

// outside tells whether points lie on one side of the picture, farther than margin.
func (p *Painter) outside(points []point, margin float64) bool {
	if len(points) == 0 {
		return true
	}
	low, high := points[0], points[0]
	for _, q := range points[1:] {
		low = point{min(low.x, q.x), min(low.y, q.y)}
		high = point{max(high.x, q.x), max(high.y, q.y)}
	}
	return high.x < -margin || high.y < -margin ||
		low.x > p.width+margin || low.y > p.height+margin
}
