package foldedpane

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// caption is a short text on a ground of its own, over the picture.
type caption struct {
	*fyne.Container
	ground *canvas.Rectangle
	text   *canvas.Text
}

func newCaption() *caption {
	c := &caption{ground: &canvas.Rectangle{StrokeWidth: 1}, text: &canvas.Text{}}
	c.Container = container.NewWithoutLayout(c.ground, c.text)
	c.Hide()
	return c
}

func (c *caption) restyle() {
	c.ground.FillColor = theme.Color(theme.ColorNameOverlayBackground)
	c.ground.StrokeColor = theme.Color(theme.ColorNameInputBorder)
	c.ground.CornerRadius = theme.InputRadiusSize()
	c.text.Color = theme.Color(theme.ColorNameForeground)
	c.text.TextSize = theme.TextSize()
}

// show shows a text where place puts something of its size; "" is not shown.
func (c *caption) show(text string, place func(fyne.Size) fyne.Position) {
	if text == "" {
		if c.Visible() {
			c.Hide()
		}
		return
	}
	if c.text.Text != text {
		c.text.Text = text
		c.text.Refresh()
	}
	pad := theme.Padding()
	size := c.text.MinSize().AddWidthHeight(4*pad, pad)
	c.Move(place(size))
	c.Resize(size)
	c.ground.Resize(size)
	c.text.Move(fyne.NewPos(2*pad, pad/2))
	c.text.Resize(c.text.MinSize())
	if !c.Visible() {
		c.Show()
	}
}
