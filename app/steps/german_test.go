package steps

import (
	"regexp"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/settings"
	"gussetwright/app/steppage/pagetest"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// No page shows a decimal point in German, and every page shows a comma where lengths are
// in inches.
func TestNumbersOfEveryPageInGerman(t *testing.T) {
	speak := func(language string) {
		if err := words.Load(language); err != nil {
			t.Fatal(err)
		}
	}
	speak("de")
	t.Cleanup(func() { speak("en") })
	point := regexp.MustCompile(`>[^<]*\d\.\d[^<]*<`)
	comma := regexp.MustCompile(`>[^<]*\d,\d[^<]*<`)
	for _, unit := range geometry.Units() {
		for step := range stepCount - 1 { // what to write is no page of this package
			panel, window := newWholeDesk(t, step, fractional(), settings.Light, 3000)
			panel.bench.Settings.SetUnit(unit)
			openAll(panel)
			shown := pagetest.Markup(window)
			if text := point.FindString(shown); text != "" {
				t.Errorf("step %d in %s shows %q", step+1, unit, text)
			}
			if unit == geometry.Inch && !comma.MatchString(shown) {
				t.Errorf("step %d in %s shows no number with decimals", step+1, unit)
			}
		}
	}
}

// fractional is a bag with decimals in many of its entries, and with findings.
func fractional() bag.Spec {
	spec := pagetest.PricedBag()
	spec.Body.Width, spec.Body.Gusset, spec.Body.Height, spec.Body.SeamFlap = 182.5, 82.5, 240.25, 9.5
	spec.Product.Width, spec.Product.Depth, spec.Product.Height, spec.Product.Weight = 82.5, 61.25, 151.5, 1250.5
	spec.Paper.Grammage, spec.Sheet.Gripper, spec.Run.Spoilage = 62.5, 2.5, 7.5
	spec.Family = []bag.Size{spec.Scaled("Small", 110.5)}
	spec.Stock = []bag.StockSheet{{Name: "Reel-cut kraft", Width: 760.5, Height: 520.5, Price: 0.185}}
	spec.Print.Background = bag.Background{Cyan: 12.5}
	return spec
}

// openAll opens all drawers of the page that is shown.
func openAll(panel *Panel) {
	for _, object := range pagetest.All[pagetest.Pressable](panel.page(panel.Selected())) {
		test.Tap(object)
	}
	panel.Resize(panel.Size().Add(fyne.NewSize(0, 1)))
}
