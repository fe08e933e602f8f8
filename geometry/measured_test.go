package geometry_test

import (
	"fmt"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
)

func TestLengthInEveryUnit(t *testing.T) {
	tests := []struct {
		length                   float64
		millimetres, centimetres string
		inches                   string
	}{
		{15, "15 mm", "1.5 cm", "0.591 in"},
		{25.4, "25.4 mm", "2.54 cm", "1 in"},
		{0.05, "0.1 mm", "0.01 cm", "0.002 in"},
		{0, "0 mm", "0 cm", "0 in"},
		{-3, "-3 mm", "-0.3 cm", "-0.118 in"},
	}
	for _, test := range tests {
		length := geometry.Length(test.length)
		if got := length.String(); got != test.millimetres {
			t.Errorf("%g mm by itself is %q", test.length, got)
		}
		for unit, want := range map[geometry.Unit]string{
			geometry.Millimetre: test.millimetres, geometry.Centimetre: test.centimetres, geometry.Inch: test.inches,
		} {
			if got := length.In(unit); got != want {
				t.Errorf("%g mm in %s is %q, want %q", test.length, unit, got, want)
			}
			if got := geometry.BareLength(test.length).In(unit) + " " + string(unit); got != want {
				t.Errorf("%g mm in %s is %q with the unit behind it, want %q", test.length, unit, got, want)
			}
		}
	}
}

// Only lengths are spelt in a unit.
func TestSpellLeavesOtherValues(t *testing.T) {
	for _, value := range []any{15.0, 2, "15 mm", phrase.Word("mm"), nil} {
		if got := geometry.Inch.Spell(value); got != value {
			t.Errorf("%v becomes %v", value, got)
		}
	}
}

func ExampleUnit_Spell() {
	said := phrase.New("%d-up if %s", 2, phrase.New("the flap were %s to %s wide", geometry.BareLength(15), geometry.Length(20)))
	fmt.Println(said)
	fmt.Println(said.With(geometry.Centimetre.Spell))
	// Output:
	// 2-up if the flap were 15 to 20 mm wide
	// 2-up if the flap were 1.5 to 2 cm wide
}
