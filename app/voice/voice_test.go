package voice

import (
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
)

// A document says numbers as its language writes them, whatever that of the window, and
// lengths in its unit.
func TestVoiceOfADocument(t *testing.T) {
	german := func(text string) string {
		return map[string]string{"0.5": "0,5", "%s wide, %s": "%s breit, %s"}[text]
	}
	english := func(text string) string { return text }
	tests := []struct {
		unit            geometry.Unit
		say             func(Voice) string
		english, german string
	}{
		{geometry.Millimetre, func(v Voice) string { return v.Length(82.5) }, "82.5\u00a0mm", "82,5\u00a0mm"},
		{geometry.Inch, func(v Voice) string { return v.Size(254, 12.7) }, "10\u00a0×\u00a00.5\u00a0in", "10\u00a0×\u00a00,5\u00a0in"},
		{geometry.Millimetre, func(v Voice) string { return v.Area(1250, 1) }, "12.5\u00a0cm²", "12,5\u00a0cm²"},
		{geometry.Inch, func(v Voice) string { return v.Area(2*645.16, 1) }, "2\u00a0in²", "2\u00a0in²"},
		{geometry.Millimetre, func(v Voice) string { return v.Fixed(3, 2) }, "3.00", "3,00"},
		{geometry.Centimetre, func(v Voice) string {
			return v.Tell(phrase.New("%s wide, %s", geometry.Length(105), "1.5 kg"))
		}, "10.5 cm wide, 1.5 kg", "10,5 cm breit, 1,5 kg"},
	}
	for i, test := range tests {
		if got := test.say(Voice{english, test.unit}); got != test.english {
			t.Errorf("%d: in English %q, want %q", i, got, test.english)
		}
		if got := test.say(Voice{german, test.unit}); got != test.german {
			t.Errorf("%d: in German %q, want %q", i, got, test.german)
		}
	}
}
