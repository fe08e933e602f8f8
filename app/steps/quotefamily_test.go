package steps

import (
	"context"
	"errors"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/entry"
	"gussetwright/app/settings"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet/gang"
)

// openSize opens a further size, counted from 0, by keys.
func (p *Panel) openSize(i int) *entry.Column {
	list := all[*sizeTable](p.page(quoteStep))[0]
	fyne.CurrentApp().Driver().CanvasForObject(list).Focus(list)
	list.TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome})
	for range i + 1 {
		list.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	}
	list.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	return p.sizeEntries()
}

// sizeEntries returns the entries of the size that is open, nil when none is.
func (p *Panel) sizeEntries() *entry.Column {
	for _, column := range all[*entry.Column](p.page(quoteStep)) {
		for _, object := range column.Objects() {
			if name, ok := object.(*entry.Name); ok && name != nil {
				return column
			}
		}
	}
	return nil
}

// A size is added, named, changed and removed, each as one step.
func TestFamily(t *testing.T) {
	panel, _ := newQuoteDesk(t, bag.Default(), settings.Light, 900)
	doc := panel.bench.doc
	adds := all[*action](panel.page(quoteStep))
	// Three quarters of 240 × 100 × 360 mm, and 1.3 times as large to a whole 10 mm.
	if got := []string{adds[0].gain.Text(), adds[1].gain.Text()}; got[0] != "Small: 180 × 75 × 270 mm" || got[1] != "Large: 310 × 129 × 465 mm" {
		t.Errorf("proposed are %q", got)
	}
	test.Tap(adds[0])
	want := bag.Size{Name: "Small", Width: 180, Gusset: 75, Height: 270, Quantity: 1000}
	if got := doc.State().Spec.Family; len(got) != 1 || got[0] != want || undoSteps(doc) != 1 {
		t.Fatalf("family %+v", got)
	}
	entries := panel.openSize(0)
	if entries == nil {
		t.Fatal("the size cannot be opened")
	}
	objects := entries.Objects()
	name := objects[2].(*entry.Name)
	test.Type(name.Focusable(), "Gift")
	name.Focusable().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	enter(objects[3].(*entry.Number), "17 cm")
	enter(objects[6].(*entry.Number), "250")
	want.Name, want.Width, want.Quantity = "Gift", 170, 250
	if got := doc.State().Spec.Family[0]; got != want || undoSteps(doc) != 4 {
		t.Errorf("size %+v after %d steps", got, undoSteps(doc))
	}
	panel.openSize(0) // counting steps went back to when there was no size
	// By hand: 2 · 170 + 2 · 75 + 20 for the seam flap − 0.5 of relief, by 270 + 40 for the
	// turn-in + 75/2 + 30 for the base.
	if !panel.saying("Blank 509.5 × 377.5 mm, 2-up, 132 sheets; a bag weighs") {
		t.Error("what follows from the size is not said")
	}
	test.Tap(panel.action("Remove this size"))
	if len(doc.State().Spec.Family) != 0 || panel.sizeEntries() != nil || undoSteps(doc) != 5 {
		t.Errorf("family %+v", doc.State().Spec.Family)
	}
	doc.Undo()
	if got := doc.State().Spec.Family; len(got) != 1 || got[0] != want {
		t.Errorf("undo brings back %+v", got)
	}
}

// The bag and a further size change places, as one step; done twice nothing changed.
func TestWorkOnThisSize(t *testing.T) {
	spec := familyBag()
	spec.Breaks = []float64{500}
	panel, _ := newQuoteDesk(t, spec, settings.Light, 900)
	doc := panel.bench.doc
	panel.openSize(1)
	test.Tap(panel.action("Work on this size"))
	got := doc.State().Spec
	if got.Name != "Large" || got.Body.Width != 240 || got.Body.Gusset != 100 || got.Body.Height != 300 || got.Run.Quantity != 400 || got.Handle.Spacing != 120 || undoSteps(doc) != 1 {
		t.Errorf("the bag is %q, %+v, %g bags, holes %g apart, %d steps", got.Name, got.Body, got.Run.Quantity, got.Handle.Spacing, undoSteps(doc))
	}
	if want := (bag.Size{Name: "Tea house", Width: 160, Gusset: 70, Height: 220, Quantity: 1000}); got.Family[1] != want || got.Family[0] != spec.Family[0] || len(got.Breaks) != 1 {
		t.Errorf("family %+v, quantities %v", got.Family, got.Breaks)
	}
	panel.openSize(1)
	test.Tap(panel.action("Work on this size"))
	if again := doc.State().Spec; !reflect.DeepEqual(again, spec) {
		t.Errorf("done twice: %+v, want %+v", again, spec)
	}
}

// What cannot be drawn is said beside its entry, or below all of them, and counted.
func TestSizeThatIsWrong(t *testing.T) {
	panel, _ := newQuoteDesk(t, familyBag(), settings.Light, 900)
	entries := panel.openSize(0).Objects()
	width := entries[3].(*entry.Number)
	enter(width, "8")
	if width.Message() == "" {
		t.Error("a face of 8 mm is taken")
	}
	width.Forget()
	enter(entries[4].(*entry.Number), "5")
	if !panel.saying("errors: 1") {
		t.Error("an error is not counted")
	}
	panel.bench.doc.Undo()
	if panel.saying("errors: 1") {
		t.Error("an error is counted after undo")
	}
	// On a sheet of 560 × 360 mm the large size fits no more.
	spec := panel.bench.doc.State().Spec
	spec.Sheet.Width, spec.Sheet.Height = 560, 360
	panel.bench.doc.Set(spec)
	panel.openSize(1)
	if !panel.saying("errors: 1") || !panel.saying("which does not fit the sheet") || !panel.saying("so the sizes cannot share sheets") {
		t.Error("a size that does not fit is not said")
	}
}

// The list ends where the project file ends it.
func TestNoMoreSizesThanAllowed(t *testing.T) {
	spec := bag.Default()
	for range mostSizes {
		spec.Family = append(spec.Family, bag.Size{Width: 200, Gusset: 80, Height: 300, Quantity: 10})
	}
	if err := spec.Validate(); err != nil {
		t.Fatal(err)
	}
	panel, _ := newSheetDesk(t, bag.Default(), settings.Light)
	p := buildQuotePage(panel.bench)
	p.request = func(quoteOrder) {}
	panel.bench.doc.Set(spec)
	p.show(panel.bench.doc.State())
	for _, a := range all[*action](p) {
		if a.name == "Add a size" {
			t.Error("one size too many can be added")
		}
	}
	spec.Family = append(spec.Family, spec.Family[0])
	if spec.Validate() == nil {
		t.Error("the limit of the list is another")
	}
}

// What is shown is what is solved. The large bag leaves no room for both others, so one
// form cannot hold all three.
func TestGangIsShown(t *testing.T) {
	panel, _ := newQuoteDesk(t, familyBag(), settings.Light, 900)
	views := all[*formView](panel.page(quoteStep))
	if len(views) == 0 || !panel.saying("Each size on sheets of its own") || !panel.saying("With make-ready") {
		t.Fatalf("%d forms are shown", len(views))
	}
	total := 0
	for _, view := range views {
		total += view.picture.art.form.Run
		if len(all[*legendKey](view)) == 0 || !strings.Contains(view.title.Text(), "sheet") {
			t.Errorf("%q has no legend", view.title.Text())
		}
	}
	r := gangOf(t, familyBag(), 0)
	if total != r.Sheets || r.Proven != panel.saying("Proven least.") {
		t.Errorf("%d sheets are shown, want %d", total, r.Sheets)
	}
	choice := found[*entry.Choice](panel.page(quoteStep))
	choice.Pick("1")
	if views = all[*formView](panel.page(quoteStep)); len(views) != 0 || !panel.saying("allow more forms or take a larger sheet") {
		t.Errorf("%d forms are shown for one", len(views))
	}
	choice.Pick("2")
	two := gangOf(t, familyBag(), 2)
	if views = all[*formView](panel.page(quoteStep)); len(views) != 2 || views[0].picture.art.form.Run != two.Forms[0].Run {
		t.Errorf("%d forms are shown for two", len(views))
	}
	for i, over := range two.Over {
		if over > 0 && !panel.saying(fmt.Sprintf("%s %d", two.Items[i].Name, over)) {
			t.Errorf("%d %s too many are not named", over, two.Items[i].Name)
		}
	}
	// How many forms there may be is saved with the project, as the files follow it.
	if undoSteps(panel.bench.doc) != 2 || panel.bench.doc.State().Spec.Run.MostForms != 2 {
		t.Errorf("%d steps to undo, at most %g forms", undoSteps(panel.bench.doc), panel.bench.doc.State().Spec.Run.MostForms)
	}
}

// gangOf gangs a family apart from the window.
func gangOf(t *testing.T, spec bag.Spec, most int) gang.Result {
	t.Helper()
	panel, _ := newSheetDesk(t, spec, settings.Light)
	order, fault := gangOrderOf(membersOf(panel.bench.doc.State().Snapshot), most)
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
	panel, _ := newSheetDesk(t, familyBag(), settings.Light)
	var g *ganging
	p := &quotePage{page: newPage(panel.bench)}
	g = p.addGang(p.newForms())
	var orders []gangOrder
	g.order = func(o gangOrder) { orders = append(orders, o) }
	doc := panel.bench.doc
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
