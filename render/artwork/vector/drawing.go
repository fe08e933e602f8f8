package vector

import (
	"image"
	"image/color"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/artwork/vector/outline"
)

// Drawing is an SVG file that was read. It never changes, so several goroutines may
// use it at once.
type Drawing struct {
	Size geometry.Vec2 // mm
	// Stated tells whether the file gives its size in a unit that paper is measured
	// in: mm, cm, in, pt, pc or Q. Otherwise a pixel counts as a 96th of an inch.
	Stated bool
	Shapes []Shape // in drawing order
	// Notes tell what of the file is not shown, each kind once, with how often.
	Notes   []phrase.Phrase
	Text    bool // the file holds live text, which is not shown
	Colours Colours
}

// Colours tells in which colours a drawing is painted.
type Colours struct {
	RGB  bool // red, green and blue that are not all alike
	Grey bool // black, white, and what lies between
	CMYK bool // cyan, magenta, yellow and black
}

// Shape is a Figure, a Picture or a Group.
type Shape interface{ look() *Look }

// Look is what all shapes have.
type Look struct {
	Opacity float64 // of the shape as a whole, 0 to 1
	Clips   []*Clip // the shape is seen only inside of all of them
}

func (l *Look) look() *Look { return l }

// Figure is a path that is filled, stroked or both.
type Figure struct {
	Look
	Path    outline.Path // mm
	Fill    Paint
	EvenOdd bool // the rule by which the path is filled; otherwise it is non-zero
	Stroke  Stroke
	// StrokeFirst tells that the fill covers the stroke, and not the other way round.
	StrokeFirst bool
}

// Picture is an image that stands in the file.
type Picture struct {
	Look
	Image *Image
	// Place takes the corners of the image from (0, 0), lower left, and (1, 1), upper
	// right, to their places in mm.
	Place geometry.Affine
}

// Group holds shapes that are first put together and then shown as one.
type Group struct {
	Look
	Shapes []Shape
}

// Clip is an area: all that lies in any of its parts.
type Clip struct{ Parts []ClipPart }

// ClipPart is the inside of a path, as far as it lies in all clips of its own.
type ClipPart struct {
	Path    outline.Path // mm
	EvenOdd bool
	Clips   []*Clip
}

// Paint is what an area is covered with. The zero value is nothing.
type Paint struct {
	Kind     PaintKind
	Colour   Colour    // of a Solid paint
	Gradient *Gradient // of a Blend
	Opacity  float64   // 0 to 1
}

// PaintKind tells what a Paint is.
type PaintKind uint8

// The kinds of paint.
const (
	None PaintKind = iota
	Solid
	Blend
)

// shows tells whether the paint leaves anything.
func (p Paint) shows() bool { return p.Kind != None && p.Opacity > 0 }

// Colour is a colour of a device, without any profile.
type Colour struct {
	R, G, B uint8 // on the screen
	// Inks tells that the file gives the colour in cyan, magenta, yellow and black;
	// R, G, B are what that looks like.
	Inks       bool
	C, M, Y, K float64 // 0 to 1
}

func (c Colour) opaque() color.NRGBA { return color.NRGBA{c.R, c.G, c.B, 255} }

// Gradient is a paint that changes along a line, or from circle to circle.
type Gradient struct {
	Radial bool
	// From and To are the ends of the line, or the centres of the circles in which
	// the gradient begins and ends, with their radii. All are in a plane of their
	// own, which Place takes to mm.
	From, To             geometry.Vec2
	FromRadius, ToRadius float64
	Place                geometry.Affine
	Stops                []Stop // at least two; the first colour goes on before, the last after
}

// Stop is a colour at a place of a gradient.
type Stop struct {
	At      float64 // 0 to 1, none before the one listed before it
	Colour  Colour
	Opacity float64 // 0 to 1
}

// Stroke is a line along a path.
type Stroke struct {
	Paint Paint
	// Pen is in the plane that Plane takes to mm. It is the plane of the drawing
	// unless the file stretches the line in one direction. A width of 0 is not seen.
	Pen   outline.Pen
	Plane geometry.Affine
}

// shows tells whether the stroke leaves anything.
func (s Stroke) shows() bool { return s.Paint.shows() && s.Pen.Width > 0 }

// Image is a picture in a file, unpacked and as it stood there.
type Image struct {
	Width, Height int         // pixels
	Pixels        image.Image // unpacked
	JPEG          []byte      // the file, if it is a JPEG; otherwise it was a PNG
}
