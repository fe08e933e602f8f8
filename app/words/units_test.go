package words

import (
	"slices"
	"testing"

	"gussetwright/geometry/bag"
)

// symbols are the units of the field table that no language spells otherwise: the signs
// of the SI and of units used with it, and what stands for one.
var symbols = []string{"", "mm", "µm", "°", "%", "g", "kg", "g/m²", "kN/m", "/kg", "/m", "/m²", "/1000"}

// Every unit of an entry is a symbol, or has a translation.
func TestEveryUnitIsSaid(t *testing.T) {
	for _, language := range codes() {
		has, err := fromDisk(t, language)
		if err != nil {
			t.Fatal(err)
		}
		for _, field := range bag.Fields() {
			if !slices.Contains(symbols, field.Unit) && has[field.Unit] == "" {
				t.Errorf("%s lacks %q, the unit of %s", language, field.Unit, field.Path)
			}
		}
	}
	if Unit("mm") != "mm" || Unit("/form") != "/form" {
		t.Errorf("in English the units are %q and %q", Unit("mm"), Unit("/form"))
	}
}
