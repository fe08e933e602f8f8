package report

import (
	"image"
	"math"

	"gussetwright/geometry"
	"gussetwright/render/pdf/object"
	"gussetwright/render/scene"
)

// Page is one page. Items are drawn in their order, later ones over earlier ones.
type Page struct {
	Width, Height float64 // mm
	Items         []Item
}

// Paper is the size of a page in mm.
type Paper struct{ Width, Height float64 }

// A4 is the size A4 upright (ISO 216).
func A4() Paper { return Paper{210, 297} }

// Letter is the size Letter upright, 8½ by 11 inches.
func Letter() Paper { return Paper{215.9, 279.4} }

// Usual returns the paper that people have who measure in a unit: Letter with inches, else
// A4.
func Usual(unit geometry.Unit) Paper {
	if unit == geometry.Inch {
		return Letter()
	}
	return A4()
}

// Landscape returns the paper lying on its longer side.
func (p Paper) Landscape() Paper {
	return Paper{max(p.Width, p.Height), min(p.Width, p.Height)}
}

// Item is one thing on a page: a Text, a Rule, a Box, a Shape, a Picture or a Window.
type Item interface{ isItem() }

// Text is a line of text on its baseline.
type Text struct {
	Text   string
	At     geometry.Vec2
	Size   float64 // height of the em square in mm
	Bold   bool
	Colour Colour       // no colour for black
	Align  scene.Anchor // the part of the line that stands at At
	Turn   float64      // radians, anticlockwise from reading left to right
}

// Line is how a line is drawn. The zero value draws none.
type Line struct {
	Width  float64 // mm
	Colour Colour
	Dash   []float64 // lengths of dashes and gaps in mm; nil for a solid line
}

// Rule is a straight line.
type Rule struct {
	From, To geometry.Vec2
	Line     Line
}

// Box is an upright rectangle.
type Box struct {
	Rect   geometry.Rect
	Radius float64 // of its corners in mm; 0 for sharp ones
	Fill   Colour
	Line   Line
}

// Shape is any outline.
type Shape struct {
	Path geometry.Path
	Fill Colour
	Line Line
}

// Picture is a picture that fills a rectangle.
type Picture struct {
	Rect  geometry.Rect
	Image image.Image
	// Quality is that of JPEG, 1 to 100; 0 keeps every pixel as it is.
	Quality int
	// Form is a drawing that files show in place of Image, sharp at any size; nil
	// for none. Image is then what Draw shows.
	Form *object.Form
}

func (Text) isItem()    {}
func (Rule) isItem()    {}
func (Box) isItem()     {}
func (Shape) isItem()   {}
func (Picture) isItem() {}

// Path returns the line.
func (r Rule) Path() geometry.Path {
	return geometry.Path{Vertices: []geometry.Vertex{{Vec2: r.From}, {Vec2: r.To}}}
}

// Path returns the outline. A radius of more than half a side is cut down to it.
func (b Box) Path() geometry.Path {
	radius := min(b.Radius, b.Rect.Width()/2, b.Rect.Height()/2)
	if radius <= 0 {
		return b.Rect.Path()
	}
	quarter := math.Tan(math.Pi / 8) // bulge of a quarter of a circle
	low, high := b.Rect.Min, b.Rect.Max
	corner := func(x, y, bulge float64) geometry.Vertex {
		return geometry.Vertex{Vec2: geometry.Vec2{X: x, Y: y}, Bulge: bulge}
	}
	return geometry.Path{Closed: true, Vertices: []geometry.Vertex{
		corner(low.X+radius, low.Y, 0), corner(high.X-radius, low.Y, quarter),
		corner(high.X, low.Y+radius, 0), corner(high.X, high.Y-radius, quarter),
		corner(high.X-radius, high.Y, 0), corner(low.X+radius, high.Y, quarter),
		corner(low.X, high.Y-radius, 0), corner(low.X, low.Y+radius, quarter),
	}}
}

// Aspect returns the width of what is shown over its height, or 0 where nothing is.
func (p Picture) Aspect() float64 {
	switch {
	case p.Form != nil:
		return p.Form.Width / p.Form.Height
	case p.Image != nil && !p.Image.Bounds().Empty():
		size := p.Image.Bounds().Size()
		return float64(size.X) / float64(size.Y)
	}
	return 0
}

// Within returns the picture as large as it fits into a rectangle, undistorted and
// in its middle.
func (p Picture) Within(area geometry.Rect) Picture {
	width, height := area.Width(), area.Height()
	if aspect := p.Aspect(); aspect > 0 {
		width, height = min(width, height*aspect), min(height, width/aspect)
	}
	middle := area.Center()
	p.Rect = geometry.RectAt(middle.X-width/2, middle.Y-height/2, width, height)
	return p
}
