package help

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// columns lays objects out in pairs: the left column has a width of its own, the
// same in every table of the page, and the right one the rest.
type columns struct{}

// leftInLetters is the width of the left column in heights of its letters.
const leftInLetters = 15

// Layout is part of fyne.Layout.
func (c columns) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	left := c.left()
	y := float32(0)
	for i := 0; i+1 < len(objects); i += 2 {
		height := c.row(objects[i], objects[i+1])
		objects[i].Move(fyne.NewPos(0, y))
		objects[i].Resize(fyne.NewSize(left, objects[i].MinSize().Height))
		objects[i+1].Move(fyne.NewPos(left, y))
		objects[i+1].Resize(fyne.NewSize(size.Width-left, height))
		y += height
	}
}

// MinSize is part of fyne.Layout.
func (c columns) MinSize(objects []fyne.CanvasObject) fyne.Size {
	size := fyne.NewSize(c.left(), 0)
	for i := 0; i+1 < len(objects); i += 2 {
		size.Height += c.row(objects[i], objects[i+1])
		size.Width = max(size.Width, c.left()+objects[i+1].MinSize().Width)
	}
	return size
}

func (columns) left() float32 { return leftInLetters * theme.TextSize() }

func (columns) row(left, right fyne.CanvasObject) float32 {
	return max(left.MinSize().Height, right.MinSize().Height) - theme.Padding()
}
