package steps

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/arithmetic"
	"gussetwright/geometry/bag"
)

// addPrices adds the currency and the user's own prices, in drawers that are closed at
// first.
func (p *quotePage) addPrices() {
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
func (p *quotePage) priceDrawer(title string, prefixes []string) *drawer {
	d := newDrawer(title, lang.L("Your own prices. Enter or the space bar opens and closes them; what is not known stays empty."), 1.5, p.explain)
	slots := p.slotsOf(prefixes, p.priceSlot)
	p.keepIn(d, slots, func(spec *bag.Spec) string {
		known, all := 0, 0
		for _, s := range slots {
			if !bag.Applies(s.path, spec) {
				continue
			}
			all++
			if field, _ := bag.FieldAt(s.path); field.Number(spec) > 0 {
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
func (p *quotePage) packingDrawer() *drawer {
	d := newDrawer(lang.L("How bags are packed"), lang.L("Cartons and pallets as you use them. Enter or the space bar opens and closes the entries."), 3, p.explain)
	p.keepIn(d, p.slotsOf([]string{"packing."}, p.fieldSlot), func(spec *bag.Spec) string {
		return fmt.Sprintf(lang.L("%s in a carton"), count(spec.Packing.BagsPerCarton))
	})
	return d
}

// slotsOf returns the entries of fields by their paths, or the beginnings of these, that
// do not stand on the page yet.
func (p *quotePage) slotsOf(prefixes []string, entryOf func(*bag.Field) *slot) []*slot {
	var list []*slot
	table := bag.Fields()
	for _, prefix := range prefixes {
		for i := range table {
			if takes(prefix, table[i].Path) && !p.holds(table[i].Path) {
				s := entryOf(&table[i])
				list = append(list, s)
				p.slots = append(p.slots, s)
			}
		}
	}
	return list
}

// keepIn puts entries into a drawer, which opens by itself where one of them is wrong.
func (p *quotePage) keepIn(d *drawer, slots []*slot, note func(*bag.Spec) string) {
	for _, s := range slots {
		d.body.Add(s)
	}
	// The group stands nowhere itself: it only has its entries brought up to date.
	p.groups = append(p.groups, &group{Column: entry.NewColumn(0), slots: slots})
	p.shows = append(p.shows, func(state document.State) {
		d.say(note(&state.Spec))
		complaints := complaintsIn(state.Err)
		for _, s := range slots {
			if complaintAbout(s.path, complaints) != "" {
				d.open(true)
			}
		}
	})
}

// priceSlot returns the entry of a price. One that is 0 is not known, and empty.
func (p *quotePage) priceSlot(field *bag.Field) *slot {
	hint := lang.L("not known")
	if field.Path == "prices.markup_percent" {
		hint = lang.L("none")
	}
	price := newLineEntry(lang.L(field.Label), lang.L(field.Help), hint, func(text string) string {
		value, fault := readPrice(text, field.Unit)
		if fault != "" {
			return fault
		}
		spec := p.doc.State().Spec
		field.SetNumber(&spec, value)
		return p.takeOver(spec, field.Path)
	})
	p.join(price)
	s := newSlot(field.Path, price.complain, func(spec *bag.Spec) { price.put(priceText(field.Number(spec))) }, price)
	p.shows = append(p.shows, func(state document.State) {
		price.unit.SetText(strings.TrimSpace(currencyIn(field.Unit, state.Spec.Currency) + " " + unitWords(field.Unit)))
	})
	return s
}

// join makes a line part of the page.
func (p *quotePage) join(e *lineEntry) {
	e.gained = p.explain
	p.forgets = append(p.forgets, e.restore)
}

// takeOver makes a spec the bag unless an entry of it is wrong; then it says how.
func (p *quotePage) takeOver(spec bag.Spec, path string) (complaint string) {
	for _, c := range complaintsIn(spec.Validate()) {
		if strings.HasPrefix(c.Path, path) {
			return sentence(words.Of(c.Limit)) + " " + sentence(words.Of(c.Remedy))
		}
	}
	p.doc.Set(spec)
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
	value, err := arithmetic.EvaluateNumber(text, unit)
	if err != nil {
		return 0, sentence(words.Error(err))
	}
	return value, ""
}

// priceText writes a price as it stands in its entry, nothing for 0.
func priceText(value float64) string {
	if value == 0 {
		return ""
	}
	return geometry.FormatNumber(value, 6)
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
func (p *quotePage) currencyEntry() *slot {
	currency := newLineEntry(lang.L("Currency"), lang.L("The currency of all prices, such as EUR. It only stands beside them; nothing is converted."), lang.L("none"), func(text string) string {
		spec := p.doc.State().Spec
		spec.Currency = strings.TrimSpace(text)
		return p.takeOver(spec, "currency")
	})
	p.join(currency)
	p.shows = append(p.shows, func(state document.State) { currency.put(state.Spec.Currency) })
	return newSlot("currency", currency.complain, func(*bag.Spec) {}, currency)
}
