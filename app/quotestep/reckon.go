package quotestep

import (
	"slices"

	"gussetwright/app/document"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/job"
)

// quoteOrder asks for what the run takes and costs.
type quoteOrder struct{ snapshot *document.Snapshot }

// quoteResult is what an order came to.
type quoteResult struct {
	order    quoteOrder
	packing  job.Packing
	cuttings []job.Cutting
	quote    job.Quote
	breaks   []job.Break
	members  []member // the bag itself and its further sizes; none without these
}

// member is a bag of the family.
type member struct {
	spec     bag.Spec
	snapshot *document.Snapshot // nil where err says why it cannot be drawn
	err      error
}

// same tells whether another order comes to the same.
func (o quoteOrder) same(other quoteOrder) bool {
	if o.snapshot == nil || other.snapshot == nil {
		return false
	}
	a, b := &o.snapshot.Spec, &other.snapshot.Spec
	return a.Name == b.Name && a.Product == b.Product && a.Body == b.Body && a.Handle == b.Handle && a.Cards == b.Cards &&
		a.Paper == b.Paper && a.Sheet == b.Sheet && a.Print == b.Print && a.Run == b.Run && a.Packing == b.Packing &&
		a.Prices == b.Prices && slices.Equal(a.Breaks, b.Breaks) && slices.Equal(a.Family, b.Family) && slices.Equal(a.Stock, b.Stock)
}

// reckon does all that takes too long for a change of an entry: it folds the bag for
// every quantity, and derives all sizes of the family.
func reckon(o quoteOrder) quoteResult {
	s := o.snapshot
	made := quoteResult{
		order: o, packing: job.Pack(&s.Blank, &s.Job), cuttings: job.CutCards(&s.Blank, &s.Job),
		quote: job.QuoteFor(&s.Blank, &s.Plan, s.Spec.Run.Quantity),
	}
	if made.quote.Known() {
		made.breaks = job.Breaks(&s.Blank, &s.Plan)
	}
	if len(s.Spec.Family) > 0 {
		made.members = membersOf(s)
	}
	return made
}

// membersOf derives the bags of a family, without artwork.
func membersOf(s *document.Snapshot) []member {
	var list []member
	for i, spec := range s.Spec.Members() {
		one := member{spec: spec, snapshot: s}
		if i > 0 {
			one.snapshot, one.err = document.Derive(spec)
		}
		list = append(list, one)
	}
	return list
}

// reckonAnew orders what follows from a state where it is not what was ordered last.
// While a drag lasts it only shows that the figures are out of date.
func (p *page) reckonAnew(state document.State) {
	order := quoteOrder{state.Snapshot}
	stale := !order.same(p.result.order)
	for _, part := range p.dims {
		part.dim(stale && p.result.order.snapshot != nil)
	}
	if stale && !state.Dragging && !order.same(p.ordered) {
		p.ordered = order
		p.request(order)
	}
}

// deliver shows a result. It stays dim where it is out of date already.
func (p *page) deliver(made quoteResult) {
	p.result = made
	state := p.Doc.State()
	p.fill(state)
	p.reckonAnew(state)
}
