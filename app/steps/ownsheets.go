package steps

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// ownSheets is the list of the user's own sheets with the entries of the one that is
// chosen.
type ownSheets struct {
	*page
	list    *table
	box     *entry.Column // of the list
	entries *entry.Column
	add     *offer
	full    *entry.Text
	chosen  int // counted from 0; −1 for none
	loads   int // of the document for which it was chosen
	puts    []func(*bag.StockSheet)
	fields  map[string]func(string) // complains about a part of the sheet
}

// mostStock is the limit of package bag on the list.
const mostStock = 40

func (p *sheetPage) addOwnSheets() {
	o := &ownSheets{page: p.page, chosen: -1, fields: map[string]func(string){}}
	o.list = newTable(nil, func(i int) { o.choose(i) })
	o.box = entry.NewColumn(0, o.list)
	o.entries = entry.NewColumn(2.5, o.nameEntry(),
		o.lengthEntry("width_mm", "sheet.width_mm", func(s *bag.StockSheet) *float64 { return &s.Width }),
		o.lengthEntry("height_mm", "sheet.height_mm", func(s *bag.StockSheet) *float64 { return &s.Height }),
		o.grainEntry(), o.priceEntry(), o.newRemove())
	o.entries.Hide()
	o.add = newOffer(lang.L("Add the sheet in use"))
	o.add.say("", o.append)
	o.full = entry.NewText("", entry.Muted)
	o.Add(entry.NewColumn(2,
		entry.NewText(lang.L("Own sheets"), entry.Heading),
		entry.NewText(lang.L("Sheets that your merchant has beside the usual ones, with grain and price. They are ranked with the others."), entry.Muted),
		o.box, o.entries, o.add, o.full,
	))
	o.shows = append(o.shows, o.showAll)
}

func (o *ownSheets) newRemove() *offer {
	remove := newOffer(lang.L("Remove this sheet"))
	remove.say("", func() {
		spec := o.doc.State().Spec
		if o.chosen >= 0 && o.chosen < len(spec.Stock) {
			spec.Stock = slices.Delete(slices.Clone(spec.Stock), o.chosen, o.chosen+1)
			o.chosen = -1
			o.doc.Set(spec)
		}
	})
	return remove
}

// append adds the sheet in use and opens it.
func (o *ownSheets) append() {
	spec := o.doc.State().Spec
	s := spec.Sheet
	own := bag.StockSheet{Name: o.freeName(spec.Stock, o.area(s.Width, s.Height)), Width: s.Width, Height: s.Height, Grain: s.Grain}
	o.chosen = len(spec.Stock)
	spec.Stock = append(slices.Clone(spec.Stock), own)
	o.doc.Set(spec)
}

// freeName returns a name that no sheet has yet.
func (o *ownSheets) freeName(stock []bag.StockSheet, name string) string {
	taken := func(name string) bool {
		return slices.ContainsFunc(stock, func(s bag.StockSheet) bool { return s.Name == name })
	}
	free := name
	for i := 2; taken(free); i++ {
		free = fmt.Sprintf("%s (%d)", name, i)
	}
	return free
}

// choose opens the entries of a sheet, or closes them.
func (o *ownSheets) choose(i int) {
	if i == o.chosen {
		i = -1
	}
	for _, forget := range o.forgets {
		forget()
	}
	o.chosen = i
	o.showAll(o.doc.State())
}

// changed returns the spec with the chosen sheet changed.
func (o *ownSheets) changed(change func(*bag.StockSheet)) bag.Spec {
	spec := o.doc.State().Spec
	if o.chosen >= 0 && o.chosen < len(spec.Stock) {
		spec.Stock = slices.Clone(spec.Stock)
		change(&spec.Stock[o.chosen])
	}
	return spec
}

func (o *ownSheets) nameEntry() entry.Tall {
	name := entry.NewName(lang.L("Name of the sheet"), lang.L("As you or your merchant call it."), longestName, func(name string) {
		o.doc.Set(o.changed(func(s *bag.StockSheet) { s.Name = name }))
	})
	name.OnFocus(o.explain)
	o.forgets = append(o.forgets, name.Forget)
	o.puts = append(o.puts, func(s *bag.StockSheet) { name.Put(s.Name) })
	o.fields["name"] = name.Complain
	return name
}

// lengthEntry returns the entry of a side, with the limits of the sheet in use.
func (o *ownSheets) lengthEntry(key, like string, of func(*bag.StockSheet) *float64) entry.Tall {
	field, _ := bag.FieldAt(like)
	return o.numberEntry(key, entry.OfField(o.doc, field), of)
}

// priceEntry returns the entry of the price of one sheet, with the limits of all prices.
func (o *ownSheets) priceEntry() entry.Tall {
	field, _ := bag.FieldAt("prices.carton_each")
	quantity := entry.OfField(o.doc, field)
	quantity.Label, quantity.Unit = lang.L("Price of one sheet"), ""
	quantity.High, quantity.Step = 0.5, 0.01
	quantity.Help = lang.L("In the currency of all prices. 0 where it is not known: then the price of paper by weight counts.")
	return o.numberEntry("price", quantity, func(s *bag.StockSheet) *float64 { return &s.Price })
}

// numberEntry returns the entry of a number.
func (o *ownSheets) numberEntry(key string, quantity entry.Quantity, of func(*bag.StockSheet) *float64) entry.Tall {
	changed := func(value float64) bag.Spec {
		return o.changed(func(s *bag.StockSheet) { *of(s) = value })
	}
	quantity.Set = func(value float64) { o.doc.Set(changed(value)) }
	quantity.Drag = func(value float64) { o.doc.Drag(changed(value)) }
	number := o.number(quantity)
	o.puts = append(o.puts, func(s *bag.StockSheet) { number.Put(*of(s)) })
	o.fields[key] = number.Complain
	return number
}

func (o *ownSheets) grainEntry() entry.Tall {
	field, _ := bag.FieldAt("sheet.grain")
	grain := entry.NewChoice(lang.L(field.Label), lang.L(field.Help), entry.OptionsOf(field), func(value string) {
		o.doc.Set(o.changed(func(s *bag.StockSheet) { s.Grain = bag.SheetGrain(value) }))
	})
	grain.OnFocus(o.explain)
	o.puts = append(o.puts, func(s *bag.StockSheet) { grain.Put(string(s.Grain)) })
	o.fields["grain"] = grain.Complain
	return grain
}

func (o *ownSheets) showAll(state document.State) {
	stock := state.Spec.Stock
	if state.Loads != o.loads || o.chosen >= len(stock) {
		o.loads, o.chosen = state.Loads, -1
	}
	rows := make([]tableRow, len(stock))
	for i := range stock {
		rows[i] = tableRow{cells: []string{o.shortName(&stock[i])}, note: o.note(&stock[i], state.Spec.Currency), chosen: i == o.chosen}
	}
	o.list.set(rows)
	o.reveal(o.box, len(rows) > 0)
	if o.chosen >= 0 {
		for _, put := range o.puts {
			put(&stock[o.chosen])
		}
	}
	o.reveal(o.entries, o.chosen >= 0)
	complaints := complaintsIn(state.Err)
	for key, complain := range o.fields {
		complain(complaintAbout(fmt.Sprintf("stock[%d].%s", o.chosen, key), complaints))
	}
	full := ""
	if len(stock) >= mostStock {
		full = fmt.Sprintf(lang.L("No more than %d sheets. Remove one to add another."), mostStock)
	}
	o.full.SetText(full)
	if show(o.add, full == "") {
		o.Grown()
	}
}

// shortName cuts a name that is too long for one line.
func (o *ownSheets) shortName(s *bag.StockSheet) string {
	if s.Name == "" {
		return o.area(s.Width, s.Height)
	}
	const most = 26
	if runes := []rune(s.Name); len(runes) > most {
		return string(runes[:most-1]) + "…"
	}
	return s.Name
}

func (o *ownSheets) note(s *bag.StockSheet, currency string) string {
	note := o.area(s.Width, s.Height)
	if s.Grain == bag.GrainAlongWidth || s.Grain == bag.GrainAlongHeight {
		side := s.Height
		if s.Grain == bag.GrainAlongWidth {
			side = s.Width
		}
		note += ", " + fmt.Sprintf(lang.L("grain along the side of %s"), o.length(side))
	}
	if s.Price > 0 {
		price := geometry.WithUnit(geometry.FormatNumber(s.Price, entry.PriceDecimals), currency)
		note += ", " + fmt.Sprintf(lang.L("%s a sheet"), price)
	}
	return note
}
