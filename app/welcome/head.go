package welcome

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// heading lays out a picture, words and buttons beside each other; the buttons below the
// words where these would be broken into many lines.
type heading struct{}

// leastLetters is the width that the words have beside buttons, in heights of a letter.
const leastLetters = 24

// Layout is part of fyne.Layout.
func (heading) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	picture, words, buttons := objects[0], objects[1], objects[2]
	left, pad := picture.MinSize().Width+theme.Padding(), theme.Padding()
	least := buttons.MinSize()
	picture.Move(fyne.NewPos(0, 0))
	words.Move(fyne.NewPos(left, 0))
	buttons.Resize(least)
	if width := size.Width - left - pad - least.Width; width >= leastLetters*theme.TextSize() {
		picture.Resize(fyne.NewSize(picture.MinSize().Width, size.Height))
		words.Resize(fyne.NewSize(width, size.Height))
		buttons.Move(fyne.NewPos(size.Width-least.Width, (size.Height-least.Height)/2))
		return
	}
	words.Resize(fyne.NewSize(size.Width-left, words.MinSize().Height))
	words.Resize(fyne.NewSize(size.Width-left, words.MinSize().Height))
	picture.Resize(fyne.NewSize(picture.MinSize().Width, words.Size().Height))
	buttons.Move(fyne.NewPos(min(left, size.Width-least.Width), words.Size().Height+pad))
}

// MinSize is part of fyne.Layout.
func (heading) MinSize(objects []fyne.CanvasObject) fyne.Size {
	picture, words, buttons := objects[0].MinSize(), objects[1].MinSize(), objects[2].MinSize()
	width := max(picture.Width+theme.Padding()+words.Width, buttons.Width)
	height := max(picture.Height, words.Height, buttons.Height)
	if below := objects[2].Position().Y >= objects[1].Size().Height && objects[1].Size().Height > 0; below {
		height = max(picture.Height, words.Height) + theme.Padding() + buttons.Height
	}
	return fyne.NewSize(width, height)
}

// wayLayout lays out picture, words and button of a card: below each other in a column,
// beside each other where the cards stand below each other and there is room.
type wayLayout struct{ cards *rank }

func (l wayLayout) flat(objects []fyne.CanvasObject, width float32) bool {
	needed := 2 * theme.Padding()
	for _, object := range objects {
		needed += object.MinSize().Width
	}
	return l.cards.below && needed <= width
}

// Layout is part of fyne.Layout.
func (l wayLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	picture, words, button := objects[0], objects[1], objects[2]
	side, least, pad := picture.MinSize(), button.MinSize(), theme.Padding()
	picture.Move(fyne.NewPos(0, 0))
	if l.flat(objects, size.Width) {
		picture.Resize(fyne.NewSize(side.Width, size.Height))
		words.Move(fyne.NewPos(side.Width+pad, 0))
		words.Resize(fyne.NewSize(size.Width-side.Width-least.Width-2*pad, size.Height))
		button.Resize(least)
		button.Move(fyne.NewPos(size.Width-least.Width, size.Height-least.Height))
		return
	}
	picture.Resize(fyne.NewSize(size.Width, side.Height))
	words.Move(fyne.NewPos(0, side.Height+pad))
	words.Resize(fyne.NewSize(size.Width, size.Height-side.Height-least.Height-2*pad))
	button.Move(fyne.NewPos(0, size.Height-least.Height))
	button.Resize(fyne.NewSize(size.Width, least.Height))
}

// MinSize is part of fyne.Layout: the width is that below each other.
func (l wayLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	picture, words, button := objects[0].MinSize(), objects[1].MinSize(), objects[2].MinSize()
	size := fyne.NewSize(max(picture.Width, words.Width, button.Width), picture.Height+words.Height+button.Height+2*theme.Padding())
	if l.flat(objects, objects[2].Position().X+objects[2].Size().Width) {
		size.Height = max(picture.Height, words.Height, button.Height)
	}
	return size
}
