package blankpane

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"gussetwright/geometry"
)

// tag is a short text on a ground of its own, beside a point of the picture.
type tag struct {
	*fyne.Container
	ground *canvas.Rectangle
	text   *canvas.Text
}

func newTag() *tag {
	t := &tag{ground: &canvas.Rectangle{StrokeWidth: 1}, text: &canvas.Text{}}
	t.Container = container.NewWithoutLayout(t.ground, t.text)
	t.Hide()
	return t
}

func (t *tag) restyle() {
	t.ground.FillColor = theme.Color(theme.ColorNameOverlayBackground)
	t.ground.StrokeColor = theme.Color(theme.ColorNameInputBorder)
	t.ground.CornerRadius = theme.InputRadiusSize()
	t.text.Color = theme.Color(theme.ColorNameForeground)
	t.text.TextSize = theme.TextSize()
}

// show shows the text to the lower right of a point, or on its other sides where
// there is no room.
func (t *tag) show(text string, at geometry.Vec2, room fyne.Size) {
	if t.text.Text != text {
		t.text.Text = text
		t.text.Refresh()
	}
	pad := theme.Padding()
	size := t.text.MinSize().AddWidthHeight(4*pad, pad)
	t.Move(fyne.NewPos(besideWithin(at.X, size.Width, room.Width), besideWithin(at.Y, size.Height, room.Height)))
	t.Resize(size)
	t.ground.Resize(size)
	t.text.Move(fyne.NewPos(2*pad, pad/2))
	t.text.Resize(t.text.MinSize())
	show(t.Container, true)
}

// besideWithin returns where something of a length begins along one side: after the
// point, before it where that is not inside the room, and inside it in any case.
func besideWithin(at float64, length, room float32) float32 {
	start := float32(at) + beside
	if start+length > room {
		start = float32(at) - beside - length
	}
	return max(min(start, room-length), 0)
}

func (t *tag) hide() { show(t.Container, false) }
