// Package scene describes a technical drawing as a list of strokes, fills and
// labels in millimetres, each with a role. Every picture and every file is made
// from such a list, so what is seen is what is cut.
//
// x runs to the right and y up; the lower left corner of a piece is the origin.
package scene

import "gussetwright/geometry"

// Drawing is one page: the drawing of one piece with everything around it.
type Drawing struct {
	Title string
	Media geometry.Rect // the whole page
	Bleed geometry.Rect // how far artwork may run
	Trim  geometry.Rect // the bounding box of the cut piece
	Items []Item
}

// Item is one thing to draw: a Stroke, a Fill, a Label, a Placed or a Repeated.
type Item interface {
	// Layer returns the role of the item.
	Layer() Role
}

// Stroke is a drawn line. A straight or curved run of edges, open or closed.
type Stroke struct {
	Role  Role
	Path  geometry.Path
	Width float64   // mm
	Dash  []float64 // lengths of dashes and gaps in mm; nil for a solid line
}

// Fill is a filled shape in the colour of its role.
type Fill struct {
	Role Role
	Path geometry.Path
	Ink  *CMYK // printed colour; for Artwork only, which has no colour of its own
}

// Anchor is the part of a label that stands at its point.
type Anchor int

// The anchors, along the line of writing.
const (
	Start Anchor = iota
	Middle
	End
)

// Label is a line of text on its baseline.
type Label struct {
	Role   Role
	Text   string
	At     geometry.Vec2
	Size   float64 // height of the em square in mm
	Anchor Anchor
	Turn   float64 // radians, anticlockwise from reading left to right
	Bold   bool
}

// Layer returns the role of the stroke.
func (s Stroke) Layer() Role { return s.Role }

// Layer returns the role of the fill.
func (f Fill) Layer() Role { return f.Role }

// Layer returns the role of the label.
func (l Label) Layer() Role { return l.Role }
