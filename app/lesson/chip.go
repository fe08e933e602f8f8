package lesson

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
)

// chip is a short text on a ground of its own, over a picture. It is broken into lines
// where it is given less width than it has.
type chip struct {
	widget.BaseWidget
	ground *canvas.Rectangle
	text   *entry.Text
}

func newChip() *chip {
	c := &chip{ground: canvas.NewRectangle(color.Transparent), text: entry.NewText("", entry.Heading)}
	c.ExtendBaseWidget(c)
	return c
}

// say changes the text; "" is not shown.
func (c *chip) say(text string) {
	setVisible(c, text != "")
	if c.text.Text() != text {
		c.text.SetText(text)
		c.Refresh()
	}
}

func (c *chip) padding() float32 { return c.Theme().Size(theme.SizeNamePadding) }

// heightFor is the height at a width.
func (c *chip) heightFor(width float32) float32 {
	return c.text.HeightFor(width-4*c.padding()) + 1.5*c.padding()
}

// MinSize is part of fyne.CanvasObject: that on one line.
func (c *chip) MinSize() fyne.Size {
	width := c.text.OneLine() + 1 + 4*c.padding()
	return fyne.NewSize(width, c.heightFor(width))
}

// CreateRenderer is part of fyne.Widget.
func (c *chip) CreateRenderer() fyne.WidgetRenderer {
	r := &chipRenderer{c}
	r.colour()
	return r
}

type chipRenderer struct{ c *chip }

func (r *chipRenderer) colour() { colourGround(r.c.ground, r.c.Theme(), theme.ColorNameWarning) }

// colourGround gives what lies over a picture a ground with a border that stands out.
func colourGround(ground *canvas.Rectangle, th fyne.Theme, border fyne.ThemeColorName) {
	variant := fyne.CurrentApp().Settings().ThemeVariant()
	ground.FillColor = th.Color(theme.ColorNameOverlayBackground, variant)
	ground.StrokeColor, ground.StrokeWidth = th.Color(border, variant), 2
	ground.CornerRadius = th.Size(theme.SizeNameInputRadius)
}

// Layout is part of fyne.WidgetRenderer.
func (r *chipRenderer) Layout(size fyne.Size) {
	pad := r.c.padding()
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
	r.c.text.Refresh()
	r.Layout(r.c.Size())
	canvas.Refresh(r.c)
}
