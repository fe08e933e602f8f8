package quotestep

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/settings"
	"gussetwright/app/sheetpicture"
	"gussetwright/app/steppage"
	"gussetwright/app/steppage/pagetest"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet/gang"
)

// What is shown is what is solved. The large bag leaves no room for both others, so one
// form cannot hold all three.
func TestGangIsShown(t *testing.T) {
	d := newDesk(t, pagetest.FamilyBag())
	views := pagetest.All[*formView](d)
	if len(views) == 0 || !d.says("Each size on sheets of its own") || !d.says("With make-ready") {
		t.Fatalf("%d forms are shown", len(views))
	}
	total := 0
	for _, view := range views {
		total += sheetsOf(t, view)
		if len(pagetest.All[*sheetpicture.Key](view)) == 0 {
			t.Errorf("%q has no legend", view.title.Text())
		}
	}
	r := gangOf(t, pagetest.FamilyBag(), 0)
	if total != r.Sheets || r.Proven != d.says("Proven least.") {
		t.Errorf("%d sheets are shown, want %d", total, r.Sheets)
	}
	choice := pagetest.First[*entry.Choice](d)
	choice.Pick("1")
	if views = pagetest.All[*formView](d); len(views) != 0 || !d.says("allow more forms or take a larger sheet") {
		t.Errorf("%d forms are shown for one", len(views))
	}
	choice.Pick("2")
	two := gangOf(t, pagetest.FamilyBag(), 2)
	if views = pagetest.All[*formView](d); len(views) != 2 || sheetsOf(t, views[0]) != two.Forms[0].Run {
		t.Errorf("%d forms are shown for two", len(views))
	}
	for i, over := range two.Over {
		if over > 0 && !d.says(fmt.Sprintf("%s %d", two.Items[i].Name, over)) {
			t.Errorf("%d %s too many are not named", over, two.Items[i].Name)
		}
	}
	// How many forms there may be is saved with the project, as the files follow it.
	if pagetest.UndoSteps(d.Doc) != 2 || d.Doc.State().Spec.Run.MostForms != 2 {
		t.Errorf("%d steps to undo, at most %g forms", pagetest.UndoSteps(d.Doc), d.Doc.State().Spec.Run.MostForms)
	}
}

// sheetsOf returns how many sheets a form says that it takes.
func sheetsOf(t *testing.T, view *formView) int {
	t.Helper()
	var number, sheets int
	if strings.HasSuffix(view.title.Text(), ": one sheet") {
		return 1
	}
	if _, err := fmt.Sscanf(view.title.Text(), "Form %d: %d sheets", &number, &sheets); err != nil {
		t.Fatalf("%q: %v", view.title.Text(), err)
	}
	return sheets
}

// gangOf gangs a family apart from the window.
func gangOf(t *testing.T, spec bag.Spec, most int) gang.Result {
	t.Helper()
	snapshot, err := document.Derive(spec)
	if err != nil {
		t.Fatal(err)
	}
	order, fault := gangOrderOf(membersOf(snapshot), most)
	if fault != "" {
		t.Fatal(fault)
	}
	r, err := gang.Solve(context.Background(), order.sheet, order.items, gang.Options{MostForms: most})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// The search tells how far it is, can be cancelled and begun again, and the newest order
// wins.
func TestGangIsCancelled(t *testing.T) {
	p := &page{Page: steppage.New(pagetest.NewBench(t, pagetest.FamilyBag(), settings.Light))}
	g := p.addGang(p.newForms())
	var orders []gangOrder
	g.order = func(o gangOrder) { orders = append(orders, o) }
	doc := p.Doc
	p.result = reckon(quoteOrder{doc.State().Snapshot})
	g.show(doc.State())
	g.show(doc.State())
	if len(orders) != 1 || !g.cancel.Visible() || g.again.Visible() {
		t.Fatalf("%d orders", len(orders))
	}
	g.tell(orders[0].number, 1234, 1200)
	if got := g.progress.Text(); got != "Looking for the least sheets: 1234 so far, at least 1200." {
		t.Errorf("progress %q", got)
	}
	test.Tap(g.cancel)
	if orders[0].ctx.Err() == nil {
		t.Fatal("Cancel does not end the search")
	}
	made := solve(orders[0])
	if !errors.Is(made.err, context.Canceled) {
		t.Fatal(made.err)
	}
	g.deliver(made)
	if g.cancel.Visible() || !g.again.Visible() || !strings.HasPrefix(g.progress.Text(), "Cancelled") || len(orders) != 1 {
		t.Errorf("after Cancel: %q, %d orders", g.progress.Text(), len(orders))
	}
	test.Tap(g.again)
	spec := doc.State().Spec
	spec.Run.MostForms = 2
	doc.Set(spec)
	p.result = reckon(quoteOrder{doc.State().Snapshot})
	g.show(doc.State())
	if len(orders) != 3 || orders[1].ctx.Err() == nil || orders[2].ctx.Err() != nil || orders[2].most != 2 {
		t.Fatalf("%d orders; the newest must be the only one under way", len(orders))
	}
	late := orders[1]
	late.ctx = context.Background()
	g.deliver(solve(late))
	g.tell(late.number, 1, 1)
	if !g.running || g.summary.Text() != "" || strings.Contains(g.progress.Text(), "1 so far") {
		t.Error("a late result is shown")
	}
	g.deliver(solve(orders[2]))
	if g.running || g.cancel.Visible() || g.again.Visible() || g.summary.Text() == "" || !g.shown.veil.Hidden {
		t.Errorf("the newest result is not shown: %q", g.summary.Text())
	}
	// Another grammage changes no blank: nothing is searched anew.
	spec = doc.State().Spec
	spec.Prices.Paper = 2
	doc.Set(spec)
	g.show(doc.State())
	if g.shown.veil.Hidden {
		t.Error("the ganging of another state looks as if it were of now")
	}
	p.result = reckon(quoteOrder{doc.State().Snapshot})
	g.show(doc.State())
	if len(orders) != 3 || !g.shown.veil.Hidden {
		t.Errorf("%d orders after a change of price", len(orders))
	}
}
