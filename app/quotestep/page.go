// Package quotestep is the page of the step Quote: the run with what it takes and what it
// costs, and the further sizes of the design with how they share sheets.
//
// Everything here belongs to the goroutine of the window.
package quotestep

import (
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/steppage"
)

// page shows the run with what it takes and what it costs, and the further sizes of the
// design with how they share sheets.
type page struct {
	*steppage.Page
	takes   *veiled
	needs   *facts
	carries *entry.Text    // the estimate of the load
	against *entry.Message // what it is against the product
	caution *entry.Message

	bill       *veiled
	noQuote    *entry.Text
	lines      *ledger
	missing    *entry.Text
	quantities *ledger

	dims    []*veiled              // what shows a result
	fills   []func(document.State) // what shows a result, besides the above
	request func(quoteOrder)
	ordered quoteOrder
	result  quoteResult
}

// New returns the page.
func New(b *steppage.Bench) *steppage.Page { return newPage(b).Page }

func newPage(b *steppage.Bench) *page {
	p := &page{Page: steppage.New(b)}
	forms := p.newForms()
	p.addRun()
	p.addTakes()
	p.addPrices()
	p.addBill()
	p.addFamily()
	ganging := p.addGang(forms)
	p.request = steppage.Beside(p.Page, reckon, p.deliver)
	p.OnFollow(p.showAll)
	p.OnFollow(ganging.show)
	return p
}

// addTakes adds the table of what the run takes, and the estimate of the load.
func (p *page) addTakes() {
	p.needs = newFacts()
	p.carries, p.against, p.caution = entry.NewText("", entry.Small), entry.NewMessage(), entry.NewMessage()
	p.takes = newVeiled(2, p.needs,
		entry.NewColumn(1, entry.NewText(lang.L("What the bag might carry"), entry.Heading), p.carries, p.against, p.caution))
	p.dims = append(p.dims, p.takes)
	p.Add(entry.NewColumn(1.5, entry.NewText(lang.L("What it takes"), entry.Heading), p.takes))
}

// addBill adds the quote.
func (p *page) addBill() {
	p.noQuote, p.missing = entry.NewText("", entry.Small), entry.NewText("", entry.Small)
	p.lines, p.quantities = newLedger(), newLedger()
	p.bill = newVeiled(2, p.noQuote, p.lines, p.missing, p.quantities)
	p.dims = append(p.dims, p.bill)
	p.Add(entry.NewColumn(1.5, entry.NewText(lang.L("Quote"), entry.Heading), p.bill))
}

func (p *page) showAll(state document.State) {
	if !state.Dragging && p.result.order.snapshot != nil {
		p.fill(state)
	}
	p.reckonAnew(state)
}

// fill shows the result that was delivered last.
func (p *page) fill(state document.State) {
	p.needs.set(p.takesFacts(&p.result))
	p.showLoad(p.result.order.snapshot)
	p.showBill(&p.result, state)
	for _, fill := range p.fills {
		fill(state)
	}
}
