package steps

import (
	"image/color"
	"strings"
	"testing"

	"gussetwright/app/entry"
	"gussetwright/geometry/bag"
)

// The colour of the paper comes with its kind and can be changed by itself; film and
// inks are entries like others.
func TestPaperAndInks(t *testing.T) {
	panel, window := newDesk(t)
	doc := panel.bench.doc
	panel.Select(paperStep)
	choose := func(path, value string) {
		t.Helper()
		before := undoSteps(doc)
		field, _ := bag.FieldAt(path)
		choice := panel.slot(path).Objects()[0].(*entry.Choice)
		choice.Pick(value)
		spec := doc.State().Spec
		if got := field.Choice(&spec); got != value || undoSteps(doc) != before+1 {
			t.Errorf("%s is %q after %d steps, want %q after %d", path, got, undoSteps(doc), value, before+1)
		}
	}
	choose("paper.kind", "kraft")
	if colour := doc.State().Spec.Paper.Colour; colour != bag.ColourNatural {
		t.Errorf("kraft is %s", colour)
	}
	choose("paper.colour", "white")
	choose("paper.lamination", "matt")
	for _, says := range []string{"must leave the glue areas", "composite"} {
		if !saysBelow(panel, "paper.lamination", says) {
			t.Errorf("nothing says %q of a laminated bag", says)
		}
	}
	if state := doc.State(); !strings.Contains(weightText(&state), " g of film + ") {
		t.Errorf("%q does not weigh the film", weightText(&state))
	}
	panel.Select(artworkStep)
	enter(panel.number("print.background_cyan_percent"), "100")
	enter(panel.number("print.background_black_percent"), "50")
	if inks := doc.State().Spec.Print.Background; inks != (bag.Background{Cyan: 100, Black: 50}) {
		t.Errorf("inks %+v", inks)
	}
	if shown := markup(window); !strings.Contains(shown, "C 100, M 0, Y 0, K 50") {
		t.Error("the swatch does not say which inks are in it")
	}
}

func saysBelow(panel *Panel, path, text string) bool {
	for _, remark := range panel.slot(path).remarks {
		if strings.Contains(remark.Text(), text) {
			return true
		}
	}
	return false
}

// Ideal inks: cyan takes the red away, magenta the green, yellow the blue, and black
// all of it; no ink leaves the paper as it is.
func TestInkOnPaper(t *testing.T) {
	white, brown := color.RGBA{255, 255, 255, 255}, color.RGBA{200, 170, 130, 255}
	tests := []struct {
		paper color.RGBA
		inks  bag.Background
		want  color.RGBA
	}{
		{white, bag.Background{}, white},
		{brown, bag.Background{}, brown},
		{white, bag.Background{Cyan: 100}, color.RGBA{0, 255, 255, 255}},
		{white, bag.Background{Magenta: 100}, color.RGBA{255, 0, 255, 255}},
		{white, bag.Background{Yellow: 100}, color.RGBA{255, 255, 0, 255}},
		{brown, bag.Background{Black: 100}, color.RGBA{0, 0, 0, 255}},
		{brown, bag.Background{Cyan: 50}, color.RGBA{100, 170, 130, 255}},
		{white, bag.Background{Cyan: 500, Yellow: -3}, color.RGBA{0, 255, 255, 255}},
	}
	for _, test := range tests {
		if got := inkOn(test.paper, test.inks); got != test.want {
			t.Errorf("%+v on %v: %v, want %v", test.inks, test.paper, got, test.want)
		}
	}
}
