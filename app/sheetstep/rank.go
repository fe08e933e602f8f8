package sheetstep

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/settings"
	"gussetwright/app/steppage"
	"gussetwright/app/words"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
	"gussetwright/geometry/sheet/advice"
)

// rankOrder asks for the sheets in their order and for what would gain one more up.
type rankOrder struct {
	snapshot *document.Snapshot
	by       settings.Ranking
}

// rankResult is what an order came to.
type rankResult struct {
	order rankOrder
	rows  []advice.Row
	here  []advice.NearMiss // on the sheet in use
}

// same tells whether another order comes to the same.
func (o rankOrder) same(other rankOrder) bool {
	if o.snapshot == nil || other.snapshot == nil || o.by != other.by {
		return false
	}
	a, b := &o.snapshot.Spec, &other.snapshot.Spec
	return a.Body == b.Body && a.Handle == b.Handle && a.Cards == b.Cards && a.Paper == b.Paper && a.Sheet == b.Sheet &&
		a.Print == b.Print && a.Prices.Paper == b.Prices.Paper && slices.Equal(a.Stock, b.Stock)
}

// rank ranks sheets. It takes tens of milliseconds.
func rank(o rankOrder) rankResult {
	by := map[settings.Ranking]sheet.Criterion{settings.LeastPaper: sheet.ByPaper, settings.LeastCost: sheet.ByCost}
	s := o.snapshot
	return rankResult{
		order: o, rows: advice.Rank(&s.Blank, s.Plan.Piece, sheet.StockOf(&s.Spec), by[o.by]),
		here: advice.Near(&s.Blank, &s.Plan),
	}
}

// rankAnew orders the ranking of a state where it is not what was ordered last.
func (p *page) rankAnew(state document.State) {
	order := rankOrder{state.Snapshot, p.Settings.Ranking()}
	if order.same(p.ordered) {
		p.ranking.dim(!order.same(p.result.order))
		return
	}
	p.ranking.dim(true)
	if !state.Dragging {
		p.ordered = order
		p.request(order)
	}
}

// deliver shows a ranking. The rows stay dim where it is out of date already.
func (p *page) deliver(made rankResult) {
	p.result = made
	state := p.Doc.State()
	p.fillRanking(state)
	p.showNear(state)
	p.rankAnew(state)
}

// mostShown is how many sheets are shown at first, and leastFailing how many of them
// miss narrowly, where so many do.
const mostShown, leastFailing = 8, 2

// fillRanking shows the rows that were delivered last.
func (p *page) fillRanking(state document.State) {
	shown := ranked{heads: p.heads(state), all: p.all}
	fits := func(r *advice.Row) bool { return r.Plan.Up() > 0 }
	near := 0
	for i := range p.result.rows {
		if r := &p.result.rows[i]; !fits(r) && len(r.Near) > 0 {
			near++
		}
	}
	failing := min(near, max(leastFailing, mostShown-(len(p.result.rows)-p.failing())))
	var tiny []string
	for i := range p.result.rows {
		r := &p.result.rows[i]
		row := p.row(r, state)
		switch {
		case fits(r) && (p.all || row.always || len(shown.fit) < mostShown-failing):
			shown.fit = append(shown.fit, row)
		case fits(r):
			shown.more++
		case p.all || row.always || len(r.Near) > 0 && len(shown.fails) < failing:
			shown.fails = append(shown.fails, row)
		default:
			shown.more++
			if len(r.Near) == 0 {
				tiny = append(tiny, r.Name)
			}
		}
	}
	if len(tiny) > 0 {
		shown.tiny = fmt.Sprintf(lang.L("Far too small: %s."), strings.Join(tiny, ", "))
	}
	p.ranking.set(shown)
}

func (p *page) failing() int {
	count := 0
	for i := range p.result.rows {
		if p.result.rows[i].Plan.Up() == 0 {
			count++
		}
	}
	return count
}

// heads are those of the numbers. Bags stand beside blanks only where they differ.
func (p *page) heads(state document.State) []string {
	heads := []string{lang.L("Up")}
	if state.Snapshot.Plan.Piece.PerBag > 1 {
		heads = append(heads, lang.L("Bags"))
	}
	heads = append(heads, lang.L("Waste"))
	if p.Settings.Ranking() == settings.LeastCost {
		return append(heads, strings.TrimSpace(fmt.Sprintf(lang.L("Cost/1000 %s"), state.Spec.Currency)))
	}
	return append(heads, lang.L("kg/1000"))
}

// row says what there is to say of a sheet.
func (p *page) row(r *advice.Row, state document.State) sheetRow {
	row := sheetRow{key: keyOf(r), name: r.Name, inUse: inUse(r, state.Spec.Sheet)}
	size := p.Area(r.Width, r.Height)
	if row.name == "" {
		row.name = size
	}
	for i := range r.Near {
		row.offers = append(row.offers, words.Measured(r.Near[i].Phrase(), p.Settings.Unit()))
	}
	row.offers = row.offers[:min(len(row.offers), mostOffers)]
	if len(row.offers) > 0 {
		row.near = fmt.Sprintf(lang.L("Nearly: %s."), row.offers[0])
	}
	if row.always = row.inUse; isOwn(r, state.Spec.Stock) {
		row.always = true
		size = fmt.Sprintf(lang.L("own sheet, %s"), size)
	}
	if fibres := r.Plan.Piece.SheetFibres; fibres != "" {
		size += ", " + p.grainWords(fibres, r.Width, r.Height)
	}
	if r.Plan.Up() == 0 {
		row.note = size + ": " + words.Measured(r.Reason, p.Settings.Unit())
		if len(row.offers) == 0 {
			row.proof = lang.L("No small change of the bag makes a blank fit.")
		}
		return row
	}
	row.cells = p.cells(r, state)
	edge := lang.L("long edge")
	if r.Plan.Sheet.GripperEdge == bag.GripperShort {
		edge = lang.L("short edge")
	}
	row.note = size + ", " + edge + ", " + proofWord(&r.Plan)
	row.proof = steppage.Sentence(gripperWord(r.Plan.Sheet.GripperEdge)) + " " + proofSentence(&r.Plan)
	if len(row.offers) == 0 {
		row.proof += " " + lang.L("No small change of the bag gains one more.")
	}
	return row
}

// mostOffers is how many changes are offered for one sheet.
const mostOffers = 3

func (p *page) cells(r *advice.Row, state document.State) []string {
	cells := []string{fmt.Sprintf("%d", r.Plan.Up())}
	if state.Snapshot.Plan.Piece.PerBag > 1 {
		cells = append(cells, words.Number(r.Plan.BagsPerSheet(), 1))
	}
	cells = append(cells, fmt.Sprintf(lang.L("%.0f %%"), r.Plan.WastePercent()))
	if p.Settings.Ranking() != settings.LeastCost {
		kilograms := r.PaperPerThousand() * state.Snapshot.Spec.Paper.Grammage / 1000
		return append(cells, words.Number(kilograms, 1))
	}
	if r.Price <= 0 {
		return append(cells, "–")
	}
	return append(cells, words.Number(r.CostPerThousand(), 0))
}

// proofWord says in two words whether a layout is known to be the best.
func proofWord(plan *sheet.Plan) string {
	if plan.Proven {
		return lang.L("most that fit")
	}
	return fmt.Sprintf(lang.L("best found, at most %d could fit"), plan.Bound)
}

func proofSentence(plan *sheet.Plan) string {
	if plan.Proven {
		return fmt.Sprintf(lang.L("Proven: no layout holds more than %d."), plan.Up())
	}
	return fmt.Sprintf(lang.L("The best layout that was found. Whether one of %d exists is not decided; more are impossible."), plan.Bound)
}

func keyOf(r *advice.Row) sheetKey {
	return sheetKey{r.Name, r.Width, r.Height, string(r.Plan.Piece.SheetFibres)}
}

// inUse tells whether a sheet of the ranking is the one of the bag, in whichever way it
// lies.
func inUse(r *advice.Row, now bag.Sheet) bool {
	if max(now.Width, now.Height) != max(r.Width, r.Height) || min(now.Width, now.Height) != min(r.Width, r.Height) {
		return false
	}
	fibres := r.Plan.Piece.SheetFibres
	return fibres == "" || now.Width == r.Width && sheet.Fibres(now.Grain) == fibres
}

func isOwn(r *advice.Row, stock []bag.StockSheet) bool {
	return slices.ContainsFunc(stock, func(own bag.StockSheet) bool {
		return own.Name == r.Name && own.Width == r.Width && own.Height == r.Height && sheet.Fibres(own.Grain) == r.Plan.Piece.SheetFibres
	})
}
