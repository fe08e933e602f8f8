package steps

import (
	"fmt"
	"image/color"
	"math"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
	"gussetwright/app/paneview"
)

// formView shows a form: how often it is printed, its picture, and which bags the numbers
// stand for.
type formView struct {
	*entry.Column
	title   *entry.Text
	picture *formPicture
	legend  *entry.Column
	keys    []*legendKey
}

func newFormView() *formView {
	v := &formView{title: entry.NewText("", entry.Plain), picture: newFormPicture(), legend: entry.NewColumn(0.5)}
	v.Column = entry.NewColumn(1, v.title, v.picture, v.legend)
	return v
}

// set shows a form, counted from 0.
func (v *formView) set(art gangArt, number int) {
	title := fmt.Sprintf(lang.L("Form %d: %d sheets"), number+1, art.form.Run)
	if art.form.Run == 1 {
		title = fmt.Sprintf(lang.L("Form %d: one sheet"), number+1)
	}
	v.title.SetText(title)
	v.picture.set(art)
	counts := art.form.Counts(len(art.order.items))
	used := 0
	for item, n := range counts {
		if n == 0 {
			continue
		}
		if used == len(v.keys) {
			key := newLegendKey()
			v.keys = append(v.keys, key)
			v.legend.Add(key)
		}
		v.keys[used].set(item, fmt.Sprintf(lang.L("%s, %d on a sheet"), art.order.items[item].Name, n))
		used++
	}
	for i, key := range v.keys {
		show(key, i < used)
	}
}

// formPicture is the picture of a form.
type formPicture struct {
	widget.BaseWidget
	art    gangArt
	artist gangArtist
	shown  *canvas.Image
}

func newFormPicture() *formPicture {
	p := &formPicture{shown: paneview.NewPicture()}
	p.ExtendBaseWidget(p)
	return p
}

func (p *formPicture) set(art gangArt) {
	p.art = art
	p.paint()
}

// widest is the width of a picture; forms are looked at side by side in the mind.
const widest = 320

// HeightFor returns the height at a width.
func (p *formPicture) HeightFor(width float32) float32 {
	s := &p.art.sheet
	if s.Width <= 0 || s.Height <= 0 {
		return 0
	}
	return min(width, widest) * min(float32(s.Height/s.Width), 1.2)
}

func (p *formPicture) paint() {
	density := paneview.Density(p)
	width, height := int(math.Round(float64(p.shown.Size().Width)*density)), int(math.Round(float64(p.shown.Size().Height)*density))
	if p.art.form == nil || width < 1 || height < 1 {
		return
	}
	letter := float64(p.Theme().Size(theme.SizeNameText)) * density
	paneview.Swap(p.shown, p.artist.paintForm(p.art, lookOf(p.Theme()), width, height, letter, density))
}

// CreateRenderer is part of fyne.Widget.
func (p *formPicture) CreateRenderer() fyne.WidgetRenderer { return &formPictureRenderer{p} }

type formPictureRenderer struct{ p *formPicture }

func (r *formPictureRenderer) Layout(size fyne.Size) {
	r.p.shown.Resize(fyne.NewSize(min(size.Width, widest), size.Height))
	r.p.paint()
}

func (r *formPictureRenderer) MinSize() fyne.Size {
	return fyne.NewSize(80, r.p.HeightFor(r.p.Size().Width))
}

func (r *formPictureRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.p.shown} }
func (r *formPictureRenderer) Refresh()                     { r.p.paint() }
func (r *formPictureRenderer) Destroy()                     {}

// legendKey is a line of the legend: the colour with the number on it, and the words.
type legendKey struct {
	widget.BaseWidget
	item   int
	box    *canvas.Rectangle
	number *canvas.Text
	text   *entry.Text
}

func newLegendKey() *legendKey {
	k := &legendKey{box: canvas.NewRectangle(color.Transparent), number: canvas.NewText("", nil), text: entry.NewText("", entry.Small)}
	k.number.Alignment, k.number.TextStyle.Bold = fyne.TextAlignCenter, true
	k.ExtendBaseWidget(k)
	return k
}

func (k *legendKey) set(item int, text string) {
	k.item, k.number.Text = item, strconv.Itoa(item+1)
	k.text.SetText(text)
	k.Refresh()
}

func (k *legendKey) boxSize() fyne.Size {
	height := fyne.MeasureText("Mg", k.Theme().Size(theme.SizeNameCaptionText), fyne.TextStyle{Bold: true}).Height
	return fyne.NewSize(1.6*height, height)
}

func (k *legendKey) left() float32 {
	return k.boxSize().Width + 2*k.Theme().Size(theme.SizeNamePadding)
}

// HeightFor returns the height at a width.
func (k *legendKey) HeightFor(width float32) float32 {
	return max(k.boxSize().Height, k.text.HeightFor(width-k.left()))
}

// CreateRenderer is part of fyne.Widget.
func (k *legendKey) CreateRenderer() fyne.WidgetRenderer {
	r := &legendKeyRenderer{k}
	r.colour()
	return r
}

type legendKeyRenderer struct{ k *legendKey }

func (r *legendKeyRenderer) colour() {
	look := lookOf(r.k.Theme())
	r.k.box.FillColor, r.k.box.StrokeColor, r.k.box.StrokeWidth = itemColour(&look, r.k.item), look.ink, 1
	r.k.number.Color, r.k.number.TextSize = look.ink, r.k.Theme().Size(theme.SizeNameCaptionText)
}

func (r *legendKeyRenderer) Layout(size fyne.Size) {
	box := r.k.boxSize()
	r.k.box.Resize(box)
	r.k.number.Resize(box)
	r.k.text.Move(fyne.NewPos(r.k.left(), 0))
	r.k.text.Resize(fyne.NewSize(size.Width-r.k.left(), r.k.text.HeightFor(size.Width-r.k.left())))
}

func (r *legendKeyRenderer) MinSize() fyne.Size {
	return fyne.NewSize(r.k.left()+10*r.k.Theme().Size(theme.SizeNamePadding), r.k.HeightFor(r.k.Size().Width))
}

func (r *legendKeyRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.k.box, r.k.number, r.k.text}
}
func (r *legendKeyRenderer) Destroy() {}

func (r *legendKeyRenderer) Refresh() {
	r.colour()
	for _, object := range r.Objects() {
		object.Refresh()
	}
	r.Layout(r.k.Size())
}
