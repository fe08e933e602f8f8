package quotestep

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/steppage"
	"gussetwright/app/words"
	"gussetwright/geometry/bag"
)

// addRun adds the entries of the run and the further quantities.
func (p *page) addRun() {
	run := p.Named(lang.L("Run"), "run.")
	quantities := entry.NewWideLine(lang.L("Further quantities to quote for"),
		lang.L("A list such as 500, 2000, 5000. The price for each of them stands below the quote."), lang.L("such as 500, 2000, 5000"), func(text string) string {
			list, fault := readQuantities(text)
			if fault != "" {
				return fault
			}
			spec := p.Doc.State().Spec
			spec.Breaks = list
			return p.takeOver(spec, "price_breaks")
		})
	p.join(quantities)
	run.Add(entry.NewColumn(0, quantities))
	p.OnFollow(func(state document.State) {
		quantities.Put(quantitiesText(state.Spec.Breaks))
		complaint := ""
		for _, c := range p.Complaints(state.Err) {
			if strings.HasPrefix(c.Path, "price_breaks") {
				complaint = steppage.Complaint(c)
			}
		}
		quantities.Complain(complaint)
	})
}

// readQuantities reads a list of quantities and returns it in order, each once; nil for an
// empty one.
func readQuantities(text string) (list []float64, complaint string) {
	list, complaint = entry.ReadCounts(text)
	if complaint != "" {
		return nil, complaint
	}
	field, _ := bag.FieldAt("run.quantity")
	for _, quantity := range list {
		if c := field.CheckNumber(quantity); c != nil {
			return nil, fmt.Sprintf(lang.L("“%s”: %s"), words.Number(quantity, 6), steppage.Complaint(c))
		}
	}
	slices.Sort(list)
	return slices.Compact(list), ""
}

// quantitiesText writes the list as it is entered.
func quantitiesText(list []float64) string {
	texts := make([]string, len(list))
	for i, quantity := range list {
		texts[i] = words.Plain(quantity, 0)
	}
	return strings.Join(texts, ", ")
}
