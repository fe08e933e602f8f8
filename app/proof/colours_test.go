package proof

import (
	"image"
	"image/color"
	"math"
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/phrase"
)

// values returns the values of the swatches of artwork on the faces of a white bag.
func values(t *testing.T, name string, data []byte) []string {
	t.Helper()
	spec := bag.Default()
	spec.Artwork = []bag.Artwork{bag.NewArtwork(name, bag.OnFaces)}
	swatches, err := New(t.Context(), Order{Snapshot: derive(t, spec, map[string][]byte{name: data}), Date: day}).swatches()
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for _, s := range swatches {
		list = append(list, s.value)
	}
	return list
}

// A drawing gives its exact colours, those that cover most first; those that state inks
// give these, and white is no colour. Edges between areas give none.
func TestColoursOfADrawing(t *testing.T) {
	got := values(t, "lake.svg", []byte(lake))
	want := []string{"sRGB 232 240 224", "C 90 M 70 Y 10 K 5", "sRGB 176 40 24", "sRGB 240 192 32"}
	if !slices.Equal(got, want) {
		t.Errorf("colours %q, want %q", got, want)
	}
}

// Inks come back out of files that ImageMagick makes.
func TestInksOfPictures(t *testing.T) {
	for _, kind := range []string{"tiff", "jpg"} {
		made := geomtest.Run(t, "convert", "-size", "120x180", "-colorspace", "CMYK", "xc:cmyk(20%,80%,60%,10%)", "-depth", "8", "-quality", "95", kind+":-")
		got := values(t, "plain."+kind, made)
		if len(got) != 1 || !slices.Contains([]string{"C 20 M 80 Y 60 K 10", "C 20 M 80 Y 60 K 9"}, got[0]) {
			t.Errorf("%s: %q", kind, got)
		}
	}
}

// A photograph has no exact colours: each of its swatches is the mean of many. Here red
// and blue run into white.
func TestColoursOfAPhotograph(t *testing.T) {
	picture := image.NewRGBA(image.Rect(0, 0, 400, 600))
	for y := range 600 {
		for x := range 400 {
			v := uint8(120 + x/4)
			picture.SetRGBA(x, y, color.RGBA{230, v / 2, v / 3, 255})
			if y >= 300 {
				picture.SetRGBA(x, y, color.RGBA{v / 4, v / 2, 220, 255})
			}
		}
	}
	got := values(t, "photograph.png", asPNG(picture))
	if len(got) < 2 || len(got) > 4 {
		t.Errorf("colours %q", got)
	}
}

// On brown paper swatches are darker than on white, and the paper is one of them.
func TestSwatchesOnKraft(t *testing.T) {
	on := func(colour bag.PaperColour) []swatch {
		swatches, err := proofOf(t, func(s *bag.Spec) { s.Paper.Colour = colour }).swatches()
		if err != nil {
			t.Fatal(err)
		}
		return swatches
	}
	white, brown := on(bag.ColourWhite), on(bag.ColourNatural)
	if len(brown) != len(white)+1 || brown[0].name != "Paper, natural brown" || brown[0].value != "" {
		t.Fatalf("%d swatches on white, %d on brown: %v", len(white), len(brown), brown)
	}
	for i, s := range white {
		if other := brown[i+1]; other.value != s.value || other.shown.B >= s.shown.B && s.shown.B > 40 {
			t.Errorf("%v on white, %v on brown", s, other)
		}
	}
}

// No two fields have the same name, in whatever language: those of one colour are told
// apart from light to dark.
func TestColoursOfOneName(t *testing.T) {
	green := func(v uint8) mainColour { return mainColour{colour: color.RGBA{0, v, 0, 255}} }
	red := mainColour{colour: color.RGBA{255, 0, 0, 255}}
	p := proofOf(t, nil)
	for want, colours := range map[string][]mainColour{
		"Green; Red":                                       {green(128), red},
		"Green, darker; Red; Green, lighter":               {green(128), red, green(160)},
		"Green, in between; Green, darker; Green, lighter": {green(140), green(128), green(160)},
		"Green 4; Green 1; Green 3; Green 2":               {green(120), green(170), green(130), green(150)},
	} {
		if got := strings.Join(p.namesOf(colours), "; "); got != want {
			t.Errorf("called %s, want %s", got, want)
		}
	}
	p.Say = func(text string) string {
		if text == "Red" || text == "Green" {
			return "жж"
		}
		return text
	}
	if got := strings.Join(p.namesOf([]mainColour{green(128), red}), "; "); got != "жж, darker; жж, lighter" {
		t.Errorf("two colours of one word are called %s", got)
	}
}

// Names of colours agree with those of CSS (CSS Color Module Level 4, 6.1, named
// colours) where both name a hue.
func TestColourNames(t *testing.T) {
	for css, c := range map[string]struct {
		colour color.RGBA
		want   phrase.Word
	}{
		"black":       {color.RGBA{0, 0, 0, 255}, "Black"},
		"dimgray":     {color.RGBA{105, 105, 105, 255}, "Grey"},
		"lightgray":   {color.RGBA{211, 211, 211, 255}, "Light grey"},
		"red":         {color.RGBA{255, 0, 0, 255}, "Red"},
		"darkred":     {color.RGBA{139, 0, 0, 255}, "Dark red"},
		"orange":      {color.RGBA{255, 165, 0, 255}, "Orange"},
		"saddlebrown": {color.RGBA{139, 69, 19, 255}, "Brown"},
		"beige":       {color.RGBA{245, 245, 220, 255}, "Cream"},
		"gold":        {color.RGBA{255, 215, 0, 255}, "Yellow"},
		"olive":       {color.RGBA{128, 128, 0, 255}, "Olive"},
		"green":       {color.RGBA{0, 128, 0, 255}, "Green"},
		"darkgreen":   {color.RGBA{0, 100, 0, 255}, "Dark green"},
		"lightgreen":  {color.RGBA{144, 238, 144, 255}, "Light green"},
		"turquoise":   {color.RGBA{64, 224, 208, 255}, "Turquoise"},
		"blue":        {color.RGBA{0, 0, 255, 255}, "Blue"},
		"navy":        {color.RGBA{0, 0, 128, 255}, "Dark blue"},
		"lightblue":   {color.RGBA{173, 216, 230, 255}, "Light turquoise"},
		"violet":      {color.RGBA{238, 130, 238, 255}, "Light violet"},
		"purple":      {color.RGBA{128, 0, 128, 255}, "Violet"},
		"hotpink":     {color.RGBA{255, 105, 180, 255}, "Pink"},
	} {
		if got := colourName(c.colour); got != c.want {
			t.Errorf("%s is called %s, want %s; %+v", css, got, c.want, oklabOf(c.colour))
		}
	}
}

// Oklab of full red, green and blue (values from memory, as the tests of CSS Color 4
// give them).
func TestOklab(t *testing.T) {
	for c, want := range map[color.RGBA]oklab{
		{255, 255, 255, 255}: {1, 0, 0},
		{255, 0, 0, 255}:     {0.62796, 0.22486, 0.12585},
		{0, 255, 0, 255}:     {0.86644, -0.23389, 0.17950},
		{0, 0, 255, 255}:     {0.45201, -0.03246, -0.31153},
	} {
		got := oklabOf(c)
		if math.Max(math.Abs(got.l-want.l), math.Max(math.Abs(got.a-want.a), math.Abs(got.b-want.b))) > 0.0002 {
			t.Errorf("%v is %+v, want %+v", c, got, want)
		}
	}
}

func TestHeld(t *testing.T) {
	for _, c := range []struct {
		width, gusset, height float64
		want                  phrase.Word
	}{
		{240, 100, 360, "two bottles of 0.75 l side by side"},
		{100, 90, 390, "a bottle of 0.75 l"},
		{190, 95, 265, "an A5 book, upright"},
		{160, 0, 240, "an A5 card, upright"},
		{360, 140, 260, "a shoe box on its side"},
		{80, 40, 120, "a pack of playing cards"},
		{60, 20, 80, ""},    // nothing fits
		{900, 300, 900, ""}, // all would be lost in it
	} {
		if got, fits := held(c.width, c.gusset, c.height); fits != (c.want != "") || fits && got != c.want {
			t.Errorf("%g × %g × %g mm: %q, %t; want %q", c.width, c.gusset, c.height, got, fits, c.want)
		}
	}
}
