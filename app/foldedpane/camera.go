package foldedpane

import (
	"math"

	"fyne.io/fyne/v2"

	"gussetwright/app/keyrelay"
	"gussetwright/render/solid"
)

// setCamera looks at the bag from somewhere else.
func (p *Pane) setCamera(c solid.Camera) {
	p.camera = c.Limited()
	if !p.stage.dragging {
		p.moveReference()
	}
	p.draw()
}

// moveReference brings what stands beside the bag to where it is seen. While a drag
// turns the bag it stays where it is, and turns too.
func (p *Pane) moveReference() {
	if side := solid.SideFor(p.camera.Azimuth); side != p.side {
		p.side = side
		p.reframe()
	}
}

// Camera returns from where the bag is seen.
func (p *Pane) Camera() solid.Camera { return p.camera }

// Front shows the bag from the front.
func (p *Pane) Front() { p.setCamera(solid.Front) }

// Back shows the bag from behind.
func (p *Pane) Back() { p.setCamera(solid.Back) }

// Left shows the left gusset.
func (p *Pane) Left() { p.setCamera(solid.Left) }

// Right shows the right gusset.
func (p *Pane) Right() { p.setCamera(solid.Right) }

// Top looks into the bag from straight above.
func (p *Pane) Top() { p.setCamera(solid.Top) }

// Below shows the base from straight below.
func (p *Pane) Below() { p.setCamera(solid.Below) }

// Isometric shows the bag from a corner above.
func (p *Pane) Isometric() { p.setCamera(solid.Isometric) }

// Fit shows the whole bag from where it is seen now.
func (p *Pane) Fit() {
	p.reframe()
	p.setCamera(solid.Camera{Azimuth: p.camera.Azimuth, Elevation: p.camera.Elevation, Zoom: 1})
}

// ZoomIn shows the middle of the pane larger.
func (p *Pane) ZoomIn() { p.zoomAt(p.middle(), zoomStep) }

// ZoomOut shows the middle of the pane smaller.
func (p *Pane) ZoomOut() { p.zoomAt(p.middle(), 1/zoomStep) }

func (p *Pane) middle() fyne.Position {
	size := p.stage.Size()
	return fyne.NewPos(size.Width/2, size.Height/2)
}

// Reference returns what stands beside the bag for scale.
func (p *Pane) Reference() solid.Reference { return p.reference }

// SetReference puts something beside the bag for scale.
func (p *Pane) SetReference(r solid.Reference) {
	p.reference, p.side = r, solid.SideFor(p.camera.Azimuth)
	p.reframe()
	p.draw()
}

// keyTurn is how far an arrow key turns the bag, in radians.
const keyTurn = math.Pi / 24

// turn turns the camera by steps of an arrow key.
func (p *Pane) turn(right, up float64) { p.setCamera(stepped(p.camera, right, up)) }

func stepped(c solid.Camera, right, up float64) solid.Camera {
	c.Azimuth += right * keyTurn
	c.Elevation += up * keyTurn
	return c
}

// TurnedByKey returns a camera after an arrow key, which turns the bag the way it
// points, not yet limited. It tells whether the key is an arrow.
func TurnedByKey(camera solid.Camera, key fyne.KeyName) (turned solid.Camera, isArrow bool) {
	switch key {
	case fyne.KeyLeft:
		return stepped(camera, 1, 0), true
	case fyne.KeyRight:
		return stepped(camera, -1, 0), true
	case fyne.KeyUp:
		return stepped(camera, 0, -1), true
	case fyne.KeyDown:
		return stepped(camera, 0, 1), true
	}
	return camera, false
}

// FocusGained is part of fyne.Focusable.
func (s *stage) FocusGained() {
	s.focused = true
	s.arrange()
}

// FocusLost is part of fyne.Focusable.
func (s *stage) FocusLost() {
	s.focused = false
	s.arrange()
}

// TypedRune is part of fyne.Focusable.
func (s *stage) TypedRune(letter rune) {
	switch letter {
	case 'f', 'F':
		s.pane.Fit()
	case '+', '=':
		s.pane.ZoomIn()
	case '-', '−':
		s.pane.ZoomOut()
	}
}

// TypedKey is part of fyne.Focusable. Arrows turn the bag the way they point;
// escape takes the marked place away.
func (s *stage) TypedKey(ev *fyne.KeyEvent) {
	if turned, isArrow := TurnedByKey(s.pane.camera, ev.Name); isArrow {
		s.pane.setCamera(turned)
	}
	keyrelay.ToWindow(s, ev)
	if ev.Name == fyne.KeyEscape {
		if s.pane.look.Place() == nil {
			keyrelay.HandOn(s, ev)
			return
		}
		s.pane.look.Show(nil)
	}
}
