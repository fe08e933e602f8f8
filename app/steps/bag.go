package steps

import (
	"fmt"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/geometry/bag"
)

// longestName is the limit of package bag on the name of a project.
const longestName = 120

func newBagPage(b *bench) *page {
	p := newPage(b)
	p.addName()
	size := p.named(lang.L("Size"), "bag.width_mm", "bag.gusset_mm", "bag.height_mm")
	p.addFlatFold(size)
	words := entry.NewText("", entry.Muted)
	size.Add(words)
	p.shows = append(p.shows, func(state document.State) {
		words.SetText(sizeInWords(&state.Spec.Body, p.length))
	})
	p.named(lang.L("Top edge"), "bag.top", "bag.turn_in_mm", "bag.zigzag_")
	p.named(lang.L("Base"), "bag.base", "bag.base_", "bag.slot_")
	p.named(lang.L("Seam"), "bag.seams", "bag.seam_", "bag.chamfer_deg")
	p.named(lang.L("More"), "bag.")
	return p
}

// addName adds the name of the project, which is no field of the bag.
func (p *page) addName() {
	name := entry.NewName(lang.L("Project name"), lang.L("Stands on the drawings and names the files."), longestName, func(name string) {
		spec := p.doc.State().Spec
		spec.Name = name
		p.doc.Set(spec)
	})
	name.OnFocus(p.explain)
	p.forgets = append(p.forgets, name.Forget)
	g := &group{Column: entry.NewColumn(2.5)}
	p.addTo(g, newSlot("name", name.Complain, func(spec *bag.Spec) { name.Put(spec.Name) }, name))
	p.groups = append(p.groups, g)
	p.Add(g)
}

// addFlatFold adds the other way to enter the height: up to the crease along which
// a block base folds up, half a gusset above the base.
func (p *page) addFlatFold(size *group) {
	field, _ := bag.FieldAt("bag.height_mm")
	quantity := entry.OfField(p.doc, field)
	quantity.Label, quantity.Symbol = lang.L("Height to the flat-fold crease"), ""
	quantity.Help = lang.L("The standing height less half the gusset: from the crease along which the base folds up to the top fold. Either of the two heights may be entered; the other follows.")
	standing := func(set func(float64)) func(float64) {
		return func(value float64) { set(bag.HeightFromFlatFold(value, p.doc.State().Spec.Body.Gusset)) }
	}
	quantity.Set, quantity.Drag = standing(quantity.Set), standing(quantity.Drag)
	number := p.number(quantity)
	place := entry.NewColumn(0, number)
	size.Add(place)
	p.shows = append(p.shows, func(state document.State) {
		body := &state.Spec.Body
		p.reveal(place, body.Base != bag.BasePinch && body.Height > body.Gusset/2)
		number.SetLimits(max(field.Least-body.Gusset/2, 0), field.Most-body.Gusset/2)
		number.Put(body.Height - body.Gusset/2)
	})
}

// sizeInWords names the three numbers: the trade is not agreed on their order.
func sizeInWords(body *bag.Body, length func(float64) string) string {
	return fmt.Sprintf(lang.L("Face %s × gusset %s × standing height %s: in this order on every drawing."),
		length(body.Width), length(body.Gusset), length(body.Height))
}
