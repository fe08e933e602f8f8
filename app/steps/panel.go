// Package steps is the left part of the window: the list of the eight steps of the
// job, and beside it the entries of the one that is chosen.
package steps

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/artstep"
	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/focus"
	"gussetwright/app/quotestep"
	"gussetwright/app/settings"
	"gussetwright/app/sheetstep"
	"gussetwright/app/steady"
	"gussetwright/app/steppage"
	"gussetwright/geometry"
	"gussetwright/geometry/check"
)

// Panel holds the steps of the job. It belongs to the goroutine of the window.
type Panel struct {
	widget.BaseWidget

	bench   *steppage.Bench
	art     *artstep.Step
	list    *list
	pages   [stepCount]*steppage.Page // built when they are chosen first; none for the files
	files   fyne.CanvasObject
	scroll  *steady.Scroll
	explain *explanation
	rule    *canvas.Rectangle // between list and page
	stop    func()

	chosen  int
	unit    geometry.Unit
	loads   int  // of the document, as far as was shown
	holding bool // heights change one after the other; the page is laid out once at the end
	grown   bool
}

// New returns the steps of a document with the first of them chosen. art is what the
// step Artwork begins with, and files what the step Files shows; later does something on
// the goroutine of the window, and where it is nil no work is done beside that.
func New(doc *document.Document, look *focus.Focus, set *settings.Settings, art *artstep.Step, files fyne.CanvasObject, later func(func())) *Panel {
	p := &Panel{art: art, files: files, rule: canvas.NewRectangle(color.Transparent), explain: newExplanation()}
	p.bench = &steppage.Bench{Doc: doc, Look: look, Settings: set, Explain: p.focused, Bring: p.bring, Later: later}
	p.list = newList(p.Select)
	p.scroll = steady.NewScroll(entry.NewColumn(0))
	p.ExtendBaseWidget(p)
	p.Select(productStep)
	p.stop = doc.Listen(p.show)
	set.Listen(p.settingsChanged)
	return p
}

// Close ends listening to the document, and what is under way.
func (p *Panel) Close() {
	p.stop()
	for _, page := range p.pages {
		if page != nil {
			page.Close()
		}
	}
}

// Selected returns the step that is shown, counted from 0.
func (p *Panel) Selected() int { return p.chosen }

// Select shows a step, counted from 0: Product, Bag, Carry, Paper, Sheet, Artwork,
// Quote, Files. What is being typed in the step before is taken over first.
func (p *Panel) Select(step int) {
	if step < 0 || step >= stepCount {
		return
	}
	p.leave()
	p.chosen = step
	p.list.set(step)
	if step != filesStep {
		p.files.Hide()
		p.enter(step)
	} else {
		p.files.Show() // it looks anew which files there are
	}
	p.show(p.bench.Doc.State())
	p.Refresh()
}

// enter puts the page of a step into the scroll. Pages out of sight miss changes
// of the theme.
func (p *Panel) enter(step int) {
	page := p.page(step)
	page.Enter()
	p.explain.about(nil)
	p.scroll.Content = page.Column
	p.scroll.Offset = fyne.Position{}
	page.Column.Refresh()
}

// leave takes the focus out of the page, so that it does not stay with an entry
// that is not shown.
func (p *Panel) leave() {
	if page := p.pages[p.chosen]; page != nil {
		defer page.Leave()
	}
	canvas := fyne.CurrentApp().Driver().CanvasForObject(p)
	if canvas == nil || p.pages[p.chosen] == nil {
		return
	}
	if focused, ok := canvas.Focused().(fyne.CanvasObject); ok && within(p.pages[p.chosen].Column, focused) {
		canvas.Unfocus()
	}
}

// within tells whether an object is the other or stands in it.
func within(outer, object fyne.CanvasObject) bool {
	if outer == object {
		return true
	}
	if holder, ok := outer.(interface{ Focusable() fyne.Focusable }); ok && any(holder.Focusable()) == any(object) {
		return true
	}
	if in, ok := outer.(holder); ok {
		for _, inner := range in.Objects() {
			if within(inner, object) {
				return true
			}
		}
	}
	return false
}

func (p *Panel) page(step int) *steppage.Page {
	if p.pages[step] == nil {
		artworkPage := func(b *steppage.Bench) *steppage.Page { return newArtworkPage(b, p.art) }
		build := [stepCount]func(*steppage.Bench) *steppage.Page{
			newProductPage, newBagPage, newCarryPage, newPaperPage, sheetstep.New, artworkPage, quotestep.New, nil,
		}
		p.pages[step] = build[step](p.bench)
		p.pages[step].OnGrow(p.pageGrown)
	}
	return p.pages[step]
}

// show brings marks and page up to date.
func (p *Panel) show(state document.State) {
	if state.Loads != p.loads {
		p.loads = state.Loads
		p.forget()
	}
	p.holding = true
	if page := p.pages[p.chosen]; page != nil && p.chosen != filesStep {
		page.Follow(state)
	}
	var findings []check.Finding
	if state.Err == nil {
		findings = state.Snapshot.Findings
	}
	p.list.mark(marks(&state.Spec, findings, steppage.ComplaintsIn(state.Err)))
	p.holding = false
	if p.grown {
		p.pageGrown()
	}
}

// forget drops what was typed for another project and never taken over, on every page.
func (p *Panel) forget() {
	for _, page := range p.pages {
		if page != nil {
			page.Forget()
		}
	}
}

// pageGrown lays the page out anew after an entry became higher or lower.
func (p *Panel) pageGrown() {
	p.grown = p.holding
	if p.holding {
		return
	}
	page := p.pages[p.chosen]
	if page == nil || p.chosen == filesStep {
		return
	}
	width := p.scroll.Size().Width
	page.Resize(fyne.NewSize(width, max(page.HeightFor(width), p.scroll.Size().Height)))
	page.Arrange()
	p.scroll.Refresh()
}

func (p *Panel) settingsChanged() {
	if unit := p.bench.Settings.Unit(); unit != p.unit {
		p.unit = unit
		p.show(p.bench.Doc.State())
	}
}

// focused explains an entry and brings it into view.
func (p *Panel) focused(e entry.Explained) {
	p.explain.about(e)
	p.Refresh()
	p.bring(e)
}

// bring scrolls an object of the page into view, its top at least.
func (p *Panel) bring(e fyne.CanvasObject) {
	driver := fyne.CurrentApp().Driver()
	top := driver.AbsolutePositionForObject(e).Y - driver.AbsolutePositionForObject(p.scroll.Content).Y
	margin := 2 * p.Theme().Size(theme.SizeNamePadding)
	offset := p.scroll.Offset.Y
	if bottom := top + e.Size().Height + margin; bottom > offset+p.scroll.Size().Height {
		offset = bottom - p.scroll.Size().Height
	}
	if offset > top-margin {
		offset = max(top-margin, 0)
	}
	if offset != p.scroll.Offset.Y {
		p.scroll.ScrollToOffset(fyne.NewPos(0, offset))
	}
}

// CreateRenderer is part of fyne.Widget.
func (p *Panel) CreateRenderer() fyne.WidgetRenderer {
	r := &panelRenderer{p}
	r.colour()
	return r
}

type panelRenderer struct{ p *Panel }

func (r *panelRenderer) colour() {
	r.p.rule.FillColor = r.p.Theme().Color(theme.ColorNameSeparator, fyne.CurrentApp().Settings().ThemeVariant())
}

// Layout gives the list its width, the page the rest, and the explanation the foot
// of the page, at most a third of it.
func (r *panelRenderer) Layout(size fyne.Size) {
	p := r.p
	left := p.list.MinSize().Width
	p.list.Resize(fyne.NewSize(left, size.Height))
	p.rule.Move(fyne.NewPos(left, 0))
	p.rule.Resize(fyne.NewSize(1, size.Height))
	left++
	width := max(size.Width-left, 0)
	if p.chosen == filesStep {
		p.files.Move(fyne.NewPos(left, 0))
		p.files.Resize(fyne.NewSize(width, size.Height))
		return
	}
	foot := min(p.explain.HeightFor(width), size.Height/3)
	p.explain.Move(fyne.NewPos(left, size.Height-foot))
	p.explain.Resize(fyne.NewSize(width, foot))
	height := size.Height - foot
	page := p.page(p.chosen)
	page.Resize(fyne.NewSize(width, max(page.HeightFor(width), height)))
	p.scroll.Move(fyne.NewPos(left, 0))
	p.scroll.Resize(fyne.NewSize(width, height))
}

func (r *panelRenderer) MinSize() fyne.Size {
	p := r.p
	widest := p.scroll.Content.MinSize().Width
	if p.chosen == filesStep {
		widest = p.files.MinSize().Width
	}
	return fyne.NewSize(p.list.MinSize().Width+1+widest, p.list.MinSize().Height)
}

func (r *panelRenderer) Objects() []fyne.CanvasObject {
	if r.p.chosen == filesStep {
		return []fyne.CanvasObject{r.p.list, r.p.rule, r.p.files}
	}
	return []fyne.CanvasObject{r.p.list, r.p.rule, r.p.scroll, r.p.explain}
}
func (r *panelRenderer) Destroy() {}

func (r *panelRenderer) Refresh() {
	r.colour()
	r.p.rule.Refresh()
	r.Layout(r.p.Size())
	if r.p.chosen == filesStep {
		r.p.files.Refresh()
	} else {
		r.p.scroll.Refresh()
	}
	canvas.Refresh(r.p)
}
