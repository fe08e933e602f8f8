package blankpane

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"gussetwright/geometry"
)

// scaleBar shows a round length at the zoom.
type scaleBar struct {
	*fyne.Container
	bar, left, right *canvas.Line
	text             *canvas.Text
}

// Sizes of the scale bar in pixels.
const (
	longestBar = 140
	barInset   = 12
	tick       = 5
)

func newScaleBar() *scaleBar {
	b := &scaleBar{bar: &canvas.Line{StrokeWidth: 2}, left: &canvas.Line{StrokeWidth: 2}, right: &canvas.Line{StrokeWidth: 2}, text: &canvas.Text{}}
	b.Container = container.NewWithoutLayout(b.bar, b.left, b.right, b.text)
	return b
}

func (b *scaleBar) restyle() {
	ink := theme.Color(theme.ColorNameForeground)
	b.bar.StrokeColor, b.left.StrokeColor, b.right.StrokeColor, b.text.Color = ink, ink, ink, ink
	b.text.TextSize = theme.CaptionTextSize()
}

// height returns how high the bar is with its text.
func (b *scaleBar) height() float64 { return barInset + float64(b.text.MinSize().Height) }

// arrange draws the bar into the lower right corner.
func (b *scaleBar) arrange(s *surface) {
	unit := s.pane.set.Unit()
	long := roundLength(longestBar/s.pane.view.scale/unit.Length()) * unit.Length()
	size := s.Size()
	right := float64(size.Width) - barInset
	left := right - long*s.pane.view.scale
	y := float64(size.Height) - barInset
	line(b.bar, geometry.Vec2{X: left, Y: y}, geometry.Vec2{X: right, Y: y})
	line(b.left, geometry.Vec2{X: left, Y: y - tick}, geometry.Vec2{X: left, Y: y})
	line(b.right, geometry.Vec2{X: right, Y: y - tick}, geometry.Vec2{X: right, Y: y})
	if text := length(long, unit); text != b.text.Text {
		b.text.Text = text
		b.text.Refresh()
	}
	words := b.text.MinSize()
	b.text.Resize(words)
	b.text.Move(fyne.NewPos(float32(right)-words.Width-tick, float32(y)-words.Height-2))
}

// roundLength returns the largest of 1, 2, 5 times a power of ten that is not more
// than most.
func roundLength(most float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(most)))
	for _, step := range []float64{5, 2} {
		if step*power <= most {
			return step * power
		}
	}
	return power
}
