package steps

import (
	"cmp"
	"fmt"
	"strings"

	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/assets"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/geometry/product"
)

// productPage asks what goes in and proposes a size. The product is no part of the
// bag and is not saved with it.
type productPage struct {
	*page
	product product.Product
	sizes   []product.Usual
	names   map[string]string // of the sizes, in the language of the user

	kind     *entry.Choice
	numbers  []*entry.Number
	places   []*entry.Column // of the numbers
	proposed *entry.Text
	reasons  *entry.Text
	volume   *entry.Text
	warning  *entry.Message
	use      *button
	usual    *table
	matches  []product.Match
	proposal product.Proposal
}

func newProductPage(b *bench) *page {
	p := &productPage{page: newPage(b), product: product.Default(), names: usualNames()}
	p.sizes, _ = product.ReadUsual(assets.UsualSizes) // the list is tested to be sound
	p.addQuestions()
	p.addProposal()
	p.addUsual()
	p.shows = append(p.shows, p.showAll)
	return p.page
}

func kindOptions() []entry.Option {
	return []entry.Option{
		{Value: string(product.Box), Word: lang.L("A box"), Line: lang.L("It keeps its shape and slides in upright.")},
		{Value: string(product.Bottle), Word: lang.L("A bottle"), Line: lang.L("Round: as deep as it is wide.")},
		{Value: string(product.Garment), Word: lang.L("A folded garment"), Line: lang.L("Soft: it settles and needs more ease.")},
		{Value: string(product.Free), Word: lang.L("Loose goods"), Line: lang.L("They take the shape of the bag; what counts is their volume.")},
	}
}

func (p *productPage) addQuestions() {
	p.kind = entry.NewChoice(lang.L("What goes in"), lang.L("Sets the usual ease and headroom, and how usual sizes are compared."), kindOptions(), func(kind string) {
		p.change(p.product.As(product.Kind(kind)))
	})
	p.kind.OnFocus(p.explain)
	p.Add(p.kind)
	questions := product.Entries()
	for i := range questions {
		e := &questions[i]
		set := func(value float64) {
			changed := p.product
			e.Set(&changed, value)
			p.change(changed)
		}
		number := entry.NewNumber(entry.Quantity{
			Label: lang.L(e.Label), Unit: e.Unit, Least: e.Least, Most: e.Most, Help: lang.L(e.Help),
			WhyLeast: inReason(e.WhyLeast), WhyMost: inReason(e.WhyMost), Set: set, Drag: set, Drop: func() {},
		}, p.set)
		number.OnFocus(p.explain)
		place := entry.NewColumn(0, number)
		p.numbers, p.places = append(p.numbers, number), append(p.places, place)
		p.Add(place)
	}
}

// inReason translates the reason for a limit, where there is one.
func inReason(why string) string {
	if why == "" {
		return ""
	}
	return lang.L(why)
}

func (p *productPage) addProposal() {
	p.proposed, p.reasons = entry.NewText("", entry.Plain), entry.NewText("", entry.Small)
	p.volume, p.warning = entry.NewText("", entry.Small), entry.NewMessage()
	p.use = newButton(lang.L("Use this size"), func() { p.apply(p.proposal.Size) })
	p.Add(entry.NewColumn(1.5, entry.NewText(lang.L("Proposed size"), entry.Heading), p.proposed, p.use, p.volume, p.warning, p.reasons))
}

func (p *productPage) addUsual() {
	p.usual = newTable(nil, func(i int) { p.apply(p.matches[i].Size) })
	p.Add(entry.NewColumn(1.5,
		entry.NewText(lang.L("Usual sizes"), entry.Heading),
		entry.NewText(lang.L("Those that hold the product first, the closest at the top. A click takes the size."), entry.Muted),
		p.usual,
	))
}

// change takes over what was asked and shows what follows.
func (p *productPage) change(changed product.Product) {
	p.product = changed
	p.showAll(p.doc.State())
}

// apply gives the bag a size, as one step to undo.
func (p *productPage) apply(size product.Size) { p.doc.Set(size.Apply(p.doc.State().Spec)) }

func (p *productPage) showAll(state document.State) {
	p.kind.Put(string(p.product.Kind))
	questions := product.Entries()
	for i := range questions {
		e := &questions[i]
		p.reveal(p.places[i], e.Applies(&p.product))
		p.numbers[i].SetLimits(e.Least, e.MostFor(&p.product))
		p.numbers[i].Put(e.Value(&p.product))
	}
	p.showProposal(&state.Spec.Body)
	p.showUsual(&state.Spec.Body)
}

func (p *productPage) showProposal(body *bag.Body) {
	p.proposal = p.product.Propose(*body, p.length)
	p.proposed.SetText(fmt.Sprintf(lang.L("Face %s × gusset %s × height %s"),
		p.length(p.proposal.Width), p.length(p.proposal.Gusset), p.length(p.proposal.Height)))
	p.volume.SetText(fmt.Sprintf(lang.L("Holds %s l; the product takes %s l."), litres(p.proposal.Volume()), litres(p.product.Volume())))
	var reasons []string
	for _, reason := range p.proposal.Reasons {
		reasons = append(reasons, inWords(reason)+".")
	}
	p.reasons.SetText(strings.Join(reasons, " "))
	warning := ""
	if load, heavy := p.product.LoadWarning(); heavy {
		warning = inWords(load)
	}
	p.warning.Say(check.Warning, warning, nil)
	p.use.enable(sizeOf(body) != p.proposal.Size)
}

func (p *productPage) showUsual(body *bag.Body) {
	p.matches = p.product.Rank(p.sizes)
	rows := make([]tableRow, len(p.matches))
	for i, m := range p.matches {
		rows[i] = tableRow{
			cells:  []string{cmp.Or(p.names[m.Name], m.Name)},
			note:   p.matchNote(&m),
			dim:    !m.Fits(),
			chosen: sizeOf(body) == m.Size,
		}
	}
	p.usual.set(rows)
}

func (p *productPage) matchNote(m *product.Match) string {
	size := p.bare(m.Width) + " × " + p.bare(m.Gusset) + " × " + p.length(m.Height)
	if m.Fits() {
		return fmt.Sprintf(lang.L("%s, %s l left free"), size, litres(m.Spare))
	}
	var lacks []string
	if m.Lacks.Width > 0 {
		lacks = append(lacks, fmt.Sprintf(lang.L("face %s too narrow"), p.length(m.Lacks.Width)))
	}
	if m.Lacks.Gusset > 0 {
		lacks = append(lacks, fmt.Sprintf(lang.L("gusset %s too shallow"), p.length(m.Lacks.Gusset)))
	}
	if m.Lacks.Height > 0 {
		lacks = append(lacks, fmt.Sprintf(lang.L("%s too low"), p.length(m.Lacks.Height)))
	}
	return size + ": " + strings.Join(lacks, ", ")
}

func sizeOf(body *bag.Body) product.Size {
	return product.Size{Width: body.Width, Gusset: body.Gusset, Height: body.Height}
}

func litres(volume float64) string { return geometry.FormatNumber(volume, 1) }

// button is a button that is only refreshed when it changes.
type button struct{ widget.Button }

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
