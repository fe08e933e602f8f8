package job

import (
	"slices"

	"gussetwright/geometry/blank"
	"gussetwright/geometry/sheet"
)

// Quote is what a run costs at the user's prices. What has no price is in Missing and in
// no line, and the total does not contain it.
type Quote struct {
	Quantity float64 // good bags
	Lines    []CostLine
	Missing  []Item
	Sum      float64 // of the lines
	Markup   float64 // the amount added to the sum
	Total    float64
	PerBag   float64
}

// Break is what a run of another quantity costs.
type Break struct {
	Quantity float64
	Total    float64
	PerBag   float64
}

// QuoteFor returns what so many bags cost, everything reckoned anew for that quantity:
// sheets with spoilage and make-ready, board, cartons and pallets. It has no lines where
// no price is known, and neither lines nor anything missing where no bag fits the sheet.
// It folds the bag, which takes a while.
func QuoteFor(laid *blank.Blank, plan *sheet.Plan, quantity float64) Quote {
	wanted := *laid
	wanted.Spec.Run.Quantity = quantity
	run := Reckon(&wanted, plan)
	quote := Quote{Quantity: quantity}
	if run.Sheets == 0 {
		return quote
	}
	b := bill{spec: &wanted.Spec}
	b.charges(&wanted, &run)
	quote.Lines, quote.Missing = b.lines, b.missing
	for _, line := range quote.Lines {
		quote.Sum += line.Amount
	}
	quote.Markup = quote.Sum * wanted.Spec.Prices.Markup / 100
	quote.Total = quote.Sum + quote.Markup
	quote.PerBag = quote.Total / quantity
	return quote
}

// Known tells whether anything in the quote has a price.
func (q *Quote) Known() bool { return len(q.Lines) > 0 }

// Breaks returns what the quantity of the run and each further quantity to quote for
// cost, the smallest first and each once; none where no price is known.
func Breaks(laid *blank.Blank, plan *sheet.Plan) []Break {
	quantities := append(slices.Clone(laid.Spec.Breaks), laid.Spec.Run.Quantity)
	slices.Sort(quantities)
	var breaks []Break
	for _, quantity := range slices.Compact(quantities) {
		quote := QuoteFor(laid, plan, quantity)
		if quote.Known() {
			breaks = append(breaks, Break{quantity, quote.Total, quote.PerBag})
		}
	}
	return breaks
}
