package blankpane

import (
	"fmt"
	"math"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// placing is a drag that moves, scales or turns artwork.
type placing struct {
	surface *surface
	grip    artGrip
	frame   artFrame // at the start
	start   bag.Spec
	from    geometry.Vec2 // on the piece
	told    bool          // the document knows of the drag
	guides  []guide       // what the artwork lies on now
	says    string        // what the drag came to
}

// beginPlacing starts a drag of what lies at a pixel, if anything does.
func (s *surface) beginPlacing(from geometry.Vec2) (drag, bool) {
	grip := s.artAt(from)
	if grip.handle == noHandle {
		return nil, false
	}
	frame := s.pane.artFrames()[grip.frame]
	placed := *frame.Placed // the snapshot it is of will be gone
	frame.Placed = &placed
	d := &placing{surface: s, grip: grip, frame: frame, start: s.pane.state.Spec}
	d.from = d.onPiece(from)
	return d, true
}

// onPiece returns the point of the piece at a pixel.
func (d *placing) onPiece(pixel geometry.Vec2) geometry.Vec2 {
	pane := d.surface.pane
	return pane.view.desk(pixel).Sub(pane.desk.moves[min(d.frame.Piece, len(pane.desk.moves)-1)])
}

func (d *placing) to(pixel geometry.Vec2) {
	at, free := d.onPiece(pixel), d.surface.fine()
	art := d.start.Artwork[d.frame.Index]
	d.guides = nil
	switch d.grip.handle {
	case inside:
		d.move(&art, at.Sub(d.from), free)
	case turning:
		d.turn(&art, at, free)
	default:
		d.scale(&art, at, free)
	}
	d.told = true
	d.surface.pane.doc.Drag(withArtwork(d.start, d.frame.Index, art))
}

// withArtwork returns the bag with one piece of artwork changed.
func withArtwork(spec bag.Spec, index int, art bag.Artwork) bag.Spec {
	spec.Artwork = slices.Clone(spec.Artwork)
	spec.Artwork[index] = art
	return spec
}

// move goes by whole millimetres and snaps to lines, or freely by tenths.
func (d *placing) move(art *bag.Artwork, by geometry.Vec2, free bool) {
	var onto snapped
	if !free {
		snap := d.surface.pane.artSnap(d.frame.Placed)
		box := d.frame.At.Bounds(geometry.RectAt(0, 0, 1, 1))
		var more geometry.Vec2
		more, onto, d.guides = snap.move(geometry.Rect{Min: box.Min.Add(by), Max: box.Max.Add(by)})
		by = by.Add(more)
	}
	art.X = moved(art.X+by.X, free, onto.x)
	art.Y = moved(art.Y+by.Y, free, onto.y)
	unit := d.surface.pane.set.Unit()
	d.says = fmt.Sprintf("X %s · Y %s", length(art.X, unit), length(art.Y, unit))
}

// moved rounds a way to what a hand means by it.
func moved(to float64, free, onto bool) float64 {
	const exact = 1e-4
	switch {
	case onto:
		return round(to, exact)
	case free:
		return round(to, 0.1)
	}
	return round(to, 1)
}

// round rounds to a multiple of a step, without noise behind the digits that count.
func round(value, step float64) float64 {
	return math.Round(math.Round(value/step)*step*1e6) / 1e6
}

// The limits of the scale, as of bag.Artwork.
const leastArtScale, mostArtScale = 0.001, 1000

// scale goes by whole percent and snaps to lines, or by tenths of a percent. The opposite
// corner stays where it is, or with the control key the middle.
func (d *placing) scale(art *bag.Artwork, at geometry.Vec2, free bool) {
	held := d.grip.handle - corner0
	corner, fixed := d.frame.corners[held], d.frame.corners[(held+2)%4]
	if d.surface.aboutMiddle() {
		fixed = d.frame.middle
	}
	way := corner.Sub(fixed)
	if way.Length() == 0 {
		return
	}
	factor := at.Sub(d.from).Add(way).Dot(way) / way.Dot(way)
	step := 0.001
	if !free {
		snap := d.surface.pane.artSnap(d.frame.Placed)
		if factor, d.guides = snap.stretch(fixed, corner, factor); d.guides == nil {
			step = 0.01
		} else {
			step = 1e-6
		}
	}
	before := art.Scale
	art.Scale = min(max(round(before*factor, step), leastArtScale), mostArtScale)
	by := d.frame.middle.Sub(fixed).Scale(art.Scale/before - 1)
	art.X, art.Y = round(art.X+by.X, 1e-4), round(art.Y+by.Y, 1e-4)
	d.says = fmt.Sprintf(lang.L("Scale %s %%"), words.Number(art.Scale*100, 1))
}

// turn snaps to some angles, or goes freely by tenths of a degree.
func (d *placing) turn(art *bag.Artwork, at geometry.Vec2, free bool) {
	start, now := d.from.Sub(d.frame.middle), at.Sub(d.frame.middle)
	if now.Length() == 0 {
		return
	}
	to := halfTurns(art.Turn + (now.Angle()-start.Angle())*180/math.Pi)
	if free {
		to = round(to, 0.1)
	} else {
		to = snapTurn(to)
	}
	art.Turn = halfTurns(to)
	d.says = fmt.Sprintf(lang.L("Turn %s°"), words.Number(art.Turn, 1))
}

func (d *placing) end() { d.surface.pane.doc.Drop() }

func (d *placing) cancel() { d.surface.pane.doc.CancelDrag() }

// nudge moves the artwork that is being placed by an arrow key: 1 mm, or 10 with Shift.
// A key that is held down makes one step to undo. It tells whether there is artwork to
// move.
func (s *surface) nudge(way geometry.Vec2) bool {
	spec, index := s.pane.doc.State().Spec, s.pane.look.Artwork()
	if s.drag != nil || index < 0 || index >= len(spec.Artwork) {
		return false
	}
	by := way
	if s.shifted() {
		by = way.Scale(10)
	}
	art := spec.Artwork[index]
	art.X, art.Y = round(art.X+by.X, 1e-4), round(art.Y+by.Y, 1e-4)
	s.nudging = true
	s.pane.doc.Drag(withArtwork(spec, index, art))
	return true
}

// nudged makes one step of a row of nudges.
func (s *surface) nudged() {
	if s.nudging {
		s.nudging = false
		s.pane.doc.Drop()
	}
}

// keyOfPanning makes a drag push the paper, whatever lies under the pointer.
const keyOfPanning = fyne.KeySpace
