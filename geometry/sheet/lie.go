package sheet

import (
	"cmp"
	"math"
	"slices"

	"gussetwright/geometry"
)

// Box returns the bounding box of the i-th piece on the sheet.
func (p *Plan) Box(i int) geometry.Rect {
	at := p.Placements[i]
	width, height := p.Piece.size(at.Turn)
	return geometry.RectAt(at.X, at.Y, width, height)
}

// Motion returns where the i-th piece lies: it takes points of the piece, from its
// lower left corner, to points of the sheet.
func (p *Plan) Motion(i int) geometry.Affine {
	turned := geometry.Rotation(float64(p.Placements[i].Turn) * math.Pi / 180)
	around := turned.Bounds(geometry.RectAt(0, 0, p.Piece.Width, p.Piece.Height))
	return geometry.Shift(p.Box(i).Min.Sub(around.Min)).After(turned)
}

// Guillotine tells whether straight cuts from edge to edge of what they cut part all
// pieces, as a guillotine does; other layouts need a die.
func (p *Plan) Guillotine() bool {
	boxes := make([]geometry.Rect, p.Up())
	for i := range boxes {
		boxes[i] = p.Box(i)
	}
	return parted(boxes)
}

// parted tells whether cuts along x or y part all boxes. Any cut that parts some may
// be made first: it takes none from the others.
func parted(boxes []geometry.Rect) bool {
	if len(boxes) < 2 {
		return true
	}
	for _, side := range []func(geometry.Rect) (low, high float64){
		func(r geometry.Rect) (float64, float64) { return r.Min.X, r.Max.X },
		func(r geometry.Rect) (float64, float64) { return r.Min.Y, r.Max.Y },
	} {
		slices.SortFunc(boxes, func(a, b geometry.Rect) int {
			lowA, _ := side(a)
			lowB, _ := side(b)
			return cmp.Compare(lowA, lowB)
		})
		_, reach := side(boxes[0])
		for i := 1; i < len(boxes); i++ {
			low, high := side(boxes[i])
			if low >= reach-geometry.Tolerance {
				return parted(slices.Clone(boxes[:i])) && parted(slices.Clone(boxes[i:]))
			}
			reach = max(reach, high)
		}
	}
	return false
}
