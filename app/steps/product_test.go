package steps

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/entry"
	"gussetwright/app/project"
	"gussetwright/app/steppage"
	"gussetwright/app/steppage/pagetest"
	"gussetwright/assets"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/product"
)

// Product: a proposal follows what is entered, and is used as one step.
func TestProductIsUsedAsOneStep(t *testing.T) {
	panel, window := newDesk(t)
	doc := panel.bench.Doc
	use := pagetest.First[*button](panel.page(productStep))
	if use == nil {
		t.Fatal("no button to use the size")
	}
	before := doc.State().Spec.Body
	for _, e := range [][2]string{{"width_mm", "30 cm"}, {"depth_mm", "100"}, {"height_mm", "32 cm"}, {"weight_g", "1200"}, {"ease_mm", "10"}, {"headroom_mm", "60"}} {
		pagetest.Enter(panel.number("product."+e[0]), e[1])
	}
	const entered = 4 // ease and headroom had these values before
	if doc.State().Spec.Body != before || pagetest.UndoSteps(doc) != entered {
		t.Errorf("entering a product took %d steps and made %+v of the bag", pagetest.UndoSteps(doc), doc.State().Spec.Body)
	}
	shown := pagetest.Markup(window)
	for _, says := range []string{"1.2 kg", "sample bag"} {
		if !strings.Contains(shown, says) {
			t.Errorf("the weight is entered, and nothing says %q", says)
		}
	}
	test.Tap(use)
	body := doc.State().Spec.Body
	if body.Width != 310 || body.Gusset != 110 || body.Height != 380 || doc.State().Spec.Handle.Spacing != 155 || pagetest.UndoSteps(doc) != entered+1 {
		t.Errorf("bag %+v after %d steps", body, pagetest.UndoSteps(doc))
	}
	if !use.Disabled() {
		t.Error("the size is in use and can be used again")
	}
	doc.Undo()
	if doc.State().Spec.Body.Width != 240 || use.Disabled() {
		t.Error("one undo does not bring the bag back")
	}
	if doc.State().Spec.Product.Width != 300 {
		t.Error("undoing the size undoes what was entered before")
	}
}

// The product is saved with the bag and asked no second time. What kind it is brings
// the usual room, the limits of its numbers and whether it has a depth.
func TestProductBelongsToTheProject(t *testing.T) {
	panel, _ := newDesk(t)
	doc := panel.bench.Doc
	kind := panel.slot("product.kind").Objects()[0].(*entry.Choice)
	pagetest.Enter(panel.number("product.width_mm"), "600")
	kind.Pick(string(bag.ProductBottle))
	spec := doc.State().Spec
	if want := (bag.Product{Kind: bag.ProductBottle, Width: 400, Depth: 90, Height: 250, Ease: 10, Headroom: 40}); spec.Product != want {
		t.Errorf("product %+v, want %+v", spec.Product, want)
	}
	if panel.slot("product.depth_mm").Visible() {
		t.Error("a bottle is asked for its depth")
	}
	pagetest.Enter(panel.number("product.width_mm"), "401")
	if message := panel.number("product.width_mm").Message(); !strings.Contains(message, "400 mm") {
		t.Errorf("a bottle 401 mm wide: %q", message)
	}

	doc.Load(project.Project{Spec: bag.Default()})
	if shown := panel.number("product.width_mm").Text(); shown != "200" || !panel.slot("product.depth_mm").Visible() {
		t.Errorf("a new project shows the product of the one before, %q wide", shown)
	}
	doc.Load(project.Project{Spec: spec})
	if shown := panel.number("product.width_mm").Text(); shown != "400" || panel.slot("product.depth_mm").Visible() {
		t.Errorf("the project opened again shows %q", shown)
	}
}

// A usual size is taken with a click or by keys.
func TestUsualSizeIsTaken(t *testing.T) {
	panel, window := newDesk(t)
	doc := panel.bench.Doc
	table := pagetest.First[*steppage.Table](panel.page(productStep))
	names := namesIn(table)
	test.TapAt(table, names[1].Position())
	first := doc.State().Spec.Body
	window.Canvas().Focus(table)
	table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if second := doc.State().Spec.Body; second == first || pagetest.UndoSteps(doc) != 2 {
		t.Errorf("%v then %v, %d steps", sizeOf(&first), sizeOf(&second), pagetest.UndoSteps(doc))
	}
	chosen := 0
	for _, name := range namesIn(table) {
		if name.TextStyle.Bold {
			chosen++
		}
	}
	if chosen != 1 {
		t.Errorf("%d sizes are marked as in use", chosen)
	}
}

// namesIn returns the names of the rows of a table as they are drawn.
func namesIn(table *steppage.Table) (list []*canvas.Text) {
	for _, object := range test.WidgetRenderer(table).Objects() {
		if name, ok := object.(*canvas.Text); ok {
			list = append(list, name)
		}
	}
	return list
}

// Every usual size has a name in the language of the user.
func TestEveryUsualSizeHasAName(t *testing.T) {
	test.NewTempApp(t)
	sizes, err := product.ReadUsual(assets.UsualSizes)
	if err != nil {
		t.Fatal(err)
	}
	names := usualNames()
	for _, size := range sizes {
		if names[size.Name] == "" {
			t.Errorf("%q has no name", size.Name)
		}
	}
	if len(names) != len(sizes) {
		t.Errorf("%d names for %d sizes", len(names), len(sizes))
	}
}
