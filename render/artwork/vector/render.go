package vector

import (
	"context"
	"image"
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/artwork/vector/coverage"
	"gussetwright/render/artwork/vector/outline"
	"gussetwright/render/ink"
)

// Render draws the whole drawing into a picture of so many pixels, with nothing
// behind it. Colours are premultiplied. A picture of other proportions than the
// drawing stretches it.
//
// Curves and lines go through the scanner of coverage, not through
// golang.org/x/image/vector or rasterx: these add up what overlaps in a pixel and
// have no even-odd rule, and rasterx reckons lines in sixty-fourths of a pixel.
// Lines are drawn as the sum of convex pieces, see outline.Tracer, so that sharp
// turns and crossings leave no holes.
func (d *Drawing) Render(ctx context.Context, width, height int) (*image.RGBA, error) {
	if width < 1 || height < 1 || width > mostPicture || height > mostPicture || width*height > mostPicture {
		return nil, phrase.Errorf("draw the SVG file in %d × %d pixels: choose at least 1 × 1 and at most %d pixels altogether", width, height, mostPicture)
	}
	picture := image.NewRGBA(image.Rect(0, 0, width, height))
	x, y := float64(width)/d.Size.X, float64(height)/d.Size.Y
	r := &renderer{
		ctx:   ctx,
		view:  geometry.Affine{U: geometry.Vec2{X: x}, V: geometry.Vec2{Y: -y}, Origin: geometry.Vec2{Y: float64(height)}},
		masks: map[maskKey]*mask{},
	}
	r.scanner.Stop = func() bool { return ctx.Err() != nil }
	r.shapes(picture, &mask{area: picture.Rect}, d.Shapes)
	if err := ctx.Err(); err != nil {
		return nil, phrase.Errorf("draw the SVG file: %s", err)
	}
	return picture, nil
}

// renderer draws shapes. It stops when its context ends; the picture is then of no
// use.
type renderer struct {
	ctx     context.Context
	view    geometry.Affine // from mm to pixels, y down
	scanner coverage.Scanner
	corners []geometry.Vec2

	masks    map[maskKey]*mask
	maskSize int // the bytes of all masks that are kept
	reduced  reduced
	inks     *ink.Table // for images, once there is one in inks
}

// tolerance is by how many pixels a line may stray from its curve.
const tolerance = 0.08

// shapes draws shapes onto a picture, as far as the mask lets them be seen.
func (r *renderer) shapes(onto *image.RGBA, through *mask, shapes []Shape) {
	for _, shape := range shapes {
		if r.ctx.Err() != nil {
			return
		}
		r.shape(onto, through, shape)
	}
}

func (r *renderer) shape(onto *image.RGBA, through *mask, shape Shape) {
	look := shape.look()
	for _, clip := range look.Clips {
		through = r.clipped(through, clip)
	}
	if through.area.Empty() {
		return
	}
	switch shape := shape.(type) {
	case *Group:
		if look.Opacity == 1 {
			r.shapes(onto, through, shape.Shapes)
			return
		}
		r.layer(onto, through, look.Opacity, shape, func(layer *image.RGBA, free *mask) {
			r.shapes(layer, free, shape.Shapes)
		})
	case *Figure:
		if look.Opacity == 1 {
			r.figure(onto, through, shape)
			return
		}
		r.layer(onto, through, look.Opacity, shape, func(layer *image.RGBA, free *mask) {
			r.figure(layer, free, shape)
		})
	case *Picture:
		r.picture(onto, through, shape)
	}
}

// layer draws something on a picture of its own and lays that over the other.
func (r *renderer) layer(onto *image.RGBA, through *mask, opacity float64, shape Shape, draw func(*image.RGBA, *mask)) {
	area := r.extent([]Shape{shape}).Intersect(through.area)
	if area.Empty() {
		return
	}
	layer := image.NewRGBA(area)
	draw(layer, &mask{area: area})
	r.scanner.Reset(area)
	r.scanner.Polygon([]geometry.Vec2{
		{X: float64(area.Min.X), Y: float64(area.Min.Y)},
		{X: float64(area.Max.X), Y: float64(area.Min.Y)},
		{X: float64(area.Max.X), Y: float64(area.Max.Y)},
		{X: float64(area.Min.X), Y: float64(area.Max.Y)},
	})
	r.lay(onto, through, false, layerBrush{layer}, opacity)
}

// extent returns the pixels that shapes may reach.
func (r *renderer) extent(shapes []Shape) image.Rectangle {
	var all image.Rectangle
	for _, shape := range shapes {
		var one image.Rectangle
		switch shape := shape.(type) {
		case *Group:
			one = r.extent(shape.Shapes)
		case *Picture:
			one = pixelsOf(r.view.After(shape.Place).Bounds(geometry.RectAt(0, 0, 1, 1)))
		case *Figure:
			box, ok := shape.Path.Bounds(r.view)
			if !ok {
				continue
			}
			if shape.Stroke.shows() {
				box = box.Inset(-reach(shape.Stroke, r.view))
			}
			one = pixelsOf(box)
		}
		all = all.Union(one)
	}
	return all
}

// reach returns how far a stroke may go from its path.
func reach(s Stroke, view geometry.Affine) float64 {
	plane := view.After(s.Plane)
	wide := s.Pen.Width / 2 * math.Hypot(plane.U.Length(), plane.V.Length())
	if s.Pen.Join == outline.Miter {
		return wide * max(s.Pen.MiterLimit, math.Sqrt2)
	}
	return wide * math.Sqrt2
}

// pixelsOf returns the pixels that a rectangle touches.
func pixelsOf(box geometry.Rect) image.Rectangle {
	const far = 1 << 29 // what lies farther out is not seen anyway
	edge := func(v float64) int { return int(min(max(v, -far), far)) }
	return image.Rect(edge(math.Floor(box.Min.X)), edge(math.Floor(box.Min.Y)), edge(math.Ceil(box.Max.X)), edge(math.Ceil(box.Max.Y)))
}

// seenOf returns an area of pixels as a rectangle of the plane.
func seenOf(area image.Rectangle) geometry.Rect {
	return geometry.RectAt(float64(area.Min.X), float64(area.Min.Y), float64(area.Dx()), float64(area.Dy()))
}

// figure draws the fill and the stroke of a figure.
func (r *renderer) figure(onto *image.RGBA, through *mask, f *Figure) {
	if f.StrokeFirst {
		r.stroke(onto, through, f)
	}
	if f.Fill.shows() && r.outline(through.area, f.Path) {
		r.lay(onto, through, f.EvenOdd, r.brush(f.Fill), f.Fill.Opacity)
	}
	if !f.StrokeFirst {
		r.stroke(onto, through, f)
	}
}

// outline gives the scanner the inside of a path, and tells whether any of it may
// be in the area.
func (r *renderer) outline(area image.Rectangle, path outline.Path) bool {
	box, ok := path.Bounds(r.view)
	area = area.Intersect(pixelsOf(box))
	if !ok || area.Empty() {
		return false
	}
	r.scanner.Reset(area)
	flat := outline.Flattening{By: r.view, Tolerance: tolerance, Seen: seenOf(area)}
	flat.Strands(path, func(s outline.Strand) { r.scanner.Polygon(s.Points) })
	return true
}

// stroke draws the line of a figure.
func (r *renderer) stroke(onto *image.RGBA, through *mask, f *Figure) {
	if !f.Stroke.shows() {
		return
	}
	box, ok := f.Path.Bounds(r.view)
	area := through.area.Intersect(pixelsOf(box.Inset(-reach(f.Stroke, r.view))))
	back, solid := f.Stroke.Plane.Inverse()
	if !ok || area.Empty() || !solid {
		return
	}
	r.scanner.Reset(area)
	plane := r.view.After(f.Stroke.Plane)
	outward, solid := plane.Inverse()
	if !solid {
		return
	}
	near := seenOf(area)
	tracer := outline.Tracer{
		Pen: f.Stroke.Pen, Tolerance: tolerance / max(plane.U.Length(), plane.V.Length()), Seen: outward.Bounds(near),
		Take: func(polygon []geometry.Vec2) {
			r.corners = r.corners[:0]
			for _, p := range polygon {
				r.corners = append(r.corners, plane.At(p))
			}
			r.scanner.Polygon(r.corners)
		},
	}
	flat := outline.Flattening{By: back, Tolerance: tracer.Tolerance, Seen: outward.Bounds(near.Inset(-reach(f.Stroke, r.view)))}
	flat.Strands(f.Path, tracer.Trace)
	r.lay(onto, through, false, r.brush(f.Stroke.Paint), f.Stroke.Paint.Opacity)
}
