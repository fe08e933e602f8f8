package printed_test

import (
	"image"
	"image/color"
	"math"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/placement"
	"gussetwright/render/flat"
	"gussetwright/render/printed"
)

var (
	red    = color.RGBA{200, 0, 0, 255}
	green  = color.RGBA{0, 150, 0, 255}
	blue   = color.RGBA{0, 0, 220, 255}
	yellow = color.RGBA{240, 220, 0, 255}
	white  = color.RGBA{255, 255, 255, 255}
)

// quadrants is a picture of four colours: red and green above, blue and yellow below.
func quadrants(side int) []*image.RGBA {
	var levels []*image.RGBA
	for ; side >= 4; side /= 2 {
		picture := image.NewRGBA(image.Rect(0, 0, side, side))
		for y := range side {
			for x := range side {
				picture.SetRGBA(x, y, [2][2]color.RGBA{{red, green}, {blue, yellow}}[2*y/side][2*x/side])
			}
		}
		levels = append(levels, picture)
	}
	return levels
}

// painted returns the print side of the worked example with the quadrants placed.
func painted(change func(*bag.Spec), paper color.RGBA, background color.RGBA, artwork ...bag.Artwork) (*printed.Side, *blank.Blank) {
	spec := geomtest.WorkedExample()
	spec.Artwork = artwork
	if change != nil {
		change(&spec)
	}
	b := blank.Lay(spec)
	file := placement.Source{Size: geometry.Vec2{X: 100, Y: 100}}
	placed := placement.Lay(&b, func(int) (placement.Source, bool) { return file, true })
	levels := quadrants(400)
	return printed.NewSide(&b, 0, placed, func(int) []*image.RGBA { return levels }, paper, background), &b
}

func exact(place string, change func(*bag.Artwork)) bag.Artwork {
	art := bag.NewArtwork("quadrants.png", place)
	art.Fit = bag.FitExact
	if change != nil {
		change(&art)
	}
	return art
}

// at returns the colour of a picture of the whole piece at a point of the blank.
func at(picture *image.RGBA, b *blank.Blank, scale float64, p geometry.Vec2) color.RGBA {
	return picture.RGBAAt(int(p.X*scale), int((b.Pieces[0].Height-p.Y)*scale))
}

// The colours stand where the geometry of placing says, to a pixel: the boundary
// between two quadrants is found where the middle of the file lies.
func TestArtworkStandsWhereItIsPlaced(t *testing.T) {
	middle := geometry.Vec2{X: 120, Y: 250} // of the front of the worked example
	for _, c := range []struct {
		name                                       string
		change                                     func(*bag.Artwork)
		upperLeft, upperRight, lowerLeft, lowRight color.RGBA
	}{
		{"upright", nil, red, green, blue, yellow},
		{"a quarter anticlockwise", func(a *bag.Artwork) { a.Turn = 90 }, green, yellow, red, blue},
		{"on its head", func(a *bag.Artwork) { a.Turn = 180 }, yellow, blue, green, red},
		{"mirrored", func(a *bag.Artwork) { a.Mirror = true }, green, red, yellow, blue},
		{"mirrored, then turned", func(a *bag.Artwork) { a.Mirror, a.Turn = true, 90 }, red, blue, green, yellow},
	} {
		t.Run(c.name, func(t *testing.T) {
			side, b := painted(nil, white, color.RGBA{}, exact("front", c.change))
			for _, quality := range []printed.Quality{printed.Draft, printed.Fine} {
				const scale = 4.0
				picture := side.Picture(&b.Pieces[0], scale, quality)
				const near = 1 / scale // a pixel from the boundary
				for _, probe := range []struct {
					dx, dy float64
					want   color.RGBA
				}{
					{-near, near, c.upperLeft},
					{near, near, c.upperRight},
					{-near, -near, c.lowerLeft},
					{near, -near, c.lowRight},
					{-49.5, 49.5, c.upperLeft},
					{49.5, -49.5, c.lowRight},
					{-51, 0.5, white},
					{0.5, 51, white},
				} {
					p := middle.Add(geometry.Vec2{X: probe.dx * 1.5, Y: probe.dy * 1.5})
					if math.Abs(probe.dx) > 1 {
						p = middle.Add(geometry.Vec2{X: probe.dx, Y: probe.dy})
					}
					if got := at(picture, b, scale, p); got != probe.want {
						t.Errorf("quality %d at %v: %v, want %v", quality, p, got, probe.want)
					}
				}
			}
		})
	}
}

// Inks multiply the paper: full black stays black, no ink shows the paper, and every
// channel is the product of both (the Lambert-Beer view of transparent ink, as in the
// Multiply blend mode of ISO 32000-1, 11.3.5.2).
func TestInkOnBrownPaper(t *testing.T) {
	brown := color.RGBA{205, 172, 133, 255}
	side, b := painted(nil, brown, color.RGBA{}, exact("front", nil))
	picture := side.Picture(&b.Pieces[0], 2, printed.Fine)
	product := func(ink color.RGBA) color.RGBA {
		times := func(a, b uint8) uint8 { return uint8(math.Round(float64(a) * float64(b) / 255)) }
		return color.RGBA{times(ink.R, brown.R), times(ink.G, brown.G), times(ink.B, brown.B), 255}
	}
	if got, want := at(picture, b, 2, geometry.Vec2{X: 150, Y: 220}), product(yellow); got != want {
		t.Errorf("yellow on brown is %v, want %v", got, want)
	}
	if got := at(picture, b, 2, geometry.Vec2{X: 10, Y: 100}); got != brown {
		t.Errorf("bare paper is %v, want %v", got, brown)
	}
}

// The background runs out to the bleed and leaves the glue areas bare.
func TestBackgroundKeepsOffTheGlue(t *testing.T) {
	side, b := painted(func(s *bag.Spec) { s.Print.Background.Cyan = 100 }, white, blue)
	picture := image.NewRGBA(image.Rect(0, 0, 1420, 980))
	side.Paint(&printed.Bench{}, picture, flat.View{Scale: 2, Origin: geometry.Vec2{X: -5, Y: 485}}, printed.Fine)
	probe := func(x, y float64) color.RGBA { return picture.RGBAAt(int((x+5)*2), int((485-y)*2)) }
	for _, c := range []struct {
		where string
		x, y  float64
		want  color.RGBA
	}{
		{"front", 120, 250, blue},
		{"bleed to the left", -2.5, 250, blue},
		{"beyond the bleed", -4, 250, color.RGBA{}},
		{"under the seam", 682, 250, blue},
		{"on the seam flap", 690, 250, white},
	} {
		if got := probe(c.x, c.y); got != c.want {
			t.Errorf("%s is %v, want %v", c.where, got, c.want)
		}
	}
	for _, area := range b.Pieces[0].Glue {
		var middle geometry.Vec2 // of the corners, which lies within these convex shapes
		for _, corner := range area.Shape.Vertices {
			middle = middle.Add(corner.Vec2.Scale(1 / float64(len(area.Shape.Vertices))))
		}
		if got := probe(middle.X, middle.Y); area.Side == blank.PrintSide && got != white {
			t.Errorf("glue %s on %s is %v", area.Role, area.Panel, got)
		}
	}
}

// What is later in the list lies over what is earlier, as far as it is opaque.
func TestOrderAndOpacity(t *testing.T) {
	half := exact("front", func(a *bag.Artwork) { a.Turn, a.Opacity = 180, 50 })
	side, b := painted(nil, white, color.RGBA{}, exact("front", nil), half)
	picture := side.Picture(&b.Pieces[0], 2, printed.Fine)
	got := at(picture, b, 2, geometry.Vec2{X: 100, Y: 280})
	want := color.RGBA{red.R/2 + yellow.R/2, red.G/2 + yellow.G/2, 0, 255}
	if off := math.Abs(float64(got.R)-float64(want.R)) + math.Abs(float64(got.G)-float64(want.G)); off > 3 {
		t.Errorf("half yellow over red is %v, want about %v", got, want)
	}
}

// Patterns leave no seams: a plain file repeated, turned, gives one plain colour.
func TestRepeatedFileHasNoSeams(t *testing.T) {
	plain := image.NewRGBA(image.Rect(0, 0, 64, 64))
	for i := range plain.Pix {
		plain.Pix[i] = []uint8{10, 120, 60, 255}[i%4]
	}
	spec := geomtest.WorkedExample()
	art := exact("front", func(a *bag.Artwork) { a.Repeat, a.Turn = bag.RepeatHalfDrop, 30 })
	spec.Artwork = []bag.Artwork{art}
	b := blank.Lay(spec)
	file := placement.Source{Size: geometry.Vec2{X: 23, Y: 17}}
	placed := placement.Lay(&b, func(int) (placement.Source, bool) { return file, true })
	side := printed.NewSide(&b, 0, placed, func(int) []*image.RGBA { return []*image.RGBA{plain} }, white, color.RGBA{})
	picture := side.Picture(&b.Pieces[0], 3, printed.Fine)
	bare := 0
	for y := 75.0; y < 425; y += 0.5 {
		for x := 2.0; x < 238; x += 0.5 {
			if at(picture, &b, 3, geometry.Vec2{X: x, Y: y}) != (color.RGBA{10, 120, 60, 255}) {
				bare++
			}
		}
	}
	if bare > 0 {
		t.Errorf("%d probes fell between two copies", bare)
	}
}

// Pictures at the corners of the worked example, to look at.
func TestPictureOfTheBlank(t *testing.T) {
	side, _ := painted(func(s *bag.Spec) { s.Print.Background = bag.Background{Magenta: 20} }, color.RGBA{205, 172, 133, 255}, color.RGBA{255, 214, 225, 255},
		exact(bag.OnFaces, func(a *bag.Artwork) { a.Turn, a.Scale = 20, 1.5 }), exact("gusset-right", func(a *bag.Artwork) { a.Fit = bag.FitContain }),
		exact("front-turn-in", func(a *bag.Artwork) { a.Repeat, a.Scale = bag.RepeatGrid, 0.3 }))
	picture := image.NewRGBA(image.Rect(0, 0, 710, 490))
	side.Paint(&printed.Bench{}, picture, flat.View{Scale: 1, Origin: geometry.Vec2{X: -5, Y: 485}}, printed.Fine)
	geomtest.GoldenPicture(t, "printed/quadrants.png", picture, 2)
}

func BenchmarkPaint(b *testing.B) {
	side, _ := painted(nil, color.RGBA{253, 253, 252, 255}, color.RGBA{}, exact(bag.OnBlank, func(a *bag.Artwork) { a.Fit = bag.FitCover }))
	turned, _ := painted(nil, color.RGBA{253, 253, 252, 255}, color.RGBA{}, exact(bag.OnBlank, func(a *bag.Artwork) { a.Fit, a.Turn = bag.FitCover, 30 }))
	picture := image.NewRGBA(image.Rect(0, 0, 900, 700))
	var bench printed.Bench
	view := flat.View{Scale: 1.25, Origin: geometry.Vec2{X: -10, Y: 500}}
	for name, one := range map[string]*printed.Side{"upright": side, "turned": turned} {
		for quality, how := range []string{"draft", "fine"} {
			b.Run(name+"/"+how, func(b *testing.B) {
				for b.Loop() {
					one.Paint(&bench, picture, view, printed.Quality(quality))
				}
			})
		}
	}
}
