package pdf

import (
	"fmt"
	"image"
	"image/color"
	_ "image/jpeg"
	_ "image/png"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/pdf/object"
	"gussetwright/render/scene"
)

// quadrants is a drawing of 200 × 100 units in four colours, with a black field over
// the middle: red below left, green below right, blue above left, yellow above right.
func quadrants() *object.Form {
	return &object.Form{Width: 200, Height: 100, Content: []byte(`1 0 0 rg 0 0 100 50 re f
0 1 0 rg 100 0 100 50 re f
0 0 1 rg 0 50 100 50 re f
1 1 0 rg 100 50 100 50 re f
0 g 80 40 40 20 re f
`)}
}

var (
	red    = color.NRGBA{255, 0, 0, 255}
	green  = color.NRGBA{0, 255, 0, 255}
	blue   = color.NRGBA{0, 0, 255, 255}
	yellow = color.NRGBA{255, 255, 0, 255}
	dark   = color.NRGBA{0, 0, 0, 255}
	white  = color.NRGBA{255, 255, 255, 255}
)

// half is a colour of which half of the white beneath is seen.
func half(c color.NRGBA) color.NRGBA {
	mix := func(v uint8) uint8 { return uint8((int(v) + 255 + 1) / 2) }
	return color.NRGBA{mix(c.R), mix(c.G), mix(c.B), 255}
}

// placing returns a sheet of 200 × 150 mm, whose corner is not the origin, with
// artwork and a cut line, which leaves the middle free.
func placing(items ...scene.Item) scene.Drawing {
	media := geometry.RectAt(-10, -20, 200, 150)
	cut := scene.Stroke{Role: scene.Cutting, Path: media.Inset(1).Path(), Width: 0.35}
	return scene.Drawing{Title: "Placing", Media: media, Bleed: media, Trim: media.Inset(3), Items: append(items, cut)}
}

func at(originX, originY, ux, uy, vx, vy float64) geometry.Affine {
	return geometry.Affine{U: geometry.Vec2{X: ux, Y: uy}, V: geometry.Vec2{X: vx, Y: vy}, Origin: geometry.Vec2{X: originX, Y: originY}}
}

// pixelsPerMM of the pictures that are looked at: 254 dots to the inch.
const pixelsPerMM = 10

// rasterise returns the first page of a file as poppler and as mupdf draw it.
func rasterise(t *testing.T, file string) map[string]image.Image {
	t.Helper()
	folder := t.TempDir()
	geomtest.Run(t, "pdftoppm", "-r", "254", "-png", "-singlefile", file, filepath.Join(folder, "poppler"))
	geomtest.Run(t, "mutool", "draw", "-q", "-r", "254", "-o", filepath.Join(folder, "mupdf.png"), file, "1")
	pictures := map[string]image.Image{}
	for _, reader := range []string{"poppler", "mupdf"} {
		pictures[reader] = decode(t, filepath.Join(folder, reader+".png"))
	}
	return pictures
}

// decode reads a picture in PNG or JPEG.
func decode(t *testing.T, path string) image.Image {
	t.Helper()
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	picture, _, err := image.Decode(file)
	if err != nil {
		t.Fatalf("%s: %v", path, err)
	}
	return picture
}

// seen is a place on the drawing in mm with the colour that must be there.
type seen struct {
	x, y float64
	want color.NRGBA
}

// look compares what both readers draw with what must be seen.
func look(t *testing.T, what, file string, media geometry.Rect, places []seen) {
	t.Helper()
	for reader, picture := range rasterise(t, file) {
		for _, place := range places {
			x := int(math.Floor((place.x - media.Min.X) * pixelsPerMM))
			y := int(math.Floor((media.Max.Y - place.y) * pixelsPerMM))
			got := color.NRGBAModel.Convert(picture.At(x, y)).(color.NRGBA)
			if !near(got, place.want, 3) {
				t.Errorf("%s: %s shows %v at (%g, %g) mm, want %v", what, reader, got, place.x, place.y, place.want)
			}
		}
	}
}

func near(a, b color.NRGBA, most int) bool {
	for _, pair := range [][2]uint8{{a.R, b.R}, {a.G, b.G}, {a.B, b.B}} {
		if d := int(pair[0]) - int(pair[1]); d < -most || d > most {
			return false
		}
	}
	return true
}

// Source: poppler and mupdf. The colours stand, to a pixel of 0.1 mm, where the
// places below were worked out by hand: a pixel to each side of every border.
func TestPlacedArtworkReadByPopplerAndMupdf(t *testing.T) {
	const p = 0.15 // a pixel and a half of mm: the pixel beside the one on the border
	cases := []struct {
		name   string
		placed scene.Placed
		seen   []seen
	}{
		{"upright, 60 × 30 mm with its corner at (20, 40)", scene.Placed{At: at(20, 40, 60, 0, 0, 30), Opacity: 1}, []seen{
			{20 + p, 40 + p, red},
			{80 - p, 40 + p, green},
			{20 + p, 70 - p, blue},
			{80 - p, 70 - p, yellow},
			{50 - p, 45, red},
			{50 + p, 45, green},
			{25, 55 - p, red},
			{25, 55 + p, blue},
			{50, 55, dark},
			{20 - p, 45, white},
			{80 + p, 45, white},
			{30, 40 - p, white},
			{30, 70 + p, white},
		}},
		{"a quarter turn to the left", scene.Placed{At: at(100, 20, 0, 60, -30, 0), Opacity: 1}, []seen{
			// What was its lower left corner is now the lower right one.
			{100 - p, 20 + p, red},
			{100 - p, 80 - p, green},
			{70 + p, 20 + p, blue},
			{70 + p, 80 - p, yellow},
			{85 + p, 30, red},
			{85 - p, 30, blue},
			{90, 50 - p, red},
			{90, 50 + p, green},
			{100 + p, 30, white},
			{70 - p, 30, white},
		}},
		{"mirrored left to right", scene.Placed{At: at(80, 40, -60, 0, 0, 30), Opacity: 1}, []seen{
			{20 + p, 40 + p, green}, {80 - p, 40 + p, red}, {20 + p, 70 - p, yellow}, {80 - p, 70 - p, blue},
		}},
		{"turned by 3-4-5 of a triangle, 50 mm square", scene.Placed{At: at(60, 30, 40, 30, -30, 40), Opacity: 1}, []seen{
			// A quarter along each side from the corner: 60 + 10 − 7.5, 30 + 7.5 + 10.
			{62.5, 47.5, red},
			{82.5, 62.5, green},
			{47.5, 67.5, blue},
			{67.5, 82.5, yellow},
			{65, 65, dark},
			{60, 29.5, white},
			{100, 59, white},
			{30.5, 69, white},
		}},
		{"three more: right, above, and half a step back", scene.Placed{
			At: at(20, 40, 40, 0, 0, 20), Opacity: 1,
			Copies: []geometry.Vec2{{X: 1}, {Y: 1}, {X: -0.5, Y: -1}},
		}, []seen{
			{20 + p, 40 + p, red},
			{60 + p, 40 + p, red},
			{60 - p, 40 + p, green},
			{100 - p, 60 - p, yellow},
			{20 + p, 60 + p, red},
			{60 - p, 80 - p, yellow},
			{0 + p, 20 + p, red},
			{40 - p, 40 - p, yellow},
			{40 + p, 40 - p, white},
			{60 + p, 60 + p, white},
		}},
		// Half of the white paper shines through. The black field over the middle does
		// not let the colours beneath it through, as the form is faded as a whole.
		{"half seen", scene.Placed{At: at(20, 40, 60, 0, 0, 30), Opacity: 0.5}, []seen{
			{20 + p, 40 + p, half(red)},
			{80 - p, 40 + p, half(green)},
			{20 + p, 70 - p, half(blue)},
			{80 - p, 70 - p, half(yellow)},
			{50 - 1, 55 - 1, half(dark)},
			{50 + 1, 55 + 1, half(dark)},
		}},
		{"not seen", scene.Placed{At: at(20, 40, 60, 0, 0, 30)}, []seen{{25, 45, white}, {75, 65, white}}},
		{"within a circle of 10 mm", scene.Placed{At: at(20, 40, 60, 0, 0, 30), Opacity: 1, Clip: geometry.Circle(geometry.Vec2{X: 40, Y: 55}, 10)}, []seen{
			{30 + p, 55 - 0.2, red}, {30 + p, 55 + 0.2, blue}, {30 - p, 55, white}, {40, 65 - p, blue}, {40, 65 + p, white}, {32.5, 47.5, white}, {48, 50, red}, {51, 55, white},
		}},
	}
	for _, c := range cases {
		c.placed.Form = quadrants()
		drawing := placing(c.placed)
		look(t, c.name, produceFile(t, []scene.Drawing{drawing}, true), drawing.Media, c.seen)
	}
}

// Areas and artwork lie over one another in the order of the drawing; the clip of one
// does not bind the next.
func TestArtworkKeepsItsOrder(t *testing.T) {
	ink := func(x float64) scene.Fill {
		return scene.Fill{Path: geometry.RectAt(x, 30, 10, 50).Path(), Ink: &scene.CMYK{}}
	}
	placed := scene.Placed{Form: quadrants(), At: at(20, 40, 60, 0, 0, 30), Opacity: 1, Clip: geometry.RectAt(0, 41, 200, 200).Path()}
	drawing := placing(ink(22), placed, ink(60))
	look(t, "order", produceFile(t, []scene.Drawing{drawing}, true), drawing.Media, []seen{
		{25, 45, red}, {65, 45, white}, {75, 45, green}, {25, 40.5, white},
	})
}

// However often a form is placed, the file holds it once, and an image of two forms
// once too.
func TestFormsStandOnceInTheFile(t *testing.T) {
	photo := &object.Indirect{Value: stream{dict{
		{"Type", name("XObject")},
		{"Subtype", name("Image")},
		{"Width", integer(1)},
		{"Height", integer(1)},
		{"ColorSpace", name("DeviceRGB")},
		{"BitsPerComponent", integer(8)},
	}, []byte{1, 2, 3}}}
	form := func() *object.Form {
		return &object.Form{Width: 1, Height: 1, Content: []byte("/Photo Do"), Resources: dict{{"XObject", dict{{"Photo", photo}}}}}
	}
	first, second := form(), form()
	place := func(f *object.Form, opacity float64) scene.Placed {
		return scene.Placed{Form: f, At: at(10, 10, 20, 0, 0, 20), Copies: []geometry.Vec2{{X: 1}, {X: 2}}, Opacity: opacity}
	}
	pages := []scene.Drawing{placing(place(first, 1), place(second, 1), place(first, 0.4)), placing(place(first, 0.4), place(first, 1))}
	d := readByQpdf(t, pages)
	forms, images, grouped := 0, 0, 0
	for _, object := range d.objects {
		switch object.Stream.Dict["/Subtype"] {
		case "/Form":
			forms++
			if object.Stream.Dict["/Group"] != nil {
				grouped++
			}
		case "/Image":
			images++
		}
	}
	// The third form is the first as a group.
	if forms != 3 || images != 1 || grouped != 1 {
		t.Errorf("%d forms, %d of them groups, and %d images; want 3, 1 and 1", forms, grouped, images)
	}
	for i, want := range [][]string{{"Form1", "Form2", "Form3"}, {"Form1", "Form3"}} {
		if got := keys(d.get(d.pages()[i], "Resources", "XObject")); !reflect.DeepEqual(got, want) {
			t.Errorf("page %d names %v, want %v", i+1, got, want)
		}
		if group := d.get(d.pages()[i], "Group"); group != nil {
			t.Errorf("page %d is mixed in %v, though nobody said how it prints", i+1, group)
		}
		if got := keys(d.get(d.pages()[i], "Resources", "ExtGState")); !reflect.DeepEqual(got, []string{"Opacity1", "Step"}) {
			t.Errorf("page %d has the states %v", i+1, got)
		}
	}
	state := d.get(d.pages()[0], "Resources", "ExtGState", "Opacity1")
	if d.get(state, "ca") != 0.4 || d.get(state, "CA") != 0.4 {
		t.Errorf("state %v, want ca and CA 0.4", state)
	}
	content := d.content(d.pages()[0])
	artwork, _, _ := strings.Cut(content, "EMC")
	if !strings.HasPrefix(artwork[strings.Index(artwork, "cm\n")+3:], "/OC /Artwork BDC\nq\nq\n") || strings.Count(content, " Do\n") != 9 || strings.Count(artwork, " Do\n") != 9 {
		t.Errorf("not all nine stand on the artwork layer:\n%s", content)
	}
	if got, again := produce(t, pages, true), produce(t, pages, true); string(got) != string(again) {
		t.Error("the second file differs from the first")
	}
}

func TestBadPlacedArtwork(t *testing.T) {
	fine := scene.Placed{Form: quadrants(), At: at(0, 0, 10, 0, 0, 10), Opacity: 1}
	nan := math.NaN()
	for _, c := range []struct {
		want  string
		spoil func(p *scene.Placed)
	}{
		{"there is no form", func(p *scene.Placed) { p.Form = nil }},
		{"the form is 0 × 5", func(p *scene.Placed) { p.Form = &object.Form{Height: 5} }},
		{"size of the form: +Inf", func(p *scene.Placed) { p.Form = &object.Form{Width: math.Inf(1), Height: 5} }},
		{"place: NaN", func(p *scene.Placed) { p.At.U.Y = nan }},
		{"place: 2e+09", func(p *scene.Placed) { p.Copies = []geometry.Vec2{{X: 2e8}} }},
		{"pressed flat", func(p *scene.Placed) { p.At.V = p.At.U }},
		{"opacity of 1.1", func(p *scene.Placed) { p.Opacity = 1.1 }},
		{"opacity of NaN", func(p *scene.Placed) { p.Opacity = nan }},
		{"no edge", func(p *scene.Placed) { p.Clip.Vertices = make([]geometry.Vertex, 1) }},
	} {
		bad := fine
		c.spoil(&bad)
		_, err := build([]scene.Drawing{placing(bad)}, day, true)
		if err == nil || !strings.Contains(err.Error(), "item 1: placed form on layer Artwork: ") || !strings.Contains(err.Error(), c.want) {
			t.Errorf("error is %v, want one with %q", err, c.want)
		}
	}
}

// Source: Ghostscript. Artwork that is placed prints whole under the steps, faded or
// not, with PDF/X-4 declared or not, and no step prints on a process plate.
func TestPlacedArtworkUnderTheSteps(t *testing.T) {
	pixel := func(mm float64) int { return int(mm * 72 / 25.4) }
	for _, opacity := range []float64{1, 0.5} {
		for _, output := range []*OutputIntent{nil, pressIntent(t)} {
			what := fmt.Sprintf("opacity %g, PDF/X-4 %t", opacity, output != nil)
			drawing := covered()
			drawing.Items[3] = scene.Placed{Form: &object.Form{Width: 3, Height: 3, Content: []byte("1 0 0 0 k 0 0 3 3 re f")}, At: at(-1, -1, 102, 0, 0, 102), Opacity: opacity}
			info := day
			info.Output = output
			found := separateFile(t, produceWith(t, []scene.Drawing{drawing}, info))
			want := uint8(math.Round(255 * (1 - opacity)))
			if fullest, emptiest := extremes(found["Cyan"]); !alike(fullest, want) || !alike(emptiest, want) {
				t.Errorf("%s: the cyan plate runs from %d to %d, want %d all over", what, fullest, emptiest, want)
			}
			for _, ink := range processInks[1:] {
				if fullest, _ := extremes(found[ink]); fullest != 255 {
					t.Errorf("%s: the %s plate prints, down to %d", what, ink, fullest)
				}
			}
			for ink, x := range map[string]float64{"Cutting": 20, "Gluing": 50, "Legend": 69} {
				if got := found[ink].GrayAt(pixel(x), pixel(50)).Y; got != 0 {
					t.Errorf("%s: the %s plate prints %d, want it full", what, ink, got)
				}
				if got := found[ink].GrayAt(pixel(33), pixel(50)).Y; got != 255 {
					t.Errorf("%s: the %s plate prints beside the step: %d", what, ink, got)
				}
			}
		}
	}
}

// alike tells whether two values differ by no more than rounding in the readers.
func alike(a, b uint8) bool { return max(a, b)-min(a, b) <= 2 }

// A photograph of 30 MB, packed already, once on the sheet.
func BenchmarkWritePhoto(b *testing.B) {
	data := make([]byte, 30<<20)
	rand.NewChaCha8([32]byte{}).Read(data)
	photo := &object.Indirect{Value: plain{dict{{"Type", name("XObject")}, {"Subtype", name("Image")}, {"Filter", name("DCTDecode")}}, data}}
	form := &object.Form{Width: 1, Height: 1, Content: []byte("/Photo Do"), Resources: dict{{"XObject", dict{{"Photo", photo}}}}}
	pages := []scene.Drawing{placing(scene.Placed{Form: form, At: at(0, 0, 100, 0, 0, 100), Opacity: 1})}
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		if err := Write(io.Discard, pages, day); err != nil {
			b.Fatal(err)
		}
	}
}
