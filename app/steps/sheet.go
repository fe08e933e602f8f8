package steps

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/settings"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/geometry/sheet"
	"gussetwright/geometry/sheet/advice"
)

// sheetPage shows the sheet with the blanks on it, which sheets could be bought and what
// would gain one more up on each, the user's own sheets, and the entries.
type sheetPage struct {
	*page
	picture *picture
	large   *enlarged
	summary *entry.Text
	more    *entry.Text
	near    *offers // changes that gain one more up on the sheet in use
	nearBox *entry.Column
	ranking *ranking
	unknown *entry.Message // no price is known
	price   *entry.Column
	all     bool // all sheets are shown
	request func(rankOrder)
	ordered rankOrder
	result  rankResult
}

func newSheetPage(b *bench) *page { return buildSheetPage(b).page }

func buildSheetPage(b *bench) *sheetPage {
	p := &sheetPage{page: newPage(b), summary: entry.NewText("", entry.Plain), more: entry.NewText("", entry.Muted), near: newOffers(lang.L("Make this change"))}
	p.large = &enlarged{}
	p.picture = newPicture(func() { p.large.open(p.picture) }, p.explain)
	p.nearBox = entry.NewColumn(1, entry.NewText(lang.L("One more up"), entry.Heading), p.near)
	p.nearBox.Hide()
	p.Add(entry.NewColumn(2, p.picture, p.summary, p.more, p.nearBox))
	p.addRanking()
	p.addOwnSheets()
	p.named(lang.L("Sheet"), "sheet.width_mm", "sheet.height_mm", "sheet.gripper_")
	p.named(lang.L("Margins and gap"), "sheet.side_mm", "sheet.tail_mm", "sheet.gap_mm")
	p.named(lang.L("How blanks lie"), "sheet.grain", "sheet.grain_rule", "sheet.interlock", "sheet.room_for_bleed", "sheet.")
	p.request, p.close = beside(p.bench, rank, p.deliver)
	p.shows = append(p.shows, p.showAll)
	return p
}

// addRanking adds the table of sheets with what it is ordered by.
func (p *sheetPage) addRanking() {
	by := entry.NewChoice(lang.L("Best sheet first, by"), lang.L("What the sheets are put in order by. Paper and cost are for 1000 whole bags."), rankings(), func(value string) {
		p.set.SetRanking(settings.Ranking(value))
		p.show(p.doc.State())
	})
	by.OnFocus(p.explain)
	field, _ := bag.FieldAt("prices.paper_per_kg")
	price := p.number(entry.OfField(p.doc, field))
	p.unknown = entry.NewMessage()
	p.price = entry.NewColumn(1, price, p.unknown)
	p.ranking = newRanking()
	p.ranking.takes, p.ranking.changes, p.ranking.bring = p.take, p.change, p.bring
	p.ranking.showAll = func() {
		p.all = !p.all
		p.fillRanking(p.doc.State())
	}
	p.Add(entry.NewColumn(2,
		entry.NewText(lang.L("Which sheet to buy"), entry.Heading), by, p.price,
		entry.NewText(lang.L("Each with the gripper edge that holds more. A click or an arrow key opens a sheet, Enter takes it."), entry.Muted),
		p.ranking,
	))
	p.shows = append(p.shows, func(state document.State) {
		by.Put(string(p.set.Ranking()))
		price.Put(state.Spec.Prices.Paper)
		p.reveal(p.price, p.set.Ranking() == settings.LeastCost)
		p.unknown.Say(check.Note, missingPrice(&state.Spec), nil)
	})
}

func rankings() []entry.Option {
	return []entry.Option{
		{Value: string(settings.LeastWaste), Word: lang.L("Least waste"), Line: lang.L("The share of the sheet that ends up in no bag.")},
		{Value: string(settings.LeastPaper), Word: lang.L("Least paper"), Line: lang.L("The weight of paper for 1000 bags.")},
		{Value: string(settings.LeastCost), Word: lang.L("Least cost"), Line: lang.L("What the sheets for 1000 bags cost: by their own price, or by weight.")},
	}
}

// missingPrice says that no sheet has a price, or nothing.
func missingPrice(spec *bag.Spec) string {
	if spec.Prices.Paper > 0 {
		return ""
	}
	for _, own := range spec.Stock {
		if own.Price > 0 {
			return lang.L("Sheets without a price stand last.")
		}
	}
	return lang.L("No price is known yet. Enter one here, or for a sheet of your own.")
}

// rowOf returns the row of a sheet in the ranking that is shown, nil when there is none.
func (p *sheetPage) rowOf(key sheetKey) *advice.Row {
	for i := range p.result.rows {
		if r := &p.result.rows[i]; keyOf(r) == key {
			return r
		}
	}
	return nil
}

// take changes to a sheet of the ranking, as one step to undo.
func (p *sheetPage) take(key sheetKey) {
	if r := p.rowOf(key); r != nil {
		spec := p.doc.State().Spec
		takeSheet(&spec.Sheet, &r.Plan)
		p.doc.Set(spec)
	}
}

// takeSheet takes size, gripper edge and grain of a plan.
func takeSheet(to *bag.Sheet, plan *sheet.Plan) {
	to.Width, to.Height, to.GripperEdge = plan.Sheet.Width, plan.Sheet.Height, plan.Sheet.GripperEdge
	to.Grain = bag.GrainEither
	switch plan.Piece.SheetFibres {
	case bag.GrainWidth:
		to.Grain = bag.GrainAlongWidth
	case bag.GrainHeight:
		to.Grain = bag.GrainAlongHeight
	}
}

// change takes a sheet with a change that gains one more up on it, as one step to undo.
func (p *sheetPage) change(key sheetKey, i int) {
	if r := p.rowOf(key); r != nil && i < len(r.Near) {
		spec := p.doc.State().Spec
		takeSheet(&spec.Sheet, &r.Plan)
		r.Near[i].Apply(&spec)
		p.doc.Set(spec)
	}
}

func (p *sheetPage) showAll(state document.State) {
	s := state.Snapshot
	art := sheetArt{&s.Plan, &s.Blank, p.length}
	p.picture.set(art)
	p.large.set(art)
	p.summary.SetText(p.summaryText(state))
	p.more.SetText(p.moreText(s))
	if !state.Dragging && len(p.result.rows) > 0 {
		p.fillRanking(state)
	}
	p.rankAnew(state)
	p.showNear(state)
}

// showNear offers what would gain one more up on the sheet in use. It is out of date
// while a ranking is awaited, and then not shown.
func (p *sheetPage) showNear(state document.State) {
	var gains []string
	if (rankOrder{state.Snapshot, p.set.Ranking()}).same(p.result.order) {
		for i := range p.result.here {
			gains = append(gains, words.Measured(p.result.here[i].Phrase(), p.set.Unit()))
		}
	}
	const most = 2
	gains = gains[:min(len(gains), most)]
	if len(gains) == 0 && state.Dragging && p.nearBox.Visible() {
		return // an empty place would make everything below jump
	}
	p.near.set(gains, func(i int) {
		spec := p.doc.State().Spec
		p.result.here[i].Apply(&spec)
		p.doc.Set(spec)
	})
	p.reveal(p.nearBox, len(gains) > 0)
	p.near.Grown()
}

// summaryText says in one sentence what the sheet comes to.
func (p *sheetPage) summaryText(state document.State) string {
	s := state.Snapshot
	name := p.sheetName(&s.Spec)
	if s.Plan.Up() == 0 {
		piece := &s.Plan.Piece
		return fmt.Sprintf(lang.L("The blank of %s does not fit on %s: %s."), p.area(piece.Width, piece.Height), name, p.missText(s.Plan.TooLong))
	}
	number := func(value float64) string { return geometry.FormatNumber(value, 0) }
	edge, sheets, weight := gripperWord(s.Plan.Sheet.GripperEdge), number(s.Job.Sheets), number(s.Job.PaperKilograms)
	if s.Plan.Proven {
		return fmt.Sprintf(lang.L("%d-up on %s, %s; %s sheets, %s kg; no layout holds more."), s.Plan.Up(), name, edge, sheets, weight)
	}
	return fmt.Sprintf(lang.L("%d-up on %s, %s; %s sheets, %s kg; the best layout found, at most %d could fit."), s.Plan.Up(), name, edge, sheets, weight, s.Plan.Bound)
}

// sheetName names the sheet as it is bought, or gives its size.
func (p *sheetPage) sheetName(spec *bag.Spec) string {
	for _, stock := range sheet.StockOf(spec) {
		row := advice.Row{Ranked: sheet.Ranked{Usual: stock.Usual}}
		row.Plan.Piece.SheetFibres = stock.Grain
		if stock.Name != "" && inUse(&row, spec.Sheet) {
			return stock.Name
		}
	}
	return p.area(spec.Sheet.Width, spec.Sheet.Height)
}

// missText says by how much the blank passes the usable part of a sheet.
func (p *sheetPage) missText(miss geometry.Vec2) string {
	if miss.X > 0 && miss.Y > 0 {
		return fmt.Sprintf(lang.L("too small by %s"), p.area(miss.X, miss.Y))
	}
	return fmt.Sprintf(lang.L("too short by %s"), p.length(max(miss.X, miss.Y)))
}

// moreText says what else follows: the run, the waste, how blanks lie and the grain.
func (p *sheetPage) moreText(s *document.Snapshot) string {
	plan := &s.Plan
	if plan.Up() == 0 {
		return ""
	}
	number := func(value float64) string { return geometry.FormatNumber(value, 0) }
	list := []string{
		fmt.Sprintf(lang.L("Waste %.0f %%."), plan.WastePercent()),
		fmt.Sprintf(lang.L("For %s bags print %s."), number(s.Job.Quantity), number(s.Job.BagsPrinted)),
	}
	if plan.Nested {
		list = append(list, lang.L("The blanks reach into each other."))
	}
	if across := plan.Across(); across > 0 && plan.Piece.Grain != sheet.GrainFree {
		list = append(list, fmt.Sprintf(lang.L("%d of %d lie across the grain."), across, plan.Up()))
	}
	if plan.Piece.SheetFibres != "" {
		list = append(list, p.sentenceOfGrain(plan.Piece.SheetFibres, plan.Sheet))
	} else if plan.Piece.Grain != sheet.GrainFree {
		list = append(list, p.orderText(plan.GrainAlong(s.Spec.Paper.Grain), plan.Sheet))
	}
	return strings.Join(list, " ")
}

func (p *sheetPage) sentenceOfGrain(along bag.Grain, s bag.Sheet) string {
	return sentence(p.grainWords(along, s.Width, s.Height))
}

// grainWords says along which side of a sheet its fibres lie.
func (p *sheetPage) grainWords(along bag.Grain, width, height float64) string {
	return fmt.Sprintf(lang.L("grain along the side of %s"), p.length(sideOf(along, width, height)))
}

func (p *sheetPage) orderText(along bag.Grain, s bag.Sheet) string {
	return fmt.Sprintf(lang.L("Order the sheet with its grain along the side of %s."), p.length(sideOf(along, s.Width, s.Height)))
}

func sideOf(along bag.Grain, width, height float64) float64 {
	if along == bag.GrainWidth {
		return width
	}
	return height
}

func gripperWord(edge bag.GripperEdge) string {
	if edge == bag.GripperShort {
		return lang.L("short edge gripped")
	}
	return lang.L("long edge gripped")
}
