package blankpane

import (
	"gussetwright/geometry"
	"gussetwright/geometry/blank"
)

// Limits of the zoom in pixels per mm: a blank of four metres is still seen whole,
// and a tenth of a millimetre is as long as a letter.
const (
	leastScale = 0.05
	mostScale  = 120
)

// zoomStep is how much one step of the wheel or one press of a key zooms.
const zoomStep = 1.2

// view is the part of the desk that is seen. Pixels are those of fyne, which do not
// depend on the screen.
type view struct {
	scale  float64       // pixels per mm
	corner geometry.Vec2 // the point of the desk in the upper left corner
	letter float64       // height of the lettering in pixels
	plain  bool          // there is no room for the dimensions round the pieces
}

// The size of a pane, in letters, below which the dimensions round the blank would leave
// it no room.
const leastColumns, leastRows = 26, 18

// in returns the view in a pane of a size in pixels.
func (v view) in(width, height float64) view {
	v.plain = width < leastColumns*v.letter || height < leastRows*v.letter
	return v
}

// mm returns the height of the lettering in mm.
func (v view) mm() float64 { return v.letter / v.scale }

// screen returns the pixel of a point of the desk, y down.
func (v view) screen(p geometry.Vec2) geometry.Vec2 {
	return geometry.Vec2{X: (p.X - v.corner.X) * v.scale, Y: (v.corner.Y - p.Y) * v.scale}
}

// desk returns the point of the desk at a pixel.
func (v view) desk(pixel geometry.Vec2) geometry.Vec2 {
	return geometry.Vec2{X: v.corner.X + pixel.X/v.scale, Y: v.corner.Y - pixel.Y/v.scale}
}

// moved returns the view after the paper was pushed by some pixels.
func (v view) moved(by geometry.Vec2) view {
	v.corner.X -= by.X / v.scale
	v.corner.Y += by.Y / v.scale
	return v
}

// pinned returns the view in which a point of the desk is seen at a pixel.
func (v view) pinned(p, pixel geometry.Vec2) view {
	v.corner = geometry.Vec2{X: p.X - pixel.X/v.scale, Y: p.Y + pixel.Y/v.scale}
	return v
}

// zoomed returns the view at another scale in which the same point of the paper is
// seen at the pixel. The pieces move apart on the desk as the lettering between
// them grows beside them, so the point is held on its piece.
func (v view) zoomed(laid *blank.Blank, pixel geometry.Vec2, scale float64) view {
	piece, at := layOut(laid, v).nearest(v.desk(pixel))
	v.scale = min(max(scale, leastScale), mostScale)
	return v.pinned(layOut(laid, v).at(piece, at), pixel)
}

// fitted returns the view that shows all pieces with their dimensions as large as
// the given pixels allow, and in their middle.
func (v view) fitted(laid *blank.Blank, width, height float64) view {
	v = v.in(width, height)
	low, high := float64(leastScale), float64(mostScale)
	for range 40 {
		v.scale = (low + high) / 2
		media := layOut(laid, v).media
		if media.Width()*v.scale <= width && media.Height()*v.scale <= height {
			low = v.scale
		} else {
			high = v.scale
		}
	}
	v.scale = low
	middle := geometry.Vec2{X: width / 2, Y: height / 2}
	return v.pinned(layOut(laid, v).media.Center(), middle)
}
