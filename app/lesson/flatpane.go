package lesson

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/foldedpane"
	"gussetwright/app/paneview"
)

// flatPane shows the blank with what is folded and glued in a stage, and below it what
// the marks mean.
type flatPane struct {
	widget.BaseWidget
	view   *View
	figure *figure
	name   *chip
	legend *legend
	last   order // of a picture, without its size
}

func newFlatPane(view *View) *flatPane {
	p := &flatPane{view: view, name: newChip(false), legend: newLegend()}
	p.figure = newFigure(newSheet(), func(made) {})
	p.name.say(lang.L("Blank, print side up"))
	p.ExtendBaseWidget(p)
	return p
}

// draw orders a picture of what is to be seen now.
func (p *flatPane) draw(now bool) {
	if !p.view.open {
		return
	}
	p.last = p.next()
	p.figure.draw(p.last, now)
}

// drawIfChanged orders one where something is other than in the last.
func (p *flatPane) drawIfChanged() {
	if p.next() != p.last {
		p.draw(false)
	}
}

func (p *flatPane) next() order {
	o := p.view.order()
	o.at.share = stepped(o.at.share)
	o.look = foldedpane.Look()
	o.top = float64(p.name.MinSize().Height) * paneview.Density(p)
	o.letter = float64(p.Theme().Size(theme.SizeNameCaptionText)+1) * paneview.Density(p)
	return o
}

// stepped takes the share to one of a few: glue comes onto the blank by and by, and
// then nothing changes any more.
func stepped(share float64) float64 {
	const steps = 20
	share = min(share, 0.3)
	return float64(int(share*steps)) / steps
}

// CreateRenderer is part of fyne.Widget.
func (p *flatPane) CreateRenderer() fyne.WidgetRenderer { return &flatPaneRenderer{p} }

type flatPaneRenderer struct{ p *flatPane }

// Layout is part of fyne.WidgetRenderer. A new size is drawn at once.
func (r *flatPaneRenderer) Layout(size fyne.Size) {
	p := r.p
	pad := p.Theme().Size(theme.SizeNamePadding)
	low := p.legend.lay(size.Width - 2*pad)
	tall := max(size.Height-low-pad, 1)
	put(p.figure.picture, 0, 0, size.Width, tall)
	put(p.legend, pad, tall+pad, max(size.Width-2*pad, 1), low)
	put(p.name, pad, pad, p.name.MinSize().Width, p.name.MinSize().Height)
	p.draw(true)
}

// MinSize is part of fyne.WidgetRenderer.
func (r *flatPaneRenderer) MinSize() fyne.Size { return fyne.NewSize(1, 1) }

// Destroy is part of fyne.WidgetRenderer.
func (r *flatPaneRenderer) Destroy() {}

// Objects is part of fyne.WidgetRenderer.
func (r *flatPaneRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.p.figure.picture, r.p.name, r.p.legend}
}

// Refresh is part of fyne.WidgetRenderer. fyne asks for it when the theme changes.
func (r *flatPaneRenderer) Refresh() {
	r.p.name.Refresh()
	r.p.legend.Refresh()
	r.p.draw(false)
}
