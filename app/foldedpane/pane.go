// Package foldedpane shows the bag as it stands folded: to turn it, to look into it
// and to see how large it is. It belongs to fyne's goroutine.
package foldedpane

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
	"gussetwright/geometry/fold"
	"gussetwright/render/solid"
)

// Pane is the folded pane.
type Pane struct {
	widget.BaseWidget

	doc  *document.Document
	look *focus.Focus

	state     document.State
	model     *solid.Model // of the state
	camera    solid.Camera
	frame     solid.Frame // what the camera takes in
	reference solid.Reference
	side      int // where the reference stands

	artist  *artist
	request func(order) // has an order drawn, now or soon
	worker  *latest.Worker[order, picture]
	ordered int // the number of the last order
	shown   int // the number of the order whose picture is seen

	stage  *stage
	bar    *toolbar
	stop   func()
	closed bool
}

// New returns the folded pane of a document, seen from a corner above.
func New(doc *document.Document, look *focus.Focus, set *settings.Settings) *Pane {
	p := &Pane{doc: doc, look: look, camera: solid.Isometric}
	p.artist = newArtist()
	p.worker = latest.New(p.artist.draw, func(made picture) {
		fyne.Do(func() { p.show(made) })
	})
	p.request = p.worker.Order
	p.stage = newStage(p)
	p.bar = newToolbar(p)
	p.ExtendBaseWidget(p)
	p.take(doc.State())
	p.stop = doc.Listen(p.follow)
	look.Listen(p.redraw)
	set.Listen(p.redraw)
	return p
}

// Close stops listening and drawing.
func (p *Pane) Close() {
	p.closed = true
	p.stop()
	p.worker.Close()
}

// follow takes a new state of the document.
func (p *Pane) follow(state document.State) {
	p.take(state)
	p.draw()
}

// take remembers a state and folds its bag.
func (p *Pane) take(state document.State) {
	folded := p.state.Snapshot != state.Snapshot
	p.state = state
	if folded {
		p.model = solid.NewModel(fold.Standing(&state.Snapshot.Blank))
	}
	p.reframe()
}

// reframe takes in the whole scene. While a drag lasts the frame holds still, or the
// bag would seem to shrink in its height as it grows in its width; it only widens
// when the bag would leave it.
func (p *Pane) reframe() {
	whole := p.model.Frame(p.reference, p.side)
	if !p.state.Dragging || p.frame.Radius <= 0 {
		p.frame = whole
		return
	}
	away := whole.Middle.Sub(p.frame.Middle)
	const spare = 1.15 // a bag hardly ever fills the space around it
	p.frame.Radius = max(p.frame.Radius, (math.Hypot(away.X, away.Y)+whole.Radius)/spare)
	p.frame.Rise = max(p.frame.Rise, (math.Abs(away.Z)+whole.Rise)/spare)
}

// redraw draws after something beside the bag has changed.
func (p *Pane) redraw() {
	if !p.closed {
		p.draw()
	}
}

// CreateRenderer is part of fyne.Widget.
func (p *Pane) CreateRenderer() fyne.WidgetRenderer {
	return &paneRenderer{pane: p, ground: canvas.NewRectangle(theme.Color(theme.ColorNameBackground))}
}

// paneRenderer puts the toolbar above the stage.
type paneRenderer struct {
	pane   *Pane
	ground *canvas.Rectangle
}

// Layout is part of fyne.WidgetRenderer.
func (r *paneRenderer) Layout(size fyne.Size) {
	top := r.pane.bar.MinSize().Height
	r.ground.Resize(size)
	r.pane.bar.Resize(fyne.NewSize(size.Width, top))
	r.pane.stage.Move(fyne.NewPos(0, top))
	r.pane.stage.Resize(fyne.NewSize(size.Width, max(size.Height-top, 0)))
}

// MinSize is part of fyne.WidgetRenderer.
func (r *paneRenderer) MinSize() fyne.Size {
	const least = 120
	bar := r.pane.bar.MinSize()
	return fyne.NewSize(max(bar.Width, least), bar.Height+least)
}

// Objects is part of fyne.WidgetRenderer.
func (r *paneRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.pane.stage, r.pane.bar}
}

// Refresh is part of fyne.WidgetRenderer.
func (r *paneRenderer) Refresh() {
	r.ground.FillColor = theme.Color(theme.ColorNameBackground)
	r.ground.Refresh()
	r.Layout(r.pane.Size())
}

// Destroy is part of fyne.WidgetRenderer.
func (r *paneRenderer) Destroy() {}
