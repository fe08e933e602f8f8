package flat

import (
	"image"
	"image/color"
	"slices"
	"testing"

	"gussetwright/geometry"
	"gussetwright/render/scene"
)

var darkGreen = color.NRGBA{0x27, 0x4C, 0x3F, 255}

// onGround paints a name and an upright line on artwork of one colour, 100 × 60 pixels.
func onGround(ground color.NRGBA, palette *Palette) *image.RGBA {
	name := scene.Label{Role: scene.Legend, Text: "Front", At: geometry.Vec2{X: 50, Y: 26}, Size: 14, Anchor: scene.Middle}
	line := scene.Stroke{
		Role: scene.Creasing, Width: 1,
		Path: geometry.Path{Vertices: []geometry.Vertex{{Vec2: geometry.Vec2{X: 10.5, Y: 0}}, {Vec2: geometry.Vec2{X: 10.5, Y: 60}}}},
	}
	picture := image.NewRGBA(image.Rect(0, 0, 100, 60))
	var painter Painter
	painter.Begin(picture, View{Scale: 1, Origin: geometry.Vec2{Y: 60}})
	painter.Clear(ground)
	painter.Draw(scene.Drawing{Trim: geometry.RectAt(0, 0, 100, 60), Items: []scene.Item{name, line}}, palette, AllLayers())
	return picture
}

// The names on dark artwork have a contrast of 4.5 to 1 with what is round them, and
// lines one of 3 to 1: WCAG 2.2, success criteria 1.4.3 and 1.4.11 (values from memory).
func TestLinesAndLettersAreReadOnDarkArtwork(t *testing.T) {
	palette := Light()
	if got := contrast(palette.Ink[scene.Legend], darkGreen); got > 2 {
		t.Fatalf("names have a contrast of %.2f without help; the test needs darker artwork", got)
	}
	picture := onGround(darkGreen, palette)
	at := func(x, y int) color.NRGBA { return color.NRGBAModel.Convert(picture.At(x, y)).(color.NRGBA) }
	box := image.Rect(31, 23, 68, 37) // round the name
	for _, corner := range []image.Point{box.Min, {box.Max.X, box.Min.Y}, {box.Min.X, box.Max.Y}, box.Max} {
		if got := contrast(palette.Ink[scene.Legend], at(corner.X, corner.Y)); got < letterContrast {
			t.Errorf("beside the name at %v the contrast is %.2f, want %g", corner, got, letterContrast)
		}
	}
	for _, beside := range []int{9, 11} {
		if got := contrast(palette.Ink[scene.Creasing], at(beside, 30)); got < lineContrast-0.5 {
			t.Errorf("beside the line at %d the contrast is %.2f, want about %d", beside, got, lineContrast)
		}
	}
	if got := at(90, 5); got != darkGreen {
		t.Errorf("the artwork is changed where nothing stands: %v", got)
	}
}

// On paper nothing is added, to the last pixel.
func TestNoHaloOnPaper(t *testing.T) {
	for name, ground := range map[string]color.NRGBA{"white": white, "pale green": {0xC5, 0xDB, 0xB6, 255}} {
		with, without := onGround(ground, Light()), onGround(ground, Light().WithoutHalo())
		for i := range with.Pix {
			if with.Pix[i] != without.Pix[i] {
				t.Errorf("%s: a halo is painted", name)
				break
			}
		}
	}
}

// Artwork in pale colours leaves the letters all their contrast, yet its shapes run into
// theirs. A palette that wants a calm ground takes them away behind the name, and nowhere
// else; on even ground it adds nothing.
func TestLettersOnCalmGround(t *testing.T) {
	pale := color.NRGBA{0xC9, 0xDF, 0xB9, 255}
	calm := Light()
	calm.Calm = true
	if got := contrast(calm.Ink[scene.Legend], pale); got < letterContrast {
		t.Fatalf("the contrast is %.2f; the test needs paler artwork", got)
	}
	name := scene.Label{Role: scene.Legend, Text: "Front", At: geometry.Vec2{X: 50, Y: 26}, Size: 14, Anchor: scene.Middle}
	paint := func(stripes bool, palette *Palette) *image.RGBA {
		picture := image.NewRGBA(image.Rect(0, 0, 100, 60))
		var painter Painter
		painter.Begin(picture, View{Scale: 1, Origin: geometry.Vec2{Y: 60}})
		painter.Clear(white)
		for x := 0.0; stripes && x < 100; x += 8 {
			painter.Fill(pale, geometry.RectAt(x, 0, 4, 60).Path())
		}
		painter.Draw(scene.Drawing{Trim: geometry.RectAt(0, 0, 100, 60), Items: []scene.Item{name}}, palette, AllLayers())
		return picture
	}
	// differ is the ratio of the luminances between two stripes of a row.
	differ := func(picture *image.RGBA, y int) float64 {
		at := func(x int) color.NRGBA { return color.NRGBAModel.Convert(picture.At(x, y)).(color.NRGBA) }
		return contrast(at(46), at(50))
	}
	const above, far = 22, 5 // rows within the field of the name and beyond it
	if got := differ(paint(true, Light()), above); got < 1.25 {
		t.Errorf("behind the name the stripes have a contrast of %.2f; the test needs stripes that are seen", got)
	}
	if got := differ(paint(true, calm), above); got > 1.05 {
		t.Errorf("behind the name stripes have a contrast of %.2f", got)
	}
	if got := differ(paint(true, calm), far); got < 1.25 {
		t.Errorf("far from the name the stripes have a contrast of %.2f only", got)
	}
	if with, without := paint(false, calm), paint(false, Light()); !slices.Equal(with.Pix, without.Pix) {
		t.Error("something is painted on even ground")
	}
}

// A palette for paper on dark ground writes dimensions in one ink on the paper and in
// another beyond it, both to be read.
func TestDimensionsBeyondThePaper(t *testing.T) {
	palette := OnPrint()
	on, beyond := contrast(palette.Ink[scene.Dimensions], palette.Paper), contrast(palette.Beyond, palette.Ground)
	if on < letterContrast || beyond < letterContrast {
		t.Errorf("contrast %.2f on the paper and %.2f beyond it, want %g", on, beyond, letterContrast)
	}
	line := func(x float64) scene.Stroke {
		return scene.Stroke{Role: scene.Dimensions, Width: 2, Path: geometry.RectAt(x, 5, 10, 2).Path()}
	}
	picture := image.NewRGBA(image.Rect(0, 0, 40, 12))
	var painter Painter
	painter.Begin(picture, View{Scale: 1, Origin: geometry.Vec2{Y: 12}})
	painter.Clear(palette.Ground)
	painter.Fill(palette.Paper, geometry.RectAt(0, 0, 20, 12).Path())
	drawing := scene.Drawing{Trim: geometry.RectAt(0, 0, 20, 12), Items: []scene.Item{line(5), line(25)}}
	painter.Draw(drawing, palette, AllLayers())
	for x, want := range map[int]color.NRGBA{10: palette.Ink[scene.Dimensions], 30: palette.Beyond} {
		if got := color.NRGBAModel.Convert(picture.At(x, 6)).(color.NRGBA); got != want {
			t.Errorf("at %d the dimension is %v, want %v", x, got, want)
		}
	}
}

// BenchmarkHalo is the pane of BenchmarkPane on dark artwork, with and without halo.
func BenchmarkHalo(b *testing.B) {
	drawing, view := paneDrawing()
	picture := image.NewRGBA(image.Rect(0, 0, paneWidth, paneHeight))
	for name, palette := range map[string]*Palette{"with": Light(), "without": Light().WithoutHalo()} {
		palette.Paper = darkGreen
		b.Run(name, func(b *testing.B) {
			paint := paintWith(&Painter{}, picture, drawing, view, palette)
			for b.Loop() {
				paint()
			}
		})
	}
}
