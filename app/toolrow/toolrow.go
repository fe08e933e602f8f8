// Package toolrow lays out the row of tools above a pane: the title on the left, the
// tools on the right. Where the pane is too narrow for all of them, words give way to
// their icons, and then tools move into a list at the end of the row, so that the window
// fits small screens. What a tool without a word does is said below it.
package toolrow

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/paneview"
)

// Quiet returns a button that does not shout.
func Quiet(text string, icon fyne.Resource, tapped func()) *widget.Button {
	button := widget.NewButtonWithIcon(text, icon, tapped)
	button.Importance = widget.LowImportance
	return button
}

// New returns the row of a title and tools. Where there is no room, first the words of
// tools with an icon give way, the last first. Then those of yielding do, first to last,
// the tools of a group together. Tools that gave way are in the list of a button at the
// end; a title is not.
func New(title fyne.CanvasObject, tools []fyne.CanvasObject, yielding ...[]fyne.CanvasObject) *fyne.Container {
	r := &row{title: title, yielding: yielding, hint: paneview.NewCaption()}
	r.more = newMore(r)
	objects := append([]fyne.CanvasObject{title}, tools...)
	objects = append(objects, r.more)
	for _, tool := range objects {
		if button, is := tool.(*Button); is {
			button.row = r
		}
	}
	return container.New(r, append(objects, r.hint.Container)...)
}

type row struct {
	title    fyne.CanvasObject
	yielding [][]fyne.CanvasObject
	more     *Button             // opens the list of what was left out
	left     []fyne.CanvasObject // out of the row
	hint     *paneview.Caption   // on top of what lies below the row
	width    float32
}

// yields tells whether an object may give way.
func (r *row) yields(object fyne.CanvasObject) bool {
	return slices.ContainsFunc(r.yielding, func(group []fyne.CanvasObject) bool { return slices.Contains(group, object) })
}

// tools returns the title and the tools among the objects of the row.
func (r *row) tools(objects []fyne.CanvasObject) []fyne.CanvasObject {
	return slices.DeleteFunc(slices.Clone(objects), func(o fyne.CanvasObject) bool {
		return o == r.hint.Container || o == fyne.CanvasObject(r.more)
	})
}

// MinSize is part of fyne.Layout.
func (r *row) MinSize(objects []fyne.CanvasObject) fyne.Size {
	width, height, listed := -theme.Padding(), float32(0), false
	for _, object := range r.tools(objects) {
		height = max(height, object.MinSize().Height)
		if !r.yields(object) {
			width += leastWidth(object) + theme.Padding()
		}
		listed = listed || r.yields(object) && object != r.title
	}
	if listed {
		width += r.more.MinSize().Width + theme.Padding()
	}
	return fyne.NewSize(max(width, 0), height)
}

// Layout is part of fyne.Layout.
func (r *row) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	r.width = size.Width
	objects = r.tools(objects)
	shown := r.fitting(objects, size.Width)
	r.left = slices.DeleteFunc(slices.Clone(objects), func(o fyne.CanvasObject) bool { return o == r.title || slices.Contains(shown, o) })
	if objects = append(objects, r.more); len(r.left) > 0 {
		shown = append(shown, r.more)
	}
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

// fitting returns the objects for which there is room, and takes the words off those
// buttons for whose words there is none.
func (r *row) fitting(objects []fyne.CanvasObject, room float32) []fyne.CanvasObject {
	shown := slices.Clone(objects)
	width := -theme.Padding()
	for _, object := range objects {
		width += fullWidth(object) + theme.Padding()
	}
	for _, object := range slices.Backward(objects) {
		if button, is := object.(*Button); is {
			short := width > room && button.canBeShort()
			if short {
				width -= fullWidth(button) - leastWidth(button)
			}
			button.shorten(short)
		}
	}
	listed := false
	for _, group := range r.yielding {
		if width <= room {
			break
		}
		if !listed && !slices.Contains(group, r.title) {
			listed = true
			width += r.more.MinSize().Width + theme.Padding()
		}
		for _, object := range group {
			width -= object.MinSize().Width + theme.Padding()
		}
		shown = slices.DeleteFunc(shown, func(o fyne.CanvasObject) bool { return slices.Contains(group, o) })
	}
	return shown
}

// fullWidth returns the width of an object with all its words.
func fullWidth(object fyne.CanvasObject) float32 {
	if button, is := object.(*Button); is {
		return button.fullWidth()
	}
	return object.MinSize().Width
}

// leastWidth returns the width of an object without the words that may give way.
func leastWidth(object fyne.CanvasObject) float32 {
	if button, is := object.(*Button); is {
		return button.leastWidth()
	}
	return object.MinSize().Width
}

func show(object fyne.CanvasObject, visible bool) {
	switch {
	case visible && !object.Visible():
		object.Show()
	case !visible && object.Visible():
		object.Hide()
	}
}
