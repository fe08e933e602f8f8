package welcome

import "fyne.io/fyne/v2"

// column keeps its object no wider than can be read with ease, in the middle.
type column struct{ widest float32 }

// Layout is part of fyne.Layout.
func (c column) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	width := min(size.Width, c.widest)
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
