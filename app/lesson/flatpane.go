package lesson

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/foldedpane"
	"gussetwright/app/paneview"
	"gussetwright/app/toolrow"
)

// flatPane shows the blank with what is folded and glued in a stage, and below it what
// the marks mean.
type flatPane struct {
	widget.BaseWidget
	view   *View
	figure *figure
	side   *button // says which side is seen, and opens the list of them
	art    *button // shows the artwork, or leaves it out
	legend *legend
	last   order // of a picture, without its size

	chosen upside
	bare   bool    // without artwork, in both panes
	low    float32 // height of the legend
}

func newFlatPane(view *View) *flatPane {
	p := &flatPane{view: view, legend: newLegend()}
	p.figure = newFigure(newSheet(), func(made) {})
	p.side = newButton(view, "", theme.MenuDropDownIcon(), p.openSides)
	p.side.IconPlacement = widget.ButtonIconTrailingText
	p.art = newButton(view, lang.L("Artwork"), theme.CheckButtonCheckedIcon(), p.switchArt)
	p.ExtendBaseWidget(p)
	return p
}

// reverse tells whether the reverse of the blank is seen in a stage.
func (p *flatPane) reverse(stage int) bool {
	return p.chosen == reverseUp || p.chosen == asHandsHoldIt && p.view.course.liesOnPrint(stage)
}

// tell brings the buttons up to date.
func (p *flatPane) tell() {
	box := theme.CheckButtonCheckedIcon()
	if p.bare {
		box = theme.CheckButtonIcon()
	}
	p.side.Say(p.sideText(), theme.MenuDropDownIcon(), widget.MediumImportance)
	p.art.Say(p.art.Text, box, widget.MediumImportance)
	setVisible(p.art, len(p.view.course.snapshot.Spec.Artwork) > 0)
	if low := p.low; p.Size().Width > 1 && p.lay(p.Size()) != low {
		p.draw()
	}
}

// sideText says which side is seen, and whether the user chose it.
func (p *flatPane) sideText() string {
	switch reverse := p.reverse(p.view.player.at.stage); {
	case p.chosen == asHandsHoldIt && reverse:
		return lang.L("Reverse up, as in the step")
	case p.chosen == asHandsHoldIt:
		return lang.L("Print side up, as in the step")
	case reverse:
		return lang.L("Reverse up, as chosen")
	}
	return lang.L("Print side up, as chosen")
}

// openSides opens the list of sides of the blank.
func (p *flatPane) openSides() {
	item := func(name string, side upside) *fyne.MenuItem {
		item := fyne.NewMenuItem(name, func() { p.choose(side) })
		item.Checked = p.chosen == side
		return item
	}
	toolrow.OpenList(p.side, []*fyne.MenuItem{
		item(lang.L("As the hands hold it"), asHandsHoldIt), fyne.NewMenuItemSeparator(),
		item(lang.L("Print side up"), printUp), item(lang.L("Reverse up"), reverseUp),
	})
}

func (p *flatPane) choose(side upside) {
	p.chosen = side
	p.view.update()
}

// turnOver shows the other side. Where that is the one of the stage, the side follows the
// stages again.
func (p *flatPane) turnOver() {
	stage := p.view.player.at.stage
	other := reverseUp
	if p.reverse(stage) {
		other = printUp
	}
	if p.chosen != asHandsHoldIt && (other == reverseUp) == p.view.course.liesOnPrint(stage) {
		other = asHandsHoldIt
	}
	p.choose(other)
}

// switchArt leaves the artwork out of both panes, or brings it back.
func (p *flatPane) switchArt() {
	p.bare = !p.bare
	p.view.update()
}

// draw orders a picture of what is to be seen now.
func (p *flatPane) draw() {
	if !p.view.open {
		return
	}
	p.last = p.next()
	p.figure.draw(p.last)
}

// drawIfChanged orders one where something is other than in the last.
func (p *flatPane) drawIfChanged() {
	if p.next() != p.last {
		p.draw()
	}
}

func (p *flatPane) next() order {
	o := p.view.order()
	o.at.share = stepped(o.at.share)
	o.look, o.reverse = foldedpane.Look(), p.reverse(o.at.stage)
	o.top = float64(p.side.MinSize().Height) * paneview.Density(p)
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

// lay puts everything in its place and returns the height of the legend, which is that of
// the longest there is, so that nothing moves from stage to stage.
func (p *flatPane) lay(size fyne.Size) float32 {
	pad := p.Theme().Size(theme.SizeNamePadding)
	p.low = p.legend.room(p.view.course, size.Width-2*pad)
	tall := max(size.Height-p.low-pad, 1)
	put(p.figure.picture, 0, 0, size.Width, tall)
	put(p.legend, pad, tall+pad, max(size.Width-2*pad, 1), p.low)
	p.arrange()
	return p.low
}

// arrange puts the buttons over the picture in their places.
func (p *flatPane) arrange() {
	pad := p.Theme().Size(theme.SizeNamePadding)
	size, side, art := p.Size(), p.side.MinSize(), p.art.MinSize()
	put(p.side, pad, pad, min(side.Width, size.Width-2*pad), side.Height)
	put(p.art, max(size.Width-art.Width-pad, pad), pad, art.Width, art.Height)
}

// CreateRenderer is part of fyne.Widget.
func (p *flatPane) CreateRenderer() fyne.WidgetRenderer { return &flatPaneRenderer{p} }

type flatPaneRenderer struct{ p *flatPane }

// Layout is part of fyne.WidgetRenderer.
func (r *flatPaneRenderer) Layout(size fyne.Size) {
	r.p.lay(size)
	r.p.draw()
}

// MinSize is part of fyne.WidgetRenderer.
func (r *flatPaneRenderer) MinSize() fyne.Size { return fyne.NewSize(1, 1) }

// Destroy is part of fyne.WidgetRenderer.
func (r *flatPaneRenderer) Destroy() {}

// Objects is part of fyne.WidgetRenderer.
func (r *flatPaneRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.p.figure.picture, r.p.side, r.p.art, r.p.legend}
}

// Refresh is part of fyne.WidgetRenderer. fyne asks for it when the theme changes.
func (r *flatPaneRenderer) Refresh() {
	r.p.side.Refresh()
	r.p.art.Refresh()
	r.p.legend.Refresh()
	r.p.arrange()
	r.p.draw()
}
