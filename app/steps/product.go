package steps

import (
	"cmp"
	"fmt"
	"strings"

	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/steppage"
	"gussetwright/app/words"
	"gussetwright/assets"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/geometry/product"
)

// productPage asks what goes in and proposes a size.
type productPage struct {
	*steppage.Page
	sizes []product.Usual
	names map[string]string // of the sizes, in the language of the user

	proposed *entry.Text
	reasons  *entry.Text
	volume   *entry.Text
	warning  *entry.Message
	use      *button
	usual    *steppage.Table
	matches  []product.Match
	proposal product.Proposal
}

func newProductPage(b *steppage.Bench) *steppage.Page {
	p := &productPage{Page: steppage.New(b), names: usualNames()}
	p.sizes, _ = product.ReadUsual(assets.UsualSizes) // the list is tested to be sound
	p.addQuestions()
	p.addProposal()
	p.addUsual()
	p.OnFollow(p.showAll)
	return p.Page
}

// addQuestions adds the entries of the product.
func (p *productPage) addQuestions() {
	questions := entry.NewColumn(3)
	for _, s := range p.Slots(p.slotOf, "product.") {
		questions.Add(s)
	}
	p.Add(questions)
}

func (p *productPage) slotOf(field *bag.Field) *steppage.Slot {
	switch field.Path {
	case "product.kind":
		return p.kindSlot(field)
	case "product.width_mm":
		return p.widthSlot(field)
	}
	return p.FieldSlot(field)
}

// kindSlot returns the entry of what goes in, which brings its usual room with it.
func (p *productPage) kindSlot(field *bag.Field) *steppage.Slot {
	choice := entry.NewChoice(lang.L(field.Label), lang.L(field.Help), entry.OptionsOf(field), func(kind string) {
		spec := p.Doc.State().Spec
		spec.Product = bag.Product(product.Product(spec.Product).As(bag.ProductKind(kind)))
		p.Doc.Set(spec)
	})
	choice.OnFocus(p.Explain)
	return steppage.NewSlot(field.Path, choice.Complain, func(spec *bag.Spec) { choice.Put(field.Choice(spec)) }, choice)
}

// widthSlot returns the entry of the width, the limit of which depends on the kind.
func (p *productPage) widthSlot(field *bag.Field) *steppage.Slot {
	number := p.Number(entry.OfField(p.Doc, field))
	return steppage.NewSlot(field.Path, number.Complain, func(spec *bag.Spec) {
		number.SetLimits(field.Least, product.Product(spec.Product).Widest())
		number.Put(field.Number(spec))
	}, number)
}

func (p *productPage) addProposal() {
	p.proposed, p.reasons = entry.NewText("", entry.Plain), entry.NewText("", entry.Small)
	p.volume, p.warning = entry.NewText("", entry.Small), entry.NewMessage()
	p.use = newButton(lang.L("Use this size"), func() { p.apply(p.proposal.Size) })
	p.Add(entry.NewColumn(1.5, entry.NewText(lang.L("Proposed size"), entry.Heading), p.proposed, p.use, p.volume, p.warning, p.reasons))
}

func (p *productPage) addUsual() {
	p.usual = steppage.NewTable(func(i int) { p.apply(p.matches[i].Size) })
	p.Add(entry.NewColumn(1.5,
		entry.NewText(lang.L("Usual sizes"), entry.Heading),
		entry.NewText(lang.L("Those that hold the product first, the closest at the top. A click takes the size."), entry.Muted),
		p.usual,
	))
}

// apply gives the bag a size, as one step to undo.
func (p *productPage) apply(size product.Size) { p.Doc.Set(size.Apply(p.Doc.State().Spec)) }

func (p *productPage) showAll(state document.State) {
	goods := product.Product(state.Spec.Product)
	p.showProposal(goods, &state.Spec.Body)
	p.showUsual(goods, &state.Spec.Body)
}

func (p *productPage) showProposal(goods product.Product, body *bag.Body) {
	p.proposal = goods.Propose(*body, p.Length)
	p.proposed.SetText(fmt.Sprintf(lang.L("Face %s × gusset %s × height %s"),
		p.Length(p.proposal.Width), p.Length(p.proposal.Gusset), p.Length(p.proposal.Height)))
	p.volume.SetText(fmt.Sprintf(lang.L("Holds %s l; the product takes %s l."), litres(p.proposal.Volume()), litres(goods.Volume())))
	var reasons []string
	for _, reason := range p.proposal.Reasons {
		reasons = append(reasons, words.Of(reason)+".")
	}
	p.reasons.SetText(strings.Join(reasons, " "))
	warning := ""
	if load, heavy := goods.LoadWarning(); heavy {
		warning = words.Of(load)
	}
	p.warning.Say(check.Warning, warning, nil)
	p.use.enable(sizeOf(body) != p.proposal.Size)
}

func (p *productPage) showUsual(goods product.Product, body *bag.Body) {
	p.matches = goods.Rank(p.sizes)
	rows := make([]steppage.Row, len(p.matches))
	for i, m := range p.matches {
		rows[i] = steppage.Row{
			Name:   cmp.Or(p.names[m.Name], m.Name),
			Note:   p.matchNote(&m),
			Dim:    !m.Fits(),
			Chosen: sizeOf(body) == m.Size,
		}
	}
	p.usual.Set(rows)
}

func (p *productPage) matchNote(m *product.Match) string {
	size := p.Bare(m.Width) + " × " + p.Bare(m.Gusset) + " × " + p.Length(m.Height)
	if m.Fits() {
		return fmt.Sprintf(lang.L("%s, %s l left free"), size, litres(m.Spare))
	}
	var lacks []string
	if m.Lacks.Width > 0 {
		lacks = append(lacks, fmt.Sprintf(lang.L("face %s too narrow"), p.Length(m.Lacks.Width)))
	}
	if m.Lacks.Gusset > 0 {
		lacks = append(lacks, fmt.Sprintf(lang.L("gusset %s too shallow"), p.Length(m.Lacks.Gusset)))
	}
	if m.Lacks.Height > 0 {
		lacks = append(lacks, fmt.Sprintf(lang.L("%s too low"), p.Length(m.Lacks.Height)))
	}
	return size + ": " + strings.Join(lacks, ", ")
}

func sizeOf(body *bag.Body) product.Size {
	return product.Size{Width: body.Width, Gusset: body.Gusset, Height: body.Height}
}

func litres(volume float64) string { return words.Number(volume, 1) }

// button is a button that is only refreshed when it changes.
type button struct{ appearance.Button }

func newButton(label string, pressed func()) *button {
	b := &button{}
	b.Text, b.OnTapped, b.Importance = label, pressed, widget.HighImportance
	b.ExtendBaseWidget(b)
	return b
}

func (b *button) enable(on bool) {
	switch {
	case on && b.Disabled():
		b.Enable()
	case !on && !b.Disabled():
		b.Disable()
	}
}
