package steps

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/arithmetic"
	"gussetwright/geometry/bag"
)

// addRun adds the entries of the run and the further quantities.
func (p *quotePage) addRun() {
	g := p.named(lang.L("Run"), "run.")
	quantities := newLineEntry(lang.L("Further quantities to quote for"),
		lang.L("A list such as 500, 2000, 5000. The price for each of them stands below the quote."), lang.L("such as 500, 2000, 5000"), func(text string) string {
			list, fault := readQuantities(text)
			if fault != "" {
				return fault
			}
			spec := p.doc.State().Spec
			spec.Breaks = list
			return p.takeOver(spec, "price_breaks")
		})
	quantities.wide = true
	p.join(quantities)
	g.Add(entry.NewColumn(0, quantities))
	p.shows = append(p.shows, func(state document.State) {
		quantities.put(quantitiesText(state.Spec.Breaks))
		complaint := ""
		for _, c := range complaintsIn(state.Err) {
			if strings.HasPrefix(c.Path, "price_breaks") {
				complaint = sentence(words.Of(c.Limit)) + " " + sentence(words.Of(c.Remedy))
			}
		}
		quantities.complain(complaint)
	})
}

// readQuantities reads a list of quantities, parted by commas or semicolons, and returns
// it in order, each once; nil for an empty one.
func readQuantities(text string) (list []float64, complaint string) {
	field, _ := bag.FieldAt("run.quantity")
	for _, part := range strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ';' }) {
		if part = strings.TrimSpace(part); part == "" {
			continue
		}
		value, err := arithmetic.EvaluateNumber(part, "")
		if err != nil {
			return nil, fmt.Sprintf(lang.L("“%s”: %s."), part, words.Error(err)) + " " + lang.L("Part the quantities by commas, such as 500, 2000, 5000.")
		}
		if c := field.CheckNumber(value); c != nil {
			return nil, fmt.Sprintf(lang.L("“%s”: %s"), part, sentence(words.Of(c.Limit))) + " " + sentence(words.Of(c.Remedy))
		}
		list = append(list, value)
	}
	slices.Sort(list)
	return slices.Compact(list), ""
}

// quantitiesText writes the list as it is entered.
func quantitiesText(list []float64) string {
	texts := make([]string, len(list))
	for i, quantity := range list {
		texts[i] = geometry.FormatNumber(quantity, 0)
	}
	return strings.Join(texts, ", ")
}
