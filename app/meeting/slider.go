package meeting

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// slider is a slider for a hand that points at a wall: thick, with a large thumb.
type slider struct {
	widget.BaseWidget

	view             *View
	axis             axis
	low, high, value float64

	pressed                    float32 // where the pointer went down, or away
	dragging, hovered, focused bool
	fine                       bool // the shift key is down
	stepping                   bool // an arrow key is held down
	track, filled              *canvas.Rectangle
	thumb, ring                *canvas.Circle
}

func newSlider(view *View, a axis) *slider {
	s := &slider{
		view: view, axis: a, high: 1, pressed: away,
		track: canvas.NewRectangle(color.Transparent), filled: canvas.NewRectangle(color.Transparent),
		thumb: canvas.NewCircle(color.Transparent), ring: canvas.NewCircle(color.Transparent),
	}
	s.ExtendBaseWidget(s)
	return s
}

// set moves the thumb without telling anyone.
func (s *slider) set(low, high, value float64) {
	if low == s.low && high == s.high && value == s.value {
		return
	}
	s.low, s.high, s.value = low, high, value
	s.place()
}

// share is where the thumb stands, from 0 to 1.
func (s *slider) share() float32 {
	if s.high <= s.low {
		return 0
	}
	return float32(min(max((s.value-s.low)/(s.high-s.low), 0), 1))
}

// away stands for no place of the pointer.
const away = -1

// Dragged moves the thumb to the pointer. A click beside the thumb in which the hand
// trembled is no drag.
func (s *slider) Dragged(e *fyne.DragEvent) {
	x := e.Position.X
	if !s.dragging && s.pressed != away && !s.onThumb(s.pressed) && max(x-s.pressed, s.pressed-x) < s.radius() {
		return
	}
	s.dragging = true
	s.to(x)
}

// DragEnd lets the thumb go.
func (s *slider) DragEnd() {
	if !s.dragging && s.pressed != away {
		s.stepTo(s.pressed)
	}
	s.dragging, s.pressed = false, away
	s.view.settle()
	s.Refresh()
}

// Tapped moves the thumb a step towards the pointer: one click must not make another bag.
func (s *slider) Tapped(e *fyne.PointEvent) {
	s.pressed = away
	s.stepTo(e.Position.X)
	s.view.settle()
}

// stepTo takes a step towards a place beside the thumb.
func (s *slider) stepTo(x float32) {
	if !s.onThumb(x) {
		s.view.drag(s.axis, next(s.value, stepOf(s.view.set.Unit(), s.fine), x > s.thumbAt()))
	}
}

// thumbAt returns where the middle of the thumb is.
func (s *slider) thumbAt() float32 {
	return s.radius() + s.share()*max(s.Size().Width-2*s.radius(), 0)
}

func (s *slider) onThumb(x float32) bool {
	return x >= s.thumbAt()-s.radius() && x <= s.thumbAt()+s.radius()
}

func (s *slider) to(x float32) {
	radius := s.radius()
	room := s.Size().Width - 2*radius
	if room <= 0 {
		return
	}
	share := float64(min(max((x-radius)/room, 0), 1))
	s.view.drag(s.axis, nearest(s.low+share*(s.high-s.low), stepOf(s.view.set.Unit(), false)))
}

// MouseDown takes the focus, so that the arrow keys go on from here.
func (s *slider) MouseDown(e *desktop.MouseEvent) {
	s.pressed = e.Position.X
	if on := fyne.CurrentApp().Driver().CanvasForObject(s); on != nil {
		on.Focus(s)
	}
}

// MouseUp is part of desktop.Mouseable.
func (s *slider) MouseUp(*desktop.MouseEvent) {}

// MouseIn lights the thumb up.
func (s *slider) MouseIn(*desktop.MouseEvent) { s.hover(true) }

// MouseMoved is part of desktop.Hoverable.
func (s *slider) MouseMoved(*desktop.MouseEvent) {}

// MouseOut takes the light away.
func (s *slider) MouseOut() { s.hover(false) }

func (s *slider) hover(on bool) {
	s.hovered = on
	s.Refresh()
}

// Cursor tells that the thumb moves sideways.
func (s *slider) Cursor() desktop.Cursor { return desktop.HResizeCursor }

// FocusGained is part of fyne.Focusable.
func (s *slider) FocusGained() {
	s.focused = true
	s.view.stepped = s.axis
	s.Refresh()
}

// FocusLost is part of fyne.Focusable.
func (s *slider) FocusLost() {
	s.focused, s.fine = false, false
	s.release()
	s.Refresh()
}

// TypedRune is part of fyne.Focusable.
func (s *slider) TypedRune(letter rune) { s.view.TypedRune(letter) }

// TypedKey is part of fyne.Focusable.
func (s *slider) TypedKey(key *fyne.KeyEvent) { s.view.TypedKey(key) }

// step goes a step up or down. Steps of a key that is held down are one to undo.
func (s *slider) step(up bool) {
	s.stepping = true
	s.view.drag(s.axis, next(s.value, stepOf(s.view.set.Unit(), s.fine), up))
}

// release ends a row of steps.
func (s *slider) release() {
	if s.stepping {
		s.stepping = false
		s.view.settle()
	}
}

// KeyDown notes the shift key.
func (s *slider) KeyDown(key *fyne.KeyEvent) {
	if isShift(key.Name) {
		s.fine = true
	}
}

// KeyUp ends a row of steps.
func (s *slider) KeyUp(key *fyne.KeyEvent) {
	if isShift(key.Name) {
		s.fine = false
		return
	}
	s.release()
}

func isShift(name fyne.KeyName) bool {
	return name == desktop.KeyShiftLeft || name == desktop.KeyShiftRight
}

func (s *slider) radius() float32 { return s.Theme().Size(theme.SizeNameInlineIcon) * 0.62 }

// ringWidth is how far the ring of the focus stands out round the thumb.
func (s *slider) ringWidth() float32 { return s.radius() / 3 }

// MinSize returns the size of a slider of some use.
func (s *slider) MinSize() fyne.Size {
	around := s.radius() + s.ringWidth()
	return fyne.NewSize(6*around, 2*around)
}

func (s *slider) place() {
	size, radius := s.Size(), s.radius()
	if size.Width <= 2*radius {
		return
	}
	thick := radius / 2
	top, x := (size.Height-thick)/2, s.thumbAt()
	put(s.track, fyne.NewPos(0, top), fyne.NewSize(size.Width, thick))
	put(s.filled, fyne.NewPos(0, top), fyne.NewSize(x, thick))
	round := func(c *canvas.Circle, radius float32) {
		put(c, fyne.NewPos(x-radius, size.Height/2-radius), fyne.NewSquareSize(2*radius))
	}
	round(s.thumb, radius)
	round(s.ring, radius+s.ringWidth())
}

// CreateRenderer is part of fyne.Widget.
func (s *slider) CreateRenderer() fyne.WidgetRenderer {
	r := &sliderRenderer{s}
	r.colour()
	return r
}

type sliderRenderer struct{ s *slider }

func (r *sliderRenderer) colour() {
	s, variant := r.s, fyne.CurrentApp().Settings().ThemeVariant()
	of := func(name fyne.ThemeColorName) color.Color { return s.Theme().Color(name, variant) }
	round := s.radius() / 4
	s.track.FillColor, s.track.CornerRadius = of(theme.ColorNameButton), round
	s.track.StrokeColor, s.track.StrokeWidth = of(theme.ColorNameInputBorder), 1
	s.filled.FillColor, s.filled.CornerRadius = of(theme.ColorNamePrimary), round
	s.thumb.FillColor, s.thumb.StrokeColor, s.thumb.StrokeWidth = of(theme.ColorNameBackground), of(theme.ColorNamePrimary), s.radius()/4
	if s.hovered || s.dragging {
		s.thumb.FillColor = s.thumb.StrokeColor
	}
	s.ring.FillColor = of(theme.ColorNameFocus)
	s.ring.Hidden = !s.focused
}

func (r *sliderRenderer) Layout(fyne.Size)   { r.s.place() }
func (r *sliderRenderer) MinSize() fyne.Size { return r.s.MinSize() }
func (r *sliderRenderer) Destroy()           {}
func (r *sliderRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.s.track, r.s.filled, r.s.ring, r.s.thumb}
}

func (r *sliderRenderer) Refresh() {
	r.colour()
	r.s.place()
	canvas.Refresh(r.s)
}
