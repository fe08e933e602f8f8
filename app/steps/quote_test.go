package steps

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/entry"
	"gussetwright/app/settings"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/geometry/geomtest"
)

// newQuoteDesk returns the quote step of a bag in a window of a height.
func newQuoteDesk(t testing.TB, spec bag.Spec, look settings.Appearance, height float32) (*Panel, fyne.Window) {
	t.Helper()
	panel, window := newSheetDesk(t, spec, look)
	panel.Select(quoteStep)
	window.Resize(fyne.NewSize(400, height))
	return panel, window
}

// pricedBag is the default bag with invented prices.
func pricedBag() bag.Spec {
	spec := bag.Default()
	spec.Currency, spec.Breaks, spec.Product.Weight = "EUR", []float64{500, 2000, 5000}, 1200
	spec.Prices = bag.Prices{Paper: 1.6, MakeReady: 180, Printing: 32.5, Die: 140, Cutting: 25, Folding: 210, Rope: 0.045, Carton: 1.9, Markup: 20}
	return spec
}

// familyBag is a bag with two further sizes.
func familyBag() bag.Spec {
	spec := bag.Default()
	spec.Body.Width, spec.Body.Gusset, spec.Body.Height, spec.Run.Quantity = 160, 70, 220, 1000
	spec.Handle.Spacing, spec.Name, spec.Run.MakeReady = 80, "Tea house", 50
	spec.Family = []bag.Size{
		{Name: "Small", Width: 110, Gusset: 50, Height: 150, Quantity: 2500},
		{Name: "Large", Width: 240, Gusset: 100, Height: 300, Quantity: 400},
	}
	return spec
}

// all returns every shown object of a kind below another, in the order of the page.
func all[T fyne.CanvasObject](object fyne.CanvasObject) (list []T) {
	if !object.Visible() {
		return nil
	}
	if one, ok := object.(T); ok {
		list = append(list, one)
	}
	if holder, ok := object.(fyne.Widget); ok {
		for _, inner := range test.WidgetRenderer(holder).Objects() {
			list = append(list, all[T](inner)...)
		}
	}
	return list
}

// line returns the shown line entry with a label, and drawer the drawer with a title.
func (p *Panel) line(label string) *lineEntry {
	for _, e := range all[*lineEntry](p.page(quoteStep)) {
		if e.name == label {
			return e
		}
	}
	return nil
}

func (p *Panel) drawer(title string) *drawerHead {
	for _, h := range all[*drawerHead](p.page(quoteStep)) {
		if h.title.Text() == title {
			return h
		}
	}
	return nil
}

func (p *Panel) action(name string) *action {
	for _, a := range all[*action](p.page(quoteStep)) {
		if a.name == name {
			return a
		}
	}
	return nil
}

func typeIn(e *lineEntry, text string) {
	e.line.SetText("")
	test.Type(e.line, text)
	e.line.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
}

// factsOf returns the table of what the run takes, by names.
func (p *Panel) factsOf() map[string]string {
	list := map[string]string{}
	for _, f := range all[*facts](p.page(quoteStep)) {
		for _, row := range f.rows[:f.used] {
			list[row.name.Text()] = row.value.Text()
		}
	}
	return list
}

// saying tells whether a text that is shown on the page contains words.
func (p *Panel) saying(words string) bool {
	for _, text := range all[*entry.Text](p.page(quoteStep)) {
		if strings.Contains(text.Text(), words) {
			return true
		}
	}
	return false
}

func TestQuoteGolden(t *testing.T) {
	looks := map[string]settings.Appearance{"light": settings.Light, "dark": settings.Dark}
	for name, c := range map[string]struct {
		spec   bag.Spec
		height float32
		open   []string
	}{
		"unpriced": {bag.Default(), 1750, []string{"Paper and press", "Finishing"}},
		"priced":   {pricedBag(), 1750, nil},
		"family":   {familyBag(), 2500, nil},
	} {
		for look, appearance := range looks {
			panel, window := newQuoteDesk(t, c.spec, appearance, c.height)
			for _, title := range c.open {
				test.Tap(panel.drawer(title))
			}
			geomtest.GoldenPicture(t, "steps/quote-"+name+"-"+look+".png", window.Canvas().Capture(), 0.002)
		}
	}
}

// What the default bag takes, by hand: 1000 bags with 5 % spoilage, one on a sheet of
// 1000 × 700 mm at 170 g/m², and two handles of 120 + 2 · 180 + 2 · 35 = 550 mm each.
func TestWhatItTakes(t *testing.T) {
	panel, _ := newQuoteDesk(t, bag.Default(), settings.Light, 900)
	for name, want := range map[string]string{
		"Bags":          "1000 good ones, 1050 printed",
		"Press sheets":  "1050",
		"Paper":         "125 kg, a sheet 119 g", // 0.7 m² · 170 g/m² = 119 g, by 1050
		"Handles":       "1100 m, each 550 mm",
		"Cartons":       "10, of 100 bags each",
		"Cutting rule":  "2.3 m",
		"Creasing rule": "5.1 m",
	} {
		if got := panel.factsOf()[name]; got != want {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
	doc := panel.bench.doc
	spec := doc.State().Spec
	spec.Run.MakeReady = 120
	doc.Set(spec)
	if got := panel.factsOf()["Press sheets"]; got != "1170, of these 120 for make-ready" {
		t.Errorf("with 120 for make-ready: %q", got)
	}
	spec.Sheet.Width, spec.Sheet.Height = 500, 350
	doc.Set(spec)
	if got := panel.factsOf()["Press sheets"]; !strings.Contains(got, "does not fit") || !panel.saying("Nothing can be quoted") {
		t.Errorf("on a sheet that is too small: %q", got)
	}
}

// The caution stands beside every estimate, and the product is set against it.
func TestLoadHasItsCaution(t *testing.T) {
	panel, _ := newQuoteDesk(t, bag.Default(), settings.Light, 900)
	doc := panel.bench.doc
	for _, c := range []struct {
		grams float64
		says  string
		sign  check.Severity
	}{
		{0, "The weight of the product is not known", check.Note},
		{1200, "The product weighs 1.2 kg, which is within the estimate.", check.Note},
		{9000, "the bag carries about 7.7 kg", check.Warning},
	} {
		spec := doc.State().Spec
		spec.Product.Weight = c.grams
		doc.Set(spec)
		found := false
		for _, m := range all[*entry.Message](panel.page(quoteStep)) {
			found = found || strings.Contains(m.Text(), c.says) && m.Severity() == c.sign
		}
		if !found || !panel.saying("only a test of samples tells") {
			t.Errorf("product of %g g: says %q: %v", c.grams, c.says, found)
		}
	}
	spec := doc.State().Spec
	spec.Handle.Kind = bag.HandleNone
	doc.Set(spec)
	if !panel.saying("A bag without handle") || panel.saying("only a test of samples tells") {
		t.Error("a bag without handle has an estimate")
	}
}

// No figure of money is shown before the user has entered a price; what has none is
// named and left out.
func TestQuoteByHand(t *testing.T) {
	panel, _ := newQuoteDesk(t, bag.Default(), settings.Light, 900)
	amounts := func() (list []string) {
		for _, l := range all[*ledger](panel.page(quoteStep)) {
			for _, line := range l.lines[:l.used] {
				for _, amount := range line.amounts {
					list = append(list, amount.Text)
				}
			}
		}
		return list
	}
	if got := amounts(); got != nil || !panel.saying("No price is known yet") || panel.saying("Not in this quote") {
		t.Errorf("without prices: %q", got)
	}
	doc := panel.bench.doc
	spec := doc.State().Spec
	spec.Prices.Printing, spec.Prices.Rope, spec.Prices.Markup = 40, 0.05, 10
	doc.Set(spec)
	// 1050 sheets at 40 for 1000 are 42, 1100 m at 0.05 are 55; a tenth more is 106.70.
	if got, want := amounts(), []string{"42.00", "55.00", "9.70", "106.70", "0.1067"}; !slices.Equal(got, want) {
		t.Errorf("amounts %q, want %q", got, want)
	}
	if !panel.saying("Not in this quote: Paper, Plates and make-ready, Cutting die, Rule in the die,") {
		t.Error("what has no price is not named")
	}
	spec.Breaks = []float64{2000}
	doc.Set(spec)
	// 2100 sheets are 84 and 2200 m are 110; a tenth more is 213.40.
	if got := amounts(); !slices.Equal(got[len(got)-4:], []string{"106.70", "0.1067", "213.40", "0.1067"}) {
		t.Errorf("with 2000 bags: %q", got)
	}
}

// A price is empty until it is known, and can be emptied again; what cannot be read stays
// beside its complaint, and Escape puts the old one back.
func TestPrices(t *testing.T) {
	panel, _ := newQuoteDesk(t, bag.Default(), settings.Light, 900)
	doc := panel.bench.doc
	head := panel.drawer("Paper and press")
	if panel.line("Paper") != nil || head.note.Text() != "none known" {
		t.Error("prices are open at first, or known")
	}
	head.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	paper := panel.line("Paper")
	if paper.line.Text != "" || paper.line.PlaceHolder != "not known" || paper.unit.Text() != "per kg" {
		t.Errorf("a price that is not known shows %q", paper.line.Text)
	}
	typeIn(paper, "1.60")
	if doc.State().Spec.Prices.Paper != 1.6 || paper.line.Text != "1.6" || undoSteps(doc) != 1 || head.note.Text() != "1 of 3 known" {
		t.Errorf("1.60 is %g, shown as %q after %d steps, %s", doc.State().Spec.Prices.Paper, paper.line.Text, undoSteps(doc), head.note.Text())
	}
	for _, wrong := range []string{"dear", "-3", "2000000"} {
		typeIn(paper, wrong)
		if paper.message.Text() == "" || paper.line.Text != wrong || doc.State().Spec.Prices.Paper != 1.6 {
			t.Errorf("%q: %q, paper at %g", wrong, paper.message.Text(), doc.State().Spec.Prices.Paper)
		}
		paper.line.FocusLost()
		if paper.message.Text() == "" {
			t.Errorf("%q: leaving the entry takes the complaint away", wrong)
		}
	}
	paper.line.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if paper.line.Text != "1.6" || paper.message.Text() != "" {
		t.Errorf("Escape leaves %q and %q", paper.line.Text, paper.message.Text())
	}
	typeIn(paper, "")
	if doc.State().Spec.Prices.Paper != 0 || undoSteps(doc) != 2 || paper.line.Text != "" {
		t.Errorf("emptied it is %g", doc.State().Spec.Prices.Paper)
	}
	typeIn(panel.line("Currency"), " EUR ")
	if doc.State().Spec.Currency != "EUR" || paper.unit.Text() != "EUR per kg" {
		t.Errorf("currency %q, unit %q", doc.State().Spec.Currency, paper.unit.Text())
	}
	typeIn(panel.line("Currency"), strings.Repeat("x", 40))
	if doc.State().Spec.Currency != "EUR" || panel.line("Currency").message.Text() == "" {
		t.Errorf("currency %q", doc.State().Spec.Currency)
	}
}

// Every price can be entered, in the drawer where it belongs.
func TestEveryPriceHasAnEntry(t *testing.T) {
	spec := bag.Default()
	spec.Paper.Lamination, spec.Handle.Eyelets = bag.LaminationMatt, true
	panel, _ := newQuoteDesk(t, spec, settings.Light, 900)
	for _, h := range all[*drawerHead](panel.page(quoteStep)) {
		test.Tap(h)
	}
	for _, field := range bag.Fields() {
		if strings.HasPrefix(field.Path, "prices.") && panel.line(field.Label) == nil {
			t.Errorf("%s has no entry", field.Path)
		}
		if strings.HasPrefix(field.Path, "packing.") && !panel.slot(field.Path).Visible() {
			t.Errorf("%s has no entry", field.Path)
		}
	}
	if unit := panel.line("Other, once").unit.Text(); unit != "for the run" {
		t.Errorf("what is paid once is %q", unit)
	}
}

// A drawer with an entry that is wrong opens by itself.
func TestDrawerOpensForAComplaint(t *testing.T) {
	panel, _ := newQuoteDesk(t, bag.Default(), settings.Light, 900)
	spec := panel.bench.doc.State().Spec
	spec.Packing.BagsPerCarton = 0
	panel.bench.doc.Set(spec)
	if !panel.slot("packing.bags_per_carton").Visible() || panel.number("packing.bags_per_carton").Message() == "" || panel.list.marks[quoteStep] != check.Error {
		t.Error("an entry that is wrong is not shown")
	}
}

func TestReadQuantities(t *testing.T) {
	test.NewTempApp(t)
	for text, want := range map[string][]float64{
		"": nil, " , ;": nil, "500": {500}, "5000, 500,2000": {500, 2000, 5000}, "2 * 500; 1000;": {1000},
	} {
		if got, fault := readQuantities(text); !slices.Equal(got, want) || fault != "" {
			t.Errorf("%q: %v, %q", text, got, fault)
		}
	}
	for text, says := range map[string]string{"500, many": "“many”", "0, 500": "“0”", "2.5": "“2.5”", "500 mm": "“500 mm”"} {
		if got, fault := readQuantities(text); !strings.Contains(fault, says) {
			t.Errorf("%q: %v, %q", text, got, fault)
		}
	}
}

func TestFurtherQuantities(t *testing.T) {
	panel, _ := newQuoteDesk(t, bag.Default(), settings.Light, 900)
	doc, line := panel.bench.doc, panel.line("Further quantities to quote for")
	typeIn(line, "5000, 500, 500")
	if got := doc.State().Spec.Breaks; !slices.Equal(got, []float64{500, 5000}) || line.line.Text != "500, 5000" || undoSteps(doc) != 1 {
		t.Errorf("%v, shown as %q", got, line.line.Text)
	}
	typeIn(line, "500, a few")
	if line.message.Text() == "" || len(doc.State().Spec.Breaks) != 2 {
		t.Errorf("a few: %q", line.message.Text())
	}
	typeIn(line, "1,2,3,4,5,6,7,8,9,10,11,12,13")
	if !strings.Contains(line.message.Text(), "12") || len(doc.State().Spec.Breaks) != 2 {
		t.Errorf("13 quantities: %q", line.message.Text())
	}
	doc.Undo()
	if line.line.Text != "" || line.message.Text() != "" {
		t.Errorf("undo leaves %q and %q", line.line.Text, line.message.Text())
	}
}

// While a drag lasts nothing is reckoned, and what stands there is dim.
func TestDragLeavesTheQuote(t *testing.T) {
	panel, _ := newQuoteDesk(t, pricedBag(), settings.Light, 900)
	doc := panel.bench.doc
	before := panel.factsOf()["Paper"]
	spec := doc.State().Spec
	for range 3 {
		spec.Paper.Grammage += 10
		doc.Drag(spec)
	}
	dim := func() (dim []bool) {
		for _, v := range all[*veiled](panel.page(quoteStep)) {
			dim = append(dim, !v.veil.Hidden)
		}
		return dim
	}
	if panel.factsOf()["Paper"] != before || slices.Contains(dim(), false) {
		t.Errorf("in a drag: %q, dim %v", panel.factsOf()["Paper"], dim())
	}
	doc.Drop()
	if panel.factsOf()["Paper"] == before || slices.Contains(dim(), true) {
		t.Errorf("after a drag: %q, dim %v", panel.factsOf()["Paper"], dim())
	}
}

// A result that was overtaken leaves the table dim until the newer one is there.
func TestLateQuote(t *testing.T) {
	panel, _ := newSheetDesk(t, bag.Default(), settings.Light)
	p := buildQuotePage(panel.bench)
	var orders []quoteOrder
	p.request = func(o quoteOrder) { orders = append(orders, o) }
	doc := panel.bench.doc
	p.show(doc.State())
	spec := doc.State().Spec
	spec.Run.Quantity = 7000
	doc.Set(spec)
	p.show(doc.State())
	p.show(doc.State())
	if len(orders) != 2 {
		t.Fatalf("%d orders, want one for each state", len(orders))
	}
	p.deliver(reckon(orders[0]))
	if p.takes.veil.Hidden {
		t.Error("a late result looks as if it were of now")
	}
	p.deliver(reckon(orders[1]))
	if !p.takes.veil.Hidden || len(orders) != 2 {
		t.Error("the newest result is dim, or was ordered once more")
	}
}

// The tab key goes down the page, each stop comes into view and is explained.
func TestTabOrderOfTheQuote(t *testing.T) {
	panel, window := newQuoteDesk(t, familyBag(), settings.Light, 800)
	for _, h := range all[*drawerHead](panel.page(quoteStep)) {
		test.Tap(h)
	}
	test.Tap(all[*sizeTable](panel.page(quoteStep))[0]) // the bag itself; opens nothing
	canvas := window.Canvas()
	markup(window) // what was never drawn takes no focus
	canvas.Focus(panel.list)
	last, stops := float32(-1), 0
	for {
		canvas.FocusNext()
		focused, ok := canvas.Focused().(fyne.CanvasObject)
		if !ok || focused == fyne.CanvasObject(panel.list) {
			break
		}
		stops++
		driver := fyne.CurrentApp().Driver()
		top := driver.AbsolutePositionForObject(focused).Y
		inPage := top - driver.AbsolutePositionForObject(panel.scroll.Content).Y
		if inPage <= last {
			t.Errorf("stop %d, %T, stands at %g, above the one before at %g", stops, focused, inPage, last)
		}
		last = inPage
		if top < 0 || top > panel.scroll.Size().Height {
			t.Errorf("stop %d, %T, is out of sight at %g of %g", stops, focused, top, panel.scroll.Size().Height)
		}
		if panel.explain.shown == nil || panel.explain.title.Text() == "" {
			t.Errorf("stop %d, %T, is not explained", stops, focused)
		}
	}
	if least := 4 + 1 + 1 + 6 + 12 + 12 + 1 + 2 + 1; stops < least {
		t.Errorf("only %d stops, want %d at least", stops, least)
	}
}

// With everything open the step can be worked in the width that the window gives, with
// letters of the usual size and half as large again.
func TestQuoteIsNotCutOff(t *testing.T) {
	spec := familyBag()
	spec.Currency, spec.Prices, spec.Breaks = "EUR", pricedBag().Prices, []float64{500, 1_000_000}
	spec.Product.Weight, spec.Handle.Eyelets, spec.Paper.Lamination = 40_000, true, bag.LaminationMatt
	for _, c := range []struct {
		scale float64
		unit  geometry.Unit
	}{{0.8, geometry.Millimetre}, {1, geometry.Inch}, {1.5, geometry.Inch}, {1.5, geometry.Millimetre}} {
		panel, window := newQuoteDesk(t, spec, settings.Light, deskHeight)
		panel.bench.set.SetTextScale(c.scale)
		panel.bench.set.SetUnit(c.unit)
		window.Resize(fyne.NewSize(deskWidth, deskHeight))
		for _, h := range all[*drawerHead](panel.page(quoteStep)) {
			test.Tap(h)
		}
		panel.openSize(1)
		if least := panel.MinSize().Width; least > deskWidth {
			t.Errorf("needs a width of %g at scale %g in %s", least, c.scale, c.unit)
		}
		inside(t, panel.page(quoteStep).Column, 0, panel.scroll.Size().Width, fmt.Sprintf("scale %g in %s", c.scale, c.unit))
	}
}
