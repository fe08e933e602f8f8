package artstep

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"gussetwright/app/settings"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
)

// The sliders reach across the place: on a face of 240 × 360 mm by 240 and 360 each way, on
// a gusset of 100 mm by 100, on the blank of 2·240 + 2·100 + 20 − 0.5 mm by 700.
func TestReachOfThePlace(t *testing.T) {
	spec := bag.Default()
	b := blank.Lay(spec)
	tests := []struct {
		on         string
		across, up float64
	}{
		{"front", 240, 360},
		{"back", 240, 360},
		{bag.OnFaces, 240, 360},
		{"gusset-left", 100, 360},
		{bag.OnGussets, 100, 360},
		{"front-turn-in", 240, 50},
		{bag.OnBlank, 700, 480}, // 50 + 360 + 100/2 + 20 high
		{"no such place", 700, 480},
	}
	for _, test := range tests {
		if across, up := reachOn(&b, test.on); across != test.across || up != test.up {
			t.Errorf("%s: %g and %g, want %g and %g", test.on, across, up, test.across, test.up)
		}
	}
}

// A piece that is put on another place has the reach of that.
func TestSlidersReachAcrossThePlace(t *testing.T) {
	b := newBench(t, settings.Light, 1, bag.NewArtwork("front.jpg", "front"))
	shown := func(texts ...string) {
		t.Helper()
		markup := test.RenderToMarkup(b.window.Canvas())
		for _, text := range texts {
			if !strings.Contains(markup, ">"+text+"<") {
				t.Errorf("%q is not shown", text)
			}
		}
	}
	shown("-240", "240", "-360", "360", "10", "400")
	spec := b.doc.State().Spec
	spec.Artwork = []bag.Artwork{bag.NewArtwork("front.jpg", "gusset-left")}
	b.doc.Set(spec)
	shown("-100", "100", "-360", "360")
}
