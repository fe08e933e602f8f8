package quotestep

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/entry"
	"gussetwright/app/settings"
	"gussetwright/app/steppage"
	"gussetwright/app/steppage/pagetest"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
)

// desk is the page of a bag in a window.
type desk struct {
	*page
	window fyne.Window
}

func newDesk(t testing.TB, spec bag.Spec) *desk {
	t.Helper()
	p := newPage(pagetest.NewBench(t, spec, settings.Light))
	return &desk{p, pagetest.Show(t, p.Page)}
}

// line returns the shown line with a label, nil where there is none.
func (d *desk) line(label string) *entry.Line { return pagetest.Explained[*entry.Line](d, label) }

// drawer returns the head of the drawer with a title.
func (d *desk) drawer(title string) pagetest.Pressable {
	return pagetest.Explained[pagetest.Pressable](d, title)
}

// offer returns what can be pressed, by what it says it does; nil where it is not shown.
func (d *desk) offer(act string) *steppage.Offer {
	return pagetest.Explained[*steppage.Offer](d, act)
}

// facts returns the table of what the run takes, by names.
func (d *desk) facts() map[string]string {
	list := map[string]string{}
	for _, row := range d.needs.rows[:d.needs.used] {
		list[row.name.Text()] = row.value.Text()
	}
	return list
}

// says tells whether a text that is shown on the page contains words.
func (d *desk) says(words string) bool { return pagetest.Says(d, words) }

// What the default bag takes, by hand: 1000 bags with 5 % spoilage, one on a sheet of
// 1000 × 700 mm at 170 g/m², and two handles of 120 + 2 · 180 + 2 · 35 = 550 mm each.
func TestWhatItTakes(t *testing.T) {
	d := newDesk(t, bag.Default())
	for name, want := range map[string]string{
		"Bags":          "1000 good ones, 1050 printed",
		"Press sheets":  "1050",
		"Paper":         "125 kg, a sheet 119 g", // 0.7 m² · 170 g/m² = 119 g, by 1050
		"Handles":       "1100 m, each 550 mm",
		"Cartons":       "10, of 100 bags each",
		"Cutting rule":  "2.3 m",
		"Creasing rule": "5.1 m",
	} {
		if got := d.facts()[name]; got != want {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
	doc := d.Doc
	spec := doc.State().Spec
	spec.Run.MakeReady = 120
	doc.Set(spec)
	if got := d.facts()["Press sheets"]; got != "1170, of these 120 for make-ready" {
		t.Errorf("with 120 for make-ready: %q", got)
	}
	spec.Sheet.Width, spec.Sheet.Height = 500, 350
	doc.Set(spec)
	if got := d.facts()["Press sheets"]; !strings.Contains(got, "does not fit") || !d.says("Nothing can be quoted") {
		t.Errorf("on a sheet that is too small: %q", got)
	}
}

// The caution stands beside every estimate, and the product is set against it.
func TestLoadHasItsCaution(t *testing.T) {
	d := newDesk(t, bag.Default())
	doc := d.Doc
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
		for _, m := range pagetest.All[*entry.Message](d) {
			found = found || strings.Contains(m.Text(), c.says) && m.Severity() == c.sign
		}
		if !found || !d.says("only a test of samples tells") {
			t.Errorf("product of %g g: says %q: %v", c.grams, c.says, found)
		}
	}
	spec := doc.State().Spec
	spec.Handle.Kind = bag.HandleNone
	doc.Set(spec)
	if !d.says("A bag without handle") || d.says("only a test of samples tells") {
		t.Error("a bag without handle has an estimate")
	}
}

// No figure of money is shown before the user has entered a price; what has none is
// named and left out.
func TestQuoteByHand(t *testing.T) {
	d := newDesk(t, bag.Default())
	amounts := func() (list []string) {
		for _, l := range pagetest.All[*ledger](d) {
			for _, line := range l.lines[:l.used] {
				for _, amount := range line.amounts {
					list = append(list, amount.Text)
				}
			}
		}
		return list
	}
	if got := amounts(); got != nil || !d.says("No price is known yet") || d.says("Not in this quote") {
		t.Errorf("without prices: %q", got)
	}
	doc := d.Doc
	spec := doc.State().Spec
	spec.Prices.Printing, spec.Prices.Rope, spec.Prices.Markup = 40, 0.05, 10
	doc.Set(spec)
	// 1050 sheets at 40 for 1000 are 42, 1100 m at 0.05 are 55; a tenth more is 106.70.
	if got, want := amounts(), []string{"42.00", "55.00", "9.70", "106.70", "0.1067"}; !slices.Equal(got, want) {
		t.Errorf("amounts %q, want %q", got, want)
	}
	if !d.says("Not in this quote: Paper, Plates and make-ready, Cutting die, Rule in the die,") {
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
	d := newDesk(t, bag.Default())
	doc := d.Doc
	head := d.drawer("Paper and press")
	if d.line("Paper") != nil || !pagetest.Says(head, "none known") {
		t.Error("prices are open at first, or known")
	}
	head.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	paper := d.line("Paper")
	hinted := slices.ContainsFunc(pagetest.All[*canvas.Text](paper), func(text *canvas.Text) bool { return text.Text == "not known" })
	if paper.Text() != "" || !hinted || !pagetest.Says(paper, "per kg") {
		t.Errorf("a price that is not known shows %q", paper.Text())
	}
	pagetest.Enter(paper, "1.60")
	if doc.State().Spec.Prices.Paper != 1.6 || paper.Text() != "1.60" || pagetest.UndoSteps(doc) != 1 || !pagetest.Says(head, "1 of 3 known") {
		t.Errorf("1.60 is %g, shown as %q after %d steps, %q", doc.State().Spec.Prices.Paper, paper.Text(), pagetest.UndoSteps(doc), pagetest.Texts(head))
	}
	for _, wrong := range []string{"dear", "-3", "2000000"} {
		pagetest.Enter(paper, wrong)
		if paper.Message() == "" || paper.Text() != wrong || doc.State().Spec.Prices.Paper != 1.6 {
			t.Errorf("%q: %q, paper at %g", wrong, paper.Message(), doc.State().Spec.Prices.Paper)
		}
		paper.Focusable().FocusLost()
		if paper.Message() == "" {
			t.Errorf("%q: leaving the entry takes the complaint away", wrong)
		}
	}
	paper.Focusable().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if paper.Text() != "1.60" || paper.Message() != "" {
		t.Errorf("Escape leaves %q and %q", paper.Text(), paper.Message())
	}
	pagetest.Enter(paper, "")
	if doc.State().Spec.Prices.Paper != 0 || pagetest.UndoSteps(doc) != 2 || paper.Text() != "" {
		t.Errorf("emptied it is %g", doc.State().Spec.Prices.Paper)
	}
	pagetest.Enter(d.line("Currency"), " EUR ")
	if doc.State().Spec.Currency != "EUR" || !pagetest.Says(paper, "EUR per kg") {
		t.Errorf("currency %q, said %q", doc.State().Spec.Currency, pagetest.Texts(paper))
	}
	pagetest.Enter(d.line("Currency"), strings.Repeat("x", 40))
	if doc.State().Spec.Currency != "EUR" || d.line("Currency").Message() == "" {
		t.Errorf("currency %q", doc.State().Spec.Currency)
	}
}

// Every price can be entered, in the drawer where it belongs.
func TestEveryPriceHasAnEntry(t *testing.T) {
	spec := bag.Default()
	spec.Paper.Lamination, spec.Handle.Eyelets = bag.LaminationMatt, true
	d := newDesk(t, spec)
	for _, drawer := range pagetest.All[*steppage.Drawer](d) {
		drawer.Open(true)
	}
	shown := map[string]bool{}
	for _, s := range pagetest.All[*steppage.Slot](d) {
		shown[s.Path] = true
	}
	for _, field := range bag.Fields() {
		if strings.HasPrefix(field.Path, "prices.") && d.line(field.Label) == nil {
			t.Errorf("%s has no entry", field.Path)
		}
		if strings.HasPrefix(field.Path, "packing.") && !shown[field.Path] {
			t.Errorf("%s has no entry", field.Path)
		}
	}
	if once := d.line("Other, once"); !pagetest.Says(once, "for the run") {
		t.Errorf("what is paid once is %q", pagetest.Texts(once))
	}
}

// A drawer with an entry that is wrong opens by itself.
func TestDrawerOpensForAComplaint(t *testing.T) {
	d := newDesk(t, bag.Default())
	spec := d.Doc.State().Spec
	spec.Packing.BagsPerCarton = 0
	d.Doc.Set(spec)
	for _, s := range pagetest.All[*steppage.Slot](d) {
		if s.Path == "packing.bags_per_carton" {
			if pagetest.First[*entry.Number](s).Message() == "" {
				t.Error("nothing is said of an entry that is wrong")
			}
			return
		}
	}
	t.Error("an entry that is wrong is not shown")
}

func TestReadQuantities(t *testing.T) {
	test.NewTempApp(t)
	for text, want := range map[string][]float64{
		"": nil, " , ;": nil, "500": {500}, "5000, 500,2000": {500, 2000, 5000}, "2 * 500; 1000;": {1000},
		"5,000": {5000}, "5,500; 10 000": {5500, 10_000},
	} {
		if got, fault := readQuantities(text); !slices.Equal(got, want) || fault != "" {
			t.Errorf("%q: %v, %q", text, got, fault)
		}
	}
	for text, says := range map[string]string{
		"500, many": `Character 6: "m" is not a number`, "0, 500": "“0”: Less than the least, 1.", "2.5": "“2.5”: Not a whole number.",
		"500 mm": `"mm" does not belong to this number`, "5,500": `"5,500" may be the list 5; 500 or the number 5500; write 5; 500 or 5500.`,
	} {
		if got, fault := readQuantities(text); !strings.Contains(fault, says) {
			t.Errorf("%q: %v, %q", text, got, fault)
		}
	}
}

func TestFurtherQuantities(t *testing.T) {
	d := newDesk(t, bag.Default())
	doc, line := d.Doc, d.line("Further quantities to quote for")
	pagetest.Enter(line, "5000, 500, 500")
	if got := doc.State().Spec.Breaks; !slices.Equal(got, []float64{500, 5000}) || line.Text() != "500, 5000" || pagetest.UndoSteps(doc) != 1 {
		t.Errorf("%v, shown as %q", got, line.Text())
	}
	pagetest.Enter(line, "500, a few")
	if line.Message() == "" || len(doc.State().Spec.Breaks) != 2 {
		t.Errorf("a few: %q", line.Message())
	}
	pagetest.Enter(line, "1,2,3,4,5,6,7,8,9,10,11,12,13")
	if !strings.Contains(line.Message(), "12") || len(doc.State().Spec.Breaks) != 2 {
		t.Errorf("13 quantities: %q", line.Message())
	}
	doc.Undo()
	if line.Text() != "" || line.Message() != "" {
		t.Errorf("undo leaves %q and %q", line.Text(), line.Message())
	}
}

// While a drag lasts nothing is reckoned, and what stands there is dim.
func TestDragLeavesTheQuote(t *testing.T) {
	d := newDesk(t, pagetest.PricedBag())
	doc := d.Doc
	before := d.facts()["Paper"]
	spec := doc.State().Spec
	for range 3 {
		spec.Paper.Grammage += 10
		doc.Drag(spec)
	}
	dim := func() (dim []bool) {
		for _, v := range pagetest.All[*veiled](d) {
			dim = append(dim, !v.veil.Hidden)
		}
		return dim
	}
	if d.facts()["Paper"] != before || slices.Contains(dim(), false) {
		t.Errorf("in a drag: %q, dim %v", d.facts()["Paper"], dim())
	}
	doc.Drop()
	if d.facts()["Paper"] == before || slices.Contains(dim(), true) {
		t.Errorf("after a drag: %q, dim %v", d.facts()["Paper"], dim())
	}
}

// A result that was overtaken leaves the table dim until the newer one is there.
func TestLateQuote(t *testing.T) {
	p := newPage(pagetest.NewBench(t, bag.Default(), settings.Light))
	var orders []quoteOrder
	p.request = func(o quoteOrder) { orders = append(orders, o) }
	doc := p.Doc
	p.Follow(doc.State())
	spec := doc.State().Spec
	spec.Run.Quantity = 7000
	doc.Set(spec)
	p.Follow(doc.State())
	p.Follow(doc.State())
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
