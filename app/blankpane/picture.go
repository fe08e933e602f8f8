package blankpane

import (
	"math"

	"gussetwright/app/appearance"
	"gussetwright/app/paneview"
	"gussetwright/geometry/blank"
)

// laid returns the blank that is seen: the last that could be drawn.
func (p *Pane) laid() *blank.Blank { return &p.state.Snapshot.Blank }

// draw orders a picture of what is to be seen now, and moves what lies over it. Of a
// bag that has just changed it is a draft that is there at once, and when nothing moves
// any more a fine one follows.
func (p *Pane) draw() {
	if next, seen := p.order(); seen {
		p.request(next)
	}
	p.surface.arrange()
	p.bar.show()
}

// Rest draws no pictures until Wake is called.
func (p *Pane) Rest() { p.worker.Rest() }

// Wake draws what was to be seen last while the pane rested.
func (p *Pane) Wake() { p.worker.Wake() }

// drawInSize paints for another size. The first picture is there at once; later ones come
// soon, as a change of the window brings one size after the other.
func (p *Pane) drawInSize() {
	if paneview.Outgrown(p.surface.picture) {
		p.draw()
		return
	}
	if next, seen := p.order(); seen {
		p.show(p.artist.paint(next))
	}
	p.surface.arrange()
	p.bar.show()
}

// order returns the next order, unless there is no room for a picture.
func (p *Pane) order() (next order, seen bool) {
	size := p.surface.Size()
	density := paneview.Density(p.surface)
	width, height := int(math.Round(float64(size.Width)*density)), int(math.Round(float64(size.Height)*density))
	if width < 1 || height < 1 {
		return order{}, false
	}
	p.ordered++
	return order{
		number: p.ordered, snapshot: p.state.Snapshot, width: width, height: height, density: density,
		view: p.view, layers: p.layers, panel: p.look.Panel(), unit: p.set.Unit(),
		dark: appearance.IsDark(), faded: p.state.Err != nil, draft: p.state.Dragging || p.state.Snapshot != p.painted,
	}, true
}

// show puts a picture into the pane, unless a newer one is there.
func (p *Pane) show(made picture) {
	if p.closed || made.number < p.shown {
		p.artist.giveBack(made.pixels)
		return
	}
	p.shown, p.painted = made.number, made.snapshot
	p.artist.giveBack(paneview.Swap(p.surface.picture, made.pixels))
	if !made.fine && made.number == p.ordered && !p.state.Dragging {
		p.draw()
	}
}

// Pictures returns the number of the last picture that was ordered and of the one
// that is shown, for measuring how fast the pane follows.
func (p *Pane) Pictures() (ordered, shown int) { return p.ordered, p.shown }
