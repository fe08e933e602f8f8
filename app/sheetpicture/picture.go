// Package sheetpicture shows press sheets in the colours of the window: a sheet with the
// blanks of one bag on it, and a form with the pieces of several bags.
//
// Everything here belongs to the goroutine of the window.
package sheetpicture

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
	"gussetwright/app/keyrelay"
	"gussetwright/app/paneview"
)

// Picture is a picture of a sheet with the blanks on it. It is painted at once: it takes
// less time than a frame of the screen. A click, or Enter, shows it larger.
type Picture struct {
	widget.BaseWidget

	art    Art
	artist artist
	shown  *canvas.Image
	ring   *canvas.Rectangle
	press  func()
	gained func(entry.Explained)
	large  enlarged
	least  fyne.Size // of an enlarged picture
}

// New returns a picture of no sheet yet. explain is told when it gets the focus.
func New(explain func(entry.Explained)) *Picture {
	p := newPicture(nil, explain)
	p.press = func() { p.large.open(p) }
	return p
}

func newPicture(press func(), gained func(entry.Explained)) *Picture {
	p := &Picture{shown: paneview.NewPicture(), ring: canvas.NewRectangle(color.Transparent), press: press, gained: gained}
	p.ring.Hide()
	p.ExtendBaseWidget(p)
	return p
}

// Set shows another sheet, in the enlarged picture too.
func (p *Picture) Set(art Art) {
	p.show(art)
	p.large.show(art)
}

func (p *Picture) show(art Art) {
	p.art = art
	p.paint()
}

// paint paints the picture for the present size.
func (p *Picture) paint() {
	density := paneview.Density(p)
	width, height := int(math.Round(float64(p.Size().Width)*density)), int(math.Round(float64(p.Size().Height)*density))
	if p.art.Plan == nil || width < 1 || height < 1 {
		return
	}
	th := p.Theme()
	size := theme.SizeNameCaptionText
	if p.least.Width > 0 {
		size = theme.SizeNameText
	}
	letter := float64(th.Size(size)) * density
	paneview.Swap(p.shown, p.artist.paint(p.art, lookOf(th), width, height, letter, density))
}

// HeightFor returns the height at a width. A sheet lies, as a rule, and its sides are
// about as 10 to 7.
func (p *Picture) HeightFor(width float32) float32 { return width * 0.74 }

// Tapped is part of fyne.Tappable.
func (p *Picture) Tapped(*fyne.PointEvent) { p.press() }

// Cursor tells that the picture can be clicked.
func (p *Picture) Cursor() desktop.Cursor { return desktop.PointerCursor }

// Explanation says what the picture shows.
func (p *Picture) Explanation() (title, text string) {
	return lang.L("Picture of the sheet"), lang.L("Every blank as it is cut, with an arrow to its top. What is hatched is waste, and the dashed line the part of the sheet that blanks may cover. A click shows it larger, Escape closes that.")
}

// FocusGained is part of fyne.Focusable.
func (p *Picture) FocusGained() {
	p.gained(p)
	p.ring.Hidden = false
	p.Refresh()
}

// FocusLost is part of fyne.Focusable.
func (p *Picture) FocusLost() {
	p.ring.Hidden = true
	p.Refresh()
}

// TypedRune is part of fyne.Focusable.
func (p *Picture) TypedRune(rune) {}

// TypedKey presses. Escape closes an enlarged picture.
func (p *Picture) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		p.press()
		return
	case fyne.KeyEscape:
		if p.least.Width > 0 {
			p.press()
		}
		return
	}
	keyrelay.ToWindow(p, key)
}

// CreateRenderer is part of fyne.Widget.
func (p *Picture) CreateRenderer() fyne.WidgetRenderer { return &pictureRenderer{p} }

type pictureRenderer struct{ p *Picture }

func (r *pictureRenderer) Layout(size fyne.Size) {
	r.p.shown.Resize(size)
	r.p.ring.Resize(size)
	r.p.paint()
}

func (r *pictureRenderer) MinSize() fyne.Size {
	if r.p.least.Width > 0 {
		return r.p.least
	}
	return fyne.NewSize(80, r.p.HeightFor(r.p.Size().Width))
}
func (r *pictureRenderer) Destroy() {}

func (r *pictureRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.p.shown, r.p.ring}
}

func (r *pictureRenderer) Refresh() {
	r.p.ring.StrokeColor = r.p.Theme().Color(theme.ColorNamePrimary, fyne.CurrentApp().Settings().ThemeVariant())
	r.p.ring.StrokeWidth = 1
	r.p.ring.Refresh()
	r.p.paint()
}
