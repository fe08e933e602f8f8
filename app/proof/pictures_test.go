package proof

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/render/solid"
	"gussetwright/render/turntable"
)

func pictureOf(t *testing.T, p *Proof, side Side) *image.NRGBA {
	t.Helper()
	var out bytes.Buffer
	if err := p.Picture(&out, side); err != nil {
		t.Fatal(err)
	}
	decoded, err := png.Decode(&out)
	if err != nil {
		t.Fatal(err)
	}
	picture := image.NewNRGBA(decoded.Bounds())
	for y := range picture.Rect.Dy() {
		for x := range picture.Rect.Dx() {
			picture.Set(x, y, decoded.At(x, y))
		}
	}
	return picture
}

// isLike tells whether the light of a picture may have made one colour of another:
// its channels stand in about the same proportion.
func isLike(got, want color.NRGBA) bool {
	most := func(c color.NRGBA) float64 { return float64(max(c.R, c.G, c.B, 1)) }
	for _, pair := range [3][2]uint8{{got.R, want.R}, {got.G, want.G}, {got.B, want.B}} {
		if math.Abs(float64(pair[0])/most(got)-float64(pair[1])/most(want)) > 0.06 {
			return false
		}
	}
	return true
}

// The parts of the drawing stand where they were drawn, seen from the front and from
// the back, and nothing of it is seen from the sides.
func TestPicturesShowTheArtwork(t *testing.T) {
	red, yellow, green := color.NRGBA{176, 40, 24, 255}, color.NRGBA{240, 192, 32, 255}, color.NRGBA{60, 130, 90, 255}
	p := proofOf(t, func(s *bag.Spec) { s.Handle.Kind = bag.HandleNone })
	for _, side := range Sides() {
		picture := pictureOf(t, p, side)
		size := picture.Rect.Size()
		if max(size.X, size.Y) != longerSide || min(size.X, size.Y) < leastSide {
			t.Errorf("%s: %v pixels", side, size)
		}
		if corner := picture.NRGBAAt(2, 2); !isLike(corner, color.NRGBA{246, 244, 240, 255}) {
			t.Errorf("%s: ground %v", side, corner)
		}
		// Without a handle the paper fills the picture but for its edge. The drawing
		// reaches 3 mm beyond the face of 240 × 360 mm.
		at := func(x, y float64) color.NRGBA {
			inner := picture.Rect.Inset(pictureEdge)
			return picture.NRGBAAt(inner.Min.X+int((x-3)/240*float64(inner.Dx())), inner.Min.Y+int((y-3)/360*float64(inner.Dy())))
		}
		switch side {
		case Front, Back:
			if roof, sun := at(65, 150), at(180, 110); !isLike(roof, red) || !isLike(sun, yellow) {
				t.Errorf("%s: roof %v, sun %v", side, roof, sun)
			}
		default:
			found := map[string]int{}
			for y := 0; y < size.Y; y += 4 {
				for x := 0; x < size.X; x += 4 {
					c := picture.NRGBAAt(x, y)
					for name, colour := range map[string]color.NRGBA{"red": red, "green": green} {
						if isLike(c, colour) {
							found[name]++
						}
					}
				}
			}
			if isSide := side == Left || side == Right; isSide && (found["green"] < 1000 || found["red"] > 0) || side == Isometric && (found["green"] < 1000 || found["red"] < 1000) {
				t.Errorf("%s: %v", side, found)
			}
		}
	}
}

// White paper is seen to be white from every side, also where little light comes: half
// way between its light from outside and full white at least. The ground stays as it is.
func TestWhitePaperLooksWhite(t *testing.T) {
	p := proofOf(t, func(s *bag.Spec) {
		s.Artwork, s.Print.Background, s.Handle.Kind = nil, bag.Background{}, bag.HandleNone
	})
	for _, side := range []Side{Front, Base} {
		picture := pictureOf(t, p, side)
		size := picture.Rect.Size()
		paper := picture.NRGBAAt(size.X*9/20, size.Y*3/10)
		if min(paper.R, paper.G, paper.B) < 225 {
			t.Errorf("%s: white paper is %v", side, paper)
		}
		if ground := picture.NRGBAAt(2, 2); ground != (color.NRGBA{246, 244, 240, 255}) {
			t.Errorf("%s: the ground is %v", side, ground)
		}
	}
	s, err := p.onStage(1)
	if err != nil {
		t.Fatal(err)
	}
	v := s.view(solid.Top, softLook())
	v.Width, v.Height = 400, 400
	if floor := s.draw(v).RGBAAt(205, 205); min(floor.R, floor.G, floor.B) < 225 {
		t.Errorf("the floor of a white bag is %v", floor)
	}
}

// A longer exposure keeps hues and the order of light, and leaves the ground.
func TestExposure(t *testing.T) {
	last := 0.0
	for v := 1; v < 256; v++ {
		light := float64(v) / 255
		made := exposed(light)
		if made <= last || made < light-0.006 || made > 1 {
			t.Errorf("%g becomes %g, %g before it", light, made, last)
		}
		last = made
	}
	// A brown, half of it on the ground, and the ground.
	picture, alone := image.NewRGBA(image.Rect(0, 0, 3, 1)), image.NewRGBA(image.Rect(0, 0, 3, 1))
	for x, c := range []color.RGBA{{180, 90, 45, 255}, {210, 165, 142, 255}, {240, 240, 240, 255}} {
		picture.SetRGBA(x, 0, c)
	}
	alone.SetRGBA(0, 0, color.RGBA{180, 90, 45, 255})
	alone.SetRGBA(1, 0, color.RGBA{90, 45, 22, 255})
	expose(picture, alone)
	if c := picture.RGBAAt(0, 0); c.R < 220 || c.A != 255 || math.Abs(float64(c.R)/2-float64(c.G)) > 1 || math.Abs(float64(c.R)/4-float64(c.B)) > 1 {
		t.Errorf("a brown becomes %v", c)
	}
	// 90 × 1.36 = 122 and 120 of the ground, and so on.
	if c := picture.RGBAAt(1, 0); c != (color.RGBA{242, 181, 150, 255}) {
		t.Errorf("a brown edge becomes %v", c)
	}
	if c := picture.RGBAAt(2, 0); c != (color.RGBA{240, 240, 240, 255}) {
		t.Errorf("the ground becomes %v", c)
	}
}

// A white line of 2 mm is seen as clearly as one of 6 mm.
func TestSmallThingsAreSharp(t *testing.T) {
	p := proofOf(t, func(s *bag.Spec) { s.Handle.Kind = bag.HandleNone })
	picture := pictureOf(t, p, Front)
	inner := picture.Rect.Inset(pictureEdge)
	perMM := float64(inner.Dy()) / 360
	column := inner.Min.X + inner.Dx()/2
	at := func(y float64) int { return int(picture.NRGBAAt(column, inner.Min.Y+int((y-3)*perMM)).R) }
	ground, wide, fine := at(280), at(263), at(301)
	if wide-ground < 100 || wide-fine > (wide-ground)/10 {
		t.Errorf("red of the ground %d, the wide line %d, the fine one %d", ground, wide, fine)
	}
}

// Views on the page have one scale: each shows the paper in the size of the bag. The
// perspective makes what is further away a little smaller.
func TestViewsHaveOneScale(t *testing.T) {
	p := proofOf(t, nil)
	s, err := p.onStage(1)
	if err != nil {
		t.Fatal(err)
	}
	b := builder{Proof: p, stage: s}
	want := [][]geometry.Vec2{{{X: 240, Y: 360}, {X: 240, Y: 360}, {X: 100, Y: 360}}, {{X: 240, Y: 100}, {X: 240, Y: 100}}}
	rows := b.shots()
	for i, shots := range rows {
		for k := range shots {
			shot := &shots[k]
			view := shot.view
			view.Model, view.Reference = s.bare, ""
			paper := s.outline(view)
			got := geometry.Vec2{X: paper.Width() / shot.nearer, Y: paper.Height() / shot.nearer}
			if math.Abs(got.X/want[i][k].X-1) > 0.02 || math.Abs(got.Y/want[i][k].Y-1) > 0.03 {
				t.Errorf("%s shows %.1f × %.1f mm, want %v", shot.name, got.X, got.Y, want[i][k])
			}
		}
	}
	made := newBand(rows, 174)
	for _, row := range made.rows {
		last := len(row.shots) - 1
		end := row.lefts[last] + row.shots[last].size().X*made.scale
		if row.lefts[0] < leastGap-1e-6 || end > 174-leastGap+1e-6 || math.Abs(row.lefts[0]-(174-end)) > 1e-6 {
			t.Errorf("views reach from %g to %g of 174 mm", row.lefts[0], end)
		}
	}
}

func TestPageStaysSmall(t *testing.T) {
	// Noise is the worst that a picture can hold.
	random := rand.New(rand.NewPCG(5, 6))
	noise := image.NewRGBA(image.Rect(0, 0, 2400, 3600))
	for i := range noise.Pix {
		noise.Pix[i] = uint8(random.Uint32())
		if i%4 == 3 {
			noise.Pix[i] = 255
		}
	}
	spec, files := lakeBag()
	files["noise.png"] = asPNG(noise)
	noisy := spec
	noisy.Artwork = []bag.Artwork{bag.NewArtwork("noise.png", bag.OnFaces)}
	for name, s := range map[string]bag.Spec{"drawn": spec, "noise": noisy} {
		p := New(t.Context(), Order{Snapshot: derive(t, s, files), Date: day})
		var out bytes.Buffer
		if err := p.Page(&out); err != nil {
			t.Fatal(err)
		}
		page := out.String()
		if out.Len() >= 2_000_000 || strings.Count(page, "data:image/") < 2 {
			t.Errorf("%s: the page takes %d bytes and holds %d pictures", name, out.Len(), strings.Count(page, "data:image/"))
		}
		for _, want := range []string{"<h1>Ferrow Lake Bakery</h1>", "100\u00a0mm deep", p.Version, "Gloss coated paper\nwhite, paper weight 170\u00a0g/m²", "25\u00a0November\u00a02026", "must confirm it", `lang="en"`} {
			if !strings.Contains(page, want) {
				t.Errorf("%s: the page lacks %q", name, want)
			}
		}
	}
}

// The words of the page are those that it has by itself, so that both are gathered for
// translation.
func TestPageWordsAreComplete(t *testing.T) {
	p := proofOf(t, func(s *bag.Spec) { s.Artwork = nil })
	if got, want := p.pageWords(), turntable.English(); got != want {
		t.Errorf("words %+v, want %+v", got, want)
	}
}

func BenchmarkPDF(b *testing.B) {
	p := proofOf(b, nil)
	b.ReportAllocs()
	for b.Loop() {
		p.stage = nil
		written(b, p)
	}
}

func BenchmarkPage(b *testing.B) {
	p := proofOf(b, nil)
	b.ReportAllocs()
	for b.Loop() {
		p.stage = nil
		var out bytes.Buffer
		if err := p.Page(&out); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkPictures is the whole set.
func BenchmarkPictures(b *testing.B) {
	p := proofOf(b, nil)
	b.ReportAllocs()
	for b.Loop() {
		p.stage = nil
		for _, side := range Sides() {
			var out bytes.Buffer
			if err := p.Picture(&out, side); err != nil {
				b.Fatal(err)
			}
		}
	}
}
