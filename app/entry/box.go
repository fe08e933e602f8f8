package entry

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// box is a box to tick that tells when it gets the focus. A long label goes on in
// further lines below the first.
type box struct {
	widget.Check
	gained func()
	words  ruler // of the label
}

func newBox(label string, turned func(bool), gained func()) *box {
	b := &box{gained: gained}
	b.Text, b.OnChanged = label, turned
	b.ExtendBaseWidget(b)
	return b
}

// FocusGained tells the owner.
func (b *box) FocusGained() {
	b.Check.FocusGained()
	b.gained()
}

// measure returns the size of a text on one line of the label.
func (b *box) measure(text string) fyne.Size {
	return fyne.MeasureText(text, b.Theme().Size(theme.SizeNameText), fyne.TextStyle{})
}

// labelAt is where the toolkit begins a label behind the sign.
func (b *box) labelAt() fyne.Position {
	th := b.Theme()
	inner := th.Size(theme.SizeNameInnerPadding)
	return fyne.NewPos(th.Size(theme.SizeNameInlineIcon)+inner+2*th.Size(theme.SizeNameInputBorder), inner)
}

// lines breaks the label for a width of the box; 0 stands for enough.
func (b *box) lines(width float32) []string {
	room := float32(0)
	if width > 0 {
		room = max(width-b.labelAt().X, 1)
	}
	if letters := b.Theme().Size(theme.SizeNameText); b.words.text != b.Text || b.words.letters != letters {
		b.words = measured(b.Text, letters, func(text string) float32 { return b.measure(text).Width })
	}
	return b.words.lines(room)
}

// HeightFor returns the height at a width.
func (b *box) HeightFor(width float32) float32 {
	return 2*b.labelAt().Y + float32(max(len(b.lines(width)), 1))*b.measure("Mg").Height
}

// MinSize leaves the width to the column.
func (b *box) MinSize() fyne.Size {
	size := b.Check.MinSize() // where the box is tapped
	return fyne.NewSize(min(size.Width, 4*b.HeightFor(0)), size.Height)
}

// CreateRenderer is part of fyne.Widget.
func (b *box) CreateRenderer() fyne.WidgetRenderer {
	r := &boxRenderer{WidgetRenderer: b.Check.CreateRenderer(), box: b}
	for _, object := range r.WidgetRenderer.Objects() {
		if label, is := object.(*canvas.Text); is {
			r.first = label
		}
	}
	return r
}

// boxRenderer adds to the sign and the line of the toolkit what more lines there are.
type boxRenderer struct {
	fyne.WidgetRenderer
	box   *box
	first *canvas.Text
	more  []*canvas.Text
}

func (r *boxRenderer) Layout(size fyne.Size) {
	lines := r.box.lines(size.Width)
	r.more = r.more[:0]
	for i, text := range lines {
		if i == 0 {
			r.first.Text = text
			continue
		}
		line := canvas.NewText(text, r.first.Color)
		line.TextSize = r.first.TextSize
		r.more = append(r.more, line)
	}
	height, at := r.box.measure("Mg").Height, r.box.labelAt()
	r.WidgetRenderer.Layout(size.SubtractWidthHeight(0, float32(len(r.more))*height))
	for i, line := range r.more {
		line.Move(at.AddXY(0, float32(i+1)*height))
		line.Resize(fyne.NewSize(size.Width-at.X, height))
	}
	r.box.MinSize()
}

// MinSize returns the room that sign and label take at the present width.
func (r *boxRenderer) MinSize() fyne.Size {
	width := r.box.Size().Width
	return fyne.NewSize(r.WidgetRenderer.MinSize().Width, r.box.HeightFor(width))
}

func (r *boxRenderer) Objects() []fyne.CanvasObject {
	objects := r.WidgetRenderer.Objects()
	objects = objects[:len(objects):len(objects)]
	for _, line := range r.more {
		objects = append(objects, line)
	}
	return objects
}

// Refresh takes over a change of theme.
func (r *boxRenderer) Refresh() {
	r.WidgetRenderer.Refresh()
	r.Layout(r.box.Size())
}
