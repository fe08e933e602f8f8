package press

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
)

// frame is a sheet as the press sees it: places are told by how far they lie along the
// held edge and how deep from it toward the tail.
type frame struct {
	grip          sheet.Grip
	length, depth float64 // of the sheet, along the held edge and from it to the tail
}

func frameOf(s bag.Sheet) frame {
	if sheet.GripOf(s) == sheet.GripBottom {
		return frame{sheet.GripBottom, s.Width, s.Height}
	}
	return frame{sheet.GripLeft, s.Height, s.Width}
}

// at returns a place in the drawing.
func (f frame) at(along, deep float64) geometry.Vec2 {
	if f.grip == sheet.GripBottom {
		return geometry.Vec2{X: along, Y: deep}
	}
	return geometry.Vec2{X: deep, Y: along}
}

// rect returns a rectangle in the drawing.
func (f frame) rect(along1, along2, deep1, deep2 float64) geometry.Rect {
	return geometry.Rect{Min: f.at(along1, deep1), Max: f.at(along2, deep2)}
}

// span returns where a rectangle of the drawing begins and ends along the held edge and
// in depth.
func (f frame) span(r geometry.Rect) (along1, along2, deep1, deep2 float64) {
	if f.grip == sheet.GripBottom {
		return r.Min.X, r.Max.X, r.Min.Y, r.Max.Y
	}
	return r.Min.Y, r.Max.Y, r.Min.X, r.Max.X
}

// turn is the direction of lettering along the held edge.
func (f frame) turn() float64 {
	if f.grip == sheet.GripBottom {
		return 0
	}
	return math.Pi / 2
}
