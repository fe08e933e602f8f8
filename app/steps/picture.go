package steps

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

// picture is a picture of the sheet with the blanks on it. It is painted at once: it
// takes less time than a frame of the screen. A click, or Enter, calls press.
type picture struct {
	widget.BaseWidget

	art    sheetArt
	artist sheetArtist
	shown  *canvas.Image
	ring   *canvas.Rectangle
	press  func()
	gained func(entry.Explained)
	least  fyne.Size // of an enlarged picture
}

func newPicture(press func(), gained func(entry.Explained)) *picture {
	p := &picture{shown: paneview.NewPicture(), ring: canvas.NewRectangle(color.Transparent), press: press, gained: gained}
	p.ring.Hide()
	p.ExtendBaseWidget(p)
	return p
}

// set shows another sheet.
func (p *picture) set(art sheetArt) {
	p.art = art
	p.paint()
}

// paint paints the picture for the present size.
func (p *picture) paint() {
	density := paneview.Density(p)
	width, height := int(math.Round(float64(p.Size().Width)*density)), int(math.Round(float64(p.Size().Height)*density))
	if p.art.plan == nil || width < 1 || height < 1 {
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
func (p *picture) HeightFor(width float32) float32 { return width * 0.74 }

// Tapped is part of fyne.Tappable.
func (p *picture) Tapped(*fyne.PointEvent) { p.press() }

// Cursor tells that the picture can be clicked.
func (p *picture) Cursor() desktop.Cursor { return desktop.PointerCursor }

// Explanation says what the picture shows.
func (p *picture) Explanation() (title, text string) {
	return lang.L("Picture of the sheet"), lang.L("Every blank as it is cut, with an arrow to its top. What is hatched is waste, and the dashed line the part of the sheet that blanks may cover. A click shows it larger, Escape closes that.")
}

// FocusGained is part of fyne.Focusable.
func (p *picture) FocusGained() {
	p.gained(p)
	p.ring.Hidden = false
	p.Refresh()
}

// FocusLost is part of fyne.Focusable.
func (p *picture) FocusLost() {
	p.ring.Hidden = true
	p.Refresh()
}

// TypedRune is part of fyne.Focusable.
func (p *picture) TypedRune(rune) {}

// TypedKey presses. Escape closes an enlarged picture.
func (p *picture) TypedKey(key *fyne.KeyEvent) {
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
func (p *picture) CreateRenderer() fyne.WidgetRenderer { return &pictureRenderer{p} }

type pictureRenderer struct{ p *picture }

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
