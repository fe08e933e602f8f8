package lesson

import (
	"image/color"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
)

// message says something to the people in the room. It lies over the pictures, so that
// nothing moves when it comes or goes.
type message struct {
	widget.BaseWidget
	view   *View
	ground *canvas.Rectangle
	text   *entry.Text
	open   *button // the file that was written
	folder *button // that it lies in
	close  *button
}

func newMessage(v *View) *message {
	m := &message{view: v, ground: canvas.NewRectangle(color.Transparent), text: entry.NewText("", noteStyle)}
	m.open = newButton(v, lang.L("Open"), theme.FileIcon(), func() { v.around.Open(v.wrote) })
	m.folder = newButton(v, lang.L("Open folder"), theme.FolderOpenIcon(), func() { v.around.Open(filepath.Dir(v.wrote)) })
	m.close = newButton(v, "", theme.CancelIcon(), func() { v.Say("", "") }).quiet()
	m.ExtendBaseWidget(m)
	m.Hide()
	return m
}

// show shows what the view says.
func (m *message) show() {
	m.text.SetText(m.view.said)
	setVisible(m.open, m.view.wrote != "")
	setVisible(m.folder, m.view.wrote != "")
	setVisible(m, m.view.said != "")
	m.lay(m.Size())
}

func (m *message) padding() float32 { return m.Theme().Size(theme.SizeNamePadding) }

// heightFor is the height at a width.
func (m *message) heightFor(width float32) float32 {
	tall := max(m.text.HeightFor(m.textWidth(width)), m.close.MinSize().Height)
	if m.open.Visible() {
		tall += m.open.MinSize().Height + m.padding()
	}
	return tall + 2*m.padding()
}

func (m *message) textWidth(width float32) float32 {
	return max(width-5*m.padding()-m.close.MinSize().Width, 1)
}

// lay puts the words above the buttons, and the one that closes beside the words.
func (m *message) lay(size fyne.Size) {
	pad := m.padding()
	m.ground.Resize(size)
	put(m.text, 2*pad, pad, m.textWidth(size.Width), m.text.HeightFor(m.textWidth(size.Width)))
	least := m.close.MinSize()
	put(m.close, size.Width-least.Width-pad, pad, least.Width, least.Height)
	x := 2 * pad
	for _, b := range []*button{m.open, m.folder} {
		least := b.MinSize()
		put(b, x, size.Height-least.Height-pad, least.Width, least.Height)
		x += least.Width + pad
	}
}

// layMessage lays the message over the bag; where its words would have no room there, over
// the blank too, and then down to the end of the page, below counted from the panes.
func (p *page) layMessage(padding, room, below float32) {
	at, wide := p.view.bag.Position(), p.view.bag.Size().Width-2*padding
	tall := p.message.heightFor(wide)
	if tall > room-2*padding {
		wide += at.X - p.view.flat.Position().X
		at.X = p.view.flat.Position().X
		tall = min(p.message.heightFor(wide), below-2*padding)
	}
	put(p.message, at.X+padding, at.Y+max(room-tall-padding, padding), wide, tall)
}

// CreateRenderer is part of fyne.Widget.
func (m *message) CreateRenderer() fyne.WidgetRenderer {
	r := &messageRenderer{m}
	r.colour()
	return r
}

type messageRenderer struct{ m *message }

func (r *messageRenderer) colour() { colourGround(r.m.ground, r.m.Theme(), theme.ColorNamePrimary) }

// Layout is part of fyne.WidgetRenderer.
func (r *messageRenderer) Layout(size fyne.Size) { r.m.lay(size) }

// MinSize is part of fyne.WidgetRenderer.
func (r *messageRenderer) MinSize() fyne.Size { return fyne.NewSize(1, 1) }

// Destroy is part of fyne.WidgetRenderer.
func (r *messageRenderer) Destroy() {}

// Objects is part of fyne.WidgetRenderer.
func (r *messageRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.m.ground, r.m.text, r.m.open, r.m.folder, r.m.close}
}

// Refresh is part of fyne.WidgetRenderer.
func (r *messageRenderer) Refresh() {
	r.colour()
	for _, object := range r.Objects() {
		object.Refresh()
	}
	r.m.lay(r.m.Size())
}
