package findings

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// rowLayout puts the head of a row, the message and the remedy beside each other, or below
// each other where the texts would be broken after every few words.
type rowLayout struct{ below bool }

// leastLetters is the width that a row needs for its texts to stand beside each other, in
// heights of a letter.
const leastLetters = 40

// Layout is part of fyne.Layout.
func (l *rowLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	head, texts, pad := objects[0], objects[1:], theme.Padding()
	least := head.MinSize()
	head.Move(fyne.NewPos(0, 0))
	head.Resize(fyne.NewSize(least.Width, size.Height))
	if l.below = size.Width < leastLetters*theme.TextSize(); !l.below {
		width := (size.Width - least.Width - 2*pad) / 2
		for i, text := range texts {
			text.Move(fyne.NewPos(least.Width+pad+float32(i)*(width+pad), 0))
			text.Resize(fyne.NewSize(width, size.Height))
		}
		return
	}
	head.Resize(least)
	y := least.Height
	for _, text := range texts {
		y -= l.overlap()
		text.Move(fyne.NewPos(0, y))
		text.Resize(fyne.NewSize(size.Width, text.MinSize().Height))
		text.Resize(fyne.NewSize(size.Width, text.MinSize().Height)) // its height is known once it has its width
		y += text.Size().Height
	}
}

// overlap is how far texts lie over the empty edges of each other, so that they stand as
// close as lines of one text, nearly.
func (*rowLayout) overlap() float32 { return 2*theme.InnerPadding() - theme.Padding()/2 }

// MinSize is part of fyne.Layout: the height is that at the present width.
func (l *rowLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	size := objects[0].MinSize()
	for _, text := range objects[1:] {
		least := text.MinSize()
		if l.below {
			size = fyne.NewSize(max(size.Width, least.Width), size.Height+least.Height-l.overlap())
		} else {
			size.Height = max(size.Height, least.Height)
		}
	}
	return size
}
