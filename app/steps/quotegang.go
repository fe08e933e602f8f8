package steps

import (
	"context"
	"errors"
	"fmt"
	"strconv"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
)

// ganging shows how the bags of the family share sheets.
type ganging struct {
	*quotePage
	box      *entry.Column  // hidden while there is no family
	most     *slot          // forms
	fault    *entry.Message // why there is nothing to show
	progress *entry.Text
	cancel   *action
	again    *action
	shown    *veiled
	summary  *entry.Text
	compared *entry.Text // with sheets of their own
	over     *entry.Text
	forms    *entry.Column
	views    []*formView

	order   func(gangOrder)
	stop    context.CancelFunc // ends what is being solved
	close   func()
	ordered gangOrder
	made    gangResult
	running bool
}

// newForms returns the entry for the number of forms. It stands with what it decides, not
// with the entries of the run.
func (p *quotePage) newForms() *slot {
	field, _ := bag.FieldAt("run.most_forms")
	choice := entry.NewChoice(lang.L(field.Label), lang.L(field.Help), formOptions(), func(value string) {
		spec := p.doc.State().Spec
		most, _ := strconv.Atoi(value)
		field.SetNumber(&spec, float64(most))
		p.doc.Set(spec)
	})
	choice.OnFocus(p.explain)
	s := newSlot(field.Path, choice.Complain, func(spec *bag.Spec) { choice.Put(strconv.Itoa(int(field.Number(spec)))) }, choice)
	p.slots = append(p.slots, s)
	return s
}

func (p *quotePage) addGang(forms *slot) *ganging {
	g := &ganging{quotePage: p, most: forms, stop: func() {}}
	g.fault, g.progress = entry.NewMessage(), entry.NewText("", entry.Small)
	g.cancel = newAction(lang.L("Cancel"), lang.L("Ends the search; what was found until then is shown."), p.explain, func() { g.stop() })
	g.again = newAction(lang.L("Look for the least sheets again"), lang.L("Begins the search anew."), p.explain, func() {
		g.begin(g.ordered)
		g.show(p.doc.State())
	})
	g.cancel.Hide()
	g.again.Hide()
	g.summary, g.compared, g.over = entry.NewText("", entry.Plain), entry.NewText("", entry.Small), entry.NewText("", entry.Small)
	g.forms = entry.NewColumn(3)
	g.shown = newVeiled(1.5, g.summary, g.compared, g.over, g.forms)
	g.box = entry.NewColumn(2,
		entry.NewText(lang.L("Sheets together"), entry.Heading),
		entry.NewText(lang.L("The sizes of the family laid together on the press sheet of this bag, so that the quantities of all take the least sheets. Spoilage is in it."), entry.Muted),
		g.most, g.fault, g.progress, g.cancel, g.again, g.shown,
	)
	g.box.Hide()
	p.Add(g.box)
	g.order, g.close = g.newSolver()
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
	g.most.put(&state.Spec)
	g.reveal(g.box, family)
	if !family {
		g.stop()
		return
	}
	reckoned := state.Err == nil && (quoteOrder{state.Snapshot}).same(g.result.order)
	if reckoned && !state.Dragging {
		g.solveAnew()
	}
	g.shown.dim(!reckoned || g.running)
	g.toggle(g.cancel, g.running)
	g.toggle(g.again, !g.running && errors.Is(g.made.err, context.Canceled))
}

func (g *ganging) toggle(a *action, on bool) {
	if show(a, on) {
		g.box.Grown()
	}
}

// solveAnew orders the ganging where it is not what was ordered last.
func (g *ganging) solveAnew() {
	order, fault := gangOrderOf(g.result.members, int(g.doc.State().Spec.Run.MostForms))
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
	g.show(g.doc.State())
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
		fault = sentence(words.Error(g.made.err))
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
		text += " " + fmt.Sprintf(lang.L("Together saves %s sheets, %s %%."), count(saved), geometry.FormatNumber(100*saved/alone.sheets, 1))
	}
	return text
}

// fillForms shows a picture of each form.
func (g *ganging) fillForms() {
	forms, order := g.made.result.Forms, g.made.order // a copy that the pictures keep
	for len(g.views) < len(forms) {
		view := newFormView()
		g.views = append(g.views, view)
		g.forms.Add(view)
	}
	for i, view := range g.views {
		show(view, i < len(forms))
		if i < len(forms) {
			view.set(gangArt{sheet: g.made.result.Sheet, usable: g.made.result.Usable, form: &forms[i], order: &order}, i)
		}
	}
}
