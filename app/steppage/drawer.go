package steppage

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
)

// Drawer holds entries under a head that opens and closes them: an arrow, a title, and
// in short what is in it.
type Drawer struct {
	*entry.Column
	head *drawerHead
	body *entry.Column
}

// NewDrawer returns a closed drawer of entries with so many paddings between them. Title
// and help are translated; explain is told when the head gets the focus.
func NewDrawer(title, help string, explain func(entry.Explained), gaps float32, slots []*Slot) *Drawer {
	d := &Drawer{body: entry.NewColumn(gaps)}
	for _, s := range slots {
		d.body.Add(s)
	}
	d.head = newDrawerHead(title, help, func() { d.Open(!d.body.Visible()) }, explain)
	d.Column = entry.NewColumn(1.5, d.head, d.body)
	d.body.Hide()
	return d
}

// Open opens the drawer, or closes it.
func (d *Drawer) Open(on bool) {
	if Show(d.body, on) {
		d.head.turn(on)
		d.Grown()
	}
}

// Say shows in short what is in the drawer.
func (d *Drawer) Say(note string) {
	if note != d.head.note.Text() {
		d.head.note.SetText(note)
		d.head.Refresh()
		d.Grown()
	}
}

// drawerHead is the line that opens and closes.
type drawerHead struct {
	plate
	title, note *entry.Text
	help        string
	arrow       *widget.Icon
}

func newDrawerHead(title, help string, press func(), gained func(entry.Explained)) *drawerHead {
	h := &drawerHead{
		title: entry.NewText(title, entry.Heading), note: entry.NewText("", entry.Muted), help: help, arrow: widget.NewIcon(theme.MenuExpandIcon()),
	}
	h.press, h.gained = press, func() { gained(h) }
	h.lay(h)
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

// Explanation says what is in the drawer.
func (h *drawerHead) Explanation() (title, text string) { return h.title.Text(), h.help }

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

// CreateRenderer is part of fyne.Widget.
func (h *drawerHead) CreateRenderer() fyne.WidgetRenderer {
	h.colour()
	return &plateRenderer{&h.plate, h.layout, h.HeightFor, []fyne.CanvasObject{h.arrow, h.title, h.note}}
}

func (h *drawerHead) layout(size fyne.Size) {
	padding, arrow := h.padding(), h.arrowSize()
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
