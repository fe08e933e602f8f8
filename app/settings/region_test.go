package settings_test

import (
	"testing"

	"fyne.io/fyne/v2/test"

	"gussetwright/app/settings"
	"gussetwright/geometry"
)

// Units by region are those of the Unicode CLDR, values from memory; that LC_ALL goes
// before LC_MEASUREMENT, and that before LANG, is POSIX.1-2017, 8.2.
func TestUnitOfARegion(t *testing.T) {
	for _, c := range []struct {
		locale, all, measurement string
		want                     geometry.Unit
	}{
		{locale: "en-US", want: geometry.Inch},
		{locale: "es-US", want: geometry.Inch},
		{locale: "en", want: geometry.Millimetre},
		{locale: "en-GB", want: geometry.Millimetre},
		{locale: "de-DE", want: geometry.Millimetre},
		{locale: "C", want: geometry.Millimetre},
		{locale: "", want: geometry.Millimetre},
		{locale: "???", want: geometry.Millimetre},
		{locale: "en-US", measurement: "de_DE.UTF-8", want: geometry.Millimetre},
		{locale: "de-DE", measurement: "en_US.UTF-8", want: geometry.Inch},
		{locale: "en-US", all: "C.UTF-8", measurement: "en_US.UTF-8", want: geometry.Millimetre},
	} {
		environment := func(name string) string {
			return map[string]string{"LC_ALL": c.all, "LC_MEASUREMENT": c.measurement}[name]
		}
		if got := settings.UsualUnit(c.locale, environment); got != c.want {
			t.Errorf("%+v: %s", c, got)
		}
	}
}

func TestUsualUnitUntilOneIsChosen(t *testing.T) {
	set := settings.New(test.NewTempApp(t).Preferences())
	set.SetUsualUnit(geometry.Inch)
	if got := set.Unit(); got != geometry.Inch {
		t.Errorf("nothing is chosen, the unit is %s", got)
	}
	set.SetUnit(geometry.Millimetre)
	if got := set.Unit(); got != geometry.Millimetre {
		t.Errorf("millimetres are chosen, the unit is %s", got)
	}
}
