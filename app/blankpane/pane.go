// Package blankpane shows the blank as it lies on a table: to zoom, to measure, and
// to change by dragging its edges and holes. It belongs to fyne's goroutine.
package blankpane

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/document"
	"gussetwright/app/focus"
	"gussetwright/app/latest"
	"gussetwright/app/settings"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/render/flat"
)

// Pane is the blank pane.
type Pane struct {
	widget.BaseWidget

	doc  *document.Document
	look *focus.Focus
	set  *settings.Settings

	state document.State
	desk  desk     // of the state at the view
	grips [][]grip // by piece
	view  view
	// fitted says that the view shows everything and is to go on doing so. It ends
	// when the user zooms or pans.
	fitted bool
	layers flat.Layers
	place  *focus.Place // shown by the marker, or nil

	artist  *artist
	request func(order) // has an order painted, now or soon
	worker  *latest.Worker[order, picture]
	ordered int                // the number of the last order
	shown   int                // the number of the order whose picture is seen
	painted *document.Snapshot // the bag of that picture

	surface *surface
	bar     *toolbar
	strip   *strip
	stop    func()
	closed  bool
}

// New returns the blank pane of a document, with the layers and the legend that the
// settings remember.
func New(doc *document.Document, look *focus.Focus, set *settings.Settings) *Pane {
	p := &Pane{doc: doc, look: look, set: set, layers: layersOf(set), fitted: true}
	p.view = view{scale: 1, letter: letterHeight()}
	p.artist = &artist{voice: words.DrawingVoice()}
	p.worker = latest.New(p.artist.paint, func(made picture) {
		fyne.Do(func() { p.show(made) })
	})
	p.request = p.worker.Order
	p.surface = newSurface(p)
	p.bar = newToolbar(p)
	p.strip = newStrip()
	p.strip.off = !set.LegendShown()
	p.ExtendBaseWidget(p)
	p.take(doc.State())
	p.place = look.Place()
	p.stop = doc.Listen(p.follow)
	look.Listen(p.followFocus)
	set.Listen(p.followSettings)
	return p
}

// Close stops listening and drawing.
func (p *Pane) Close() {
	p.closed = true
	p.stop()
	p.worker.Close()
}

// letterHeight returns the height of the lettering on the blank in pixels. It grows
// with the text scale.
func letterHeight() float64 { return float64(theme.CaptionTextSize()) + 1 }

// CreateRenderer is part of fyne.Widget.
func (p *Pane) CreateRenderer() fyne.WidgetRenderer {
	ground := canvas.NewRectangle(theme.Color(theme.ColorNameBackground))
	return &paneRenderer{pane: p, ground: ground}
}

// follow takes a new state of the document.
func (p *Pane) follow(state document.State) {
	p.take(state)
	p.surface.followDrag(state)
	if p.fitted && !p.surface.pulling() {
		p.fit()
	}
	p.draw()
}

// take remembers a state and what follows from it.
func (p *Pane) take(state document.State) {
	p.state = state
	laid := p.laid()
	p.grips = make([][]grip, len(laid.Pieces))
	for i := range laid.Pieces {
		p.grips[i] = grips(laid, i)
	}
	p.arrange()
	if p.strip.show(p.layers, laid) && !p.Size().IsZero() {
		p.Refresh() // for another height of the strip
	}
}

// arrange lays the pieces out anew after the view or the blank changed.
func (p *Pane) arrange() {
	p.desk = layOut(p.laid(), p.view)
	p.surface.marks = nil
}

// followFocus lights up the panel and brings the place that the focus asks for
// into sight.
func (p *Pane) followFocus() {
	if p.closed {
		return
	}
	if place := p.look.Place(); place != p.place {
		p.place = place
		if place != nil {
			p.bring(p.desk.at(place.Piece, place.At))
		}
	}
	p.draw()
}

// bring moves the view so that a point of the desk lies well inside of it.
func (p *Pane) bring(point geometry.Vec2) {
	const border = 30
	middle, at := p.middle(), p.view.screen(point)
	if middle == (geometry.Vec2{}) {
		return
	}
	if math.Abs(at.X-middle.X) > middle.X-border || math.Abs(at.Y-middle.Y) > middle.Y-border {
		p.setView(p.view.moved(middle.Sub(at)))
		p.draw()
	}
}

// followSettings takes a new unit or text scale.
func (p *Pane) followSettings() {
	if p.closed {
		return
	}
	p.restyle()
}

// restyle takes sizes and colours of the theme anew.
func (p *Pane) restyle() {
	p.view.letter = letterHeight()
	p.arrange()
	if p.fitted {
		p.fit()
	}
	p.draw()
}

// paneRenderer puts toolbar, surface and legend below each other.
type paneRenderer struct {
	pane   *Pane
	ground *canvas.Rectangle
}

// Layout is part of fyne.WidgetRenderer.
func (r *paneRenderer) Layout(size fyne.Size) {
	r.ground.Resize(size)
	top := r.pane.bar.MinSize().Height
	bottom := r.pane.strip.heightIn(size)
	r.pane.bar.Resize(fyne.NewSize(size.Width, top))
	r.pane.surface.Move(fyne.NewPos(0, top))
	r.pane.surface.Resize(fyne.NewSize(size.Width, max(size.Height-top-bottom, 0)))
	r.pane.strip.Move(fyne.NewPos(0, size.Height-bottom))
	r.pane.strip.Resize(fyne.NewSize(size.Width, bottom))
}

// MinSize is part of fyne.WidgetRenderer.
func (r *paneRenderer) MinSize() fyne.Size {
	const least = 120
	bar := r.pane.bar.MinSize()
	return fyne.NewSize(max(bar.Width, least), bar.Height+least)
}

// Objects is part of fyne.WidgetRenderer.
func (r *paneRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.pane.surface, r.pane.strip, r.pane.bar}
}

// Refresh is part of fyne.WidgetRenderer.
func (r *paneRenderer) Refresh() {
	r.ground.FillColor = theme.Color(theme.ColorNameBackground)
	r.ground.Refresh()
	r.Layout(r.pane.Size())
}

// Destroy is part of fyne.WidgetRenderer.
func (r *paneRenderer) Destroy() {}
