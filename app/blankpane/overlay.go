package blankpane

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"

	"gussetwright/app/paneview"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// overlay is what lies over the picture and follows the pointer without a new one:
// the grip under it, measuring, the marked place, the scale bar.
type overlay struct {
	*fyne.Container

	gripLine   *canvas.Line
	gripRing   *canvas.Circle
	gripTag    *paneview.Caption
	from, to   *canvas.Circle
	span       *canvas.Line
	spanTag    *paneview.Caption
	marker     *canvas.Circle
	markerPin  *canvas.Circle
	art        *artOverlay
	scale      *scaleBar
	complaint  *paneview.Caption
	focusFrame *canvas.Rectangle
}

// Sizes of the overlay in pixels.
const (
	gripWidth    = 3
	gripMargin   = 4 // of the ring round a hole
	markRadius   = 5
	markerRadius = 14
	pinRadius    = 3
	beside       = 16 // of a tag from the pointer

	complaintInset = 8
)

func newOverlay() *overlay {
	o := &overlay{
		gripLine: &canvas.Line{StrokeWidth: gripWidth}, gripRing: &canvas.Circle{StrokeWidth: gripWidth},
		from: &canvas.Circle{StrokeWidth: 2}, to: &canvas.Circle{StrokeWidth: 2}, span: &canvas.Line{StrokeWidth: 2},
		marker: &canvas.Circle{StrokeWidth: 3}, markerPin: &canvas.Circle{},
		focusFrame: &canvas.Rectangle{StrokeWidth: 2},
		gripTag:    paneview.NewCaption(), spanTag: paneview.NewCaption(), complaint: paneview.NewCaption(), scale: newScaleBar(),
		art: newArtOverlay(),
	}
	o.Container = container.NewWithoutLayout(
		o.art.Container, o.scale.Container, o.marker, o.markerPin, o.gripLine, o.gripRing, o.span, o.from, o.to,
		o.complaint.Container, o.gripTag.Container, o.spanTag.Container, o.focusFrame)
	o.restyle()
	return o
}

// restyle takes the colours of the theme.
func (o *overlay) restyle() {
	accent, paper := theme.Color(theme.ColorNamePrimary), theme.Color(theme.ColorNameBackground)
	o.gripLine.StrokeColor, o.gripRing.StrokeColor, o.span.StrokeColor = accent, accent, accent
	o.marker.StrokeColor, o.markerPin.FillColor = theme.Color(theme.ColorNameError), theme.Color(theme.ColorNameError)
	for _, ring := range []*canvas.Circle{o.from, o.to} {
		ring.StrokeColor, ring.FillColor = accent, paper
	}
	o.focusFrame.StrokeColor = theme.Color(theme.ColorNameFocus)
	for _, t := range []*paneview.Caption{o.gripTag, o.spanTag, o.complaint} {
		t.Restyle()
	}
	o.art.restyle()
	o.scale.restyle()
}

// arrange puts everything where it belongs now, or hides it.
func (o *overlay) arrange(s *surface) {
	o.art.arrange(s)
	o.arrangeGrip(s)
	o.arrangeMeasure(s)
	o.arrangeMarker(s)
	o.scale.arrange(s)
	o.arrangeComplaint(s)
	o.focusFrame.Resize(s.Size())
	show(o.focusFrame, s.focused)
}

func (o *overlay) arrangeGrip(s *surface) {
	g := s.gripped(s.grip)
	isHole := g != nil && g.edge.From == g.edge.To
	show(o.gripLine, g != nil && !isHole)
	show(o.gripRing, isHole)
	if g == nil {
		o.gripTag.Hide()
		return
	}
	from := s.pane.view.screen(s.pane.desk.at(s.grip.piece, g.edge.From))
	to := s.pane.view.screen(s.pane.desk.at(s.grip.piece, g.edge.To))
	if isHole {
		ring(o.gripRing, from, g.reach*s.pane.view.scale+gripMargin)
	} else {
		line(o.gripLine, from, to)
	}
	start, now := &s.pane.state.Spec, &s.pane.state.Spec
	if pulled, is := s.drag.(*pulling); is {
		start, now = &pulled.start, &pulled.now
	}
	o.gripTag.Say(gripText(g.changes(start, now), now, s.pane.set.Unit()), atPoint(s.pointer, s.Size()))
}

// gripText writes the entries that a grip changes, with their values.
func gripText(fields []*bag.Field, spec *bag.Spec, unit geometry.Unit) string {
	texts := make([]string, len(fields))
	for i, field := range fields {
		texts[i] = entry(field, spec, unit)
	}
	return strings.Join(texts, " · ")
}

func (o *overlay) arrangeMeasure(s *surface) {
	m := s.measure
	if m == nil {
		o.spanTag.Hide()
		for _, object := range []fyne.CanvasObject{o.from, o.to, o.span} {
			show(object, false)
		}
		return
	}
	from, to, both := m.ends()
	show(o.from, both)
	show(o.span, both)
	show(o.to, both || m.aimed)
	if !both {
		to = m.pointer
	}
	start, end := s.pane.view.screen(s.pane.desk.of(from)), s.pane.view.screen(s.pane.desk.of(to))
	ring(o.from, start, markRadius)
	ring(o.to, end, markRadius)
	line(o.span, start, end)
	switch {
	case both:
		o.spanTag.Say(distances(s.pane.desk.of(from), s.pane.desk.of(to), s.pane.set.Unit()), atPoint(end, s.Size()))
	case m.aimed && to.kind != free:
		o.spanTag.Say(kindWord(to.kind), atPoint(end, s.Size()))
	default:
		o.spanTag.Say(lang.L("Click the first point"), atPoint(s.hint(), s.Size()))
	}
}

// hint returns where a word of advice stands: at the pointer, or in the middle.
func (s *surface) hint() geometry.Vec2 {
	if s.over {
		return s.pointer
	}
	return s.pane.middle()
}

func (o *overlay) arrangeMarker(s *surface) {
	place := s.pane.place
	show(o.marker, place != nil)
	show(o.markerPin, place != nil)
	if place != nil {
		at := s.pane.view.screen(s.pane.desk.at(place.Piece, place.At))
		ring(o.marker, at, markerRadius)
		ring(o.markerPin, at, pinRadius)
	}
}

func (o *overlay) arrangeComplaint(s *surface) {
	if s.pane.state.Err == nil {
		o.complaint.Hide()
		return
	}
	text := lang.L("This cannot be drawn. You see the last blank that could.")
	o.complaint.Say(text, func(fyne.Size) fyne.Position { return fyne.NewSquareOffsetPos(complaintInset) })
}

// show makes an object visible or not; asking for what is so already costs nothing.
func show(object fyne.CanvasObject, visible bool) {
	switch {
	case visible == object.Visible():
	case visible:
		object.Show()
	default:
		object.Hide()
	}
}

func position(at geometry.Vec2) fyne.Position { return fyne.NewPos(float32(at.X), float32(at.Y)) }

func ring(c *canvas.Circle, at geometry.Vec2, radius float64) {
	c.Move(position(at.Sub(geometry.Vec2{X: radius, Y: radius})))
	c.Resize(fyne.NewSquareSize(float32(2 * radius)))
}

func line(l *canvas.Line, from, to geometry.Vec2) {
	l.Position1, l.Position2 = position(from), position(to)
	l.Refresh()
}
