package steps

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
)

// swatch is a patch of colour with its name beside it.
type swatch struct {
	widget.BaseWidget
	patch *canvas.Rectangle
	name  *entry.Text
}

func newSwatch() *swatch {
	s := &swatch{patch: canvas.NewRectangle(color.Transparent), name: entry.NewText("", entry.Small)}
	s.ExtendBaseWidget(s)
	return s
}

// show changes colour and name, and nothing where they are the same.
func (s *swatch) show(colour color.RGBA, name string) {
	s.name.SetText(name)
	if s.patch.FillColor != colour {
		s.patch.FillColor = colour
		s.patch.Refresh()
	}
}

// OnGrow sets what is called when the height has changed.
func (s *swatch) OnGrow(grow func()) { s.name.OnGrow(grow) }

// patchSize is large enough to judge a colour by, and leaves room for the name in
// large letters.
func (s *swatch) patchSize() fyne.Size {
	th := s.Theme()
	height := th.Size(theme.SizeNameText) * 2
	return fyne.NewSize(2*height, height)
}

func (s *swatch) indent() float32 {
	return s.patchSize().Width + 2*s.Theme().Size(theme.SizeNamePadding)
}

// HeightFor returns the height at a width.
func (s *swatch) HeightFor(width float32) float32 {
	return max(s.name.HeightFor(width-s.indent()), s.patchSize().Height)
}

// CreateRenderer is part of fyne.Widget.
func (s *swatch) CreateRenderer() fyne.WidgetRenderer {
	r := &swatchRenderer{s}
	r.colour()
	return r
}

type swatchRenderer struct{ s *swatch }

// colour draws the edge, without which white paper would not show on a light ground.
func (r *swatchRenderer) colour() {
	th := r.s.Theme()
	r.s.patch.StrokeColor = th.Color(theme.ColorNameInputBorder, fyne.CurrentApp().Settings().ThemeVariant())
	r.s.patch.StrokeWidth = 1
	r.s.patch.CornerRadius = th.Size(theme.SizeNameInputRadius)
}

func (r *swatchRenderer) Layout(size fyne.Size) {
	patch, indent := r.s.patchSize(), r.s.indent()
	r.s.patch.Resize(patch)
	height := r.s.name.HeightFor(size.Width - indent)
	r.s.name.Move(fyne.NewPos(indent, max((patch.Height-height)/2, 0)))
	r.s.name.Resize(fyne.NewSize(size.Width-indent, height))
}

func (r *swatchRenderer) MinSize() fyne.Size {
	return fyne.NewSize(r.s.indent()+r.s.name.MinSize().Width, r.s.HeightFor(r.s.Size().Width))
}

func (r *swatchRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.s.patch, r.s.name}
}
func (r *swatchRenderer) Destroy() {}

func (r *swatchRenderer) Refresh() {
	r.colour()
	r.s.patch.Refresh()
	r.s.name.Refresh()
	r.Layout(r.s.Size())
}
