package lesson

import (
	"image/color"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// timeline is the slider over the whole lesson: a stretch with a number for each stage,
// ticks between them. Stretches that are drawn and not reckoned are broken lines, and
// those that cannot be folded are crossed out.
type timeline struct {
	widget.BaseWidget

	view     *View
	at       place
	stretch  []*stretch
	ticks    []*canvas.Line
	thumb    *canvas.Circle
	ring     *canvas.Circle
	dragging bool
	hovered  bool
	focused  bool
}

// stretch is the part of the slider that belongs to a stage.
type stretch struct {
	number    *canvas.Text
	track     *canvas.Line
	done      *canvas.Line
	gaps      []*canvas.Line // that break the track of what is drawn only
	cross     [2]*canvas.Line
	schematic bool
	stuck     bool
}

// breaks is the number of gaps in a broken track.
const breaks = 4

func newTimeline(view *View) *timeline {
	t := &timeline{view: view, thumb: canvas.NewCircle(color.Transparent), ring: canvas.NewCircle(color.Transparent)}
	t.ExtendBaseWidget(t)
	return t
}

// take shows another lesson.
func (t *timeline) take(c *course) {
	t.stretch, t.ticks = nil, nil
	line := func() *canvas.Line { return canvas.NewLine(color.Transparent) }
	for i := range c.Stages {
		s := &stretch{
			number: canvas.NewText(strconv.Itoa(i+1), color.Transparent), track: line(), done: line(),
			schematic: c.Stages[i].Schematic, stuck: c.stuck(i), cross: [2]*canvas.Line{line(), line()},
		}
		s.number.Alignment = fyne.TextAlignCenter
		for range breaks {
			s.gaps = append(s.gaps, line())
		}
		t.stretch = append(t.stretch, s)
	}
	for range len(c.Stages) + 1 {
		t.ticks = append(t.ticks, line())
	}
	t.Refresh()
}

// set moves the thumb without telling anyone.
func (t *timeline) set(at place) {
	if at == t.at {
		return
	}
	anew := at.stage != t.at.stage
	t.at = at
	if anew {
		t.Refresh()
		return
	}
	t.place()
}

// Dragged is part of fyne.Draggable.
func (t *timeline) Dragged(ev *fyne.DragEvent) {
	t.dragging = true
	t.view.scrub(t.placeOf(ev.Position.X))
}

// DragEnd is part of fyne.Draggable.
func (t *timeline) DragEnd() {
	t.dragging = false
	t.view.draw()
	t.Refresh()
}

// Tapped is part of fyne.Tappable: a number shows its stage, the track goes to a place.
func (t *timeline) Tapped(ev *fyne.PointEvent) {
	at := t.placeOf(ev.Position.X)
	if ev.Position.Y > t.trackHeight() {
		t.view.show(at.stage)
		return
	}
	t.view.scrub(at)
}

// placeOf returns the place at a distance from the left.
func (t *timeline) placeOf(x float32) place {
	share := min(max((x-t.margin())/max(t.room(), 1), 0), 1)
	return placeAt(float64(share)*float64(len(t.stretch)), len(t.stretch))
}

// MouseIn is part of desktop.Hoverable.
func (t *timeline) MouseIn(*desktop.MouseEvent) { t.hover(true) }

// MouseMoved is part of desktop.Hoverable.
func (t *timeline) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is part of desktop.Hoverable.
func (t *timeline) MouseOut() { t.hover(false) }

func (t *timeline) hover(on bool) {
	t.hovered = on
	t.Refresh()
}

// Cursor is part of desktop.Cursorable.
func (t *timeline) Cursor() desktop.Cursor { return desktop.PointerCursor }

// MouseDown takes the focus, so that the keys go on from here.
func (t *timeline) MouseDown(*desktop.MouseEvent) { t.view.focus(t) }

// MouseUp is part of desktop.Mouseable.
func (t *timeline) MouseUp(*desktop.MouseEvent) {}

// FocusGained is part of fyne.Focusable.
func (t *timeline) FocusGained() {
	t.focused = true
	t.Refresh()
}

// FocusLost is part of fyne.Focusable.
func (t *timeline) FocusLost() {
	t.focused = false
	t.Refresh()
}

// TypedRune is part of fyne.Focusable.
func (t *timeline) TypedRune(letter rune) { t.view.TypedRune(letter) }

// TypedKey is part of fyne.Focusable.
func (t *timeline) TypedKey(key *fyne.KeyEvent) { t.view.TypedKey(key) }

func (t *timeline) radius() float32      { return t.Theme().Size(theme.SizeNameInlineIcon) * 0.5 }
func (t *timeline) margin() float32      { return 1.4 * t.radius() }
func (t *timeline) room() float32        { return t.Size().Width - 2*t.margin() }
func (t *timeline) trackHeight() float32 { return 2.8 * t.radius() }
func (t *timeline) letters() float32     { return t.Theme().Size(theme.SizeNameText) }

// MinSize is part of fyne.CanvasObject.
func (t *timeline) MinSize() fyne.Size {
	letters := fyne.MeasureText("00", t.letters(), fyne.TextStyle{Bold: true})
	return fyne.NewSize(8*t.radius(), t.trackHeight()+letters.Height)
}

// place puts everything where it belongs.
func (t *timeline) place() {
	if t.room() <= 0 || len(t.stretch) == 0 {
		return
	}
	each, y := t.room()/float32(len(t.stretch)), t.trackHeight()/2
	done := t.margin() + float32(t.at.whole())*each
	for i, s := range t.stretch {
		s.place(t.margin()+float32(i)*each, each, y, done, t.radius())
		s.number.Move(fyne.NewPos(t.margin()+float32(i)*each, t.trackHeight()))
		s.number.Resize(fyne.NewSize(each, s.number.MinSize().Height))
	}
	tall := 0.75 * t.radius()
	for i, tick := range t.ticks {
		x := t.margin() + float32(i)*each
		between(tick, x, y-tall, x, y+tall)
	}
	round(t.ring, done, y, 1.4*t.radius())
	round(t.thumb, done, y, t.radius())
}

// round puts a circle around a point.
func round(circle *canvas.Circle, x, y, radius float32) {
	circle.Resize(fyne.NewSquareSize(2 * radius))
	circle.Move(fyne.NewPos(x-radius, y-radius))
}

// place puts the lines of a stretch that begins at x and is so wide. done is how far the
// lesson has come.
func (s *stretch) place(x, wide, y, done, radius float32) {
	between(s.track, x, y, x+wide, y)
	between(s.done, x, y, min(max(done, x), x+wide), y)
	s.done.Hidden = done <= x
	for i, gap := range s.gaps {
		at := x + wide*(float32(i)+0.75)/breaks
		between(gap, at, y, at+wide/breaks/2.5, y)
	}
	tall, middle := 0.45*radius, x+wide/2
	between(s.cross[0], middle-tall, y-tall, middle+tall, y+tall)
	between(s.cross[1], middle-tall, y+tall, middle+tall, y-tall)
}

func between(line *canvas.Line, x1, y1, x2, y2 float32) {
	line.Position1, line.Position2 = fyne.NewPos(x1, y1), fyne.NewPos(x2, y2)
}

// CreateRenderer is part of fyne.Widget.
func (t *timeline) CreateRenderer() fyne.WidgetRenderer {
	r := &timelineRenderer{t}
	r.colour()
	return r
}

type timelineRenderer struct{ t *timeline }

// colour takes colours and sizes from the theme.
func (r *timelineRenderer) colour() {
	t, variant := r.t, fyne.CurrentApp().Settings().ThemeVariant()
	of := func(name fyne.ThemeColorName) color.Color { return t.Theme().Color(name, variant) }
	thick, thin := t.radius()*0.55, max(t.radius()/8, 1)
	for i, s := range t.stretch {
		s.track.StrokeColor, s.track.StrokeWidth = of(theme.ColorNameInputBorder), thick
		s.done.StrokeColor, s.done.StrokeWidth = of(theme.ColorNamePrimary), thick
		s.number.TextSize, s.number.Color = t.letters(), of(theme.ColorNameForeground)
		s.number.TextStyle.Bold = i == t.at.stage
		if i == t.at.stage {
			s.number.Color = of(theme.ColorNamePrimary)
		}
		for _, gap := range s.gaps {
			gap.StrokeColor, gap.StrokeWidth = of(theme.ColorNameBackground), thick+1
			gap.Hidden = !s.schematic || s.stuck
		}
		for _, line := range s.cross {
			line.StrokeColor, line.StrokeWidth = of(theme.ColorNameError), 2*thin
			line.Hidden = !s.stuck
		}
	}
	for _, tick := range t.ticks {
		tick.StrokeColor, tick.StrokeWidth = of(theme.ColorNameForeground), thin
	}
	t.thumb.FillColor, t.thumb.StrokeColor, t.thumb.StrokeWidth = of(theme.ColorNameBackground), of(theme.ColorNamePrimary), t.radius()/3
	if t.hovered || t.dragging {
		t.thumb.FillColor = t.thumb.StrokeColor
	}
	t.ring.FillColor = of(theme.ColorNameFocus)
	t.ring.Hidden = !t.focused
}

// Layout is part of fyne.WidgetRenderer.
func (r *timelineRenderer) Layout(fyne.Size) { r.t.place() }

// MinSize is part of fyne.WidgetRenderer.
func (r *timelineRenderer) MinSize() fyne.Size { return r.t.MinSize() }

// Destroy is part of fyne.WidgetRenderer.
func (r *timelineRenderer) Destroy() {}

// Objects is part of fyne.WidgetRenderer.
func (r *timelineRenderer) Objects() []fyne.CanvasObject {
	var objects []fyne.CanvasObject
	for _, s := range r.t.stretch {
		objects = append(objects, s.track, s.done)
		for _, gap := range s.gaps {
			objects = append(objects, gap)
		}
		objects = append(objects, s.cross[0], s.cross[1], s.number)
	}
	for _, tick := range r.t.ticks {
		objects = append(objects, tick)
	}
	return append(objects, r.t.ring, r.t.thumb)
}

// Refresh is part of fyne.WidgetRenderer.
func (r *timelineRenderer) Refresh() {
	r.colour()
	r.t.place()
	canvas.Refresh(r.t)
}
