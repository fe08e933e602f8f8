package filestep

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// stepRenderer lays the step out: the scroll above, the foot below it.
type stepRenderer struct{ s *Step }

// Layout is part of fyne.WidgetRenderer.
func (r *stepRenderer) Layout(size fyne.Size) {
	gap := r.s.Theme().Size(theme.SizeNamePadding)
	width := max(size.Width-2*gap, 0)
	foot := r.s.foot.HeightFor(width)
	r.s.scroll.Resize(fyne.NewSize(size.Width, max(size.Height-foot-2*gap, 0)))
	r.s.foot.Move(fyne.NewPos(gap, size.Height-foot-gap))
	r.s.foot.Resize(fyne.NewSize(width, foot))
	r.s.foot.Arrange()
}

// MinSize is part of fyne.WidgetRenderer.
func (r *stepRenderer) MinSize() fyne.Size {
	scroll, foot := r.s.scroll.MinSize(), r.s.foot.MinSize()
	return fyne.NewSize(max(scroll.Width, foot.Width), scroll.Height+foot.Height)
}

// Objects is part of fyne.WidgetRenderer.
func (r *stepRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.s.scroll, r.s.foot}
}

// Refresh is part of fyne.WidgetRenderer. The letters may have grown or shrunk while the
// step was out of sight.
func (r *stepRenderer) Refresh() {
	r.s.foot.Refresh()
	r.Layout(r.s.Size())
	r.s.scroll.Refresh()
}

// Destroy is part of fyne.WidgetRenderer.
func (r *stepRenderer) Destroy() {}
