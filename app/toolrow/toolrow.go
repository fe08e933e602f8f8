// Package toolrow lays out the row of tools above a pane: the title on the left, the
// tools on the right. Where the pane is too narrow for all of them, those that can be
// done without give way, so that the window fits small screens.
package toolrow

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Quiet returns a button that does not shout.
func Quiet(text string, icon fyne.Resource, tapped func()) *widget.Button {
	button := widget.NewButtonWithIcon(text, icon, tapped)
	button.Importance = widget.LowImportance
	return button
}

// New returns the row of a title and tools. Those of yielding give way first to last
// when there is no room, the tools of a group together; they must be reachable by other
// means.
func New(title fyne.CanvasObject, tools []fyne.CanvasObject, yielding ...[]fyne.CanvasObject) *fyne.Container {
	return container.New(&row{title: title, yielding: yielding}, append([]fyne.CanvasObject{title}, tools...)...)
}

type row struct {
	title    fyne.CanvasObject
	yielding [][]fyne.CanvasObject
}

// yields tells whether an object may give way.
func (r *row) yields(object fyne.CanvasObject) bool {
	return slices.ContainsFunc(r.yielding, func(group []fyne.CanvasObject) bool { return slices.Contains(group, object) })
}

// MinSize is part of fyne.Layout.
func (r *row) MinSize(objects []fyne.CanvasObject) fyne.Size {
	width, height := float32(0), float32(0)
	for _, object := range objects {
		least := object.MinSize()
		height = max(height, least.Height)
		if !r.yields(object) {
			width += least.Width + theme.Padding()
		}
	}
	return fyne.NewSize(width, height)
}

// Layout is part of fyne.Layout.
func (r *row) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	shown := r.fitting(objects, size.Width)
	x := size.Width
	for _, object := range slices.Backward(objects) {
		show(object, slices.Contains(shown, object))
		if !object.Visible() {
			continue
		}
		least := object.MinSize()
		object.Resize(fyne.NewSize(least.Width, size.Height))
		if object == r.title {
			object.Move(fyne.NewPos(0, 0))
			continue
		}
		x -= least.Width
		object.Move(fyne.NewPos(x, 0))
		x -= theme.Padding()
	}
}

// fitting returns the objects for which there is room.
func (r *row) fitting(objects []fyne.CanvasObject, room float32) []fyne.CanvasObject {
	shown := slices.Clone(objects)
	width := float32(0)
	for _, object := range objects {
		width += object.MinSize().Width + theme.Padding()
	}
	for _, group := range r.yielding {
		if width <= room {
			break
		}
		for _, object := range group {
			width -= object.MinSize().Width + theme.Padding()
		}
		shown = slices.DeleteFunc(shown, func(o fyne.CanvasObject) bool { return slices.Contains(group, o) })
	}
	return shown
}

func show(object fyne.CanvasObject, visible bool) {
	switch {
	case visible && !object.Visible():
		object.Show()
	case !visible && object.Visible():
		object.Hide()
	}
}
