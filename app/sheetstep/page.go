// Package sheetstep is the page of the step Sheet: the press sheet with the blanks on it,
// which sheets could be bought, what would gain one more up, and the user's own sheets.
//
// Everything here belongs to the goroutine of the window.
package sheetstep

import (
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/settings"
	"gussetwright/app/sheetpicture"
	"gussetwright/app/steppage"
	"gussetwright/app/words"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/geometry/sheet"
	"gussetwright/geometry/sheet/advice"
)

// page shows the sheet with the blanks on it, which sheets could be bought and what would
// gain one more up on each, the user's own sheets, and the entries.
type page struct {
	*steppage.Page
	picture *sheetpicture.Picture
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

// New returns the page.
func New(b *steppage.Bench) *steppage.Page { return newPage(b).Page }

func newPage(b *steppage.Bench) *page {
	p := &page{Page: steppage.New(b), summary: entry.NewText("", entry.Plain), more: entry.NewText("", entry.Muted)}
	p.picture = sheetpicture.New(p.Explain)
	p.near = newOffers(lang.L("Make this change"), p.makeNear)
	p.nearBox = entry.NewColumn(1, entry.NewText(lang.L("One more up"), entry.Heading), p.near)
	p.nearBox.Hide()
	p.Add(entry.NewColumn(2, p.picture, p.summary, p.more, p.nearBox))
	p.addRanking()
	p.addOwnSheets()
	p.Named(lang.L("Sheet"), "sheet.width_mm", "sheet.height_mm", "sheet.gripper_")
	p.Named(lang.L("Margins and gap"), "sheet.side_mm", "sheet.tail_mm", "sheet.gap_mm")
	p.Named(lang.L("How blanks lie"), "sheet.grain", "sheet.grain_rule", "sheet.interlock", "sheet.room_for_bleed", "sheet.")
	p.request = steppage.Beside(p.Page, rank, p.deliver)
	p.OnFollow(p.showAll)
	return p
}

// addRanking adds the table of sheets with what it is ordered by.
func (p *page) addRanking() {
	by := entry.NewChoice(lang.L("Best sheet first, by"), lang.L("What the sheets are put in order by. Paper and cost are for 1000 whole bags."), rankings(), func(value string) {
		p.Settings.SetRanking(settings.Ranking(value))
		p.Follow(p.Doc.State())
	})
	by.OnFocus(p.Explain)
	field, _ := bag.FieldAt("prices.paper_per_kg")
	price := p.Number(entry.OfField(p.Doc, field))
	p.unknown = entry.NewMessage()
	p.price = entry.NewColumn(1, price, p.unknown)
	p.ranking = newRanking()
	p.ranking.takes, p.ranking.changes, p.ranking.bring = p.take, p.change, p.Bring
	p.ranking.showAll = func() {
		p.all = !p.all
		p.fillRanking(p.Doc.State())
	}
	p.Add(entry.NewColumn(2,
		entry.NewText(lang.L("Which sheet to buy"), entry.Heading), by, p.price,
		entry.NewText(lang.L("Each with the gripper edge that holds more. A click or an arrow key opens a sheet, Enter takes it."), entry.Muted),
		p.ranking,
	))
	p.OnFollow(func(state document.State) {
		by.Put(string(p.Settings.Ranking()))
		price.Put(state.Spec.Prices.Paper)
		p.Reveal(p.price, p.Settings.Ranking() == settings.LeastCost)
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
func (p *page) rowOf(key sheetKey) *advice.Row {
	for i := range p.result.rows {
		if r := &p.result.rows[i]; keyOf(r) == key {
			return r
		}
	}
	return nil
}

// take changes to a sheet of the ranking, as one step to undo.
func (p *page) take(key sheetKey) {
	if r := p.rowOf(key); r != nil {
		spec := p.Doc.State().Spec
		takeSheet(&spec.Sheet, &r.Plan)
		p.Doc.Set(spec)
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
func (p *page) change(key sheetKey, i int) {
	if r := p.rowOf(key); r != nil && i < len(r.Near) {
		spec := p.Doc.State().Spec
		takeSheet(&spec.Sheet, &r.Plan)
		r.Near[i].Apply(&spec)
		p.Doc.Set(spec)
	}
}

func (p *page) showAll(state document.State) {
	s := state.Snapshot
	p.picture.Set(sheetpicture.Art{Plan: &s.Plan, Blank: &s.Blank, Length: p.Length})
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
func (p *page) showNear(state document.State) {
	var gains []string
	if (rankOrder{state.Snapshot, p.Settings.Ranking()}).same(p.result.order) {
		for i := range p.result.here {
			gains = append(gains, words.Measured(p.result.here[i].Phrase(), p.Settings.Unit()))
		}
	}
	const most = 2
	gains = gains[:min(len(gains), most)]
	if len(gains) == 0 && state.Dragging && p.nearBox.Visible() {
		return // an empty place would make everything below jump
	}
	p.near.set(gains)
	p.Reveal(p.nearBox, len(gains) > 0)
	p.near.Grown()
}

// makeNear makes a change that gains one more up on the sheet in use, as one step to undo.
func (p *page) makeNear(i int) {
	spec := p.Doc.State().Spec
	p.result.here[i].Apply(&spec)
	p.Doc.Set(spec)
}
