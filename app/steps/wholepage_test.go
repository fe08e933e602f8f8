package steps

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
	"gussetwright/app/settings"
	"gussetwright/app/steppage"
	"gussetwright/app/steppage/pagetest"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/geometry/geomtest"
)

// newWholeDesk returns a step of a bag in a window of the usual width that is high enough
// for all of its page.
func newWholeDesk(t testing.TB, step int, spec bag.Spec, look settings.Appearance, height float32) (*Panel, fyne.Window) {
	t.Helper()
	b := pagetest.NewBench(t, spec, look)
	panel := newPanel(b.Doc, b.Settings, widget.NewLabel(""))
	panel.Select(step)
	window := test.NewTempWindow(t, panel)
	window.SetPadded(false)
	window.Resize(fyne.NewSize(400, height))
	t.Cleanup(panel.Close)
	return panel, window
}

func newSheetDesk(t testing.TB, spec bag.Spec, look settings.Appearance) (*Panel, fyne.Window) {
	t.Helper()
	return newWholeDesk(t, sheetStep, spec, look, 1250)
}

// ranking returns the table of the sheets that could be bought: what stands last of the
// second part of the page.
func (p *Panel) ranking() fyne.Focusable {
	part := p.page(sheetStep).Objects()[1].(*entry.Column).Objects()
	return part[len(part)-1].(fyne.Focusable)
}

// lastSheet opens the last sheet of the ranking.
func (p *Panel) lastSheet() {
	fyne.CurrentApp().Driver().CanvasForObject(p).Focus(p.ranking())
	p.ranking().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
}

// sheetCases are bags for pictures of the step Sheet, and what is done before one is taken.
func sheetCases() []sheetCase {
	fits := bag.Default()
	fits.Body.Width, fits.Body.Gusset, fits.Body.Height = 110, 60, 150
	fits.Sheet.GrainRule = bag.GrainPreferred
	none := bag.Default()
	none.Body.Seams = bag.SeamsOne
	none.Sheet.Width, none.Sheet.Height = 700, 450
	own := bag.Default()
	own.Sheet.GripperEdge = bag.GripperShort
	own.Stock = []bag.StockSheet{{Name: "Reel-cut kraft", Width: 760, Height: 520, Grain: bag.GrainAlongHeight, Price: 0.185}}
	return []sheetCase{
		{"fits", fits, func(*Panel) {}},
		{"nothing-fits", none, (*Panel).lastSheet},
		{"own", own, func(p *Panel) { test.Tap(pagetest.First[*steppage.Table](p.page(sheetStep))) }},
	}
}

type sheetCase struct {
	name string
	spec bag.Spec
	then func(*Panel)
}

func TestGoldenSheet(t *testing.T) {
	for _, c := range sheetCases() {
		for _, look := range []settings.Appearance{settings.Light, settings.Dark} {
			panel, window := newSheetDesk(t, c.spec, look)
			c.then(panel)
			geomtest.GoldenPicture(t, "steps/sheet-"+c.name+"-"+string(look)+".png", window.Canvas().Capture(), 0.004)
		}
	}
}

// Another step takes the focus from what an open sheet offers.
func TestFocusLeavesTheRanking(t *testing.T) {
	panel, window := newSheetDesk(t, bag.Default(), settings.Light)
	panel.lastSheet()
	test.FocusNext(window.Canvas())
	if focused, ok := window.Canvas().Focused().(*steppage.Offer); !ok {
		t.Fatalf("the focus is at %T", focused)
	}
	panel.Select(bagStep)
	if focused := window.Canvas().Focused(); focused != nil {
		t.Errorf("on another step the focus is at %T", focused)
	}
}

func TestGoldenQuote(t *testing.T) {
	looks := map[string]settings.Appearance{"light": settings.Light, "dark": settings.Dark}
	for name, c := range map[string]struct {
		spec   bag.Spec
		height float32
		open   []string
	}{
		"unpriced": {bag.Default(), 1750, []string{"Paper and press", "Finishing"}},
		"priced":   {pagetest.PricedBag(), 1750, nil},
		"family":   {pagetest.FamilyBag(), 2500, nil},
	} {
		for look, appearance := range looks {
			panel, window := newWholeDesk(t, quoteStep, c.spec, appearance, c.height)
			for _, title := range c.open {
				test.Tap(pagetest.Explained[pagetest.Pressable](panel.page(quoteStep), title))
			}
			geomtest.GoldenPicture(t, "steps/quote-"+name+"-"+look+".png", window.Canvas().Capture(), 0.002)
		}
	}
}

// openAll opens the drawers of the page of the step Quote, and the last size of a family.
func (p *Panel) openAll() {
	for _, drawer := range pagetest.All[*steppage.Drawer](p.page(quoteStep)) {
		drawer.Open(true)
	}
	pagetest.Choose(pagetest.All[*steppage.Table](p.page(quoteStep))[0], len(p.bench.Doc.State().Spec.Family))
}

// With everything open each stop of the tab key comes into view and is explained.
func TestTabOrderOfTheQuote(t *testing.T) {
	panel, window := newWholeDesk(t, quoteStep, pagetest.FamilyBag(), settings.Light, 800)
	panel.openAll()
	if stops, least := tabStops(t, panel, window), 4+1+1+6+12+12+1+2+1; stops < least {
		t.Errorf("only %d stops, want %d at least", stops, least)
	}
}

// With everything open the step can be worked in the width that the window gives, with
// letters of the usual size and half as large again.
func TestQuoteIsNotCutOff(t *testing.T) {
	spec := pagetest.FamilyBag()
	spec.Currency, spec.Prices, spec.Breaks = "EUR", pagetest.PricedBag().Prices, []float64{500, 1_000_000}
	spec.Product.Weight, spec.Handle.Eyelets, spec.Paper.Lamination = 40_000, true, bag.LaminationMatt
	for _, c := range []struct {
		scale float64
		unit  geometry.Unit
	}{{0.8, geometry.Millimetre}, {1, geometry.Inch}, {1.5, geometry.Inch}, {1.5, geometry.Millimetre}} {
		panel, window := newWholeDesk(t, quoteStep, spec, settings.Light, deskHeight)
		panel.bench.Settings.SetTextScale(c.scale)
		panel.bench.Settings.SetUnit(c.unit)
		window.Resize(fyne.NewSize(deskWidth, deskHeight))
		panel.openAll()
		if least := panel.MinSize().Width; least > deskWidth {
			t.Errorf("needs a width of %g at scale %g in %s", least, c.scale, c.unit)
		}
		inside(t, panel.page(quoteStep).Column, 0, panel.scroll.Size().Width, fmt.Sprintf("scale %g in %s", c.scale, c.unit))
	}
}

// An entry that is wrong in a closed drawer marks its step.
func TestComplaintInADrawerMarksTheStep(t *testing.T) {
	panel, _ := newWholeDesk(t, quoteStep, bag.Default(), settings.Light, deskHeight)
	spec := panel.bench.Doc.State().Spec
	spec.Packing.BagsPerCarton = 0
	panel.bench.Doc.Set(spec)
	if panel.list.marks[quoteStep] != check.Error {
		t.Errorf("the step is marked %q", panel.list.marks[quoteStep])
	}
}
