package lesson

import (
	"gussetwright/geometry"
	"gussetwright/render/flat"
	"gussetwright/render/scene"
)

// spread is how the pieces lie beside each other in the picture.
type spread struct {
	scale float64 // pixels of the screen per mm
	moves []geometry.Vec2
	page  geometry.Rect
	top   float64 // pixels of the screen that are left free above
}

// layOut puts the pieces beside each other, as large as the picture has room for.
func layOut(o *order) spread {
	const margin = 14 // pixels of fyne
	laid := &o.course.snapshot.Blank
	drawings := make([]scene.Drawing, len(laid.Pieces))
	for i := range laid.Pieces {
		drawings[i].Media = laid.Pieces[i].Box()
	}
	s := spread{moves: scene.Row(drawings), page: scene.RowMedia(drawings)}
	room := 2 * margin * o.density
	s.top = o.top
	s.scale = min(max(float64(o.width)-room, 1)/s.page.Width(), max(float64(o.height)-room-s.top, 1)/s.page.Height())
	return s
}

// view returns the view of a piece in the picture.
func (s *spread) view(o *order, piece int) flat.View {
	middle := geometry.Vec2{X: float64(o.width) / 2 / s.scale, Y: -(float64(o.height) + s.top) / 2 / s.scale}
	return flat.View{Scale: s.scale, Origin: s.page.Center().Sub(middle).Sub(s.moves[piece]), Pen: pen * o.density}
}
