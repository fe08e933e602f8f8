package steps

import (
	"fmt"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/steppage"
	"gussetwright/geometry/bag"
)

func newBagPage(b *steppage.Bench) *steppage.Page {
	p := steppage.New(b)
	addName(p)
	size := p.Named(lang.L("Size"), "bag.width_mm", "bag.gusset_mm", "bag.height_mm")
	addFlatFold(p, size)
	words := entry.NewText("", entry.Muted)
	size.Add(words)
	p.OnFollow(func(state document.State) {
		words.SetText(sizeInWords(&state.Spec.Body, p.Length))
	})
	p.Named(lang.L("Top edge"), "bag.top", "bag.turn_in_mm", "bag.zigzag_")
	p.Named(lang.L("Base"), "bag.base", "bag.base_", "bag.slot_")
	p.Named(lang.L("Seam"), "bag.seams", "bag.seam_", "bag.chamfer_deg")
	p.Named(lang.L("More"), "bag.")
	return p
}

// addName adds the name of the project, which is no field of the bag.
func addName(p *steppage.Page) {
	name := p.Name(lang.L("Project name"), lang.L("Stands on the drawings and names the files."), func(name string) {
		spec := p.Doc.State().Spec
		spec.Name = name
		p.Doc.Set(spec)
	})
	s := steppage.NewSlot("name", name.Complain, func(spec *bag.Spec) { name.Put(spec.Name) }, name)
	p.Keep(s)
	p.Add(entry.NewColumn(0, s))
}

// addFlatFold adds the other way to enter the height: up to the crease along which
// a block base folds up, half a gusset above the base.
func addFlatFold(p *steppage.Page, size *entry.Column) {
	field, _ := bag.FieldAt("bag.height_mm")
	quantity := entry.OfField(p.Doc, field)
	quantity.Label, quantity.Symbol = lang.L("Height to the flat-fold crease"), ""
	quantity.Help = lang.L("The standing height less half the gusset: from the crease along which the base folds up to the top fold. Either of the two heights may be entered; the other follows.")
	standing := func(set func(float64)) func(float64) {
		return func(value float64) { set(bag.HeightFromFlatFold(value, p.Doc.State().Spec.Body.Gusset)) }
	}
	quantity.Set, quantity.Drag = standing(quantity.Set), standing(quantity.Drag)
	number := p.Number(quantity)
	place := entry.NewColumn(0, number)
	size.Add(place)
	p.OnFollow(func(state document.State) {
		body := &state.Spec.Body
		p.Reveal(place, body.Base != bag.BasePinch && body.Height > body.Gusset/2)
		number.SetLimits(max(field.Least-body.Gusset/2, 0), field.Most-body.Gusset/2)
		number.Put(body.Height - body.Gusset/2)
	})
}

// sizeInWords names the three numbers: the trade is not agreed on their order.
func sizeInWords(body *bag.Body, length func(float64) string) string {
	return fmt.Sprintf(lang.L("Face %s × gusset %s × standing height %s: in this order on every drawing."),
		length(body.Width), length(body.Gusset), length(body.Height))
}
