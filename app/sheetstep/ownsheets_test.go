package sheetstep

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/entry"
	"gussetwright/app/steppage"
	"gussetwright/app/steppage/pagetest"
	"gussetwright/geometry/bag"
)

// ownEntries returns the column with the entries of an own sheet.
func (d *desk) ownEntries() *entry.Column {
	for _, object := range d.Objects() {
		column, ok := object.(*entry.Column)
		if !ok || len(column.Objects()) < 4 {
			continue
		}
		if entries, ok := column.Objects()[3].(*entry.Column); ok && pagetest.First[*entry.Name](entries) != nil {
			return entries
		}
	}
	return nil
}

// An own sheet is added from the sheet in use, changed and removed, each as one step.
func TestOwnSheets(t *testing.T) {
	d := newDesk(t, bag.Default())
	doc := d.Doc
	test.Tap(d.offer("Add the sheet in use"))
	if got, want := doc.State().Spec.Stock, (bag.StockSheet{Name: "1000 × 700 mm", Width: 1000, Height: 700, Grain: bag.GrainEither}); len(got) != 1 || got[0] != want {
		t.Fatalf("own sheets %+v", got)
	}
	entries := d.ownEntries()
	if !entries.Visible() {
		t.Fatal("the new sheet is not open")
	}
	objects := entries.Objects()
	name := objects[0].(*entry.Name)
	test.Type(name.Focusable(), "Reel-cut kraft")
	name.Focusable().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	pagetest.Enter(objects[1].(*entry.Number), "760")
	pagetest.Enter(objects[2].(*entry.Number), "52 cm")
	objects[3].(*entry.Choice).Pick(string(bag.GrainAlongHeight))
	pagetest.Enter(objects[4].(*entry.Number), "0.0185")
	if said := objects[4].(*entry.Number).Text(); said != "0.0185" {
		t.Errorf("the price is shown as %q", said)
	}
	want := bag.StockSheet{Name: "Reel-cut kraft", Width: 760, Height: 520, Grain: bag.GrainAlongHeight, Price: 0.0185}
	if got := doc.State().Spec.Stock[0]; got != want || pagetest.UndoSteps(doc) != 6 {
		t.Errorf("own sheet %+v after %d steps", got, pagetest.UndoSteps(doc))
	}
	test.Tap(pagetest.First[*steppage.Table](d)) // counting steps went back to when there was no sheet
	pagetest.Enter(objects[1].(*entry.Number), "99")
	if said := objects[1].(*entry.Number).Message(); !strings.Contains(said, "100 mm") || pagetest.UndoSteps(doc) != 6 {
		t.Errorf("a sheet 99 mm wide: %q", said)
	}
	objects[1].(*entry.Number).Forget()

	// The fibres of the default bag run up the bag, so its blank of 699.5 × 480 lies
	// upright on this sheet: 699.5 of 760 − 10 wide, 480 of 520 − 17 high.
	row := d.shown("Reel-cut kraft")
	if row == nil || row.row.cells[0] != "1" || !strings.Contains(row.row.note, "own sheet") || !strings.Contains(row.row.note, "520 mm") {
		t.Fatalf("the ranking shows %+v", row)
	}
	d.ranking.take(row.row.key)
	if s := doc.State().Spec.Sheet; s.Width != 760 || s.Height != 520 || s.Grain != bag.GrainAlongHeight || pagetest.UndoSteps(doc) != 7 {
		t.Errorf("sheet %+v after %d steps", s, pagetest.UndoSteps(doc))
	}
	if up := doc.State().Snapshot.Plan.Up(); up != 1 {
		t.Errorf("%d-up, want 1 as ranked", up)
	}

	test.Tap(pagetest.First[*steppage.Table](d))
	test.Tap(d.offer("Remove this sheet"))
	if len(doc.State().Spec.Stock) != 0 || entries.Visible() || pagetest.UndoSteps(doc) != 8 {
		t.Errorf("%d own sheets are left after %d steps", len(doc.State().Spec.Stock), pagetest.UndoSteps(doc))
	}
	doc.Undo()
	if len(doc.State().Spec.Stock) != 1 || doc.State().Spec.Stock[0] != want {
		t.Errorf("undo brings back %+v", doc.State().Spec.Stock)
	}
}

// With the grain along its other side the same sheet holds none: lying on its side the
// blank takes 699.5 of the height, of which 520 − 17 are free.
func TestOwnGrainCounts(t *testing.T) {
	spec := bag.Default()
	spec.Body.Seams = bag.SeamsOne
	spec.Stock = []bag.StockSheet{{Name: "Across", Width: 760, Height: 520, Grain: bag.GrainAlongWidth}}
	d := newDesk(t, spec)
	if row := d.shown("Across"); row == nil || row.row.cells != nil {
		t.Errorf("the ranking shows %+v", row)
	}
}

// The list ends where the project file ends it, and says so.
func TestNoMoreOwnSheetsThanAllowed(t *testing.T) {
	spec := bag.Default()
	for range mostStock {
		spec.Stock = append(spec.Stock, bag.StockSheet{Width: 700, Height: 500, Grain: bag.GrainEither})
	}
	if err := spec.Validate(); err != nil {
		t.Fatal(err)
	}
	d := newDesk(t, spec)
	if add := d.offer("Add the sheet in use"); add != nil || !strings.Contains(pagetest.Markup(d.window), "Remove one to add another.") {
		t.Error("one sheet too many can be added")
	}
	spec.Stock = append(spec.Stock, spec.Stock[0])
	if spec.Validate() == nil {
		t.Error("the limit of the list is another")
	}
}
