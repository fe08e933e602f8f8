package quotestep

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/steppage"
	"gussetwright/app/words"
	"gussetwright/geometry/bag"
)

// addPrices adds the currency and the user's own prices, in drawers that are closed at
// first.
func (p *page) addPrices() {
	box := entry.NewColumn(2,
		entry.NewText(lang.L("Prices"), entry.Heading),
		entry.NewText(lang.L("Your own prices, all with tax or all without. What is not known stays empty, and the quote names it as left out."), entry.Muted),
		p.currencyEntry(),
	)
	for _, group := range []struct {
		title    string
		prefixes []string
	}{
		{lang.L("Paper and press"), []string{"prices.paper_per_kg", "prices.make_ready_per_form", "prices.printing_per_1000_sheets"}},
		{lang.L("Finishing"), []string{
			"prices.lamination_per_m2", "prices.die_per_form", "prices.rule_per_m", "prices.cutting_per_1000_sheets",
			"prices.folding_per_1000_bags", "prices.handles_per_1000_bags",
		}},
		{lang.L("Materials"), []string{"prices.rope_per_m", "prices.eyelets_per_1000", "prices.board_per_kg", "prices.glue_per_kg"}},
		{lang.L("Cartons and pallets"), []string{"prices.carton_each", "prices.pallet_each"}},
		{lang.L("Other and markup"), []string{"prices."}},
	} {
		box.Add(p.priceDrawer(group.title, group.prefixes))
	}
	box.Add(p.packingDrawer())
	p.Add(box)
}

// priceDrawer returns a drawer with prices, the head of which counts those that are
// known.
func (p *page) priceDrawer(title string, prefixes []string) *steppage.Drawer {
	slots := p.Slots(p.priceSlot, prefixes...)
	d := steppage.NewDrawer(title, lang.L("Your own prices. Enter or the space bar opens and closes them; what is not known stays empty."), p.Explain, 1.5, slots)
	p.watch(d, slots, func(spec *bag.Spec) string {
		known, all := 0, 0
		for _, s := range slots {
			if !bag.Applies(s.Path, spec) {
				continue
			}
			all++
			if field, _ := bag.FieldAt(s.Path); field.Number(spec) > 0 {
				known++
			}
		}
		if known == 0 {
			return lang.L("none known")
		}
		return fmt.Sprintf(lang.L("%d of %d known"), known, all)
	})
	return d
}

// packingDrawer returns the drawer with how bags are packed.
func (p *page) packingDrawer() *steppage.Drawer {
	slots := p.Slots(p.FieldSlot, "packing.")
	d := steppage.NewDrawer(lang.L("How bags are packed"), lang.L("Cartons and pallets as you use them. Enter or the space bar opens and closes the entries."), p.Explain, 3, slots)
	p.watch(d, slots, func(spec *bag.Spec) string {
		return fmt.Sprintf(lang.L("%s in a carton"), count(spec.Packing.BagsPerCarton))
	})
	return d
}

// watch keeps the note on a drawer true, and opens it where one of its entries is wrong.
func (p *page) watch(d *steppage.Drawer, slots []*steppage.Slot, note func(*bag.Spec) string) {
	p.OnFollow(func(state document.State) {
		d.Say(note(&state.Spec))
		complaints := p.Complaints(state.Err)
		for _, s := range slots {
			if steppage.ComplaintAbout(s.Path, complaints) != "" {
				d.Open(true)
			}
		}
	})
}

// priceSlot returns the entry of a price. One that is 0 is not known, and empty.
func (p *page) priceSlot(field *bag.Field) *steppage.Slot {
	hint := lang.L("not known")
	if field.Path == "prices.markup_percent" {
		hint = lang.L("none")
	}
	price := entry.NewLine(lang.L(field.Label), lang.L(field.Help), hint, func(text string) string {
		value, fault := readPrice(text, field.Unit)
		if fault != "" {
			return fault
		}
		spec := p.Doc.State().Spec
		field.SetNumber(&spec, value)
		return p.takeOver(spec, field.Path)
	})
	p.join(price)
	p.OnFollow(func(state document.State) {
		price.SetUnit(strings.TrimSpace(currencyIn(field.Unit, state.Spec.Currency) + " " + unitWords(field.Unit)))
	})
	return steppage.NewSlot(field.Path, price.Complain, func(spec *bag.Spec) { price.Put(priceText(field.Number(spec), field.Unit)) }, price)
}

// join makes a line part of the page.
func (p *page) join(line *entry.Line) {
	line.OnFocus(p.Explain)
	p.OnForget(line.Forget)
}

// takeOver makes a spec the bag unless an entry of it is wrong; then it says how.
func (p *page) takeOver(spec bag.Spec, path string) (complaint string) {
	for _, c := range p.Complaints(spec.Validate()) {
		if strings.HasPrefix(c.Path, path) {
			return steppage.Complaint(c)
		}
	}
	p.Doc.Set(spec)
	return ""
}

// readPrice reads a price, 0 where nothing or a dash is entered.
func readPrice(text, unit string) (value float64, complaint string) {
	switch strings.TrimSpace(text) {
	case "", "-", "–":
		return 0, ""
	}
	if unit != "%" {
		unit = ""
	}
	value, err := words.DecimalMark().EvaluateNumber(text, unit)
	if err != nil {
		return 0, steppage.Sentence(words.Error(err))
	}
	return value, ""
}

// priceText writes a price or a markup as it stands in its entry, nothing for 0.
func priceText(value float64, unit string) string {
	switch {
	case value == 0:
		return ""
	case unit == "%":
		return words.Plain(value, 6)
	}
	return words.PlainMoney(value, entry.PriceDecimals)
}

func currencyIn(unit, currency string) string {
	if unit == "%" {
		return ""
	}
	return currency
}

// unitWords says what a price is for.
func unitWords(unit string) string {
	switch unit {
	case "/kg":
		return lang.L("per kg")
	case "/m":
		return lang.L("per m")
	case "/m²":
		return lang.L("per m²")
	case "/form":
		return lang.L("per form")
	case "/1000":
		return lang.L("per 1000")
	case "/1000 sheets":
		return lang.L("per 1000 sheets")
	case "/1000 bags":
		return lang.L("per 1000 bags")
	case "each":
		return lang.L("each")
	case "%":
		return lang.L("percent of all costs")
	}
	return lang.L("for the run")
}

// currencyEntry returns the entry of the currency.
func (p *page) currencyEntry() *steppage.Slot {
	currency := entry.NewLine(lang.L("Currency"), lang.L("The currency of all prices, such as EUR. It only stands beside them; nothing is converted."), lang.L("none"), func(text string) string {
		spec := p.Doc.State().Spec
		spec.Currency = strings.TrimSpace(text)
		return p.takeOver(spec, "currency")
	})
	p.join(currency)
	s := steppage.NewSlot("currency", currency.Complain, func(spec *bag.Spec) { currency.Put(spec.Currency) }, currency)
	p.Keep(s)
	return s
}
