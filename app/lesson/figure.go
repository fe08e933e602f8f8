package lesson

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"gussetwright/app/latest"
	"gussetwright/app/paneview"
	"gussetwright/render/solid"
)

// Samples along each side of a pixel.
const (
	draft = 1
	fine  = 2
)

// order asks for a picture.
type order struct {
	number        int // later ones have higher numbers
	course        *course
	at            place
	width, height int     // pixels of the screen
	density       float64 // pixels of the screen to a pixel of fyne
	samples       int
	faded         bool    // the bag is out of date
	bare          bool    // without artwork
	reverse       bool    // the blank lies with its reverse up
	letter        float64 // height of the lettering of the blank, in pixels of the screen
	top           float64 // pixels of the screen that are left free above the blank
	dark          bool    // the window is
	camera        solid.Camera
	look          solid.Look
}

// made is what an order came to.
type made struct {
	order
	pixels *image.RGBA
}

// artist makes the pictures of a figure. It may be asked from several goroutines.
type artist interface {
	paint(order) *image.RGBA
	giveBack(*image.RGBA) // takes a picture that is shown no longer, to be drawn over
}

// figure is a picture that is drawn elsewhere and comes onto the screen when it is there.
type figure struct {
	picture *canvas.Image
	artist  artist
	worker  *latest.Worker[order, made]
	request func(order)  // has an order drawn, now or soon
	later   func(func()) // does something on the goroutine of the window
	settled func(made)   // told when a picture is shown and none is on its way
	ordered int          // the number of the last order
	shown   int          // the number of the order whose picture is seen
	closed  bool
}

func newFigure(artist artist, settled func(made)) *figure {
	f := &figure{picture: paneview.NewPicture(), artist: artist, settled: settled, later: fyne.Do}
	f.worker = latest.New(f.drawn, func(m made) { f.later(func() { f.show(m) }) })
	f.request = f.worker.Order
	return f
}

func (f *figure) drawn(o order) made { return made{o, f.artist.paint(o)} }

// draw orders a picture in the size of the figure, where that has one. Until it comes the
// last is seen in its own proportions.
func (f *figure) draw(o order) {
	size := f.picture.Size()
	o.density = paneview.Density(f.picture)
	o.width, o.height = int(math.Round(float64(size.Width)*o.density)), int(math.Round(float64(size.Height)*o.density))
	if f.closed || o.width < 1 || o.height < 1 {
		return
	}
	f.ordered++
	o.number = f.ordered
	if shown := f.picture.Image; shown != nil && shown.Bounds().Size() != image.Pt(o.width, o.height) {
		paneview.Outgrown(f.picture)
	}
	f.request(o)
}

// clear shows nothing, until another picture is drawn.
func (f *figure) clear() {
	f.ordered++
	f.shown = f.ordered // so that one that is under way does not come
	f.artist.giveBack(paneview.Clear(f.picture))
}

// show puts a picture onto the screen, unless a newer one is there.
func (f *figure) show(m made) {
	if f.closed || m.number < f.shown {
		f.artist.giveBack(m.pixels)
		return
	}
	f.shown = m.number
	f.artist.giveBack(paneview.Swap(f.picture, m.pixels))
	if m.number == f.ordered {
		f.settled(m)
	}
}

func (f *figure) close() {
	f.closed = true
	f.worker.Close()
}
