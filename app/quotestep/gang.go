package quotestep

import (
	"context"
	"errors"
	"fmt"
	"strconv"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/sheetpicture"
	"gussetwright/app/steppage"
	"gussetwright/app/words"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
)

// ganging shows how the bags of the family share sheets.
type ganging struct {
	*page
	box      *entry.Column  // hidden while there is no family
	fault    *entry.Message // why there is nothing to show
	progress *entry.Text
	cancel   *steppage.Offer
	again    *steppage.Offer
	shown    *veiled
	summary  *entry.Text
	compared *entry.Text // with sheets of their own
	over     *entry.Text
	forms    *entry.Column
	views    []*formView

	order   func(gangOrder)
	stop    context.CancelFunc // ends what is being solved
	ordered gangOrder
	made    gangResult
	running bool
}

// newForms returns the entry for the number of forms. It stands with what it decides, not
// with the entries of the run.
func (p *page) newForms() *steppage.Slot {
	field, _ := bag.FieldAt("run.most_forms")
	choice := entry.NewChoice(lang.L(field.Label), lang.L(field.Help), formOptions(), func(value string) {
		spec := p.Doc.State().Spec
		most, _ := strconv.Atoi(value)
		field.SetNumber(&spec, float64(most))
		p.Doc.Set(spec)
	})
	choice.OnFocus(p.Explain)
	s := steppage.NewSlot(field.Path, choice.Complain, func(spec *bag.Spec) { choice.Put(strconv.Itoa(int(field.Number(spec)))) }, choice)
	p.Keep(s)
	return s
}

func (p *page) addGang(forms *steppage.Slot) *ganging {
	g := &ganging{page: p, stop: func() {}}
	g.fault, g.progress = entry.NewMessage(), entry.NewText("", entry.Small)
	g.cancel = steppage.NewOffer(lang.L("Cancel"), func() { g.stop() }).
		WithHelp(lang.L("Ends the search; what was found until then is shown."), p.Explain)
	g.again = steppage.NewOffer(lang.L("Look for the least sheets again"), func() {
		g.begin(g.ordered)
		g.show(p.Doc.State())
	}).WithHelp(lang.L("Begins the search anew."), p.Explain)
	g.cancel.Hide()
	g.again.Hide()
	g.summary, g.compared, g.over = entry.NewText("", entry.Plain), entry.NewText("", entry.Small), entry.NewText("", entry.Small)
	g.forms = entry.NewColumn(3)
	g.shown = newVeiled(1.5, g.summary, g.compared, g.over, g.forms)
	g.box = entry.NewColumn(2,
		entry.NewText(lang.L("Sheets together"), entry.Heading),
		entry.NewText(lang.L("The sizes of the family laid together on the press sheet of this bag, so that the quantities of all take the least sheets. Spoilage is in it."), entry.Muted),
		forms, g.fault, g.progress, g.cancel, g.again, g.shown,
	)
	g.box.Hide()
	p.Add(g.box)
	g.order = g.newSolver()
	p.fills = append(p.fills, g.show)
	return g
}

func formOptions() []entry.Option {
	return []entry.Option{
		{Value: "0", Word: lang.L("As many as help"), Line: lang.L("As many as take the least sheets.")},
		{Value: "1", Word: lang.L("One"), Line: lang.L("One set of plates and one die for all sizes.")},
		{Value: "2", Word: lang.L("At most two"), Line: lang.L("Two sets of plates and two dies at most.")},
		{Value: "3", Word: lang.L("At most three"), Line: lang.L("Three sets of plates and three dies at most.")},
	}
}

// show brings the ganging up to date. While a drag lasts, or the family is reckoned anew,
// it only shows that what stands there is out of date.
func (g *ganging) show(state document.State) {
	family := len(state.Spec.Family) > 0
	g.Reveal(g.box, family)
	if !family {
		g.stop()
		return
	}
	reckoned := state.Err == nil && (quoteOrder{state.Snapshot}).same(g.result.order)
	if reckoned && !state.Dragging {
		g.solveAnew()
	}
	g.shown.dim(!reckoned || g.running)
	g.Reveal(g.cancel, g.running)
	g.Reveal(g.again, !g.running && errors.Is(g.made.err, context.Canceled))
}

// solveAnew orders the ganging where it is not what was ordered last.
func (g *ganging) solveAnew() {
	order, fault := gangOrderOf(g.result.members, int(g.Doc.State().Spec.Run.MostForms))
	if fault != "" {
		g.stop()
		g.fault.Say(check.Error, fault, nil)
		g.ordered, g.made, g.running = gangOrder{number: g.ordered.number + 1}, gangResult{}, false
		g.fill()
		return
	}
	if !order.same(&g.ordered) {
		g.begin(order)
	}
}

// begin solves an order, and gives up the one before it.
func (g *ganging) begin(order gangOrder) {
	g.stop()
	order.ctx, g.stop = context.WithCancel(context.Background())
	order.number = g.ordered.number + 1
	g.ordered, g.running = order, true
	g.fault.Say(check.Note, "", nil)
	g.progress.SetText(lang.L("Looking for the least sheets."))
	g.order(order)
}

// tell says how far the solver is.
func (g *ganging) tell(number, best, bound int) {
	if number != g.ordered.number || !g.running {
		return
	}
	if best == 0 {
		g.progress.SetText(fmt.Sprintf(lang.L("Looking for the least sheets: at least %d."), bound))
		return
	}
	g.progress.SetText(fmt.Sprintf(lang.L("Looking for the least sheets: %d so far, at least %d."), best, bound))
}

// deliver shows what was solved, unless a newer order is under way.
func (g *ganging) deliver(made gangResult) {
	if made.order.number != g.ordered.number {
		return
	}
	g.made, g.running = made, false
	g.fill()
	g.show(g.Doc.State())
}

// fill shows the result that was delivered last.
func (g *ganging) fill() {
	r := &g.made.result
	fault, progress := "", ""
	switch {
	case errors.Is(g.made.err, context.Canceled):
		progress = lang.L("Cancelled before the end; below is the best that was found until then.")
		if len(r.Forms) == 0 {
			progress = lang.L("Cancelled before anything was found.")
		}
	case g.made.err != nil:
		fault = steppage.Sentence(words.Error(g.made.err))
	}
	if g.made.order.ctx != nil {
		g.fault.Say(check.Error, fault, nil)
	}
	g.progress.SetText(progress)
	g.summary.SetText(g.summaryText())
	g.compared.SetText(g.comparedText())
	g.over.SetText(overText(r))
	g.fillForms()
	g.box.Grown()
}

// summaryText says how many sheets there are, and whether fewer would do.
func (g *ganging) summaryText() string {
	r := &g.made.result
	if len(r.Forms) == 0 {
		return ""
	}
	text := fmt.Sprintf(lang.L("%d sheets in one form."), r.Sheets)
	if len(r.Forms) > 1 {
		text = fmt.Sprintf(lang.L("%d sheets in %d forms."), r.Sheets, len(r.Forms))
	}
	switch {
	case r.Proven && g.made.order.most == 1:
		return text + " " + lang.L("Proven least for one form.")
	case r.Proven:
		return text + " " + lang.L("Proven least.")
	}
	return text + " " + fmt.Sprintf(lang.L("The best that was found; none takes fewer than %d."), r.Bound)
}

// comparedText sets the result beside sheets of their own for all sizes.
func (g *ganging) comparedText() string {
	r, alone := &g.made.result, &g.made.order.alone
	if len(r.Forms) == 0 {
		return ""
	}
	text := fmt.Sprintf(lang.L("Each size on sheets of its own: %s sheets in %d forms."), count(alone.sheets), alone.forms)
	if ready := g.made.order.makeReady; ready > 0 {
		together := float64(r.Sheets) + ready*float64(len(r.Forms))
		text += " " + fmt.Sprintf(lang.L("With make-ready %s together, %s on their own."), count(together), count(alone.sheets+alone.ready))
	}
	if saved := alone.sheets - float64(r.Sheets); saved > 0 {
		text += " " + fmt.Sprintf(lang.L("Together saves %s sheets, %s %%."), count(saved), words.Number(100*saved/alone.sheets, 1))
	}
	return text
}

// fillForms shows a picture of each form.
func (g *ganging) fillForms() {
	forms, order := g.made.result.Forms, &g.made.order
	for len(g.views) < len(forms) {
		view := newFormView()
		g.views = append(g.views, view)
		g.forms.Add(view)
	}
	for i, view := range g.views {
		steppage.Show(view, i < len(forms))
		if i < len(forms) {
			view.set(sheetpicture.FormArt{
				Sheet: g.made.result.Sheet, Usable: g.made.result.Usable, Form: &forms[i], Items: order.items, Outlines: order.outlines,
			}, i)
		}
	}
}
