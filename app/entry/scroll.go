package entry

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/steady"
)

// Scroll shows an object that is as high as its width asks for, with a padding
// around it and a scroll bar where it is higher than its room.
type Scroll struct {
	widget.BaseWidget

	column *Column
	scroll *steady.Scroll
}

// NewScroll returns the scroll of an object.
func NewScroll(tall Tall) *Scroll {
	s := &Scroll{column: NewColumn(0, tall)}
	s.column.SetInset(1)
	s.column.OnGrow(s.arrange)
	s.scroll = steady.NewScroll(s.column)
	s.ExtendBaseWidget(s)
	return s
}

// CreateRenderer is part of fyne.Widget.
func (s *Scroll) CreateRenderer() fyne.WidgetRenderer { return &scrollRenderer{s} }

// arrange gives the object the width of the scroll and the height that it asks for.
func (s *Scroll) arrange() {
	size := s.Size()
	s.column.Resize(fyne.NewSize(size.Width, max(s.column.HeightFor(size.Width), size.Height)))
	s.column.Arrange()
	s.scroll.Resize(size)
	s.scroll.Refresh()
}

// ToEnd brings the lower end into sight.
func (s *Scroll) ToEnd() {
	s.arrange()
	s.scroll.ScrollToBottom()
}

type scrollRenderer struct{ s *Scroll }

// Layout is part of fyne.WidgetRenderer.
func (r *scrollRenderer) Layout(fyne.Size) { r.s.arrange() }

// MinSize is part of fyne.WidgetRenderer.
func (r *scrollRenderer) MinSize() fyne.Size {
	return r.s.scroll.MinSize().Max(fyne.NewSize(r.s.column.MinSize().Width, 4*r.s.Theme().Size(theme.SizeNameText)))
}

// Objects is part of fyne.WidgetRenderer.
func (r *scrollRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.s.scroll} }

// Refresh is part of fyne.WidgetRenderer.
func (r *scrollRenderer) Refresh() { r.s.arrange() }

// Destroy is part of fyne.WidgetRenderer.
func (r *scrollRenderer) Destroy() {}
