package entry

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Tall is an object whose height depends on the width it is given, as that of a
// text that wraps does.
type Tall interface {
	fyne.CanvasObject
	HeightFor(width float32) float32
}

// grower is an object that tells when its height changes by itself.
type grower interface{ OnGrow(func()) }

// Column stacks objects over each other, all as wide as the column and as high as
// they need to be. Hidden ones take no room.
type Column struct {
	widget.BaseWidget

	objects []fyne.CanvasObject
	gaps    float32 // between two objects, in paddings of the theme
	inset   float32 // left free on all sides, in paddings of the theme
	grow    func()
}

// NewColumn returns a column with so many paddings between its objects.
func NewColumn(gaps float32, objects ...fyne.CanvasObject) *Column {
	c := &Column{}
	c.fill(gaps, objects...)
	c.ExtendBaseWidget(c)
	return c
}

func (c *Column) fill(gaps float32, objects ...fyne.CanvasObject) {
	c.gaps = gaps
	for _, object := range objects {
		c.Add(object)
	}
}

// Add puts an object below the others. The caller lays the column out anew when it
// is on screen already.
func (c *Column) Add(object fyne.CanvasObject) {
	c.objects = append(c.objects, object)
	if child, ok := object.(grower); ok {
		child.OnGrow(c.Grown)
	}
}

// Objects returns what stands in the column, hidden or not.
func (c *Column) Objects() []fyne.CanvasObject { return c.objects }

// SetInset leaves so many paddings free on all sides.
func (c *Column) SetInset(paddings float32) { c.inset = paddings }

// OnGrow sets what is called when the height of the column has changed.
func (c *Column) OnGrow(grow func()) { c.grow = grow }

// Grown says that an object has become higher or lower, or was hidden or shown.
func (c *Column) Grown() {
	if c.grow != nil {
		c.grow()
		return
	}
	c.Arrange()
}

// Arrange puts the objects in their places for the present width.
func (c *Column) Arrange() { c.arrange(c.Size().Width) }

func (c *Column) arrange(width float32) {
	gap, inset := c.gap(), c.margin()
	top := inset
	width -= 2 * inset
	for _, object := range c.objects {
		if !object.Visible() {
			continue
		}
		height := heightFor(object, width)
		object.Move(fyne.NewPos(inset, top))
		object.Resize(fyne.NewSize(width, height))
		if inner, ok := object.(interface{ Arrange() }); ok {
			inner.Arrange()
		}
		if height > 0 {
			top += height + gap
		}
	}
}

// HeightFor returns the height of the column at a width.
func (c *Column) HeightFor(width float32) float32 {
	gap, inset, sum := c.gap(), c.margin(), float32(0)
	width -= 2 * inset
	for _, object := range c.objects {
		if !object.Visible() {
			continue
		}
		if height := heightFor(object, width); height > 0 {
			sum += height + gap
		}
	}
	return max(sum-gap, 0) + 2*inset
}

func (c *Column) gap() float32 { return c.gaps * c.Theme().Size(theme.SizeNamePadding) }

func (c *Column) margin() float32 { return c.inset * c.Theme().Size(theme.SizeNamePadding) }

func heightFor(object fyne.CanvasObject, width float32) float32 {
	if tall, ok := object.(Tall); ok {
		return tall.HeightFor(width)
	}
	return object.MinSize().Height
}

// MinSize returns the least width, and the height at the present width.
func (c *Column) MinSize() fyne.Size {
	least := float32(0)
	for _, object := range c.objects {
		if object.Visible() {
			least = max(least, object.MinSize().Width)
		}
	}
	least += 2 * c.margin()
	return fyne.NewSize(least, c.HeightFor(max(c.Size().Width, least)))
}

// CreateRenderer is part of fyne.Widget.
func (c *Column) CreateRenderer() fyne.WidgetRenderer { return &columnRenderer{c} }

type columnRenderer struct{ c *Column }

func (r *columnRenderer) Layout(size fyne.Size)        { r.c.arrange(size.Width) }
func (r *columnRenderer) MinSize() fyne.Size           { return r.c.MinSize() }
func (r *columnRenderer) Objects() []fyne.CanvasObject { return r.c.objects }
func (r *columnRenderer) Destroy()                     {}

// Refresh takes over a change of theme.
func (r *columnRenderer) Refresh() {
	for _, object := range r.c.objects {
		object.Refresh()
	}
	r.c.Arrange()
}
