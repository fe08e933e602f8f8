package meeting

import (
	"image/color"
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/foldedpane"
	"gussetwright/render/solid"
)

// stage is where the bags stand: one of them, or all side by side at one scale.
type stage struct {
	widget.BaseWidget

	view    *View
	present *figure           // the bag of the document
	kept    [mostKept]*figure // by their places
	beside  *figure           // the thing for scale, where several bags stand
	seen    []*figure         // from left to right
	several bool              // side by side, each on a card
	brief   bool              // there is little room for captions

	camera    solid.Camera
	reference solid.Reference
	side      int         // of the bag, beside which the thing for scale stands
	frame     solid.Frame // large enough for any of the bags; it has no middle

	turning, focused bool
	tapped           tap // the last one
	ring             *canvas.Rectangle
}

func newStage(view *View) *stage {
	s := &stage{view: view, camera: first, reference: solid.Can33}
	s.present, s.beside = newFigure(none, s.refine), newFigure(none, s.refine)
	for place := range s.kept {
		s.kept[place] = newFigure(place, s.refine)
	}
	s.side = solid.SideFor(s.camera.Azimuth)
	s.beside.own = s.reference.Frame(s.side)
	s.ring = canvas.NewRectangle(color.Transparent)
	s.ring.Hide()
	s.ExtendBaseWidget(s)
	return s
}

// all returns every figure, seen or not.
func (s *stage) all() []*figure {
	return append([]*figure{s.present, s.beside}, s.kept[:]...)
}

// put puts figures onto the stage, from left to right: one alone, or several on cards.
func (s *stage) put(several bool, bags ...*figure) {
	seen := bags
	if several && s.reference != solid.NoReference {
		seen = append([]*figure{s.beside}, bags...)
	}
	s.several, s.seen = several, seen
	for _, f := range s.all() {
		f.showIf(slices.Contains(seen, f))
	}
	s.arrange()
}

// bags returns the bags that are seen.
func (s *stage) bags() []*figure {
	return slices.DeleteFunc(slices.Clone(s.seen), func(f *figure) bool { return f == s.beside })
}

// turn looks at all bags from somewhere else.
func (s *stage) turn(camera solid.Camera) {
	s.camera = camera.Limited()
	if !s.turning {
		s.moveReference()
	}
	s.view.page.showView()
	s.draw()
}

// moveReference brings the thing for scale to where it is seen. While a drag turns the
// bags it stays where it is, and turns too.
func (s *stage) moveReference() {
	s.side = solid.SideFor(s.camera.Azimuth)
	s.beside.own = s.reference.Frame(s.side)
}

// setReference chooses the thing for scale.
func (s *stage) setReference(r solid.Reference) {
	s.reference = r
	s.moveReference()
}

// Dragged is part of fyne.Draggable: it turns all bags.
func (s *stage) Dragged(ev *fyne.DragEvent) {
	s.turning = true
	s.turn(foldedpane.Turned(s.camera, ev.Dragged))
}

// DragEnd is part of fyne.Draggable.
func (s *stage) DragEnd() {
	s.turning = false
	s.turn(s.camera)
}

// tap is a tap on the stage.
type tap struct {
	when time.Time
	at   fyne.Position
}

// isSecond tells whether it makes a double tap with the one before. The toolkit could tell
// too, but then every first tap would wait for a second.
func (t tap) isSecond(before tap) bool {
	const apart = 6 // pixels
	away := t.at.Subtract(before.at)
	near := max(away.X, -away.X) <= apart && max(away.Y, -away.Y) <= apart
	return near && t.when.Sub(before.when) <= fyne.CurrentApp().Driver().DoubleTapDelay()
}

// Tapped is part of fyne.Tappable: it chooses the bag under the pointer. A double tap turns
// all bags back.
func (s *stage) Tapped(ev *fyne.PointEvent) {
	now := tap{time.Now(), ev.Position}
	if now.isSecond(s.tapped) {
		s.tapped = tap{}
		s.turn(first)
		return
	}
	s.tapped = now
	if f := s.at(ev.Position); f != nil && f != s.beside {
		s.view.choose(f.place)
	}
}

// at returns the figure on whose card a position lies, or nil.
func (s *stage) at(pos fyne.Position) *figure {
	for _, f := range s.seen {
		low, size := f.border.Position(), f.border.Size()
		if pos.X >= low.X && pos.Y >= low.Y && pos.X < low.X+size.Width && pos.Y < low.Y+size.Height {
			return f
		}
	}
	return nil
}

// FocusGained is part of fyne.Focusable.
func (s *stage) FocusGained() { s.light(true) }

// FocusLost is part of fyne.Focusable.
func (s *stage) FocusLost() { s.light(false) }

func (s *stage) light(on bool) {
	s.focused = on
	s.ring.Hidden = !on
	s.ring.Refresh()
}

// TypedRune is part of fyne.Focusable.
func (s *stage) TypedRune(letter rune) { s.view.TypedRune(letter) }

// TypedKey is part of fyne.Focusable. Arrows turn the bags the way they point.
func (s *stage) TypedKey(key *fyne.KeyEvent) {
	if turned, isArrow := foldedpane.TurnedByKey(s.camera, key.Name); isArrow {
		s.turn(turned)
		return
	}
	s.view.TypedKey(key)
}

// letGo frees what figures keep for their next pictures. A picture that is being drawn is
// not waited for here.
func (s *stage) letGo() {
	for _, f := range s.all() {
		go f.painter.LetGo()
	}
}

func (s *stage) close() {
	for _, f := range s.all() {
		f.close()
	}
}

// CreateRenderer is part of fyne.Widget.
func (s *stage) CreateRenderer() fyne.WidgetRenderer {
	r := &stageRenderer{stage: s}
	for _, f := range s.all() {
		r.objects = append(r.objects, f.objects()...)
	}
	r.objects = append(r.objects, s.ring)
	r.colour()
	return r
}

type stageRenderer struct {
	stage   *stage
	objects []fyne.CanvasObject
}

func (r *stageRenderer) colour() {
	ring := r.stage.ring
	ring.StrokeColor = r.stage.Theme().Color(theme.ColorNamePrimary, fyne.CurrentApp().Settings().ThemeVariant())
	ring.StrokeWidth = 2
}

func (r *stageRenderer) Layout(size fyne.Size) {
	r.stage.ring.Resize(size)
	r.stage.arrange()
}

func (r *stageRenderer) MinSize() fyne.Size           { return fyne.NewSize(1, 1) }
func (r *stageRenderer) Objects() []fyne.CanvasObject { return r.objects }
func (r *stageRenderer) Destroy()                     {}

// Refresh takes over a change of theme.
func (r *stageRenderer) Refresh() {
	r.colour()
	for _, f := range r.stage.all() {
		for _, text := range f.texts() {
			text.Refresh()
		}
	}
	r.stage.arrange()
}
