package blankpane

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"gussetwright/geometry/blank"
)

// laid returns the blank that is seen: the last that could be drawn.
func (p *Pane) laid() *blank.Blank { return &p.state.Snapshot.Blank }

// draw orders a picture of what is to be seen now, and moves what lies over it.
func (p *Pane) draw() {
	if next, seen := p.order(); seen {
		p.request(next)
	}
	p.surface.arrange()
	p.bar.show()
}

// drawNow paints at once, for a size that no picture has yet.
func (p *Pane) drawNow() {
	if next, seen := p.order(); seen {
		p.show(p.artist.paint(next))
	}
	p.surface.arrange()
	p.bar.show()
}

// order returns the next order, unless there is no room for a picture.
func (p *Pane) order() (next order, seen bool) {
	size := p.surface.Size()
	density := p.density()
	width, height := int(math.Round(float64(size.Width)*density)), int(math.Round(float64(size.Height)*density))
	if width < 1 || height < 1 {
		return order{}, false
	}
	p.ordered++
	return order{
		number: p.ordered, laid: p.laid(), width: width, height: height, density: density,
		view: p.view, layers: p.layers, panel: p.look.Panel(), unit: p.set.Unit(),
		dark: isDark(), faded: p.state.Err != nil,
	}, true
}

// show puts a picture into the pane, unless a newer one is there.
func (p *Pane) show(made picture) {
	if p.closed || made.number < p.shown {
		p.artist.giveBack(made.pixels)
		return
	}
	p.shown = made.number
	p.artist.giveBack(p.surface.swap(made.pixels))
}

// density returns how many pixels of the screen a pixel of fyne is wide.
func (p *Pane) density() float64 {
	on := fyne.CurrentApp().Driver().CanvasForObject(p.surface)
	if on == nil {
		return 1
	}
	const far = 1000 // enough for the rounding to whole pixels not to count
	x, _ := on.PixelCoordinateForPosition(fyne.NewPos(far, 0))
	if x <= 0 {
		return 1
	}
	return float64(x) / far
}

// isDark tells whether the window is dark: by the colour behind its text, as the
// user may have chosen against the desktop.
func isDark() bool {
	grey := color.GrayModel.Convert(theme.Color(theme.ColorNameBackground)).(color.Gray)
	return grey.Y < 128
}

// Pictures returns the number of the last picture that was ordered and of the one
// that is shown, for measuring how fast the pane follows.
func (p *Pane) Pictures() (ordered, shown int) { return p.ordered, p.shown }
