package job

import (
	"fmt"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
)

// Item is something that is paid for, before it has a price.
type Item struct {
	Path     string      // of the price in the project, such as "prices.rope_per_m"
	Name     phrase.Word // what the price is called there
	Quantity float64     // more than 0
	Unit     phrase.Word // of the quantity; empty for what is paid once
	Per      float64     // how many units the price is for: 1, or 1000
}

// The units of quantities.
const (
	inSheets   phrase.Word = "sheets"
	inForms    phrase.Word = "forms"
	inBags     phrase.Word = "bags"
	inEyelets  phrase.Word = "eyelets"
	inCartons  phrase.Word = "cartons"
	inPallets  phrase.Word = "pallets"
	kilograms  phrase.Word = "kg"
	metres     phrase.Word = "m"
	squareArea phrase.Word = "m²"
)

// bagPaper and patchPaper are the names of the paper, which may be paid by the sheet or by
// weight.
const (
	bagPaper   phrase.Word = "Paper"
	patchPaper phrase.Word = "Paper of the patches"
)

// CostLine is an item with its price. Price and amount are in the user's currency.
type CostLine struct {
	Item
	Price  float64 // of Per units; more than 0
	Amount float64 // Quantity × Price ÷ Per
}

// bill gathers what a run is charged for.
type bill struct {
	spec  *bag.Spec
	lines []CostLine
	// missing are items without a price that somebody will charge for.
	missing []Item
}

// charge adds an item whose price is an entry of bag.Prices.
func (b *bill) charge(path string, quantity float64, unit phrase.Word, per float64) {
	field, _ := bag.FieldAt(path)
	b.add(Item{path, phrase.Word(field.Label), quantity, unit, per}, field.Number(b.spec))
}

// mayCharge is charge for what a run need not have: without a price it is not missed.
func (b *bill) mayCharge(path string, quantity float64, unit phrase.Word, per float64) {
	if field, _ := bag.FieldAt(path); field.Number(b.spec) > 0 {
		b.charge(path, quantity, unit, per)
	}
}

func (b *bill) add(item Item, price float64) {
	switch {
	case item.Quantity <= 0:
	case price > 0:
		b.lines = append(b.lines, CostLine{item, price, item.Quantity * price / item.Per})
	default:
		b.missing = append(b.missing, item)
	}
}

// charges goes through the run in the order of the work.
func (b *bill) charges(laid *blank.Blank, run *Job) {
	cuttings, packing := CutCards(laid, run), Pack(laid, run)
	b.paper(bagPaper, run.Sheets, run.PaperKilograms)
	board := 0.0
	for i := range cuttings {
		if cuttings[i].Board() {
			board += cuttings[i].Kilograms
		} else {
			b.paper(patchPaper, cuttings[i].Sheets, cuttings[i].Kilograms)
		}
	}
	forms := float64(run.Forms)
	b.charge("prices.make_ready_per_form", forms, inForms, 1)
	b.charge("prices.printing_per_1000_sheets", run.Sheets, inSheets, 1000)
	if b.spec.Paper.Lamination != bag.LaminationNone {
		b.charge("prices.lamination_per_m2", run.Sheets*b.spec.Sheet.Width*b.spec.Sheet.Height/1e6, squareArea, 1)
	}
	b.charge("prices.die_per_form", forms, inForms, 1)
	b.charge("prices.rule_per_m", run.DieCutMetres+run.DieCreaseMetres, metres, 1)
	b.charge("prices.cutting_per_1000_sheets", run.Sheets, inSheets, 1000)
	b.charge("prices.board_per_kg", board, kilograms, 1)
	b.charge("prices.glue_per_kg", run.GlueKilograms, kilograms, 1)
	b.charge("prices.folding_per_1000_bags", run.Quantity, inBags, 1000)
	if run.RopePerHandle > 0 {
		b.charge("prices.handles_per_1000_bags", run.Quantity, inBags, 1000)
	}
	b.charge("prices.rope_per_m", run.RopeMetres, metres, 1)
	b.charge("prices.eyelets_per_1000", run.Eyelets, inEyelets, 1000)
	b.charge("prices.carton_each", packing.Cartons, inCartons, 1)
	b.charge("prices.pallet_each", packing.Pallets, inPallets, 1)
	b.mayCharge("prices.other_once", 1, "", 1)
	b.mayCharge("prices.other_per_1000_bags", run.Quantity, inBags, 1000)
}

// paper charges sheets of the bag's paper: by the sheet where it is in the user's stock
// with a price, else by weight.
func (b *bill) paper(name phrase.Word, sheets, weight float64) {
	if i, found := inStock(b.spec); found {
		b.add(Item{fmt.Sprintf("stock[%d].price", i), name, sheets, inSheets, 1}, b.spec.Stock[i].Price)
		return
	}
	b.add(Item{"prices.paper_per_kg", name, weight, kilograms, 1}, b.spec.Prices.Paper)
}

// inStock returns the priced sheet of the user's stock that is the press sheet: of its
// size, either way round, and with no other grain. One that names the same grain comes
// before one that can be had with either, and of two the first.
func inStock(spec *bag.Spec) (index int, found bool) {
	for i := range spec.Stock {
		s := turnedLike(&spec.Sheet, spec.Stock[i])
		if s.Price <= 0 || !alike(s.Width, spec.Sheet.Width) || !alike(s.Height, spec.Sheet.Height) {
			continue
		}
		if s.Grain == spec.Sheet.Grain {
			return i, true
		}
		if !found && (s.Grain == bag.GrainEither || spec.Sheet.Grain == bag.GrainEither) {
			index, found = i, true
		}
	}
	return index, found
}

// turnedLike returns a sheet of the stock lying as the press sheet does.
func turnedLike(press *bag.Sheet, s bag.StockSheet) bag.StockSheet {
	if (s.Width < s.Height) == (press.Width < press.Height) {
		return s
	}
	s.Width, s.Height = s.Height, s.Width
	switch s.Grain {
	case bag.GrainAlongWidth:
		s.Grain = bag.GrainAlongHeight
	case bag.GrainAlongHeight:
		s.Grain = bag.GrainAlongWidth
	}
	return s
}

// alike tells whether two sides are the same to a tenth of a millimetre, as sheets in
// inches are entered.
func alike(a, b float64) bool { return max(a, b)-min(a, b) < 0.1 }
