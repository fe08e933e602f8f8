package sheetpicture

import (
	"image/color"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
)

// Key is a line of the legend to a FormPicture: the colour with the number on it, and the
// words.
type Key struct {
	widget.BaseWidget
	item   int
	box    *canvas.Rectangle
	number *canvas.Text
	text   *entry.Text
}

// NewKey returns a line without words yet.
func NewKey() *Key {
	k := &Key{box: canvas.NewRectangle(color.Transparent), number: canvas.NewText("", nil), text: entry.NewText("", entry.Small)}
	k.number.Alignment, k.number.TextStyle.Bold = fyne.TextAlignCenter, true
	k.ExtendBaseWidget(k)
	return k
}

// Set changes which item, counted from 0, the line stands for, and its words.
func (k *Key) Set(item int, text string) {
	k.item, k.number.Text = item, strconv.Itoa(item+1)
	k.text.SetText(text)
	k.Refresh()
}

func (k *Key) boxSize() fyne.Size {
	height := fyne.MeasureText("Mg", k.Theme().Size(theme.SizeNameCaptionText), fyne.TextStyle{Bold: true}).Height
	return fyne.NewSize(1.6*height, height)
}

func (k *Key) left() float32 {
	return k.boxSize().Width + 2*k.Theme().Size(theme.SizeNamePadding)
}

// HeightFor returns the height at a width.
func (k *Key) HeightFor(width float32) float32 {
	return max(k.boxSize().Height, k.text.HeightFor(width-k.left()))
}

// CreateRenderer is part of fyne.Widget.
func (k *Key) CreateRenderer() fyne.WidgetRenderer {
	r := &keyRenderer{k}
	r.colour()
	return r
}

type keyRenderer struct{ k *Key }

func (r *keyRenderer) colour() {
	look := lookOf(r.k.Theme())
	r.k.box.FillColor, r.k.box.StrokeColor, r.k.box.StrokeWidth = itemColour(&look, r.k.item), look.ink, 1
	r.k.number.Color, r.k.number.TextSize = look.ink, r.k.Theme().Size(theme.SizeNameCaptionText)
}

func (r *keyRenderer) Layout(size fyne.Size) {
	box := r.k.boxSize()
	r.k.box.Resize(box)
	r.k.number.Resize(box)
	r.k.text.Move(fyne.NewPos(r.k.left(), 0))
	r.k.text.Resize(fyne.NewSize(size.Width-r.k.left(), r.k.text.HeightFor(size.Width-r.k.left())))
}

func (r *keyRenderer) MinSize() fyne.Size {
	return fyne.NewSize(r.k.left()+10*r.k.Theme().Size(theme.SizeNamePadding), r.k.HeightFor(r.k.Size().Width))
}

func (r *keyRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.k.box, r.k.number, r.k.text}
}
func (r *keyRenderer) Destroy() {}

func (r *keyRenderer) Refresh() {
	r.colour()
	for _, object := range r.Objects() {
		object.Refresh()
	}
	r.Layout(r.k.Size())
}
