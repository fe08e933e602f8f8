package sheetstep

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/steppage"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// ownSheets is the list of the user's own sheets with the entries of the one that is
// chosen.
type ownSheets struct {
	*steppage.Page
	list    *steppage.Table
	box     *entry.Column // of the list
	entries *entry.Column
	add     *steppage.Offer
	full    *entry.Text
	chosen  int // counted from 0; −1 for none
	loads   int // of the document for which it was chosen
	puts    []func(*bag.StockSheet)
	fields  map[string]func(string) // complains about a part of the sheet
}

// mostStock is the limit of package bag on the list.
const mostStock = 40

func (p *page) addOwnSheets() {
	o := &ownSheets{Page: p.Page, chosen: -1, fields: map[string]func(string){}}
	o.list = steppage.NewTable(o.choose)
	o.box = entry.NewColumn(0, o.list)
	o.entries = entry.NewColumn(2.5, o.nameEntry(),
		o.lengthEntry("width_mm", "sheet.width_mm", func(s *bag.StockSheet) *float64 { return &s.Width }),
		o.lengthEntry("height_mm", "sheet.height_mm", func(s *bag.StockSheet) *float64 { return &s.Height }),
		o.grainEntry(), o.priceEntry(), o.newRemove())
	o.entries.Hide()
	o.add = steppage.NewOffer(lang.L("Add the sheet in use"), o.append)
	o.full = entry.NewText("", entry.Muted)
	o.Add(entry.NewColumn(2,
		entry.NewText(lang.L("Own sheets"), entry.Heading),
		entry.NewText(lang.L("Sheets that your merchant has beside the usual ones, with grain and price. They are ranked with the others."), entry.Muted),
		o.box, o.entries, o.add, o.full,
	))
	o.OnFollow(o.showAll)
}

func (o *ownSheets) newRemove() *steppage.Offer {
	return steppage.NewOffer(lang.L("Remove this sheet"), func() {
		spec := o.Doc.State().Spec
		if o.chosen >= 0 && o.chosen < len(spec.Stock) {
			spec.Stock = slices.Delete(slices.Clone(spec.Stock), o.chosen, o.chosen+1)
			o.chosen = -1
			o.Doc.Set(spec)
		}
	})
}

// append adds the sheet in use and opens it.
func (o *ownSheets) append() {
	spec := o.Doc.State().Spec
	s := spec.Sheet
	name := steppage.FreeName(o.Area(s.Width, s.Height), func(name string) bool {
		return slices.ContainsFunc(spec.Stock, func(own bag.StockSheet) bool { return own.Name == name })
	})
	own := bag.StockSheet{Name: name, Width: s.Width, Height: s.Height, Grain: s.Grain}
	o.chosen = len(spec.Stock)
	spec.Stock = append(slices.Clone(spec.Stock), own)
	o.Doc.Set(spec)
}

// choose opens the entries of a sheet, or closes them.
func (o *ownSheets) choose(i int) {
	if i == o.chosen {
		i = -1
	}
	o.Forget()
	o.chosen = i
	o.showAll(o.Doc.State())
}

// changed returns the spec with the chosen sheet changed.
func (o *ownSheets) changed(change func(*bag.StockSheet)) bag.Spec {
	spec := o.Doc.State().Spec
	if o.chosen >= 0 && o.chosen < len(spec.Stock) {
		spec.Stock = slices.Clone(spec.Stock)
		change(&spec.Stock[o.chosen])
	}
	return spec
}

func (o *ownSheets) nameEntry() entry.Tall {
	name := o.Name(lang.L("Name of the sheet"), lang.L("As you or your merchant call it."), func(name string) {
		o.Doc.Set(o.changed(func(s *bag.StockSheet) { s.Name = name }))
	})
	o.puts = append(o.puts, func(s *bag.StockSheet) { name.Put(s.Name) })
	o.fields["name"] = name.Complain
	return name
}

// lengthEntry returns the entry of a side, with the limits of the sheet in use.
func (o *ownSheets) lengthEntry(key, like string, of func(*bag.StockSheet) *float64) entry.Tall {
	field, _ := bag.FieldAt(like)
	return o.numberEntry(key, entry.OfField(o.Doc, field), of)
}

// priceEntry returns the entry of the price of one sheet, with the limits of all prices.
func (o *ownSheets) priceEntry() entry.Tall {
	field, _ := bag.FieldAt("prices.carton_each")
	quantity := entry.OfField(o.Doc, field)
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
	quantity.Set = func(value float64) { o.Doc.Set(changed(value)) }
	quantity.Drag = func(value float64) { o.Doc.Drag(changed(value)) }
	number := o.Number(quantity)
	o.puts = append(o.puts, func(s *bag.StockSheet) { number.Put(*of(s)) })
	o.fields[key] = number.Complain
	return number
}

func (o *ownSheets) grainEntry() entry.Tall {
	field, _ := bag.FieldAt("sheet.grain")
	grain := entry.NewChoice(lang.L(field.Label), lang.L(field.Help), entry.OptionsOf(field), func(value string) {
		o.Doc.Set(o.changed(func(s *bag.StockSheet) { s.Grain = bag.SheetGrain(value) }))
	})
	grain.OnFocus(o.Explain)
	o.puts = append(o.puts, func(s *bag.StockSheet) { grain.Put(string(s.Grain)) })
	o.fields["grain"] = grain.Complain
	return grain
}

func (o *ownSheets) showAll(state document.State) {
	stock := state.Spec.Stock
	if state.Loads != o.loads || o.chosen >= len(stock) {
		o.loads, o.chosen = state.Loads, -1
	}
	rows := make([]steppage.Row, len(stock))
	for i := range stock {
		rows[i] = steppage.Row{Name: o.shortName(&stock[i]), Note: o.note(&stock[i], state.Spec.Currency), Chosen: i == o.chosen}
	}
	o.list.Set(rows)
	o.Reveal(o.box, len(rows) > 0)
	if o.chosen >= 0 {
		for _, put := range o.puts {
			put(&stock[o.chosen])
		}
	}
	o.Reveal(o.entries, o.chosen >= 0)
	complaints := o.Complaints(state.Err)
	for key, complain := range o.fields {
		complain(steppage.ComplaintAbout(fmt.Sprintf("stock[%d].%s", o.chosen, key), complaints))
	}
	full := ""
	if len(stock) >= mostStock {
		full = fmt.Sprintf(lang.L("No more than %d sheets. Remove one to add another."), mostStock)
	}
	o.full.SetText(full)
	o.Reveal(o.add, full == "")
}

// shortName names a sheet on one line, by its size where it has no name.
func (o *ownSheets) shortName(s *bag.StockSheet) string {
	if s.Name == "" {
		return o.Area(s.Width, s.Height)
	}
	return steppage.ShortName(s.Name)
}

func (o *ownSheets) note(s *bag.StockSheet, currency string) string {
	note := o.Area(s.Width, s.Height)
	if s.Grain == bag.GrainAlongWidth || s.Grain == bag.GrainAlongHeight {
		side := s.Height
		if s.Grain == bag.GrainAlongWidth {
			side = s.Width
		}
		note += ", " + fmt.Sprintf(lang.L("grain along the side of %s"), o.Length(side))
	}
	if s.Price > 0 {
		price := geometry.WithUnit(words.Money(s.Price, entry.PriceDecimals), currency)
		note += ", " + fmt.Sprintf(lang.L("%s a sheet"), price)
	}
	return note
}
