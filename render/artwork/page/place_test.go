package page_test

import (
	"fmt"
	"image"
	"math"
	"testing"

	"gussetwright/geometry"
	"gussetwright/render/artwork/page"
)

// motif has no symmetry, and a pattern and a shading that keep to the coordinates of
// the page: red, green and blue corners, dots, and a run from white to violet.
const motif = `1 0 0 rg -20 10 60 30 re f 0 0.6 0 rg 140 10 40 20 re f 0 0 1 rg -20 100 20 30 re f
0 g 1 0 0 1 7 3 cm 2 w 60 60 m 120 110 l S 1 0 0 1 -7 -3 cm
/Pattern cs /Dots scn 10 50 50 40 re f /Run scn 100 40 60 30 re f
q 1 0 0 1 120 90 cm 0.5 0 0 0.5 0 0 cm /Inner Do Q`

var motifParts = []string{
	streamed("/Type/Pattern/PatternType 1/PaintType 1/TilingType 1/BBox[0 0 10 10]/XStep 10/YStep 10/Matrix[1 0 0 1 3 4]/Resources<<>>", "0.9 0.5 0 rg 0 0 5 5 re f"),
	"<</Type/Pattern/PatternType 2/Shading<</ShadingType 2/ColorSpace/DeviceRGB/Coords[100 0 160 0]/Function<</FunctionType 2/N 1/Domain[0 1]/C0[1 1 1]/C1[0.5 0 0.6]>>>>>>",
	streamed("/Type/XObject/Subtype/Form/BBox[0 0 60 60]", "/Pattern cs /Small scn 0 0 60 60 re f"),
	streamed("/Type/Pattern/PatternType 1/PaintType 1/TilingType 1/BBox[0 0 10 10]/XStep 10/YStep 10/Resources<<>>", "0.9 0.5 0 rg 0 0 5 5 re f"),
}

func motifPage(turn int) []byte {
	return onePage(fmt.Sprintf("/MediaBox[-50 -30 250 170]/CropBox[-20 10 180 130]/UserUnit 2/Rotate %d"+
		"/Resources<</Pattern<</Dots 5 0 R/Run 6 0 R/Small 8 0 R>>/XObject<</Inner 7 0 R>>>>", turn), motif, motifParts...)
}

// The page is turned, its origin lies elsewhere and its unit is two points: what is
// drawn here, and what the form draws in another file, is what two other readers
// draw from the file itself.
func TestTurnedPages(t *testing.T) {
	for _, turn := range []int{0, 90, 180, 270, -90} {
		t.Run(fmt.Sprint(turn), func(t *testing.T) {
			data := motifPage(turn)
			p := read(t, data, 1)
			width, height := 600, 360
			want := geometry.Vec2{X: 400 * 25.4 / 72, Y: 240 * 25.4 / 72}
			if turn%180 != 0 {
				width, height = height, width
				want = geometry.Vec2{X: want.Y, Y: want.X}
			}
			if !p.Size.Near(want) || p.Box != page.CropBox {
				t.Errorf("the %s is %v mm, want the CropBox of %v", p.Box, p.Size, want)
			}
			// pdftoppm turns the page after it has scaled it.
			poppler, mupdf := byPoppler(t, data, 1, 600, 360), byMuPDF(t, data, 1, width, height)
			alike(t, "drawn, against pdftoppm", render(t, p, width, height), poppler, 1.5)
			alike(t, "drawn, against mutool", render(t, p, width, height), mupdf, 1)
			file := placed(t, p)
			alike(t, "placed, by pdftoppm", byPoppler(t, file, 1, width, height), poppler, 0.05)
			alike(t, "placed, by mutool", byMuPDF(t, file, 1, width, height), mupdf, 0.05)
		})
	}
}

// A picture compared with one turned the wrong way must fail the check above.
func TestTurnedPagesDiffer(t *testing.T) {
	upright := render(t, read(t, motifPage(0), 1), 300, 180)
	turned := byPoppler(t, motifPage(180), 1, 300, 180)
	if difference := apart(t, upright, turned); difference < 10 {
		t.Errorf("a page upside down differs by %.2f only", difference)
	}
}

func TestBoxes(t *testing.T) {
	mm := func(x, y, width, height float64) geometry.Rect {
		return geometry.Stretch(25.4/72, 25.4/72).Bounds(geometry.RectAt(x, y, width, height))
	}
	tests := []struct {
		name, entries      string
		box                page.Box
		trim, bleed, media geometry.Rect
	}{
		{"media alone", "/MediaBox[0 0 300 200]", page.MediaBox, mm(0, 0, 300, 200), mm(0, 0, 300, 200), mm(0, 0, 300, 200)},
		{"corners the other way round", "/MediaBox[300 200 0 0]", page.MediaBox, mm(0, 0, 300, 200), mm(0, 0, 300, 200), mm(0, 0, 300, 200)},
		{
			"with bleed and marks", "/MediaBox[0 0 300 200]/BleedBox[20 20 280 180]/TrimBox[30 30 270 170]", page.BleedBox,
			mm(10, 10, 240, 140), mm(0, 0, 260, 160), mm(-20, -20, 300, 200),
		},
		{
			"with bleed and marks, turned", "/MediaBox[0 0 300 200]/BleedBox[20 10 280 180]/TrimBox[30 30 270 170]/Rotate 90", page.BleedBox,
			mm(20, 10, 140, 240), mm(0, 0, 170, 260), mm(-10, -20, 200, 300),
		},
		{
			"with bleed, without marks", "/MediaBox[0 0 300 200]/BleedBox[0 0 300 200]/TrimBox[9 9 291 191]", page.BleedBox,
			mm(9, 9, 282, 182), mm(0, 0, 300, 200), mm(0, 0, 300, 200),
		},
		{
			"all boxes stated and the same", "/MediaBox[0 0 300 200]/CropBox[0 0 300 200]/BleedBox[0 0 300 200]/TrimBox[0 0 300 200]", page.MediaBox,
			mm(0, 0, 300, 200), mm(0, 0, 300, 200), mm(0, 0, 300, 200),
		},
		{
			"cropped by hand", "/MediaBox[0 0 300 200]/CropBox[50 50 150 150]/BleedBox[0 0 300 200]/TrimBox[0 0 300 200]", page.CropBox,
			mm(0, 0, 100, 100), mm(0, 0, 100, 100), mm(-50, -50, 300, 200),
		},
		{"trim alone", "/MediaBox[0 0 300 200]/TrimBox[30 30 270 170]", page.TrimBox, mm(0, 0, 240, 140), mm(0, 0, 240, 140), mm(-30, -30, 300, 200)},
		{"crop larger than the media", "/MediaBox[0 0 300 200]/CropBox[-100 -100 400 400]", page.MediaBox, mm(0, 0, 300, 200), mm(0, 0, 300, 200), mm(0, 0, 300, 200)},
		{
			"bleed within trim makes no sense", "/MediaBox[0 0 300 200]/BleedBox[40 40 260 160]/TrimBox[30 30 270 170]", page.TrimBox,
			mm(0, 0, 240, 140), mm(0, 0, 240, 140), mm(-30, -30, 300, 200),
		},
		{"bleed of no size", "/MediaBox[0 0 300 200]/BleedBox[0 0 0 0]", page.MediaBox, mm(0, 0, 300, 200), mm(0, 0, 300, 200), mm(0, 0, 300, 200)},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p := read(t, onePage(test.entries+"/Resources<<>>", "0 0 10 10 re f"), 1)
			if p.Box != test.box {
				t.Errorf("the %s is placed, want the %s", p.Box, test.box)
			}
			for _, box := range []struct {
				name      string
				got, want geometry.Rect
			}{{"trim", p.Trim, test.trim}, {"bleed", p.Bleed, test.bleed}, {"media", p.Media, test.media}} {
				if !box.got.Min.Near(box.want.Min) || !box.got.Max.Near(box.want.Max) {
					t.Errorf("%s %v, want %v", box.name, box.got, box.want)
				}
			}
			if math.Abs(p.Size.X-test.bleed.Width()) > 1e-6 || math.Abs(p.Size.Y-test.bleed.Height()) > 1e-6 {
				t.Errorf("size %v, want that of %v", p.Size, test.bleed)
			}
		})
	}
}

// Boxes and resources may stand above the page in the page tree (ISO 32000-1, 7.7.3.4).
func TestInherited(t *testing.T) {
	data := handmade("<</Type/Catalog/Pages 2 0 R>>",
		"<</Type/Pages/Count 1/Kids[3 0 R]/MediaBox[0 0 200 100]/Rotate 90/Resources<</XObject<</A 6 0 R>>>>>>",
		"<</Type/Pages/Count 1/Parent 2 0 R/Kids[4 0 R]/CropBox[0 0 150 100]>>",
		"<</Type/Page/Parent 3 0 R/Contents 5 0 R>>", streamed("", "/A Do"),
		streamed("/Type/XObject/Subtype/Form/BBox[0 0 200 100]", "1 0 0 rg 0 0 75 100 re f"))
	p := read(t, data, 1)
	if want := (geometry.Vec2{X: 100 * 25.4 / 72, Y: 150 * 25.4 / 72}); !p.Size.Near(want) {
		t.Errorf("size %v, want %v", p.Size, want)
	}
	picture := render(t, p, 100, 150)
	if top, bottom := picture.RGBAAt(50, 30), picture.RGBAAt(50, 120); top.R < 250 || top.A != 255 || bottom.A != 0 {
		t.Errorf("top %v, bottom %v; want red and nothing", top, bottom)
	}
}

// The ground is transparent, and half transparent ink is premultiplied.
func TestTransparentGround(t *testing.T) {
	p := read(t, onePage("/MediaBox[0 0 100 100]/Resources<</ExtGState<</Half<</ca 0.5>>>>>>",
		"1 0 0 rg 0 0 50 100 re f /Half gs 1 1 1 rg 50 0 25 100 re f"), 1)
	picture := render(t, p, 100, 100)
	for _, test := range []struct {
		at   image.Point
		want [4]int
	}{{image.Pt(20, 50), [4]int{255, 0, 0, 255}}, {image.Pt(60, 50), [4]int{128, 128, 128, 128}}, {image.Pt(90, 50), [4]int{}}} {
		got := picture.RGBAAt(test.at.X, test.at.Y)
		for i, v := range [4]uint8{got.R, got.G, got.B, got.A} {
			if d := int(v) - test.want[i]; d < -1 || d > 1 {
				t.Errorf("at %v %v, want %v", test.at, got, test.want)
				break
			}
		}
	}
}
