// Package steppage is what the pages of the steps are made of: entries under headings
// with the findings about them below, tables to choose from, drawers, and offers to
// press. What stands on a page is up to packages steps, sheetstep and quotestep.
//
// Everything here belongs to the goroutine of the window.
package steppage

import (
	"fyne.io/fyne/v2"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/focus"
	"gussetwright/app/latest"
	"gussetwright/app/settings"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
)

// Bench is what all pages work with.
type Bench struct {
	Doc      *document.Document
	Look     *focus.Focus
	Settings *settings.Settings
	Explain  func(entry.Explained)   // is told which entry got the focus
	Bring    func(fyne.CanvasObject) // scrolls an object into view
	Later    func(func())            // does something on the goroutine of the window; nil where no work is done beside it
}

// Length writes a length in mm with its unit, as the user likes it.
func (b *Bench) Length(mm float64) string {
	return b.Bare(mm) + " " + string(b.Settings.Unit())
}

// Bare writes a length in mm in the unit of the user, which is left out.
func (b *Bench) Bare(mm float64) string {
	unit, decimals := b.Settings.Unit(), 2
	if unit == geometry.Millimetre {
		decimals = 1
	}
	return words.Number(mm/unit.Length(), decimals)
}

// Area writes a width and a height in mm.
func (b *Bench) Area(width, height float64) string {
	return b.Bare(width) + " × " + b.Bare(height) + " " + string(b.Settings.Unit())
}

// Said returns what a phrase says as a sentence, with lengths in the unit of the user.
func (b *Bench) Said(p phrase.Phrase) string {
	return Sentence(words.Measured(p, b.Settings.Unit()))
}

// Beside returns what takes orders for slow work: a worker beside the window, which
// hands its results to the window and ends with the page. Where the bench has no Later,
// an order is worked on at once.
func Beside[O, R any](p *Page, work func(O) R, deliver func(R)) (request func(O)) {
	if p.Later == nil {
		return func(order O) { deliver(work(order)) }
	}
	worker := latest.New(work, func(made R) { p.Later(func() { deliver(made) }) })
	p.OnClose(worker.Close)
	return worker.Order
}
