package steppage

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/keyrelay"
)

// plate is what can be pressed by mouse and key, for widgets that lay something on it
// that a button of the toolkit cannot hold, such as lines that wrap.
type plate struct {
	widget.BaseWidget

	self          fyne.Widget // that is built on the plate
	press         func()
	gained        func() // called, where it is not nil, with the focus
	over, focused bool
	ground, ring  *canvas.Rectangle
}

// lay makes the plate that of a widget.
func (p *plate) lay(self fyne.Widget) {
	p.self, p.ground, p.ring = self, canvas.NewRectangle(color.Transparent), canvas.NewRectangle(color.Transparent)
	p.ExtendBaseWidget(self)
}

// Tapped is part of fyne.Tappable.
func (p *plate) Tapped(*fyne.PointEvent) {
	if p.press != nil {
		p.press()
	}
}

// Cursor tells that the plate can be clicked.
func (p *plate) Cursor() desktop.Cursor { return desktop.PointerCursor }

// MouseIn is part of desktop.Hoverable.
func (p *plate) MouseIn(*desktop.MouseEvent) { p.light(true, p.focused) }

// MouseMoved is part of desktop.Hoverable.
func (p *plate) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is part of desktop.Hoverable.
func (p *plate) MouseOut() { p.light(false, p.focused) }

// FocusGained is part of fyne.Focusable.
func (p *plate) FocusGained() {
	p.light(p.over, true)
	if p.gained != nil {
		p.gained()
	}
}

// FocusLost is part of fyne.Focusable.
func (p *plate) FocusLost() { p.light(p.over, false) }

// TypedRune is part of fyne.Focusable.
func (p *plate) TypedRune(rune) {}

// TypedKey presses.
func (p *plate) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		p.Tapped(nil)
		return
	}
	keyrelay.ToWindow(p.self, key)
}

func (p *plate) light(over, focused bool) {
	p.over, p.focused = over, focused
	p.colour()
	p.ground.Refresh()
	p.ring.Refresh()
}

func (p *plate) padding() float32 { return p.Theme().Size(theme.SizeNamePadding) }

func (p *plate) colour() {
	th, variant := p.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	p.ground.FillColor, p.ground.CornerRadius = th.Color(theme.ColorNameButton, variant), th.Size(theme.SizeNameInputRadius)
	p.ring.FillColor = color.Transparent
	if p.over {
		p.ring.FillColor = th.Color(theme.ColorNameHover, variant)
	}
	p.ring.CornerRadius, p.ring.StrokeWidth, p.ring.StrokeColor = p.ground.CornerRadius, 0, th.Color(theme.ColorNamePrimary, variant)
	if p.focused {
		p.ring.StrokeWidth = 2
	}
}

// plateRenderer draws a widget on a plate.
type plateRenderer struct {
	plate   *plate
	layout  func(fyne.Size)
	height  func(width float32) float32
	objects []fyne.CanvasObject // between ground and ring
}

// Layout is part of fyne.WidgetRenderer.
func (r *plateRenderer) Layout(size fyne.Size) {
	r.plate.ground.Resize(size)
	r.plate.ring.Resize(size)
	r.layout(size)
}

// MinSize is part of fyne.WidgetRenderer.
func (r *plateRenderer) MinSize() fyne.Size {
	return fyne.NewSize(20*r.plate.padding(), r.height(r.plate.Size().Width))
}

// Objects is part of fyne.WidgetRenderer.
func (r *plateRenderer) Objects() []fyne.CanvasObject {
	all := append([]fyne.CanvasObject{r.plate.ground}, r.objects...)
	return append(all, r.plate.ring)
}

// Destroy is part of fyne.WidgetRenderer.
func (r *plateRenderer) Destroy() {}

// Refresh is part of fyne.WidgetRenderer.
func (r *plateRenderer) Refresh() {
	r.plate.colour()
	for _, object := range r.Objects() {
		object.Refresh()
	}
	r.Layout(r.plate.Size())
	canvas.Refresh(r.plate.self)
}
