package paneview

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// Caption is a short text on a ground of its own, over a picture.
type Caption struct {
	*fyne.Container
	ground *canvas.Rectangle
	text   *canvas.Text
}

// NewCaption returns a caption that is not shown. Restyle gives it its colours.
func NewCaption() *Caption {
	c := &Caption{ground: &canvas.Rectangle{StrokeWidth: 1}, text: &canvas.Text{}}
	c.Container = container.NewWithoutLayout(c.ground, c.text)
	c.Hide()
	return c
}

// Restyle takes colours and sizes from the theme.
func (c *Caption) Restyle() {
	c.ground.FillColor = theme.Color(theme.ColorNameOverlayBackground)
	c.ground.StrokeColor = theme.Color(theme.ColorNameInputBorder)
	c.ground.CornerRadius = theme.InputRadiusSize()
	c.text.Color = theme.Color(theme.ColorNameForeground)
	c.text.TextSize = theme.TextSize()
}

// Say shows a text where place puts something of its size; "" is not shown.
func (c *Caption) Say(text string, place func(fyne.Size) fyne.Position) {
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

// Text returns what the caption says, shown or not.
func (c *Caption) Text() string { return c.text.Text }
