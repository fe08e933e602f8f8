package quotestep

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/words"
	"gussetwright/geometry/job"
)

// money writes an amount with two decimals.
func money(amount float64) string { return words.Money(amount, 2) }

// each writes the price of one thing, which may be less than a hundredth: with two
// decimals, and up to four where those are not 0.
func each(price float64) string { return words.Money(price, 4) }

// showBill shows the quote, or in one sentence why there is none.
func (p *page) showBill(made *quoteResult, state document.State) {
	quote := &made.quote
	none := ""
	switch {
	case made.order.snapshot.Job.Sheets == 0:
		none = lang.L("Nothing can be quoted while the blank does not fit the sheet.")
	case !quote.Known():
		none = lang.L("No price is known yet: enter your own under Prices, and the quote stands here.")
	}
	p.noQuote.SetText(none)
	currency := state.Spec.Currency
	p.missing.SetText(missingText(quote))
	if none != "" {
		p.missing.SetText("")
		p.lines.set(nil, nil)
		p.quantities.set(nil, nil)
		return
	}
	p.lines.set([]string{lang.L("For"), currency}, billRows(quote))
	var rows []ledgerRow
	if len(made.breaks) > 1 {
		for _, b := range made.breaks {
			rows = append(rows, ledgerRow{name: fmt.Sprintf(lang.L("%s bags"), count(b.Quantity)), amounts: []string{money(b.Total), each(b.PerBag)}})
		}
		p.quantities.set([]string{lang.L("By quantity"), strings.TrimSpace(fmt.Sprintf(lang.L("Total %s"), currency)), lang.L("Per bag")}, rows)
		return
	}
	p.quantities.set(nil, nil)
}

func billRows(quote *job.Quote) []ledgerRow {
	var rows []ledgerRow
	for i := range quote.Lines {
		line := &quote.Lines[i]
		rows = append(rows, ledgerRow{name: words.OfWord(line.Name), note: lineNote(line), amounts: []string{money(line.Amount)}})
	}
	if quote.Markup > 0 {
		rows = append(rows, ledgerRow{name: lang.L("Markup"), amounts: []string{money(quote.Markup)}})
	}
	return append(rows,
		ledgerRow{name: fmt.Sprintf(lang.L("Total for %s bags"), count(quote.Quantity)), amounts: []string{money(quote.Total)}, sum: true},
		ledgerRow{name: lang.L("Per bag"), amounts: []string{each(quote.PerBag)}, sum: true},
	)
}

// lineNote says how an amount comes about, such as "1050 sheets at 30.00 for 1000".
func lineNote(line *job.CostLine) string {
	if line.Unit == "" {
		return ""
	}
	if line.Quantity == 1 && line.Per == 1 {
		return fmt.Sprintf(lang.L("one at %s"), each(line.Price))
	}
	quantity := count(line.Quantity) + " " + words.OfWord(line.Unit)
	if line.Per != 1 {
		return fmt.Sprintf(lang.L("%s at %s for %s"), quantity, each(line.Price), count(line.Per))
	}
	return fmt.Sprintf(lang.L("%s at %s"), quantity, each(line.Price))
}

// missingText names what has no price and so is in no line.
func missingText(quote *job.Quote) string {
	if len(quote.Missing) == 0 {
		return ""
	}
	names := make([]string, len(quote.Missing))
	for i := range quote.Missing {
		names[i] = words.OfWord(quote.Missing[i].Name)
	}
	return fmt.Sprintf(lang.L("Not in this quote: %s."), strings.Join(names, ", "))
}
