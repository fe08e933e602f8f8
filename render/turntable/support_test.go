package turntable_test

import (
	"bytes"
	"image"
	"image/color"
	"math"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/render/solid"
	"gussetwright/render/turntable"
)

// teaBag returns an invented gift bag.
func teaBag() bag.Spec {
	spec := bag.Default()
	spec.Name = "Quillmoor Tea House"
	spec.Body.Width, spec.Body.Gusset, spec.Body.Height = 190, 95, 265
	spec.Paper.Kind = bag.PaperMatt
	return spec
}

// quadrants returns a picture of a blank in which each quarter of each panel has a
// colour of its own.
func quadrants(piece *blank.Piece, scale float64) *image.RGBA {
	picture := image.NewRGBA(image.Rect(0, 0, int(math.Ceil(piece.Width*scale)), int(math.Ceil(piece.Height*scale))))
	for y := range picture.Rect.Dy() {
		for x := range picture.Rect.Dx() {
			place := geometry.Vec2{X: (float64(x) + 0.5) / scale, Y: piece.Height - (float64(y)+0.5)/scale}
			picture.SetRGBA(x, y, quadrantAt(piece, place))
		}
	}
	return picture
}

var quarterColours = [4]color.RGBA{{230, 40, 40, 255}, {40, 170, 60, 255}, {40, 80, 230, 255}, {240, 200, 40, 255}}

// quadrantAt returns the colour at a place of the blank.
func quadrantAt(piece *blank.Piece, place geometry.Vec2) color.RGBA {
	for i := range piece.Panels {
		box := piece.Panels[i].Box
		if !box.Contains(place) {
			continue
		}
		quarter := 0
		if place.X > box.Center().X {
			quarter++
		}
		if place.Y > box.Center().Y {
			quarter += 2
		}
		return quarterColours[(quarter+i)%4]
	}
	return color.RGBA{255, 255, 255, 255}
}

// artwork returns a picture of the blank of the tea house: leaves in two greens on a
// ground that runs from cream to sage, a large name and small print on each face.
func artwork(t testing.TB, piece *blank.Piece, scale float64) *image.RGBA {
	t.Helper()
	picture := image.NewRGBA(image.Rect(0, 0, int(math.Ceil(piece.Width*scale)), int(math.Ceil(piece.Height*scale))))
	for y := range picture.Rect.Dy() {
		share := float64(y) / float64(picture.Rect.Dy())
		for x := range picture.Rect.Dx() {
			c := color.RGBA{uint8(246 - 60*share), uint8(240 - 30*share), uint8(224 - 60*share), 255}
			if leaf(float64(x)/scale, float64(y)/scale) {
				c = color.RGBA{uint8(98 + 40*share), uint8(130 + 30*share), uint8(96 + 20*share), 255}
			}
			picture.SetRGBA(x, y, c)
		}
	}
	for _, panel := range piece.Panels {
		if panel.ID != "front" && panel.ID != "back" {
			continue
		}
		middle, low := panel.Box.Center().X, panel.Box.Min.Y
		write(t, picture, gobold.TTF, "Quillmoor", 30*scale, middle*scale, (piece.Height-low-150)*scale)
		write(t, picture, goregular.TTF, "TEA HOUSE", 13*scale, middle*scale, (piece.Height-low-130)*scale)
		write(t, picture, goregular.TTF, "Leaves, pots and cups since the year of the great rain", 4.2*scale, middle*scale, (piece.Height-low-40)*scale)
		write(t, picture, goregular.TTF, "Paper bag from responsible sources. Please use it again.", 2.6*scale, middle*scale, (piece.Height-low-30)*scale)
	}
	return picture
}

// leaf tells whether a point in mm lies on a leaf of the pattern.
func leaf(x, y float64) bool {
	row := math.Floor(y / 34)
	x = math.Mod(x+row*17, 40) - 20
	y = math.Mod(y, 34) - 17
	x, y = (x+y)*0.7, (y-x)*0.7
	return math.Abs(y) < 4.5*(1-x*x/144) && math.Abs(y) > 0.5
}

func write(t testing.TB, picture *image.RGBA, face []byte, text string, size, middle, base float64) {
	t.Helper()
	parsed, err := opentype.Parse(face)
	if err != nil {
		t.Fatal(err)
	}
	made, err := opentype.NewFace(parsed, &opentype.FaceOptions{Size: size, DPI: 72})
	if err != nil {
		t.Fatal(err)
	}
	drawer := font.Drawer{Dst: picture, Src: image.NewUniform(color.RGBA{42, 62, 48, 255}), Face: made}
	drawer.Dot = fixed.P(int(middle)-drawer.MeasureString(text).Round()/2, int(base))
	drawer.DrawString(text)
}

// job is a page with what it was made from.
type job struct {
	page turntable.Page
	view solid.View // of the same bag with the same textures
	laid blank.Blank
}

// jobOf returns the page of a bag. Paint draws a piece of its blank at a scale.
func jobOf(spec bag.Spec, scale float64, paint func(piece *blank.Piece, scale float64) *image.RGBA) job {
	laid := blank.Lay(spec)
	model, paper := solid.NewModel(fold.Standing(&laid)), solid.PaperOf(spec.Paper)
	j := job{laid: laid, view: solid.View{
		Width: 1200, Height: 900, Samples: 2, Camera: solid.Isometric, Model: model, Paper: paper, Look: solid.LightLook(),
	}}
	j.page = turntable.Page{Title: spec.Name, Mesh: model.Mesh(), Paper: paper}
	for i := range laid.Pieces {
		piece := &laid.Pieces[i]
		picture := paint(piece, scale)
		j.page.Textures = append(j.page.Textures, turntable.Texture{Picture: picture, Scale: scale, Height: piece.Height})
		j.view.Textures = append(j.view.Textures, solid.NewTexture(picture, scale, piece.Height))
	}
	var renderer solid.Renderer
	j.page.Still = renderer.Draw(j.view)
	return j
}

// demo returns the page of the tea house with all that a page may hold.
func demo(t testing.TB) job {
	j := jobOf(teaBag(), 4, func(piece *blank.Piece, scale float64) *image.RGBA { return artwork(t, piece, scale) })
	j.page.Title = "Quillmoor Tea House, gift bag"
	j.page.Facts = []turntable.Fact{
		{"Size", "190 mm wide, 95 mm deep, 265 mm high\nHeight without the handles; about 440 mm with them"},
		{"Paper", "Matt coated, paper weight 190 g/m²"},
		{"Handle", "Rope, 6 mm holes, knotted inside"},
		{"Version", "3"},
		{"Date", "25 November 2026"},
	}
	j.page.Swatches = []turntable.Swatch{
		{"Leaf green", color.RGBA{98, 130, 96, 255}, "C 62 M 34 Y 66 K 18"},
		{"Ink green", color.RGBA{42, 62, 48, 255}, "C 76 M 50 Y 70 K 60"},
		{"Cream", color.RGBA{246, 240, 224, 255}, "C 3 M 5 Y 14 K 0"},
	}
	j.page.Stops = []string{"This size needs a larger sheet of paper."}
	j.page.Notes = []string{
		"Back: The small print comes close to an edge and may be folded there.",
		"The picture of the leaves may look a little blurred in print.",
	}
	j.page.Described = "A bag in two greens with ropes."
	j.page.Approved = []string{"190 mm wide, 95 mm deep, 265 mm high", "Matt coated, white", "Rope", "Version 3 of 25 November 2026", "Still open: 3", "Only for this bag."}
	j.page.Cautions = []string{"Colours on a screen are not binding."}
	small := j.view
	small.Width, small.Height = 300, 400
	var renderer solid.Renderer
	j.page.Small = renderer.Draw(small)
	return j
}

func written(t testing.TB, p turntable.Page) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := turntable.Write(&out, p); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}
