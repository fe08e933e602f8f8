package blankpane

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/paneview"
	"gussetwright/geometry"
)

// surface is the part of the pane in which the blank is seen and handled.
type surface struct {
	widget.BaseWidget

	pane    *Pane
	picture *canvas.Image
	overlay *overlay
	clip    *container.Clip // of the overlay, which may reach beyond the surface

	pointer geometry.Vec2 // in pixels
	over    bool          // the pointer is over the surface
	focused bool
	keys    map[fyne.KeyName]bool // that are held down
	pressed *press                // while a button is down
	drag    drag                  // while something is dragged
	grip    gripRef               // under the pointer
	artGrip artGrip               // of the artwork that is being placed, under the pointer
	nudging bool                  // artwork is being moved by a key that is held down
	measure *measurement          // while measuring
	marks   []mark                // to snap to; nil until they are asked for
}

// press is a button that was pressed and not let go.
type press struct {
	at     geometry.Vec2
	button desktop.MouseButton
	fine   bool // with a modifier for finer steps
	middle bool // with the one that scales about the middle
}

// gripRef names a grip of the pane: its piece and its number there.
type gripRef struct {
	piece, number int
	set           bool
}

func newSurface(p *Pane) *surface {
	s := &surface{pane: p, keys: map[fyne.KeyName]bool{}}
	s.picture = paneview.NewPicture()
	s.overlay = newOverlay()
	s.clip = container.NewClip(s.overlay.Container)
	s.ExtendBaseWidget(s)
	return s
}

// arrange moves what lies over the picture to where it belongs.
func (s *surface) arrange() { s.overlay.arrange(s) }

func pixelAt(pos fyne.Position) geometry.Vec2 {
	return geometry.Vec2{X: float64(pos.X), Y: float64(pos.Y)}
}

// MouseIn is part of desktop.Hoverable.
func (s *surface) MouseIn(ev *desktop.MouseEvent) { s.MouseMoved(ev) }

// MouseMoved is part of desktop.Hoverable.
func (s *surface) MouseMoved(ev *desktop.MouseEvent) {
	s.pointer, s.over = pixelAt(ev.Position), true
	s.hover()
}

// MouseOut is part of desktop.Hoverable.
func (s *surface) MouseOut() {
	s.over, s.grip, s.artGrip = false, gripRef{}, artGrip{}
	s.pane.look.Hover("")
	s.arrange()
}

// hover looks at what lies under the pointer.
func (s *surface) hover() {
	if s.drag != nil || !s.over {
		return
	}
	at := s.pane.view.desk(s.pointer)
	if s.measure != nil {
		s.measure.aim(s.snap(at))
	}
	s.aim(s.pointer)
	s.pane.look.Hover(s.pane.desk.panel(at))
	s.arrange()
}

// gripReach is how near a pointer must come to a grip, in pixels.
const gripReach = 5

// gripAt returns the grip at a pixel. While measuring, or while the bag cannot be
// drawn and an older one is seen, nothing can be dragged.
func (s *surface) gripAt(pixel geometry.Vec2) gripRef {
	if s.measure != nil || s.pane.state.Err != nil || s.keys[fyne.KeySpace] {
		return gripRef{}
	}
	piece, at := s.pane.desk.nearest(s.pane.view.desk(pixel))
	all := s.pane.grips[piece]
	found := find(all, at, gripReach/s.pane.view.scale)
	for i := range all {
		if &all[i] == found {
			return gripRef{piece, i, true}
		}
	}
	return gripRef{}
}

// gripped returns the grip that is meant, as it lies now, or nil.
func (s *surface) gripped(ref gripRef) *grip {
	if !ref.set || ref.piece >= len(s.pane.grips) || ref.number >= len(s.pane.grips[ref.piece]) {
		return nil
	}
	return &s.pane.grips[ref.piece][ref.number]
}

// Cursor is part of desktop.Cursorable: the pointer tells what can be dragged.
func (s *surface) Cursor() desktop.Cursor {
	if s.measure != nil {
		return desktop.CrosshairCursor
	}
	g := s.gripped(s.grip)
	if g == nil {
		if s.artGrip.handle == noHandle {
			return desktop.DefaultCursor
		}
		return desktop.PointerCursor
	}
	switch g.direction() {
	case sideways:
		return desktop.HResizeCursor
	case upright:
		return desktop.VResizeCursor
	}
	return desktop.PointerCursor
}

// MouseDown is part of desktop.Mouseable.
func (s *surface) MouseDown(ev *desktop.MouseEvent) {
	if on := fyne.CurrentApp().Driver().CanvasForObject(s); on != nil {
		on.Focus(s)
	}
	fine := ev.Modifier&(fyne.KeyModifierShift|fyne.KeyModifierAlt) != 0
	s.pressed = &press{pixelAt(ev.Position), ev.Button, fine, ev.Modifier&fyne.KeyModifierControl != 0}
	s.pointer, s.over = s.pressed.at, true
}

// MouseUp is part of desktop.Mouseable. A click while measuring sets a point.
func (s *surface) MouseUp(ev *desktop.MouseEvent) {
	clicked := s.pressed != nil && s.drag == nil && ev.Button == desktop.MouseButtonPrimary
	s.pressed = nil
	switch {
	case clicked && s.measure != nil:
		s.measure.set(s.snap(s.pane.view.desk(pixelAt(ev.Position))))
		s.arrange()
	case clicked:
		s.chooseArt(pixelAt(ev.Position))
	}
}

// Tapped is part of fyne.Tappable; without it there is no DoubleTapped.
func (s *surface) Tapped(*fyne.PointEvent) {}

// DoubleTapped is part of fyne.DoubleTappable.
func (s *surface) DoubleTapped(*fyne.PointEvent) {
	if s.measure == nil {
		s.pane.Fit()
	}
}

// wheelStep is what fyne reports for one step of a wheel.
const wheelStep = 25

// Scrolled is part of fyne.Scrollable: the wheel zooms at the pointer, and what goes
// sideways pans.
func (s *surface) Scrolled(ev *fyne.ScrollEvent) {
	if ev.Scrolled.DX != 0 {
		s.pane.pan(geometry.Vec2{X: float64(ev.Scrolled.DX)})
	}
	if ev.Scrolled.DY != 0 {
		steps := min(max(float64(ev.Scrolled.DY)/wheelStep, -4), 4)
		s.pane.zoomTo(pixelAt(ev.Position), s.pane.view.scale*math.Pow(zoomStep, steps))
	}
	s.hover()
}

// CreateRenderer is part of fyne.Widget.
func (s *surface) CreateRenderer() fyne.WidgetRenderer { return &surfaceRenderer{s} }

type surfaceRenderer struct{ surface *surface }

// Layout is part of fyne.WidgetRenderer.
func (r *surfaceRenderer) Layout(size fyne.Size) {
	s := r.surface
	s.picture.Resize(size)
	s.clip.Resize(size)
	s.overlay.Resize(size)
	if s.pane.fitted {
		s.pane.fit()
	} else {
		s.pane.view = s.pane.view.in(float64(size.Width), float64(size.Height))
		s.pane.arrange()
	}
	s.pane.drawInSize()
}

// MinSize is part of fyne.WidgetRenderer.
func (r *surfaceRenderer) MinSize() fyne.Size { return fyne.NewSize(1, 1) }

// Objects is part of fyne.WidgetRenderer.
func (r *surfaceRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.surface.picture, r.surface.clip}
}

// Refresh is part of fyne.WidgetRenderer. fyne asks for it when the theme changes.
func (r *surfaceRenderer) Refresh() {
	r.surface.overlay.restyle()
	r.surface.pane.restyle()
}

// Destroy is part of fyne.WidgetRenderer.
func (r *surfaceRenderer) Destroy() {}
