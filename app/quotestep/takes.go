package quotestep

import (
	"fmt"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/steppage"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/check"
	"gussetwright/geometry/job"
	"gussetwright/geometry/load"
)

// count writes a number of things, or of kilograms and metres, as exact as it is of use.
func count(value float64) string {
	switch {
	case value >= 100 || value == float64(int(value)):
		return words.Number(value, 0)
	case value >= 10:
		return words.Number(value, 1)
	}
	return words.Number(value, 2)
}

// takesFacts returns what the run takes.
func (p *page) takesFacts(made *quoteResult) []fact {
	s := made.order.snapshot
	list := sheetFacts(s)
	list = append(list, p.partFacts(&s.Job, made.cuttings)...)
	list = append(list, dieFacts(s)...)
	list = append(list, p.bagFacts(&s.Job, &made.packing)...)
	return append(list, p.packingFacts(&made.packing)...)
}

func sheetFacts(s *document.Snapshot) []fact {
	run := &s.Job
	list := []fact{{lang.L("Sheets"), ""}}
	bags := fmt.Sprintf(lang.L("%s good ones, %s printed"), count(run.Quantity), count(run.BagsPrinted))
	list = append(list, fact{lang.L("Bags"), bags})
	if run.Sheets == 0 {
		return append(list, fact{lang.L("Press sheets"), lang.L("The blank does not fit the sheet; see the step Sheet.")})
	}
	sheets := count(run.Sheets)
	if run.MakeReadySheets > 0 {
		sheets = fmt.Sprintf(lang.L("%s, of these %s for make-ready"), sheets, count(run.MakeReadySheets))
	}
	list = append(list, fact{lang.L("Press sheets"), sheets})
	if run.Forms > 1 {
		list = append(list, fact{lang.L("Forms"), fmt.Sprintf(lang.L("%d, the pieces each on a sheet of their own"), run.Forms)})
	}
	return append(list, fact{lang.L("Paper"), fmt.Sprintf(lang.L("%s kg, a sheet %s g"), count(run.PaperKilograms), count(run.SheetGrams))})
}

// partFacts returns cards, handles and glue.
func (p *page) partFacts(run *job.Job, cuttings []job.Cutting) []fact {
	list := []fact{{lang.L("Parts"), ""}}
	board := 0.0
	for i := range cuttings {
		list = append(list, fact{cardName(cuttings[i].Card.Role), p.cuttingText(&cuttings[i])})
		if cuttings[i].Board() {
			board += cuttings[i].Kilograms
		}
	}
	if board > 0 && len(cuttings) > 1 {
		list = append(list, fact{lang.L("Board in all"), fmt.Sprintf(lang.L("%s kg"), count(board))})
	}
	if run.RopeMetres > 0 {
		list = append(list, fact{lang.L("Handles"), fmt.Sprintf(lang.L("%s m, each %s"), count(run.RopeMetres), p.Length(run.RopePerHandle))})
	}
	if run.Eyelets > 0 {
		list = append(list, fact{lang.L("Eyelets"), count(run.Eyelets)})
	}
	if run.GlueArea > 0 {
		area, length := run.GlueArea*run.BagsPrinted/1e6, run.GlueMetres*run.BagsPrinted
		list = append(list, fact{lang.L("Glue in all"), fmt.Sprintf(lang.L("%s kg wet, on %s m²; %s m long"), count(run.GlueKilograms), count(area), count(length))},
			fact{lang.L("Glue in one bag"), fmt.Sprintf(lang.L("%s g, on %s cm²; %s m long"), count(run.GlueGrams), count(run.GlueArea/100), count(run.GlueMetres))})
	}
	return list
}

func cardName(role string) string {
	switch role {
	case "top":
		return lang.L("Top cards")
	case "base":
		return lang.L("Base cards")
	}
	return lang.L("Handle patches")
}

func (p *page) cuttingText(c *job.Cutting) string {
	if c.Up == 0 {
		return fmt.Sprintf(lang.L("%s × %s: fits no sheet"), p.Bare(c.Card.Width), p.Length(c.Card.Height))
	}
	name := c.Sheet.Name
	if name == "" {
		name = lang.L("the press sheet")
	}
	return fmt.Sprintf(lang.L("%s sheets, %s kg: %d of %s × %s on %s"),
		count(c.Sheets), count(c.Kilograms), c.Up, p.Bare(c.Card.Width), p.Length(c.Card.Height), name)
}

func dieFacts(s *document.Snapshot) []fact {
	run := &s.Job
	cut, crease := run.DieCutMetres, run.DieCreaseMetres
	head := lang.L("Die")
	switch {
	case run.Forms == 0:
		head, cut, crease = lang.L("Rule for one bag"), run.CutMetres, run.CreaseMetres
	case run.Forms > 1:
		head = lang.L("Dies of all forms")
	}
	metres := func(value float64) string { return fmt.Sprintf(lang.L("%s m"), words.Number(value, 1)) }
	return []fact{{head, ""}, {lang.L("Cutting rule"), metres(cut)}, {lang.L("Creasing rule"), metres(crease)}}
}

func (p *page) bagFacts(run *job.Job, packing *job.Packing) []fact {
	list := []fact{
		{lang.L("One bag"), ""},
		{lang.L("Weight"), fmt.Sprintf(lang.L("%s g, without handle and glue"), words.Number(run.BagGrams, 1))},
	}
	if packing.Thickness == 0 {
		return append(list, fact{lang.L("Packed flat"), lang.L("This bag cannot be packed flat.")})
	}
	return append(list,
		fact{lang.L("Packed flat"), fmt.Sprintf(lang.L("%s, %s thick"), p.Area(packing.Width, packing.Height), p.Length(packing.Thickness))},
		fact{lang.L("In a pile"), fmt.Sprintf(lang.L("%s for each bag, with cards and looseness"), p.Length(packing.PileThickness))},
	)
}

func (p *page) packingFacts(packing *job.Packing) []fact {
	if packing.Thickness == 0 {
		return nil
	}
	list := []fact{{lang.L("Packing"), ""}}
	if packing.Cartons == 0 {
		return append(list, fact{lang.L("Cartons"), lang.L("One bag is too heavy for a carton.")})
	}
	box := packing.Inside
	list = append(list,
		fact{lang.L("Cartons"), fmt.Sprintf(lang.L("%s, of %s bags each"), count(packing.Cartons), count(packing.BagsPerCarton))},
		fact{lang.L("Inside"), p.whole(box.Width) + " × " + p.whole(box.Length) + " × " + p.whole(box.Height) + " " + string(p.Settings.Unit())},
		fact{lang.L("Gross weight"), fmt.Sprintf(lang.L("%s kg a full carton, %s kg all"), count(packing.CartonGrams/1000), count(packing.Kilograms))},
	)
	if packing.Pallets == 0 {
		return append(list, fact{lang.L("Pallets"), lang.L("A carton fits no pallet: it is too large or too heavy.")})
	}
	return append(list,
		fact{lang.L("Pallets"), fmt.Sprintf(lang.L("%s, of up to %s cartons"), count(packing.Pallets), count(packing.PerPallet))},
		fact{lang.L("Fullest pallet"), fmt.Sprintf(lang.L("%s %s high, %s kg"), p.whole(packing.PalletHeight), string(p.Settings.Unit()), count(packing.PalletKilograms))},
	)
}

// whole writes a length to a whole millimetre or what comes near one, without its unit.
func (p *page) whole(mm float64) string {
	unit, decimals := p.Settings.Unit(), 1
	if unit == geometry.Millimetre {
		decimals = 0
	}
	return words.Number(mm/unit.Length(), decimals)
}

// showLoad says what the bag might carry, with the caution that always stands beside it.
func (p *page) showLoad(s *document.Snapshot) {
	estimate, some := load.Of(&s.Blank)
	if !some {
		p.carries.SetText(lang.L("A bag without handle is carried in no way that could be reckoned."))
		p.against.Say(check.Note, "", nil)
		p.caution.Say(check.Note, "", nil)
		return
	}
	p.carries.SetText(steppage.Sentence(words.Of(estimate.Sentence())) + " " + steppage.Sentence(words.Of(estimate.Basis())))
	p.caution.Say(check.Note, steppage.Sentence(words.Of(load.Caution())), nil)
	grams := s.Spec.Product.Weight
	message, remedy, over := estimate.Against(grams)
	switch {
	case over:
		p.against.Say(check.Warning, steppage.Sentence(words.Of(message))+" "+steppage.Sentence(words.Of(remedy)), nil)
	case grams > 0:
		p.against.Say(check.Note, fmt.Sprintf(lang.L("The product weighs %s kg, which is within the estimate."), count(grams/1000)), nil)
	default:
		p.against.Say(check.Note, lang.L("The weight of the product is not known; enter it in the step Product to compare."), nil)
	}
}
