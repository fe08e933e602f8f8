package blankpane

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"gussetwright/app/document"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// drag is something that is under way while a button is held.
type drag interface {
	to(pixel geometry.Vec2)
	end()
	cancel()
}

// Dragged is part of fyne.Draggable.
func (s *surface) Dragged(ev *fyne.DragEvent) {
	s.pointer = pixelAt(ev.Position)
	if s.drag == nil {
		from := s.pointer.Sub(geometry.Vec2{X: float64(ev.Dragged.DX), Y: float64(ev.Dragged.DY)})
		button := desktop.MouseButtonPrimary
		if s.pressed != nil {
			from, button = s.pressed.at, s.pressed.button
		}
		s.drag = s.begin(from, button)
	}
	s.drag.to(s.pointer)
}

// aim looks at what a pointer takes hold of. The handles of artwork lie above the grips
// of the bag, and these above the artwork.
func (s *surface) aim(pixel geometry.Vec2) {
	s.grip, s.artGrip = gripRef{}, s.artAt(pixel)
	if s.artGrip.handle == noHandle || s.artGrip.handle == inside {
		s.grip = s.gripAt(pixel)
	}
	if s.grip.set {
		s.artGrip = artGrip{}
	}
}

// begin starts a drag: of a grip or of artwork where there is one, else of the paper.
func (s *surface) begin(from geometry.Vec2, button desktop.MouseButton) drag {
	if button == desktop.MouseButtonPrimary {
		s.aim(from)
		if g := s.gripped(s.grip); g != nil {
			start := s.pane.state.Spec
			return &pulling{surface: s, grip: *g, start: start, now: start, from: from}
		}
		if placed, found := s.beginPlacing(from); found {
			return placed
		}
	}
	s.grip, s.artGrip = gripRef{}, artGrip{}
	return &panning{s.pane, from}
}

// DragEnd is part of fyne.Draggable.
func (s *surface) DragEnd() {
	if s.drag == nil {
		return
	}
	ended := s.drag
	s.drag, s.pressed = nil, nil
	ended.end()
	s.hover()
	s.arrange()
}

// pulling tells whether a grip is being dragged.
func (s *surface) pulling() bool {
	_, is := s.drag.(*pulling)
	return is
}

// followDrag gives up a drag of a grip that was ended from elsewhere, by undo, and
// lets go of a grip that is gone.
func (s *surface) followDrag(state document.State) {
	if !state.Dragging {
		s.nudging = false
		pulled, pulls := s.drag.(*pulling)
		placed, places := s.drag.(*placing)
		if pulls && pulled.told || places && placed.told {
			s.drag = cancelled{}
		}
	}
	if s.drag == nil {
		s.grip, s.artGrip = gripRef{}, artGrip{}
		if s.over {
			s.aim(s.pointer)
		}
	}
}

// panning pushes the paper.
type panning struct {
	pane *Pane
	last geometry.Vec2
}

func (d *panning) to(pixel geometry.Vec2) {
	d.pane.pan(pixel.Sub(d.last))
	d.last = pixel
}

func (d *panning) end()    {}
func (d *panning) cancel() {}

// cancelled is what is left of a drag that was given up, until the button is let go.
type cancelled struct{}

func (cancelled) to(geometry.Vec2) {}
func (cancelled) end()             {}
func (cancelled) cancel()          {}

// pulling changes the bag by a grip.
type pulling struct {
	surface    *surface
	grip       grip
	start, now bag.Spec
	from       geometry.Vec2 // in pixels
	told       bool          // the document knows of the drag
}

// slackPixels is how far a hole must be moved in a direction to go that way.
const slackPixels = 4

func (d *pulling) to(pixel geometry.Vec2) {
	scale := d.surface.pane.view.scale
	by := geometry.Vec2{X: (pixel.X - d.from.X) / scale, Y: (d.from.Y - pixel.Y) / scale}
	step := 1.0
	if d.surface.fine() {
		step = 0.1
	}
	spec, ok := d.grip.dragged(d.start, by, step, slackPixels/scale)
	if !ok {
		return // the bag could not be drawn; it stays as it is until the pointer comes back
	}
	d.now = spec
	d.surface.pane.doc.Drag(spec)
	d.told = true
}

func (d *pulling) end() { d.surface.pane.doc.Drop() }

func (d *pulling) cancel() {
	d.now = d.start
	d.surface.pane.doc.CancelDrag()
}
