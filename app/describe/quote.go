package describe

import (
	"strconv"
	"strings"

	"gussetwright/app/document"
	"gussetwright/geometry/job"
)

// Quote is what the run costs at the user's prices, in the currency, which may be "".
type Quote struct {
	Currency string     `json:"currency"`
	Lines    []CostLine `json:"lines"`
	Missing  []Item     `json:"missing"` // without a price, and not in the total
	Sum      float64    `json:"sum"`
	Markup   float64    `json:"markup"`
	Total    float64    `json:"total"`
	PerBag   float64    `json:"per_bag"`
	Breaks   []Break    `json:"price_breaks"`
}

// Item is a part of the run that is paid for.
type Item struct {
	Path     string  `json:"path"` // of its price
	Name     string  `json:"name"`
	Quantity float64 `json:"quantity"`
	Unit     string  `json:"unit"`
	Per      float64 `json:"price_for"` // so many units
}

// CostLine is an item with its price.
type CostLine struct {
	Item
	Price  float64 `json:"price"`
	Amount float64 `json:"amount"`
}

// Break is the run in another quantity.
type Break struct {
	Quantity float64 `json:"quantity"`
	Total    float64 `json:"total"`
	PerBag   float64 `json:"per_bag"`
}

// quoteOf returns nil where no price is known.
func quoteOf(s *document.Snapshot) *Quote {
	quote := job.QuoteFor(&s.Blank, &s.Plan, s.Spec.Run.Quantity)
	if !quote.Known() {
		return nil
	}
	described := &Quote{
		Currency: s.Spec.Currency, Lines: []CostLine{}, Missing: []Item{},
		Sum: quote.Sum, Markup: quote.Markup, Total: quote.Total, PerBag: quote.PerBag,
	}
	for _, line := range quote.Lines {
		described.Lines = append(described.Lines, CostLine{itemOf(line.Item), line.Price, line.Amount})
	}
	for _, item := range quote.Missing {
		described.Missing = append(described.Missing, itemOf(item))
	}
	for _, b := range job.Breaks(&s.Blank, &s.Plan) {
		described.Breaks = append(described.Breaks, Break(b))
	}
	return described
}

func itemOf(item job.Item) Item {
	return Item{item.Path, string(item.Name), item.Quantity, string(item.Unit), item.Per}
}

// money writes an amount with two decimals.
func money(amount float64) string { return strconv.FormatFloat(amount, 'f', 2, 64) }

// each writes the price of one thing, which may be less than a hundredth: with two
// decimals, and with four where they are not both 0.
func each(price float64) string {
	return strings.TrimSuffix(strconv.FormatFloat(price, 'f', 4, 64), "00")
}

// text writes the quote for people, a line to a row.
func (q *Quote) text(row func(label, format string, values ...any)) {
	in := ""
	if q.Currency != "" {
		in = " " + q.Currency
	}
	for _, line := range q.Lines {
		row("Cost", "%s%s: %s", money(line.Amount), in, line.text())
	}
	if q.Markup > 0 {
		row("Cost", "%s%s: markup", money(q.Markup), in)
	}
	row("Total", "%s%s, %s%s a bag", money(q.Total), in, each(q.PerBag), in)
	if len(q.Missing) > 0 {
		names := make([]string, len(q.Missing))
		for i, item := range q.Missing {
			names[i] = item.Name
		}
		row("Left out", "no price is known of: %s", strings.Join(names, ", "))
	}
	if len(q.Breaks) < 2 {
		return
	}
	for _, b := range q.Breaks {
		row("Quantity", "%s bags: %s%s, %s%s a bag", number(b.Quantity), money(b.Total), in, each(b.PerBag), in)
	}
}

// text says how the amount comes about, such as "Printing, 1050 sheets at 30.00 for 1000".
func (l *CostLine) text() string {
	if l.Unit == "" {
		return l.Name
	}
	unit := l.Unit
	if l.Quantity == 1 {
		unit = strings.TrimSuffix(unit, "s")
	}
	text := l.Name + ", " + number(l.Quantity) + " " + unit + " at " + each(l.Price)
	if l.Per != 1 {
		text += " for " + number(l.Per)
	}
	return text
}
