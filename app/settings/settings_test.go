package settings_test

import (
	"math"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/settings"
)

func TestLayoutIsRemembered(t *testing.T) {
	store := test.NewTempApp(t).Preferences()
	set := settings.New(store)
	set.SetSplit(settings.PanesSplit, 0.4)
	set.SetWindowSize(fyne.NewSize(1024, 700))
	set.SetHiddenLayers([]string{"Gluing", "Bleed"})
	set.SetLegendShown(false)

	again := settings.New(store)
	if got := again.Split(settings.PanesSplit, 0.58); got != 0.4 {
		t.Errorf("the split stands at %g, want 0.4", got)
	}
	if got := again.Split(settings.FindingsSplit, 0.83); got != 0.83 {
		t.Errorf("a split that was not moved stands at %g, want the usual 0.83", got)
	}
	if got := again.WindowSize(); got != fyne.NewSize(1024, 700) {
		t.Errorf("the window is %v", got)
	}
	if got := again.HiddenLayers(); !slices.Equal(got, []string{"Gluing", "Bleed"}) {
		t.Errorf("hidden are %q", got)
	}
	if again.LegendShown() {
		t.Error("the legend is shown although it was hidden")
	}
	again.SetHiddenLayers(nil)
	if got := again.HiddenLayers(); len(got) != 0 {
		t.Errorf("hidden are %q, want none", got)
	}
}

// Whatever stands in the file of the preferences, the window comes up whole.
func TestOddValues(t *testing.T) {
	for _, value := range []float64{-1, 1.5, 1e300, math.NaN(), math.Inf(1), math.Inf(-1)} {
		store := test.NewTempApp(t).Preferences()
		for _, key := range []string{"split-steps", "window-width", "window-height", "text-scale"} {
			store.SetFloat(key, value)
		}
		set := settings.New(store)
		if got := set.Split(settings.StepsSplit, 0.25); got != 0.25 {
			t.Errorf("%g: the split stands at %g, want the usual", value, got)
		}
		if got := set.WindowSize(); got != fyne.NewSize(1440, 900) {
			t.Errorf("%g: the window is %v, want the usual", value, got)
		}
		if got := set.TextScale(); !(0.8 <= got && got <= 2) {
			t.Errorf("%g: the text scale is %g", value, got)
		}
	}
}

func TestValuesOfTheWrongKind(t *testing.T) {
	store := test.NewTempApp(t).Preferences()
	for _, key := range []string{"split-steps", "window-width", "legend"} {
		store.SetString(key, "wide")
	}
	store.SetFloat("layers-hidden", 3)
	store.SetFloat("recent", 1)
	set := settings.New(store)
	if set.Split(settings.StepsSplit, 0.25) != 0.25 || set.WindowSize().Width != 1440 || !set.LegendShown() || len(set.HiddenLayers()) != 0 {
		t.Error("a value of the wrong kind is not taken as missing")
	}
	set.SetHiddenLayers([]string{"Bleed"})
	set.AddRecent("a.gusset")
	if !slices.Equal(set.HiddenLayers(), []string{"Bleed"}) || !slices.Equal(set.Recent(), []string{"a.gusset"}) {
		t.Errorf("hidden %q, recent %q after a value of the wrong kind", set.HiddenLayers(), set.Recent())
	}
}

func TestRankingIsRemembered(t *testing.T) {
	store := test.NewTempApp(t).Preferences()
	set := settings.New(store)
	if got := set.Ranking(); got != settings.LeastWaste {
		t.Errorf("at first sheets are ranked by %q", got)
	}
	for _, by := range []settings.Ranking{settings.LeastCost, settings.LeastPaper, settings.LeastWaste} {
		set.SetRanking(by)
		if got := settings.New(store).Ranking(); got != by {
			t.Errorf("sheets are ranked by %q, want %q", got, by)
		}
	}
	store.SetString("sheet-ranking", "beauty")
	if got := set.Ranking(); got != settings.LeastWaste {
		t.Errorf("an unknown ranking is read as %q", got)
	}
}
