package foldedpane

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/paneview"
	"gussetwright/geometry"
	"gussetwright/render/solid"
)

// stage is the part of the pane in which the bag is seen and turned.
type stage struct {
	widget.BaseWidget

	pane      *Pane
	picture   *canvas.Image
	name      *paneview.Caption // of the panel that is lit up
	complaint *paneview.Caption // while the bag cannot be drawn
	frame     *canvas.Rectangle

	focused  bool
	shifting bool // a drag moves the picture instead of turning the bag
	dragging bool
}

func newStage(p *Pane) *stage {
	s := &stage{pane: p, name: paneview.NewCaption(), complaint: paneview.NewCaption()}
	s.picture = paneview.NewPicture()
	s.frame = &canvas.Rectangle{StrokeWidth: 2}
	s.restyle()
	s.ExtendBaseWidget(s)
	return s
}

// captionInset is how far captions stand from the corners, in pixels.
const captionInset = 8

// arrange brings what lies over the picture up to date.
func (s *stage) arrange() {
	size := s.Size()
	s.name.Say(s.pane.artist.panelName(s.pane.look.Panel()), func(own fyne.Size) fyne.Position {
		return fyne.NewPos(captionInset, size.Height-own.Height-captionInset)
	})
	text := ""
	if s.pane.state.Err != nil {
		text = lang.L("This cannot be drawn. You see the last bag that could.")
	}
	s.complaint.Say(text, func(fyne.Size) fyne.Position { return fyne.NewSquareOffsetPos(captionInset) })
	if s.frame.Visible() != s.focused {
		s.frame.Hidden = !s.focused
		s.frame.Refresh()
	}
}

func (s *stage) restyle() {
	s.name.Restyle()
	s.complaint.Restyle()
	s.frame.StrokeColor = theme.Color(theme.ColorNamePrimary)
	s.frame.FillColor = nil
}

// pick returns the panel under a position, or "".
func (s *stage) pick(pos fyne.Position) string {
	size := s.Size()
	if size.Width < 1 || size.Height < 1 {
		return ""
	}
	const finer = 8 // positions are no whole pixels
	v := s.pane.view(int(size.Width*finer), int(size.Height*finer))
	hit, found := v.Pick(float64(pos.X)*finer, float64(pos.Y)*finer)
	if !found {
		return ""
	}
	return hit.Panel
}

// MouseIn is part of desktop.Hoverable.
func (s *stage) MouseIn(ev *desktop.MouseEvent) { s.MouseMoved(ev) }

// MouseMoved is part of desktop.Hoverable: the panel under the pointer lights up.
func (s *stage) MouseMoved(ev *desktop.MouseEvent) {
	if !s.dragging {
		s.pane.look.Hover(s.pick(ev.Position))
	}
}

// MouseOut is part of desktop.Hoverable.
func (s *stage) MouseOut() { s.pane.look.Hover("") }

// MouseDown is part of desktop.Mouseable.
func (s *stage) MouseDown(ev *desktop.MouseEvent) {
	if on := fyne.CurrentApp().Driver().CanvasForObject(s); on != nil {
		on.Focus(s)
	}
	s.shifting = ev.Modifier&fyne.KeyModifierShift != 0
}

// MouseUp is part of desktop.Mouseable.
func (s *stage) MouseUp(*desktop.MouseEvent) { s.shifting = false }

// turnOfPixel is how far a drag by one pixel turns the bag, in radians.
const turnOfPixel = 0.008

// Turned returns a camera after a drag that turns the bag, not yet limited.
func Turned(camera solid.Camera, by fyne.Delta) solid.Camera {
	camera.Azimuth -= float64(by.DX) * turnOfPixel
	camera.Elevation += float64(by.DY) * turnOfPixel
	return camera
}

// Dragged is part of fyne.Draggable: it turns the bag, or with shift moves the picture.
func (s *stage) Dragged(ev *fyne.DragEvent) {
	s.dragging = true
	camera := s.pane.camera
	if s.shifting {
		half := float64(min(s.Size().Width, s.Size().Height)) / 2
		camera.Shift = camera.Shift.Add(geometry.Vec2{X: float64(ev.Dragged.DX), Y: -float64(ev.Dragged.DY)}.Scale(1 / max(half, 1)))
	} else {
		camera = Turned(camera, ev.Dragged)
	}
	s.pane.setCamera(camera)
}

// DragEnd is part of fyne.Draggable.
func (s *stage) DragEnd() {
	s.dragging = false
	s.pane.moveReference()
	s.pane.draw()
}

// Cursor is part of desktop.Cursorable.
func (s *stage) Cursor() desktop.Cursor {
	if s.dragging {
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}

// Tapped is part of fyne.Tappable; without it there is no DoubleTapped.
func (s *stage) Tapped(*fyne.PointEvent) {}

// DoubleTapped is part of fyne.DoubleTappable.
func (s *stage) DoubleTapped(*fyne.PointEvent) { s.pane.Fit() }

// Zooming.
const (
	wheelStep = 25 // what fyne reports for one step of a wheel
	zoomStep  = 1.2
)

// Scrolled is part of fyne.Scrollable: the wheel zooms at the pointer.
func (s *stage) Scrolled(ev *fyne.ScrollEvent) {
	steps := min(max(float64(ev.Scrolled.DY)/wheelStep, -4), 4)
	s.pane.zoomAt(ev.Position, math.Pow(zoomStep, steps))
}

// zoomAt enlarges the picture by a factor; what is seen at the position stays there.
func (p *Pane) zoomAt(pos fyne.Position, factor float64) {
	size := p.stage.Size()
	half := max(float64(min(size.Width, size.Height))/2, 1)
	at := geometry.Vec2{X: float64(pos.X-size.Width/2) / half, Y: float64(size.Height/2-pos.Y) / half}
	camera := p.camera
	camera.Zoom = min(max(camera.Zoom*factor, solid.LeastZoom), solid.GreatestZoom)
	camera.Shift = at.Add(camera.Shift.Sub(at).Scale(camera.Zoom / p.camera.Zoom))
	p.setCamera(camera)
}

// CreateRenderer is part of fyne.Widget.
func (s *stage) CreateRenderer() fyne.WidgetRenderer { return &stageRenderer{s} }

type stageRenderer struct{ stage *stage }

// Layout is part of fyne.WidgetRenderer.
func (r *stageRenderer) Layout(size fyne.Size) {
	r.stage.picture.Resize(size)
	r.stage.frame.Resize(size)
	r.stage.pane.drawInSize()
}

// MinSize is part of fyne.WidgetRenderer.
func (r *stageRenderer) MinSize() fyne.Size { return fyne.NewSize(1, 1) }

// Objects is part of fyne.WidgetRenderer.
func (r *stageRenderer) Objects() []fyne.CanvasObject {
	s := r.stage
	return []fyne.CanvasObject{s.picture, s.name.Container, s.complaint.Container, s.frame}
}

// Refresh is part of fyne.WidgetRenderer. fyne asks for it when the theme changes.
func (r *stageRenderer) Refresh() {
	r.stage.restyle()
	r.stage.pane.redraw()
}

// Destroy is part of fyne.WidgetRenderer.
func (r *stageRenderer) Destroy() {}
