package welcome

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// column keeps its object no wider than can be read with ease, in the middle.
type column struct{ letters float32 } // the width, in heights of a letter

// Layout is part of fyne.Layout.
func (c column) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	width := min(size.Width, max(c.letters*theme.TextSize(), c.MinSize(objects).Width))
	for _, object := range objects {
		object.Move(fyne.NewPos((size.Width-width)/2, 0))
		object.Resize(fyne.NewSize(width, size.Height))
	}
}

// MinSize is part of fyne.Layout.
func (c column) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, object := range objects {
		size = size.Max(object.MinSize())
	}
	return size
}

// rank lays objects beside each other in columns of one width, or below each other
// where there is no room for that.
type rank struct{ below bool }

// Layout is part of fyne.Layout.
func (b *rank) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	least := b.MinSize(objects)
	pad, count := theme.Padding(), float32(len(objects))
	b.below = count*(least.Width+pad)-pad > size.Width
	width, at := (size.Width+pad)/count-pad, fyne.NewPos(0, 0)
	if b.below {
		width = size.Width
	}
	for _, object := range objects {
		object.Move(at)
		if !b.below {
			object.Resize(fyne.NewSize(width, size.Height))
			at.X += width + pad
			continue
		}
		object.Resize(fyne.NewSize(width, object.MinSize().Height))
		object.Resize(fyne.NewSize(width, object.MinSize().Height)) // words know their height once they have their width
		at.Y += object.Size().Height + pad
	}
}

// MinSize is part of fyne.Layout: the width is that of one column.
func (b *rank) MinSize(objects []fyne.CanvasObject) fyne.Size {
	size, total := fyne.Size{}, -theme.Padding()
	for _, object := range objects {
		size = size.Max(object.MinSize())
		total += object.MinSize().Height + theme.Padding()
	}
	if b.below {
		size.Height = total
	}
	return size
}

// labelled lays a label and an entry out, with room for the widest label of all rows.
type labelled struct{ labels *[]fyne.CanvasObject }

func (l labelled) left() (width float32) {
	for _, label := range *l.labels {
		width = max(width, label.MinSize().Width)
	}
	return width + theme.Padding()
}

// Layout is part of fyne.Layout.
func (l labelled) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	left := max(l.left(), size.Width/2)
	objects[0].Resize(fyne.NewSize(left, size.Height))
	objects[1].Move(fyne.NewPos(left, 0))
	objects[1].Resize(fyne.NewSize(size.Width-left, size.Height))
}

// MinSize is part of fyne.Layout.
func (l labelled) MinSize(objects []fyne.CanvasObject) fyne.Size {
	const letters = 6 // that the entry shows at least
	label, entry := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(l.left()+max(entry.Width, letters*theme.TextSize()), max(label.Height, entry.Height))
}
