package quotestep

import (
	"reflect"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"gussetwright/app/entry"
	"gussetwright/app/settings"
	"gussetwright/app/steppage"
	"gussetwright/app/steppage/pagetest"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// openSize opens a further size, counted from 0.
func (d *desk) openSize(i int) *entry.Column {
	pagetest.Choose(pagetest.All[*steppage.Table](d)[0], i+1)
	return d.sizeEntries()
}

// sizeEntries returns the entries of the size that is open, nil when none is.
func (d *desk) sizeEntries() *entry.Column {
	for _, column := range pagetest.All[*entry.Column](d) {
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
	d := newDesk(t, bag.Default())
	doc := d.Doc
	adds := pagetest.All[*steppage.Offer](d)
	// Three quarters of 240 × 100 × 360 mm, and 1.3 times as large to a whole 10 mm.
	if !pagetest.Says(adds[0], "Small: 180 × 75 × 270 mm") || !pagetest.Says(adds[1], "Large: 310 × 129 × 465 mm") {
		t.Errorf("proposed are %q and %q", pagetest.Texts(adds[0]), pagetest.Texts(adds[1]))
	}
	test.Tap(adds[0])
	want := bag.Size{Name: "Small", Width: 180, Gusset: 75, Height: 270, Quantity: 1000}
	if got := doc.State().Spec.Family; len(got) != 1 || got[0] != want || pagetest.UndoSteps(doc) != 1 {
		t.Fatalf("family %+v", got)
	}
	entries := d.openSize(0)
	if entries == nil {
		t.Fatal("the size cannot be opened")
	}
	objects := entries.Objects()
	name := objects[2].(*entry.Name)
	pagetest.Enter(name, "Gift")
	pagetest.Enter(objects[3].(*entry.Number), "17 cm")
	pagetest.Enter(objects[6].(*entry.Number), "250")
	want.Name, want.Width, want.Quantity = "Gift", 170, 250
	if got := doc.State().Spec.Family[0]; got != want || pagetest.UndoSteps(doc) != 4 {
		t.Errorf("size %+v after %d steps", got, pagetest.UndoSteps(doc))
	}
	d.openSize(0) // counting steps went back to when there was no size
	// By hand: 2 · 170 + 2 · 75 + 20 for the seam flap − 0.5 of relief, by 270 + 40 for the
	// turn-in + 75/2 + 30 for the base.
	if !d.says("Blank 509.5 × 377.5 mm, 2-up, 132 sheets; a bag weighs") {
		t.Error("what follows from the size is not said")
	}
	test.Tap(d.offer("Remove this size"))
	if len(doc.State().Spec.Family) != 0 || d.sizeEntries() != nil || pagetest.UndoSteps(doc) != 5 {
		t.Errorf("family %+v", doc.State().Spec.Family)
	}
	doc.Undo()
	if got := doc.State().Spec.Family; len(got) != 1 || got[0] != want {
		t.Errorf("undo brings back %+v", got)
	}
}

// The bag and a further size change places, as one step; done twice nothing changed.
func TestWorkOnThisSize(t *testing.T) {
	spec := pagetest.FamilyBag()
	spec.Breaks = []float64{500}
	d := newDesk(t, spec)
	doc := d.Doc
	d.openSize(1)
	test.Tap(d.offer("Work on this size"))
	got := doc.State().Spec
	if got.Name != "Large" || got.Body.Width != 240 || got.Body.Gusset != 100 || got.Body.Height != 300 || got.Run.Quantity != 400 || got.Handle.Spacing != 120 || pagetest.UndoSteps(doc) != 1 {
		t.Errorf("the bag is %q, %+v, %g bags, holes %g apart, %d steps", got.Name, got.Body, got.Run.Quantity, got.Handle.Spacing, pagetest.UndoSteps(doc))
	}
	if want := (bag.Size{Name: "Tea house", Width: 160, Gusset: 70, Height: 220, Quantity: 1000}); got.Family[1] != want || got.Family[0] != spec.Family[0] || len(got.Breaks) != 1 {
		t.Errorf("family %+v, quantities %v", got.Family, got.Breaks)
	}
	d.openSize(1)
	test.Tap(d.offer("Work on this size"))
	if again := doc.State().Spec; !reflect.DeepEqual(again, spec) {
		t.Errorf("done twice: %+v, want %+v", again, spec)
	}
}

// What cannot be drawn is said beside its entry, or below all of them, and counted.
func TestSizeThatIsWrong(t *testing.T) {
	d := newDesk(t, pagetest.FamilyBag())
	entries := d.openSize(0).Objects()
	width := entries[3].(*entry.Number)
	pagetest.Enter(width, "8")
	if width.Message() == "" {
		t.Error("a face of 8 mm is taken")
	}
	width.Forget()
	pagetest.Enter(entries[4].(*entry.Number), "5")
	if !d.says("errors: 1") {
		t.Error("an error is not counted")
	}
	d.Doc.Undo()
	if d.says("errors: 1") {
		t.Error("an error is counted after undo")
	}
	// On a sheet of 560 × 360 mm the large size fits no more.
	spec := d.Doc.State().Spec
	spec.Sheet.Width, spec.Sheet.Height = 560, 360
	d.Doc.Set(spec)
	d.openSize(1)
	if !d.says("errors: 1") || !d.says("which does not fit the sheet") || !d.says("so the sizes cannot share sheets") {
		t.Error("a size that does not fit is not said")
	}
}

// What is found of a size is said with lengths in the unit of the user. An inch is 25.4 mm
// by definition, so 560 mm are 22.047 in.
func TestFindingOfASizeInTheUnitOfTheUser(t *testing.T) {
	spec := pagetest.FamilyBag()
	spec.Sheet.Width, spec.Sheet.Height = 560, 360
	d := newDesk(t, spec)
	d.openSize(1)
	for unit, want := range map[geometry.Unit]string{
		geometry.Millimetre: "the sheet of 560 mm × 360 mm, of which", geometry.Centimetre: "the sheet of 56 cm × 36 cm, of which", geometry.Inch: "the sheet of 22.047 in × 14.173 in, of which",
	} {
		d.Settings.SetUnit(unit)
		if said := pagetest.First[*entry.Message](d.sizeEntries()).Text(); !strings.Contains(said, want) {
			t.Errorf("in %s: %q does not say %q", unit, said, want)
		}
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
	p := newPage(pagetest.NewBench(t, spec, settings.Light))
	p.request = func(quoteOrder) {}
	p.Follow(p.Doc.State())
	if pagetest.Explained[*steppage.Offer](p, "Add a size") != nil {
		t.Error("one size too many can be added")
	}
	spec.Family = append(spec.Family, spec.Family[0])
	if spec.Validate() == nil {
		t.Error("the limit of the list is another")
	}
}
