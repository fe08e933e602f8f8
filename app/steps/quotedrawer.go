package steps

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
	"gussetwright/app/keyrelay"
)

// drawer holds entries under a head that opens and closes them: an arrow, a title, and
// in short what is in it.
type drawer struct {
	*entry.Column
	head *drawerHead
	body *entry.Column
}

func newDrawer(title, help string, gaps float32, gained func(entry.Explained)) *drawer {
	d := &drawer{body: entry.NewColumn(gaps)}
	d.head = newDrawerHead(title, func() { d.open(!d.body.Visible()) })
	d.head.help, d.head.gained = help, gained
	d.Column = entry.NewColumn(1.5, d.head, d.body)
	d.body.Hide()
	return d
}

// open opens the drawer, or closes it.
func (d *drawer) open(on bool) {
	if show(d.body, on) {
		d.head.turn(on)
		d.Grown()
	}
}

// say shows in short what is in the drawer.
func (d *drawer) say(note string) {
	if note != d.head.note.Text() {
		d.head.note.SetText(note)
		d.head.Refresh()
		d.Grown()
	}
}

// drawerHead is the line that opens and closes.
type drawerHead struct {
	widget.BaseWidget

	title, note   *entry.Text
	help          string
	gained        func(entry.Explained)
	arrow         *widget.Icon
	press         func()
	over, focused bool
	ground, ring  *canvas.Rectangle
}

func newDrawerHead(title string, press func()) *drawerHead {
	h := &drawerHead{
		title: entry.NewText(title, entry.Heading), note: entry.NewText("", entry.Muted), arrow: widget.NewIcon(theme.MenuExpandIcon()),
		press: press, ground: canvas.NewRectangle(color.Transparent), ring: canvas.NewRectangle(color.Transparent),
	}
	h.ExtendBaseWidget(h)
	return h
}

// turn shows by the arrow whether the drawer is open.
func (h *drawerHead) turn(open bool) {
	icon := theme.MenuExpandIcon()
	if open {
		icon = theme.MenuDropDownIcon()
	}
	h.arrow.SetResource(icon)
}

// Tapped is part of fyne.Tappable.
func (h *drawerHead) Tapped(*fyne.PointEvent) { h.press() }

// Cursor tells that the head can be clicked.
func (h *drawerHead) Cursor() desktop.Cursor { return desktop.PointerCursor }

// MouseIn is part of desktop.Hoverable.
func (h *drawerHead) MouseIn(*desktop.MouseEvent) { h.light(true, h.focused) }

// MouseMoved is part of desktop.Hoverable.
func (h *drawerHead) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is part of desktop.Hoverable.
func (h *drawerHead) MouseOut() { h.light(false, h.focused) }

// FocusGained is part of fyne.Focusable.
func (h *drawerHead) FocusGained() {
	h.light(h.over, true)
	h.gained(h)
}

// Explanation says what is in the drawer.
func (h *drawerHead) Explanation() (title, text string) { return h.title.Text(), h.help }

// FocusLost is part of fyne.Focusable.
func (h *drawerHead) FocusLost() { h.light(h.over, false) }

// TypedRune is part of fyne.Focusable.
func (h *drawerHead) TypedRune(rune) {}

// TypedKey opens and closes.
func (h *drawerHead) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		h.press()
		return
	}
	keyrelay.ToWindow(h, key)
}

func (h *drawerHead) light(over, focused bool) {
	h.over, h.focused = over, focused
	h.colour()
	h.ground.Refresh()
	h.ring.Refresh()
}

func (h *drawerHead) padding() float32 { return h.Theme().Size(theme.SizeNamePadding) }

func (h *drawerHead) arrowSize() float32 { return h.Theme().Size(theme.SizeNameText) * 1.3 }

// beside tells whether title and note share a line.
func (h *drawerHead) beside(width float32) bool {
	return h.arrowSize()+h.title.OneLine()+h.note.OneLine()+6*h.padding() <= width
}

// HeightFor returns the height at a width.
func (h *drawerHead) HeightFor(width float32) float32 {
	room := width - h.arrowSize() - 3*h.padding()
	height := h.title.HeightFor(room)
	if !h.beside(width) {
		height += h.note.HeightFor(room)
	}
	return height + 2*h.padding()
}

func (h *drawerHead) colour() {
	th, variant := h.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	h.ground.FillColor, h.ground.CornerRadius = th.Color(theme.ColorNameButton, variant), th.Size(theme.SizeNameInputRadius)
	h.ring.FillColor = color.Transparent
	if h.over {
		h.ring.FillColor = th.Color(theme.ColorNameHover, variant)
	}
	h.ring.CornerRadius, h.ring.StrokeWidth, h.ring.StrokeColor = h.ground.CornerRadius, 0, th.Color(theme.ColorNamePrimary, variant)
	if h.focused {
		h.ring.StrokeWidth = 2
	}
}

// CreateRenderer is part of fyne.Widget.
func (h *drawerHead) CreateRenderer() fyne.WidgetRenderer {
	h.colour()
	return &drawerHeadRenderer{h}
}

type drawerHeadRenderer struct{ h *drawerHead }

func (r *drawerHeadRenderer) Layout(size fyne.Size) {
	h, padding, arrow := r.h, r.h.padding(), r.h.arrowSize()
	h.ground.Resize(size)
	h.ring.Resize(size)
	h.arrow.Resize(fyne.NewSquareSize(arrow))
	left, room := arrow+2*padding, size.Width-arrow-3*padding
	titleHeight := h.title.HeightFor(room)
	h.arrow.Move(fyne.NewPos(padding, padding+(titleHeight-arrow)/2))
	h.title.Move(fyne.NewPos(left, padding))
	h.title.Resize(fyne.NewSize(room, titleHeight))
	if h.beside(size.Width) {
		// A whole pixel more keeps rounding from breaking the line.
		width := h.note.OneLine() + 1
		height := h.note.HeightFor(width)
		h.note.Move(fyne.NewPos(size.Width-2*padding-width, padding+(titleHeight-height)*0.6))
		h.note.Resize(fyne.NewSize(width, height))
		return
	}
	h.note.Move(fyne.NewPos(left, padding+titleHeight))
	h.note.Resize(fyne.NewSize(room, h.note.HeightFor(room)))
}

func (r *drawerHeadRenderer) MinSize() fyne.Size {
	return fyne.NewSize(20*r.h.padding(), r.h.HeightFor(r.h.Size().Width))
}

func (r *drawerHeadRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.h.ground, r.h.arrow, r.h.title, r.h.note, r.h.ring}
}
func (r *drawerHeadRenderer) Destroy() {}

func (r *drawerHeadRenderer) Refresh() {
	r.h.colour()
	for _, object := range r.Objects() {
		object.Refresh()
	}
	r.Layout(r.h.Size())
	canvas.Refresh(r.h)
}
