package blankpane

import (
	"fmt"
	"math"

	"fyne.io/fyne/v2/lang"

	"gussetwright/geometry"
)

// measurement is measuring under way: the pointer, and the points that were set. A
// third point begins anew.
type measurement struct {
	pointer mark
	aimed   bool // the pointer was somewhere
	points  []mark
}

func (m *measurement) aim(at mark) { m.pointer, m.aimed = at, true }

func (m *measurement) set(at mark) {
	if len(m.points) == 2 {
		m.points = m.points[:0]
	}
	m.points = append(m.points, at)
	m.aim(at)
}

// ends returns the two ends of what is measured: both points, or the first and the
// pointer. ok is false before there is a first.
func (m *measurement) ends() (from, to mark, ok bool) {
	switch len(m.points) {
	case 0:
		return from, to, false
	case 1:
		return m.points[0], m.pointer, true
	}
	return m.points[0], m.points[1], true
}

// distances writes a distance and its share along each side of the blank.
func distances(from, to geometry.Vec2, unit geometry.Unit) string {
	way := to.Sub(from)
	return fmt.Sprintf(lang.L("%s · Δx %s · Δy %s"),
		length(way.Length(), unit), length(math.Abs(way.X), unit), length(math.Abs(way.Y), unit))
}

// Measure begins or ends measuring.
func (p *Pane) Measure(on bool) {
	if on == (p.surface.measure != nil) {
		return
	}
	p.surface.measure = nil
	if on {
		p.surface.measure = &measurement{}
	}
	p.surface.hover()
	p.surface.arrange()
	p.bar.show()
}

// Measuring tells whether the pane is measuring.
func (p *Pane) Measuring() bool { return p.surface.measure != nil }

// snapReach is how near a pointer must come to a mark to snap to it, in pixels.
const snapReach = 9

func (s *surface) snap(at geometry.Vec2) mark {
	return s.pane.desk.snap(s.allMarks(), at, snapReach/s.pane.view.scale)
}

func (s *surface) allMarks() []mark {
	if s.marks == nil {
		s.marks = s.pane.desk.marks()
	}
	return s.marks
}

// step moves the measuring pointer to the next mark in a direction. It begins in the
// middle of what is seen.
func (s *surface) step(way geometry.Vec2) {
	from := s.pane.view.desk(s.pane.middle())
	if s.measure.aimed {
		from = s.pane.desk.of(s.measure.pointer)
	}
	if m, found := s.pane.desk.next(s.allMarks(), from, way); found {
		s.measure.aim(m)
		s.pane.bring(s.pane.desk.of(m))
		s.arrange()
	}
}
