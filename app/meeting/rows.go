package meeting

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// The layouts of the page take their gaps from its theme, which is larger than that of the
// rest of the window: the layouts of the toolkit take them from whichever is at hand.

// margin is the room around the page.
func (p *page) margin() float32 { return 2 * p.gap() }

// rows stacks what is on the page; the scene takes the room that the others leave. Of the
// two that may be said one is, in a line that is kept free for it, so that nothing moves
// when there is something to say.
type rows struct{ page *page }

// The rows from above, as newPage makes them; the two texts share one.
const sceneRow, saidRow, troubleRow = 1, 2, 3

// Layout is part of fyne.Layout.
func (r *rows) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	margin, gap := r.page.margin(), 1.5*r.page.gap()
	inner := size.Width - 2*margin
	heights := make([]float32, len(objects))
	room := size.Height - 2*margin - gap*float32(len(objects)-2)
	for i, object := range objects {
		switch i {
		case sceneRow, troubleRow:
			continue
		case saidRow:
			heights[i] = max(r.page.said.HeightFor(inner), r.page.trouble.HeightFor(inner), r.line())
		default:
			heights[i] = object.MinSize().Height
		}
		room -= heights[i]
	}
	heights[sceneRow] = max(room, 1)
	top := margin
	for i, object := range objects {
		if i == troubleRow {
			put(object, objects[saidRow].Position(), objects[saidRow].Size())
			continue
		}
		put(object, fyne.NewPos(margin, top), fyne.NewSize(inner, heights[i]))
		top += heights[i] + gap
	}
}

// line is the height of a line of text with a sign.
func (r *rows) line() float32 {
	text := fyne.MeasureText("Mg", r.page.theme.Size(theme.SizeNameText), fyne.TextStyle{}).Height
	return max(text, r.page.trouble.signSize())
}

// MinSize is part of fyne.Layout.
func (r *rows) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(1, 1) }

// bar puts buttons beside each other: as many as given at the left, the others at the right.
type bar struct {
	gap  func() float32
	left int
}

// Layout is part of fyne.Layout.
func (b *bar) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	x := float32(0)
	for i, object := range objects {
		if i == b.left {
			x = size.Width - b.width(objects[i:])
		}
		if object.Visible() {
			width := object.MinSize().Width
			put(object, fyne.NewPos(x, 0), fyne.NewSize(width, size.Height))
			x += width + b.gap()
		}
	}
}

// width is that of the objects that are seen, with the gaps between them.
func (b *bar) width(objects []fyne.CanvasObject) (width float32) {
	for _, object := range objects {
		if object.Visible() {
			width += object.MinSize().Width + b.gap()
		}
	}
	return max(width-b.gap(), 0)
}

// MinSize is part of fyne.Layout. The height is that of all, seen or not, so that no row
// moves when one is shown.
func (b *bar) MinSize(objects []fyne.CanvasObject) fyne.Size {
	height := float32(0)
	for _, object := range objects {
		height = max(height, object.MinSize().Height)
	}
	return fyne.NewSize(b.width(objects), height)
}

// titled puts tools at the right and leaves all other room to the title.
type titled struct{ gap func() float32 }

// Layout is part of fyne.Layout.
func (t *titled) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	title, tools := objects[0], objects[1]
	width := tools.MinSize().Width
	put(tools, fyne.NewPos(size.Width-width, 0), fyne.NewSize(width, size.Height))
	put(title, fyne.NewPos(0, 0), fyne.NewSize(max(size.Width-width-2*t.gap(), 1), size.Height))
}

// MinSize is part of fyne.Layout.
func (t *titled) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(1, max(objects[0].MinSize().Height, objects[1].MinSize().Height))
}

// besides puts the column beside the stage.
type besides struct{ page *page }

// Layout is part of fyne.Layout.
func (b *besides) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	width := min(b.page.aside.width(), size.Width/2)
	left := max(size.Width-width-2*b.page.gap(), 1)
	put(objects[0], fyne.NewPos(0, 0), fyne.NewSize(left, size.Height))
	put(objects[1], fyne.NewPos(size.Width-width, 0), fyne.NewSize(width, size.Height))
}

// MinSize is part of fyne.Layout.
func (b *besides) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(1, 1) }

// column stacks what is beside the stage. Where there is no room for all of it first the
// hint gives way and then the words above the lists.
type column struct{ aside *aside }

// Layout is part of fyne.Layout.
func (c *column) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	a, gap := c.aside, c.aside.page.gap()
	for _, group := range [][]fyne.CanvasObject{{a.hint}, {a.besideWord, a.viewWord}} {
		for _, object := range group {
			show(object, true)
		}
	}
	for _, group := range [][]fyne.CanvasObject{{a.hint}, {a.besideWord, a.viewWord}} {
		if c.height(objects, size.Width) <= size.Height {
			break
		}
		for _, object := range group {
			show(object, false)
		}
	}
	top := float32(0)
	for _, object := range objects {
		if object.Visible() {
			height := heightOf(object, size.Width)
			put(object, fyne.NewPos(0, top), fyne.NewSize(size.Width, height))
			top += height + gap
		}
	}
}

func (c *column) height(objects []fyne.CanvasObject, width float32) (height float32) {
	for _, object := range objects {
		if object.Visible() {
			height += heightOf(object, width) + c.aside.page.gap()
		}
	}
	return height - c.aside.page.gap()
}

// heightOf is the height that an object takes at a width.
func heightOf(object fyne.CanvasObject, width float32) float32 {
	if text, is := object.(tall); is {
		return text.HeightFor(width)
	}
	return object.MinSize().Height
}

// show shows an object, or hides it.
func show(object fyne.CanvasObject, wanted bool) {
	switch {
	case wanted && !object.Visible():
		object.Show()
	case !wanted && object.Visible():
		object.Hide()
	}
}

// MinSize is part of fyne.Layout.
func (c *column) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(1, 1) }

// thirds puts the dials beside each other, well apart.
type thirds struct{}

// Layout is part of fyne.Layout.
func (thirds) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	count := float32(len(objects))
	gap := size.Width / 24
	width := (size.Width - gap*(count-1)) / count
	for i, object := range objects {
		put(object, fyne.NewPos(float32(i)*(width+gap), 0), fyne.NewSize(width, size.Height))
	}
}

// MinSize is part of fyne.Layout.
func (thirds) MinSize(objects []fyne.CanvasObject) (least fyne.Size) {
	for _, object := range objects {
		least = least.Max(object.MinSize())
	}
	return fyne.NewSize(1, least.Height)
}
