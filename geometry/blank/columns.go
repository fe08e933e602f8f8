package blank

import "gussetwright/geometry/bag"

// columnKind is what runs from the bottom to the top of a column.
type columnKind int

const (
	face columnKind = iota
	gusset
	seamFlap
)

// facing is the face of the bag that a strip of paper moves with when the bag
// packs flat.
type facing int

const (
	withFront facing = iota
	withBack
)

func (f facing) other() facing { return withBack - f }

// column is a strip of a piece between two vertical creases or edges.
type column struct {
	kind  columnKind
	name  string
	left  float64
	width float64
	// with is the face the strip moves with. A gusset moves with this face on
	// its left half and with the other on its right half.
	with facing
	// leftHalf is the width of a gusset to the left of its crease.
	leftHalf float64
}

func (c column) right() float64  { return c.left + c.width }
func (c column) center() float64 { return c.left + c.leftHalf }

// layout is the columns of one piece, from left to right.
type layout struct {
	name    string
	columns []column
}

func oneSeam(b bag.Body) layout {
	return layout{"blank", arrange(b, []column{
		{kind: face, name: "front", with: withFront},
		{kind: gusset, name: "gusset-right", with: withFront},
		{kind: face, name: "back", with: withBack},
		{kind: gusset, name: "gusset-left", with: withBack},
		{kind: seamFlap, name: "seam-flap", with: withFront},
	})}
}

func frontPiece(b bag.Body) layout {
	return layout{"front piece", arrange(b, []column{
		{kind: face, name: "front", with: withFront},
		{kind: gusset, name: "gusset-right", with: withFront},
		{kind: seamFlap, name: "seam-flap", with: withBack},
	})}
}

func backPiece(b bag.Body) layout {
	return layout{"back piece", arrange(b, []column{
		{kind: face, name: "back", with: withBack},
		{kind: gusset, name: "gusset-left", with: withBack},
		{kind: seamFlap, name: "seam-flap", with: withFront},
	})}
}

// arrange gives the columns their places. Gussets vanish from a flat bag, and
// the panel beside the seam flap gives up the seam relief.
func arrange(b bag.Body, all []column) []column {
	columns := make([]column, 0, len(all))
	left := 0.0
	for i, c := range all {
		if c.kind == gusset && b.Gusset == 0 {
			continue
		}
		switch c.kind {
		case face:
			c.width = b.Width
		case gusset:
			c.width, c.leftHalf = b.Gusset, b.Gusset/2
		case seamFlap:
			c.width = b.SeamFlap
		}
		besideFlap := i+1 < len(all) && (all[i+1].kind == seamFlap ||
			b.Gusset == 0 && i+2 < len(all) && all[i+2].kind == seamFlap)
		if besideFlap && c.kind != seamFlap {
			c.width -= b.SeamRelief
		}
		c.left = left
		left += c.width
		columns = append(columns, c)
	}
	return columns
}
