package blankpane

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"gussetwright/app/keyrelay"
	"gussetwright/geometry"
)

// FocusGained is part of fyne.Focusable.
func (s *surface) FocusGained() {
	s.focused = true
	s.arrange()
}

// FocusLost is part of fyne.Focusable.
func (s *surface) FocusLost() {
	s.focused = false
	clear(s.keys)
	s.nudged()
	s.arrange()
}

// KeyDown is part of desktop.Keyable.
func (s *surface) KeyDown(ev *fyne.KeyEvent) {
	s.keys[ev.Name] = true
	if ev.Name == fyne.KeySpace {
		s.hover()
	}
}

// KeyUp is part of desktop.Keyable.
func (s *surface) KeyUp(ev *fyne.KeyEvent) {
	delete(s.keys, ev.Name)
	if ev.Name == fyne.KeySpace {
		s.hover()
	}
	if _, isArrow := arrows[ev.Name]; isArrow {
		s.nudged()
	}
}

// fine tells whether values shall snap to tenths.
func (s *surface) fine() bool {
	for _, key := range []fyne.KeyName{desktop.KeyShiftLeft, desktop.KeyShiftRight, desktop.KeyAltLeft, desktop.KeyAltRight} {
		if s.keys[key] {
			return true
		}
	}
	return s.pressed != nil && s.pressed.fine
}

// aboutMiddle tells whether artwork shall scale about its middle.
func (s *surface) aboutMiddle() bool {
	return s.keys[desktop.KeyControlLeft] || s.keys[desktop.KeyControlRight] || s.pressed != nil && s.pressed.middle
}

// shifted tells whether Shift is held down.
func (s *surface) shifted() bool {
	return s.keys[desktop.KeyShiftLeft] || s.keys[desktop.KeyShiftRight]
}

// TypedRune is part of fyne.Focusable.
func (s *surface) TypedRune(letter rune) {
	switch letter {
	case 'f', 'F':
		s.pane.Fit()
	case 'm', 'M':
		s.pane.Measure(s.measure == nil)
	case '+', '=':
		s.pane.ZoomIn()
	case '-', '−':
		s.pane.ZoomOut()
	case '0':
		s.pane.TrueSize()
	}
}

// arrows are the directions of the arrow keys on the desk.
var arrows = map[fyne.KeyName]geometry.Vec2{
	fyne.KeyLeft: {X: -1}, fyne.KeyRight: {X: 1}, fyne.KeyUp: {Y: 1}, fyne.KeyDown: {Y: -1},
}

// TypedKey is part of fyne.Focusable. Arrows pan, or move the artwork that is being
// placed; while measuring they go from mark to mark, and enter sets a point there. Delete
// takes the artwork out.
func (s *surface) TypedKey(ev *fyne.KeyEvent) {
	if way, isArrow := arrows[ev.Name]; isArrow {
		if s.measure != nil {
			s.step(way)
			return
		}
		if s.nudge(way) {
			return
		}
		// The paper goes against the arrow, as if the eye went along it.
		s.pane.pan(geometry.Vec2{X: -way.X * panStep, Y: way.Y * panStep})
		return
	}
	switch ev.Name {
	case fyne.KeyF11:
		keyrelay.ToWindow(s, ev)
	case fyne.KeyEscape:
		s.escape(ev)
	case fyne.KeyDelete, fyne.KeyBackspace:
		s.removeArt()
	case desktop.KeyMenu:
		s.artMenuAtFrame()
	case fyne.KeyReturn, fyne.KeyEnter:
		if s.measure != nil && s.measure.aimed {
			s.measure.set(s.measure.pointer)
			s.arrange()
		}
	}
}

// escape ends the innermost thing that is under way: a drag, then measuring, then
// the marked place. Without any of these the window has the key.
func (s *surface) escape(ev *fyne.KeyEvent) {
	switch {
	case s.drag != nil:
		s.drag.cancel()
		s.drag = cancelled{}
		s.arrange()
	case s.measure != nil:
		s.pane.Measure(false)
	case s.pane.place != nil:
		s.pane.look.Show(nil)
	default:
		keyrelay.HandOn(s, ev)
	}
}
