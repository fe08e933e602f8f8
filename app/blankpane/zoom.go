package blankpane

import (
	"fyne.io/fyne/v2"

	"gussetwright/geometry"
)

// usualDensity is how many pixels of fyne a millimetre is wide on a screen of 96
// dots per inch, the usual one. What screens tell about their size is too often
// wrong to be better.
const usualDensity = 96 / 25.4

// panStep is how far an arrow key pushes the paper, in pixels.
const panStep = 60

// setView changes what is seen.
func (p *Pane) setView(v view) {
	p.view, p.fitted = v, false
	p.arrange()
}

// Fit shows the whole blank, and keeps it whole as it changes.
func (p *Pane) Fit() {
	p.fitted = true
	p.fit()
	p.draw()
}

func (p *Pane) fit() {
	size := p.surface.Size()
	if size.Width >= 1 && size.Height >= 1 {
		p.view = p.view.fitted(p.laid(), float64(size.Width), float64(size.Height)-p.surface.overlay.scale.height())
		p.arrange()
	}
}

// ZoomIn shows the middle of the pane larger.
func (p *Pane) ZoomIn() { p.zoomTo(p.middle(), p.view.scale*zoomStep) }

// ZoomOut shows the middle of the pane smaller.
func (p *Pane) ZoomOut() { p.zoomTo(p.middle(), p.view.scale/zoomStep) }

// TrueSize shows the blank as large as it is, on a screen of usual density.
func (p *Pane) TrueSize() { p.zoomTo(p.middle(), usualDensity) }

// Percent returns how large the blank is seen, in percent of its true size on a
// screen of usual density.
func (p *Pane) Percent() float64 { return 100 * p.view.scale / usualDensity }

// zoomTo changes the scale; what is seen at the pixel stays there.
func (p *Pane) zoomTo(pixel geometry.Vec2, scale float64) {
	p.setView(p.view.zoomed(p.laid(), pixel, scale))
	p.draw()
}

// pan pushes the paper by some pixels.
func (p *Pane) pan(by geometry.Vec2) {
	p.setView(p.view.moved(by))
	p.draw()
}

// middle returns the pixel in the middle of the pane.
func (p *Pane) middle() geometry.Vec2 {
	size := p.surface.Size()
	return geometry.Vec2{X: float64(size.Width) / 2, Y: float64(size.Height) / 2}
}

// PositionOf returns where a point of a piece is seen, from the upper left corner of
// the pane.
func (p *Pane) PositionOf(piece int, at geometry.Vec2) fyne.Position {
	pixel := p.view.screen(p.desk.at(piece, at))
	return p.surface.Position().AddXY(float32(pixel.X), float32(pixel.Y))
}
