package lesson

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// chip is a short text on a ground of its own, over a picture.
type chip struct {
	widget.BaseWidget
	ground *canvas.Rectangle
	text   *canvas.Text
	strong bool // with a border that stands out
}

func newChip(strong bool) *chip {
	c := &chip{ground: canvas.NewRectangle(color.Transparent), text: canvas.NewText("", color.Transparent), strong: strong}
	c.text.TextStyle.Bold = strong
	c.ExtendBaseWidget(c)
	return c
}

// say changes the text; "" is not shown.
func (c *chip) say(text string) {
	setVisible(c, text != "")
	if c.text.Text != text {
		c.text.Text = text
		c.Refresh()
	}
}

// MinSize is part of fyne.CanvasObject.
func (c *chip) MinSize() fyne.Size {
	pad := c.Theme().Size(theme.SizeNamePadding)
	size := fyne.MeasureText(c.text.Text, c.Theme().Size(theme.SizeNameText), c.text.TextStyle)
	return size.AddWidthHeight(4*pad, 1.5*pad)
}

// CreateRenderer is part of fyne.Widget.
func (c *chip) CreateRenderer() fyne.WidgetRenderer {
	r := &chipRenderer{c}
	r.colour()
	return r
}

type chipRenderer struct{ c *chip }

func (r *chipRenderer) colour() {
	c, variant := r.c, fyne.CurrentApp().Settings().ThemeVariant()
	of := func(name fyne.ThemeColorName) color.Color { return c.Theme().Color(name, variant) }
	c.ground.FillColor, c.ground.StrokeColor, c.ground.StrokeWidth = of(theme.ColorNameOverlayBackground), of(theme.ColorNameInputBorder), 1
	if c.strong {
		c.ground.StrokeColor, c.ground.StrokeWidth = of(theme.ColorNameWarning), 2
	}
	c.ground.CornerRadius = c.Theme().Size(theme.SizeNameInputRadius)
	c.text.Color, c.text.TextSize = of(theme.ColorNameForeground), c.Theme().Size(theme.SizeNameText)
}

// Layout is part of fyne.WidgetRenderer.
func (r *chipRenderer) Layout(size fyne.Size) {
	pad := r.c.Theme().Size(theme.SizeNamePadding)
	r.c.ground.Resize(size)
	put(r.c.text, 2*pad, 0.75*pad, size.Width-4*pad, size.Height-1.5*pad)
}

// MinSize is part of fyne.WidgetRenderer.
func (r *chipRenderer) MinSize() fyne.Size { return r.c.MinSize() }

// Destroy is part of fyne.WidgetRenderer.
func (r *chipRenderer) Destroy() {}

// Objects is part of fyne.WidgetRenderer.
func (r *chipRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.c.ground, r.c.text}
}

// Refresh is part of fyne.WidgetRenderer.
func (r *chipRenderer) Refresh() {
	r.colour()
	r.Layout(r.c.Size())
	canvas.Refresh(r.c)
}
