package steps

import (
	"image"
	"image/color"
	"strings"
	"testing"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/steppage/pagetest"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/render/flat"
	"gussetwright/render/printed"
	"gussetwright/render/solid"
)

// The colour of the paper comes with its kind and can be changed by itself; film and
// inks are entries like others.
func TestPaperAndInks(t *testing.T) {
	panel, window := newDesk(t)
	doc := panel.bench.Doc
	panel.Select(paperStep)
	choose := func(path, value string) {
		t.Helper()
		before := pagetest.UndoSteps(doc)
		field, _ := bag.FieldAt(path)
		choice := panel.slot(path).Objects()[0].(*entry.Choice)
		choice.Pick(value)
		spec := doc.State().Spec
		if got := field.Choice(&spec); got != value || pagetest.UndoSteps(doc) != before+1 {
			t.Errorf("%s is %q after %d steps, want %q after %d", path, got, pagetest.UndoSteps(doc), value, before+1)
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
	pagetest.Enter(panel.number("print.background_cyan_percent"), "100")
	pagetest.Enter(panel.number("print.background_black_percent"), "50")
	if inks := doc.State().Spec.Print.Background; inks != (bag.Background{Cyan: 100, Black: 50}) {
		t.Errorf("inks %+v", inks)
	}
	if shown := pagetest.Markup(window); !strings.Contains(shown, "C 100, M 0, Y 0, K 50") {
		t.Error("the swatch does not say which inks are in it")
	}
}

func saysBelow(panel *Panel, path, text string) bool {
	for _, remark := range panel.remarks(path) {
		if strings.Contains(remark.Text(), text) {
			return true
		}
	}
	return false
}

// The swatch shows the inks as package ink prints them, whose full tones are values from
// memory: offset printing on coated paper. It showed ideal inks before, with a cyan of
// 0, 255, 255, which no press prints and which the panes do not show. Paper that is not
// white takes its share: cyan of 50 % is (255 + 0) / 2, (255 + 158) / 2, (255 + 224) / 2
// on white, times 200, 170, 130 / 255 on brown. No ink leaves the paper as it is.
func TestInkOnPaper(t *testing.T) {
	white, brown := color.RGBA{255, 255, 255, 255}, color.RGBA{200, 170, 130, 255}
	tests := []struct {
		paper color.RGBA
		inks  bag.Background
		want  color.RGBA
	}{
		{white, bag.Background{}, white},
		{brown, bag.Background{}, brown},
		{white, bag.Background{Cyan: 100}, color.RGBA{0, 158, 224, 255}},
		{white, bag.Background{Magenta: 100}, color.RGBA{230, 0, 126, 255}},
		{white, bag.Background{Yellow: 100}, color.RGBA{255, 237, 0, 255}},
		{brown, bag.Background{Black: 100}, color.RGBA{23, 19, 14, 255}},
		{brown, bag.Background{Cyan: 50}, color.RGBA{100, 138, 122, 255}},
		{white, bag.Background{Cyan: 500, Yellow: -3}, color.RGBA{0, 158, 224, 255}},
	}
	for _, test := range tests {
		if got := inkOn(test.paper, test.inks); got != test.want {
			t.Errorf("%+v on %v: %v, want %v", test.inks, test.paper, got, test.want)
		}
	}
}

// The swatch has the colour that the bag has in the panes.
func TestInkIsThatOfTheBag(t *testing.T) {
	for _, paper := range []bag.PaperColour{bag.ColourWhite, bag.ColourNatural} {
		for _, inks := range []bag.Background{{Cyan: 100}, {Magenta: 35, Yellow: 80}, {Cyan: 12, Magenta: 34, Yellow: 56, Black: 78}} {
			spec := bag.Default()
			spec.Paper.Colour, spec.Print.Background = paper, inks
			snapshot, err := document.Derive(spec)
			if err != nil {
				t.Fatal(err)
			}
			front, _ := snapshot.Blank.Pieces[0].Panel("front")
			spot := front.Box.Center()
			picture := image.NewRGBA(image.Rect(0, 0, 1, 1))
			view := flat.View{Scale: 1, Origin: geometry.Vec2{X: spot.X - 0.5, Y: spot.Y + 0.5}}
			snapshot.Side(0).Paint(&printed.Bench{}, picture, view, printed.Fine)
			if got, want := inkOn(solid.PaperOf(spec.Paper).Print, inks), picture.RGBAAt(0, 0); got != want {
				t.Errorf("%+v on %s paper: %v, and %v on the bag", inks, paper, got, want)
			}
		}
	}
}
