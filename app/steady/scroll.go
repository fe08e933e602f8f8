package steady

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// Scroll shows what is higher than its room. The mouse wheel moves it wherever the pointer
// is: an entry of the toolkit would keep the wheel to itself, and every entry on the way
// would catch the hand.
type Scroll struct {
	container.Scroll
}

// NewScroll returns the scroll of an object, up and down.
func NewScroll(content fyne.CanvasObject) *Scroll {
	s := &Scroll{}
	s.Direction, s.Content = container.ScrollVerticalOnly, content
	s.ExtendBaseWidget(s)
	return s
}

// CreateRenderer is part of fyne.Widget.
func (s *Scroll) CreateRenderer() fyne.WidgetRenderer {
	return &scrollRenderer{WidgetRenderer: s.Scroll.CreateRenderer(), wheel: newWheel(s)}
}

type scrollRenderer struct {
	fyne.WidgetRenderer
	wheel *wheel
}

func (r *scrollRenderer) Layout(size fyne.Size) {
	r.WidgetRenderer.Layout(size)
	r.wheel.Resize(size)
}

func (r *scrollRenderer) Objects() []fyne.CanvasObject {
	objects := r.WidgetRenderer.Objects()
	return append(objects[:len(objects):len(objects)], r.wheel)
}

// wheel lies over all that a scroll shows, and takes nothing but the mouse wheel.
type wheel struct {
	widget.BaseWidget
	turns fyne.Scrollable
}

func newWheel(turns fyne.Scrollable) *wheel {
	w := &wheel{turns: turns}
	w.ExtendBaseWidget(w)
	return w
}

// Scrolled is part of fyne.Scrollable.
func (w *wheel) Scrolled(e *fyne.ScrollEvent) { w.turns.Scrolled(e) }

// CreateRenderer is part of fyne.Widget.
func (w *wheel) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewWithoutLayout())
}
