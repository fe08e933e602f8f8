package flat

import (
	"image"
	"image/color"
	"math"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/dieline"
	"gussetwright/render/scene"
)

var (
	black = color.NRGBA{0, 0, 0, 255}
	white = color.NRGBA{255, 255, 255, 255}
)

// sheet is a white picture with a view of one pixel a millimetre, y from 0 at the
// bottom.
func sheet(width, height int) (*Painter, *image.RGBA) {
	picture := image.NewRGBA(image.Rect(0, 0, width, height))
	p := &Painter{}
	p.Begin(picture, View{Scale: 1, Origin: geometry.Vec2{Y: float64(height)}})
	p.Clear(white)
	return p, picture
}

// ink sums how much of a white picture is black, in pixels.
func ink(picture *image.RGBA) float64 {
	sum := 0.0
	for i := 0; i < len(picture.Pix); i += 4 {
		sum += 1 - float64(picture.Pix[i])/255
	}
	return sum
}

// What is filled must be as large as it is by its formula: sides, πr², ½·base·height.
func TestAreas(t *testing.T) {
	for _, c := range []struct {
		name string
		path geometry.Path
		want float64
	}{
		{"rectangle between pixels", geometry.RectAt(10.3, 20.6, 30.25, 7.5).Path(), 30.25 * 7.5},
		{"circle", geometry.Circle(geometry.Vec2{X: 50.2, Y: 40.7}, 23.5), math.Pi * 23.5 * 23.5},
		{"clockwise circle", reversed(geometry.Circle(geometry.Vec2{X: 50, Y: 40}, 20)), math.Pi * 400},
		{"sliver", geometry.Polygon(geometry.Vec2{X: 5, Y: 5}, geometry.Vec2{X: 95, Y: 40}, geometry.Vec2{X: 95, Y: 40.5}, geometry.Vec2{X: 5, Y: 5.5}), 45},
		{"half outside", geometry.RectAt(-20, -20, 40, 40).Path(), 400},
		{"all round outside", geometry.RectAt(-50, -50, 300, 300).Path(), 100 * 80},
		{"outside", geometry.RectAt(200, 10, 30, 30).Path(), 0},
	} {
		p, picture := sheet(100, 80)
		p.Fill(black, c.path)
		if got := ink(picture); math.Abs(got-c.want) > 0.004*c.want+0.05 {
			t.Errorf("%s: %.2f pixels, want %.2f", c.name, got, c.want)
		}
	}
}

func reversed(path geometry.Path) geometry.Path {
	v := path.Vertices
	return geometry.Path{Closed: true, Vertices: []geometry.Vertex{{Vec2: v[1].Vec2, Bulge: -1}, {Vec2: v[0].Vec2, Bulge: -1}}}
}

// An edge through the raster at any angle leaves the areas on its sides.
func TestRasterIsEmptyAfterAFill(t *testing.T) {
	p, _ := sheet(120, 90)
	for i := range 200 {
		a, b := float64(i)*0.7, float64(i)*1.3
		p.Fill(black, geometry.Polygon(geometry.Polar(150, a), geometry.Polar(180, b), geometry.Vec2{X: 60, Y: 45}))
	}
	r := p.raster.(*raster)
	for i, area := range r.area {
		if area != 0 {
			t.Fatalf("pixel %d keeps %g", i, area)
		}
	}
	for _, word := range r.passed {
		if word != 0 {
			t.Fatal("a mark is left")
		}
	}
}

func TestLinesAreCrisp(t *testing.T) {
	for _, c := range []struct {
		pen  float64
		want []uint8 // a column of pixels across a level line
	}{
		{1, []uint8{255, 0, 255}},
		{1.4, []uint8{255, 0, 255}},
		{2, []uint8{255, 0, 0, 255}},
		{3, []uint8{255, 0, 0, 0, 255}},
	} {
		for _, at := range []float64{20, 20.3, 20.5, 20.9} {
			picture := image.NewRGBA(image.Rect(0, 0, 40, 40))
			p := &Painter{}
			p.Begin(picture, View{Scale: 1, Origin: geometry.Vec2{Y: 40}, Pen: c.pen})
			p.Clear(white)
			line := geometry.Path{Vertices: []geometry.Vertex{{Vec2: geometry.Vec2{X: 5, Y: at}}, {Vec2: geometry.Vec2{X: 35, Y: at}}}}
			p.stroke(line, p.pen(penWidth), nil)
			p.raster.fill(picture, black)
			dark, other := 0, 0
			for y := range 40 {
				switch picture.RGBAAt(20, y).R {
				case 0:
					dark++
				case 255:
				default:
					other++
				}
			}
			if other > 0 || dark != len(c.want)-2 {
				t.Errorf("pen %g at %g: %d dark and %d grey pixels", c.pen, at, dark, other)
			}
		}
	}
}

// A dashed line of 100 mm with dashes of 6 and gaps of 4 has 60 mm of ink.
func TestDashes(t *testing.T) {
	for _, scale := range []float64{1, 3, 10} {
		picture := image.NewRGBA(image.Rect(0, 0, int(110*scale), 20))
		p := &Painter{}
		p.Begin(picture, View{Scale: scale, Pen: 1})
		p.Clear(white)
		p.stroke(geometry.Path{Vertices: []geometry.Vertex{{Vec2: geometry.Vec2{X: 5, Y: -10 / scale}}, {Vec2: geometry.Vec2{X: 105, Y: -10 / scale}}}}, 1, []float64{6, 4})
		p.raster.fill(picture, black)
		if got, want := ink(picture), 60*scale; math.Abs(got-want) > 0.5 {
			t.Errorf("at %g pixels a millimetre %g pixels of ink, want %g", scale, got, want)
		}
	}
}

// Only what is seen is laid out: the same dashes come out of a view that begins in
// the middle of the line.
func TestDashesStayInPlaceWhenCutOff(t *testing.T) {
	line := geometry.Path{Vertices: []geometry.Vertex{{Vec2: geometry.Vec2{X: 0, Y: 5}}, {Vec2: geometry.Vec2{X: 300, Y: 5}}}}
	paint := func(left float64) *image.RGBA {
		picture := image.NewRGBA(image.Rect(0, 0, 100, 10))
		p := &Painter{}
		p.Begin(picture, View{Scale: 1, Origin: geometry.Vec2{X: left, Y: 10}})
		p.Clear(white)
		p.stroke(line, 1, []float64{7, 1.5, 1, 1.5})
		p.raster.fill(picture, black)
		return picture
	}
	whole, part := paint(100), paint(137)
	for x := 37; x < 100; x++ {
		if a, b := whole.RGBAAt(x, 4), part.RGBAAt(x-37, 4); a != b {
			t.Fatalf("pixel %d is %v in one view and %v in the other", x, a, b)
		}
	}
}

// WCAG 2.2, success criteria 1.4.3 and 1.4.11: lettering has a contrast of at least
// 4.5 to 1 and lines one of 3 to 1 (formula and limits from memory).
func TestContrast(t *testing.T) {
	for name, palette := range map[string]*Palette{"light": Light(), "dark": Dark()} {
		for _, role := range scene.Roles()[1:] {
			least := 3.0
			if role == scene.Dimensions || role == scene.Legend {
				least = 4.5
			}
			for ground, c := range map[string]color.NRGBA{"paper": palette.Paper, "ground": palette.Ground} {
				if got := contrast(palette.Ink[role], c); got < least {
					t.Errorf("%s: %v on the %s has a contrast of %.2f, want %g", name, role, ground, got, least)
				}
			}
		}
	}
}

func contrast(a, b color.NRGBA) float64 {
	luminance := func(c color.NRGBA) float64 {
		linear := func(v uint8) float64 {
			s := float64(v) / 255
			if s <= 0.04045 {
				return s / 12.92
			}
			return math.Pow((s+0.055)/1.055, 2.4)
		}
		return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
	}
	x, y := luminance(a), luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

func TestLayersOfAPicture(t *testing.T) {
	laid := blank.Lay(bag.Default())
	drawing := dieline.OnScreen(&laid, 0, 12)
	inked := func(layers Layers) float64 {
		p, picture := sheet(900, 700)
		p.Begin(picture, View{Scale: 1, Origin: geometry.Vec2{X: drawing.Media.Min.X, Y: drawing.Media.Max.Y}, Pen: 1})
		p.Draw(drawing, Light(), layers)
		return ink(picture)
	}
	if got := inked(0); got != 0 {
		t.Errorf("without layers there are %g pixels of ink", got)
	}
	all := inked(AllLayers())
	for _, role := range scene.Roles()[1:] {
		without := AllLayers().With(role, false)
		if without.Has(role) || !without.With(role, true).Has(role) {
			t.Errorf("%v cannot be switched", role)
		}
		if got := inked(without); got >= all {
			t.Errorf("without %v there are %g pixels of ink, with it %g", role, got, all)
		}
	}
}

// A painter that was used before paints the same as a new one, also after pictures
// of other sizes.
func TestPaintersCanBeUsedAgain(t *testing.T) {
	drawing, view := paneDrawing()
	fresh := image.NewRGBA(image.Rect(0, 0, 320, 240))
	paintWith(&Painter{}, fresh, drawing, view, Dark())()
	used, again := &Painter{}, image.NewRGBA(image.Rect(0, 0, 320, 240))
	for _, size := range []int{50, 700, 320} {
		paintWith(used, image.NewRGBA(image.Rect(0, 0, size, 240)), drawing, view, Light())()
	}
	paintWith(used, again, drawing, view, Dark())()
	for i := range fresh.Pix {
		if fresh.Pix[i] != again.Pix[i] {
			t.Fatalf("value %d is %d and was %d", i, again.Pix[i], fresh.Pix[i])
		}
	}
}

func TestGoldenPictures(t *testing.T) {
	laid := blank.Lay(geomtest.WorkedExample())
	drawing := dieline.Sheets(&laid, "2026-03-31")[0]
	picture, err := Draw(drawing, 1.2)
	if err != nil {
		t.Fatal(err)
	}
	geomtest.GoldenPicture(t, "flat/worked-example.png", picture, 0.003)
}

// Far in and far out, on any bag, nothing fails and something is seen.
func TestExtremeZooms(t *testing.T) {
	laid := blank.Lay(bag.Default())
	picture := image.NewRGBA(image.Rect(0, 0, 200, 150))
	var p Painter
	for _, scale := range []float64{0.01, 0.05, 1, 120, 5000} {
		drawing := dieline.OnScreen(&laid, 0, max(12/scale, 0.02))
		p.Begin(picture, View{Scale: scale, Origin: geometry.Vec2{X: 240 - 100/scale, Y: 70 + 75/scale}, Pen: 1.4})
		p.Clear(white)
		p.Draw(drawing, Light(), AllLayers())
		if ink(picture) < 1 {
			t.Errorf("at %g pixels a millimetre nothing is seen", scale)
		}
	}
}

// BenchmarkZoomedIn paints a corner of the blank at 40 pixels a millimetre.
func BenchmarkZoomedIn(b *testing.B) {
	laid := blank.Lay(bag.Default())
	drawing := dieline.OnScreen(&laid, 0, 12.0/40)
	picture := image.NewRGBA(image.Rect(0, 0, paneWidth, paneHeight))
	paint := paintWith(&Painter{}, picture, drawing, View{Scale: 40, Origin: geometry.Vec2{X: 230, Y: 80}, Pen: 1.4}, Light())
	b.ReportAllocs()
	for b.Loop() {
		paint()
	}
}

// Whatever the edges are, the raster neither fails nor keeps anything back.
func FuzzRaster(f *testing.F) {
	f.Add(1.0, 2.0, 30.0, 40.0, -5.0, 60.0)
	f.Add(0.0, 0.0, 64.0, 48.0, 64.0, 0.0)
	f.Add(math.Inf(1), 0.0, math.NaN(), 3.0, 1e300, -1e300)
	f.Add(63.99999999, 47.99999999, 1e-300, 1e9, -1e9, 12.0)
	f.Fuzz(func(t *testing.T, x0, y0, x1, y1, x2, y2 float64) {
		picture := image.NewRGBA(image.Rect(0, 0, 64, 48))
		var r raster
		r.reset(64, 48)
		r.edge(x0, y0, x1, y1)
		r.edge(x1, y1, x2, y2)
		r.edge(x2, y2, x0, y0)
		r.fill(picture, black)
		for _, area := range r.area {
			if area != 0 {
				t.Fatal("an edge is left after filling")
			}
		}
	})
}
