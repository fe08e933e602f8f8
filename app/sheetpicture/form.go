package sheetpicture

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/paneview"
)

// FormPicture is a picture of a form, with each bag in a colour and with a number of its
// own.
type FormPicture struct {
	widget.BaseWidget
	art    FormArt
	artist formArtist
	shown  *canvas.Image
}

// NewFormPicture returns a picture of no form yet.
func NewFormPicture() *FormPicture {
	p := &FormPicture{shown: paneview.NewPicture()}
	p.ExtendBaseWidget(p)
	return p
}

// Set shows another form.
func (p *FormPicture) Set(art FormArt) {
	p.art = art
	p.paint()
}

// widest is the width of a picture; forms are looked at side by side in the mind.
const widest = 320

// HeightFor returns the height at a width.
func (p *FormPicture) HeightFor(width float32) float32 {
	s := &p.art.Sheet
	if s.Width <= 0 || s.Height <= 0 {
		return 0
	}
	return min(width, widest) * min(float32(s.Height/s.Width), 1.2)
}

func (p *FormPicture) paint() {
	density := paneview.Density(p)
	width, height := int(math.Round(float64(p.shown.Size().Width)*density)), int(math.Round(float64(p.shown.Size().Height)*density))
	if p.art.Form == nil || width < 1 || height < 1 {
		return
	}
	letter := float64(p.Theme().Size(theme.SizeNameText)) * density
	paneview.Swap(p.shown, p.artist.paintForm(p.art, lookOf(p.Theme()), width, height, letter, density))
}

// CreateRenderer is part of fyne.Widget.
func (p *FormPicture) CreateRenderer() fyne.WidgetRenderer { return &formPictureRenderer{p} }

type formPictureRenderer struct{ p *FormPicture }

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
