package jobsheet

import (
	"fmt"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/geometry/job"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/sheet"
)

func (l *ledger) cards() {
	l.begin("Cards")
	l.entries("cards.")
	for i := range l.Snapshot.Job.Cards {
		card := &l.Snapshot.Job.Cards[i]
		name := l.say(card.Name()) + ", "
		l.number(name+l.say("in a bag"), float64(card.Count), "")
		l.number(name+l.say("width"), card.Width, "mm")
		l.number(name+l.say("height"), card.Height, "mm")
		l.number(name+l.say("grammage"), card.Grammage, "g/m²")
		if openings := l.Snapshot.Blank.CardOpenings(card); len(openings) > 0 {
			l.number(name+l.say("openings like the face"), float64(len(openings)), "")
		}
	}
	for i := range l.cuttings {
		l.cutting(&l.cuttings[i])
	}
	l.put("Board for the run", l.boardKilograms(), "kg")
}

// cutting adds from which sheets a card is cut.
func (l *ledger) cutting(c *job.Cutting) {
	name := l.say(c.Card.Name()) + ", "
	if c.Up == 0 {
		l.text(name+l.say("sheet"), l.say("fits no sheet"), "")
		return
	}
	l.text(name+l.say("sheet"), l.cutFrom(c), "")
	l.number(name+l.say("sheet width"), c.Sheet.Width, "mm")
	l.number(name+l.say("sheet height"), c.Sheet.Height, "mm")
	l.number(name+l.say("up"), float64(c.Up), "")
	l.number(name+l.say("waste"), c.Waste, "%")
	l.number(name+l.say("sheets"), c.Sheets, l.say("sheets"))
	l.number(name+l.say("weight of the sheets"), c.Kilograms, "kg")
}

// cutFrom names the sheet that a card is cut from.
func (m *maker) cutFrom(c *job.Cutting) string {
	if !c.Board() {
		return m.say("the press sheet")
	}
	return c.Sheet.Name
}

func (l *ledger) handle() {
	run := &l.Snapshot.Job
	l.begin("Handle")
	l.entries("handle.")
	l.put("Length of a handle", run.RopePerHandle, "mm")
	l.put("Length for the run", run.RopeMetres, "m")
	l.put("Eyelets for the run", run.Eyelets, l.say("eyelets"))
}

func (l *ledger) packing() {
	p := &l.maker.packing
	l.begin("Packing")
	l.entries("packing.")
	l.put("Packed bag, width", p.Width, "mm")
	l.put("Packed bag, height", p.Height, "mm")
	l.put("Packed bag, thickness", p.Thickness, "mm")
	l.remark(l.say("without handle and cards"))
	l.put("A bag in the pile", p.PileThickness, "mm")
	l.put("Bags in a carton", p.BagsPerCarton, l.say("bags"))
	l.put("Carton inside, width", p.Inside.Width, "mm")
	l.put("Carton inside, length", p.Inside.Length, "mm")
	l.put("Carton inside, height", p.Inside.Height, "mm")
	l.put("Carton outside, width", p.Outside.Width, "mm")
	l.put("Carton outside, length", p.Outside.Length, "mm")
	l.put("Carton outside, height", p.Outside.Height, "mm")
	l.put("Full carton", p.CartonGrams/1000, "kg")
	l.put("Cartons", p.Cartons, l.say("cartons"))
	l.put("All cartons, gross", p.Kilograms, "kg")
	l.put("Cartons in a layer", float64(p.Layer.Up()), l.say("cartons"))
	l.put("Cartons on a pallet", p.PerPallet, l.say("cartons"))
	l.put("Pallets", p.Pallets, l.say("pallets"))
	l.put("Height of the fullest pallet", p.PalletHeight, "mm")
	l.put("Weight of the fullest pallet", p.PalletKilograms, "kg")
}

// quoted adds the quote where a price is known.
func (l *ledger) quoted() {
	if !l.quote.Known() {
		return
	}
	currency := l.Snapshot.Spec.Currency
	l.begin("Quote")
	for _, line := range l.quote.Lines {
		name := l.say(line.Name)
		if line.Unit != "" {
			l.number(name+", "+l.say("quantity"), line.Quantity, l.say(line.Unit))
			l.number(name+", "+l.say("price"), line.Price, currency+"/"+l.perUnit(&line.Item))
		}
		l.number(name, line.Amount, currency)
	}
	l.put("Sum", l.quote.Sum, currency)
	l.put("Markup", l.quote.Markup, currency)
	l.remark(l.plain(l.Snapshot.Spec.Prices.Markup) + " %")
	l.put("Total", l.quote.Total, currency)
	l.put("Price of a bag", l.quote.PerBag, currency)
	l.begin("Not in this quote")
	for _, item := range l.quote.Missing {
		l.number(l.say(item.Name), item.Quantity, l.say(item.Unit))
		l.remark(l.say("no price is known"))
	}
	l.begin("Prices by quantity")
	for _, b := range l.breaks {
		bags := l.tell(phrase.New("%s bags", l.plain(b.Quantity)))
		l.number(bags+", "+l.say("quantity"), b.Quantity, l.say("bags"))
		l.number(bags+", "+l.say("total"), b.Total, currency)
		l.number(bags+", "+l.say("a bag"), b.PerBag, currency)
	}
}

// perUnit writes what a price is for, such as "1000 sheets" or "kg".
func (m *maker) perUnit(item *job.Item) string {
	unit := m.say(unitName(item.Unit, item.Per))
	if item.Per == 1 {
		return unit
	}
	return m.plain(item.Per) + " " + unit
}

func (l *ledger) family() {
	l.begin("Family")
	for i, member := range l.members {
		spec := &member.Spec
		of := func(what phrase.Word) string { return fmt.Sprint(i+1) + ", " + l.say(what) }
		l.text(of("name"), spec.Name, "")
		l.number(of("width"), spec.Body.Width, "mm")
		l.number(of("gusset"), spec.Body.Gusset, "mm")
		l.number(of("height"), spec.Body.Height, "mm")
		l.number(of("quantity"), spec.Run.Quantity, l.say("bags"))
		l.number(of("up"), float64(member.Plan.Up()), "")
		l.number(of("sheets"), member.Job.Sheets, l.say("sheets"))
	}
}

func (l *ledger) findings() {
	l.begin("Findings")
	l.put("Errors", float64(len(l.errors)), "")
	l.put("Warnings", float64(len(l.warnings)), "")
	add := func(kind phrase.Word, list []check.Finding) {
		for i, f := range list {
			l.text(fmt.Sprintf("%s %d", l.say(kind), i+1), l.tell(f.Message), l.tell(f.Remedy))
		}
	}
	add("Error", l.errors)
	add("Warning", l.warnings)
}

// fibres returns the side of the sheet along which its fibres lie, or are to lie.
func (m *maker) fibres() bag.Grain {
	if known := sheet.Fibres(m.Snapshot.Plan.Sheet.Grain); known != "" {
		return known
	}
	return m.Snapshot.Plan.GrainAlong(m.Snapshot.Spec.Paper.Grain)
}
