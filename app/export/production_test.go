package export_test

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	_ "image/png" // pictures of pages
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/image/tiff"

	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/pdf"
	"gussetwright/render/report"
	"gussetwright/render/solid"
)

// The colours of the quadrants of every file, far from each other: upper left, upper
// right, lower left, lower right.
var quadrants = [4]color.RGBA{{220, 30, 30, 255}, {30, 160, 40, 255}, {30, 60, 210, 255}, {240, 210, 20, 255}}

// photo returns quadrants as a JPEG of 410 × 610 pixels, which on the front and its
// bleed, 246 × 366 mm, is 410 ÷ 246 × 25.4 = 42 pixels to the inch.
func photo(t *testing.T) []byte {
	picture := image.NewRGBA(image.Rect(0, 0, 410, 610))
	for y := range 610 {
		for x := range 410 {
			picture.SetRGBA(x, y, quadrants[2*(2*y/610)+2*x/410])
		}
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, picture, &jpeg.Options{Quality: 95}); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// drawing returns quadrants as an SVG file in the size of the gusset and its bleed.
func drawing() []byte {
	var out bytes.Buffer
	fmt.Fprint(&out, `<svg xmlns="http://www.w3.org/2000/svg" width="106mm" height="366mm" viewBox="0 0 2 2" preserveAspectRatio="none">`)
	for i, c := range quadrants {
		fmt.Fprintf(&out, `<rect x="%d" y="%d" width="1" height="1" fill="#%02x%02x%02x"/>`, i%2, i/2, c.R, c.G, c.B)
	}
	fmt.Fprint(&out, `</svg>`)
	return out.Bytes()
}

// page returns quadrants and a line of text as a PDF file in the size of the back
// and its bleed.
func page(t *testing.T) []byte {
	t.Helper()
	p := report.Page{Width: 246, Height: 366}
	for i, c := range quadrants {
		box := geometry.RectAt(float64(i%2)*123, float64(1-i/2)*183, 123, 183)
		fill := report.RGB(c.R, c.G, c.B)
		p.Items = append(p.Items, report.Box{Rect: box, Fill: fill})
	}
	p.Items = append(p.Items, report.Text{At: geometry.Vec2{X: 20, Y: 60}, Size: 10, Text: "Quillmoor"})
	var out bytes.Buffer
	if err := pdf.WriteReport(&out, []report.Page{p}, pdf.Info{Title: "Back", Date: day}); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// illustrated returns the worked example with a JPEG on its front, a page of a PDF
// file on its back and an SVG drawing on its right gusset.
func illustrated(t *testing.T) (*document.Snapshot, map[string][]byte) {
	t.Helper()
	spec := geomtest.WorkedExample()
	spec.Artwork = []bag.Artwork{bag.NewArtwork("front.jpg", "front"), bag.NewArtwork("back.pdf", "back"), bag.NewArtwork("gusset.svg", "gusset-right")}
	spec.Print.Background.Cyan = 40
	files := map[string][]byte{"front.jpg": photo(t), "back.pdf": page(t), "gusset.svg": drawing()}
	snapshot, err := document.DeriveWithArt(context.Background(), spec, files)
	if err != nil {
		t.Fatal(err)
	}
	if err := snapshot.ArtError(); err != nil {
		t.Fatal(err)
	}
	return snapshot, files
}

// production writes the production file of the illustrated bag.
func production(t *testing.T) (path string, files map[string][]byte, snapshot *document.Snapshot) {
	t.Helper()
	snapshot, files = illustrated(t)
	kinds, err := export.Choose("dieline")
	if err != nil {
		t.Fatal(err)
	}
	paths, err := export.Write(context.Background(), export.Job{Folder: t.TempDir(), Project: "bag", Snapshot: snapshot, Date: day, Kinds: kinds}, func(float64, string) {})
	if err != nil {
		t.Fatal(err)
	}
	return paths[0], files, snapshot
}

// expected returns the colour that geometry puts at a point of the blank, and false
// close to a border or where no file lies.
func expected(p geometry.Vec2, clear float64) (color.RGBA, bool) {
	for _, panel := range []geometry.Rect{geometry.RectAt(0, 70, 240, 360), geometry.RectAt(240, 70, 100, 360), geometry.RectAt(340, 70, 240, 360)} {
		if !panel.Inset(clear).Contains(p) {
			continue
		}
		off := p.Sub(panel.Center())
		if math.Abs(off.X) < clear || math.Abs(off.Y) < clear {
			return color.RGBA{}, false
		}
		right, below := 0, 0
		if off.X > 0 {
			right = 1
		}
		if off.Y < 0 {
			below = 1
		}
		return quadrants[2*below+right], true
	}
	return color.RGBA{}, false
}

// nearest returns which quadrant a colour is closest to.
func nearest(c color.Color) color.RGBA {
	best, least := color.RGBA{}, math.Inf(1)
	r, g, b, _ := c.RGBA()
	for _, q := range quadrants {
		d := math.Hypot(math.Hypot(float64(r>>8)-float64(q.R), float64(g>>8)-float64(q.G)), float64(b>>8)-float64(q.B))
		if d < least {
			best, least = q, d
		}
	}
	return best
}

// Colours stand in the production file where geometry says, to a pixel, in the
// pictures that poppler and MuPDF make of it. Lines of the drawing are switched off by
// probing away from them.
func TestColoursStandInTheFileWhereGeometrySays(t *testing.T) {
	path, _, snapshot := production(t)
	const perInch = 50.8 // 2 pixels to the mm
	folder := t.TempDir()
	geomtest.Run(t, "pdftoppm", "-r", fmt.Sprint(perInch), "-png", path, filepath.Join(folder, "poppler"))
	geomtest.Run(t, "mutool", "draw", "-r", fmt.Sprint(perInch), "-o", filepath.Join(folder, "mupdf-1.png"), path)
	trim, mediaTop := boxes(t, path, 1)
	for _, reader := range []string{"poppler-1.png", "mupdf-1.png"} {
		file, err := os.Open(filepath.Join(folder, reader))
		if err != nil {
			t.Fatal(err)
		}
		picture, _, err := image.Decode(file)
		file.Close()
		if err != nil {
			t.Fatal(err)
		}
		wrong, looked := 0, 0
		for y := 72.0; y < 428; y += 0.5 {
			for x := 1.0; x < 579; x += 0.5 {
				p := geometry.Vec2{X: x + 0.25, Y: y + 0.25}
				want, known := expected(p, 0.6)
				if !known || nearLine(snapshot, p) {
					continue
				}
				px := int((trim.X*25.4/72 + p.X) * 2)
				py := int((mediaTop*25.4/72 - trim.Y*25.4/72 - p.Y) * 2)
				looked++
				if nearest(picture.At(px, py)) != want {
					wrong++
				}
			}
		}
		if looked < 100_000 || float64(wrong) > 0.01*float64(looked) { // letters and dimensions cover some
			t.Errorf("%s: %d of %d probes have another colour", reader, wrong, looked)
		}
		// At the border of two quadrants the colour changes within a pixel.
		for _, probe := range []struct{ at, step geometry.Vec2 }{
			{geometry.Vec2{X: 120, Y: 300}, geometry.Vec2{X: 0.75}},
			{geometry.Vec2{X: 60, Y: 250}, geometry.Vec2{Y: 0.75}},
			{geometry.Vec2{X: 460, Y: 330}, geometry.Vec2{X: 0.75}},
			{geometry.Vec2{X: 320, Y: 250}, geometry.Vec2{Y: 0.75}},
		} {
			for _, p := range []geometry.Vec2{probe.at.Add(probe.step), probe.at.Sub(probe.step)} {
				want, _ := expected(p, 0.1)
				px := int((trim.X*25.4/72 + p.X) * 2)
				py := int((mediaTop*25.4/72 - trim.Y*25.4/72 - p.Y) * 2)
				if got := nearest(picture.At(px, py)); got != want {
					t.Errorf("%s at %v: %v, want %v", reader, p, got, want)
				}
			}
		}
	}
}

// nearLine tells whether a line of the blank runs by within two mm.
func nearLine(snapshot *document.Snapshot, p geometry.Vec2) bool {
	for _, line := range snapshot.Blank.Pieces[0].Lines {
		along := line.To.Sub(line.From)
		share := max(0, min(1, p.Sub(line.From).Dot(along)/along.Dot(along)))
		if p.Sub(line.From.Add(along.Scale(share))).Length() < 2 {
			return true
		}
	}
	return false
}

// What was given is in the file unharmed: the JPEG byte for byte at the right
// resolution (pdfimages of poppler), the fonts of the page embedded (pdffonts), each
// file once.
func TestArtworkIsInTheFileUnharmed(t *testing.T) {
	path, files, _ := production(t)
	folder := t.TempDir()
	geomtest.Run(t, "pdfimages", "-all", path, filepath.Join(folder, "image"))
	if got := read(t, filepath.Join(folder, "image-000.jpg")); !bytes.Equal(got, files["front.jpg"]) {
		t.Errorf("the JPEG comes out with %d bytes, went in with %d", len(got), len(files["front.jpg"]))
	}
	list := strings.Fields(strings.Split(string(geomtest.Run(t, "pdfimages", "-list", path)), "\n")[2])
	if ppi := float(t, list[12]); math.Abs(ppi-42) > 1 {
		t.Errorf("%g pixels to the inch across, want 42: %v", ppi, list)
	}
	fonts := strings.TrimSpace(string(geomtest.Run(t, "pdffonts", path)))
	for _, line := range strings.Split(fonts, "\n")[2:] {
		if words := strings.Fields(line); words[len(words)-5] != "yes" {
			t.Errorf("a font is not embedded: %s", line)
		}
	}
	if !strings.Contains(fonts, "GoRegular") || strings.Count(fonts, "yes yes") < 2 {
		t.Errorf("fonts:\n%s", fonts)
	}
	if got := bytes.Count(read(t, path), files["front.jpg"][:200]); got != 1 {
		t.Errorf("the JPEG stands %d times in the file", got)
	}
	geomtest.Run(t, "qpdf", "--check", path)
}

// The die lines have plates of their own and leave the artwork beneath them whole
// (Ghostscript's tiffsep): where a crease runs over the background, its cyan is as
// everywhere.
func TestDieLinesLeaveTheArtworkWhole(t *testing.T) {
	path, _, _ := production(t)
	folder := t.TempDir()
	geomtest.Run(t, "gs", "-q", "-dNOPAUSE", "-dBATCH", "-dSAFER", "-sDEVICE=tiffsep", "-r144", "-sCompression=none", "-sOutputFile="+filepath.Join(folder, "page%d.tif"), path)
	plate := func(ink string) *image.Gray {
		file, err := os.Open(filepath.Join(folder, "page1("+ink+").tif"))
		if err != nil {
			t.Fatal(err)
		}
		defer file.Close()
		picture, err := tiff.Decode(file)
		if err != nil {
			t.Fatal(err)
		}
		return picture.(*image.Gray)
	}
	trim, mediaTop := boxes(t, path, 1)
	at := func(g *image.Gray, p geometry.Vec2) uint8 {
		return g.GrayAt(int((trim.X+p.X*72/25.4)*2), int((mediaTop-trim.Y-p.Y*72/25.4)*2)).Y
	}
	cyan, creasing := plate("Cyan"), plate("Creasing")
	// The top fold, y = 430, runs over the background of the left gusset.
	printsCrease := false
	for x := 590.0; x < 670; x += 0.2 {
		for y := 429.8; y < 430.3; y += 0.1 {
			p := geometry.Vec2{X: x, Y: y}
			printsCrease = printsCrease || at(creasing, p) < 128
			if got, around := at(cyan, p), at(cyan, geometry.Vec2{X: x, Y: 436}); got > around+2 || got+2 < around {
				t.Fatalf("cyan at %v is %d, around it %d", p, got, around)
			}
		}
	}
	if !printsCrease {
		t.Error("no crease on its plate where the top fold runs")
	}
	if got := at(cyan, geometry.Vec2{X: 630, Y: 300}); got < 140 || got > 166 { // 40 % of 255 off
		t.Errorf("40%% cyan prints as %d", got)
	}
}

// On the picture of the folded bag, the colours stand where the paper is that geometry
// puts there: for every pixel of a face the place on the blank is found by its ray, and
// the colour is that of the place, but within a pixel of a border.
func TestColoursStandOnTheFoldedBagWhereGeometrySays(t *testing.T) {
	snapshot, _ := illustrated(t)
	model := solid.NewModel(fold.Standing(&snapshot.Blank))
	piece := &snapshot.Blank.Pieces[0]
	const scale = 4
	texture := solid.NewTexture(snapshot.Side(0).Picture(piece, scale, 1), scale, piece.Height)
	for name, camera := range map[string]solid.Camera{"front": solid.Front, "isometric": solid.Isometric, "back": solid.Back} {
		view := solid.View{
			Width: 900, Height: 900, Samples: 1, Camera: camera, Model: model, Textures: []*solid.Texture{texture},
			Paper: solid.PaperOf(snapshot.Spec.Paper), Look: solid.LightLook(),
		}
		var renderer solid.Renderer
		picture := renderer.Draw(view)
		pixel := 1.5 / view.Scale() // mm, a pixel and its corner; more where the face is seen at a slant
		if name == "isometric" {
			pixel *= 1.6
		}
		wrong, looked := 0, 0
		for y := 0; y < 900; y += 3 {
			for x := 0; x < 900; x += 3 {
				hit, ok := view.Pick(float64(x)+0.5, float64(y)+0.5)
				if !ok || hit.Reverse {
					continue
				}
				want, known := expected(hit.Place.At, pixel)
				if !known || nearHole(snapshot, hit.Place.At) {
					continue
				}
				looked++
				if nearestHue(picture.At(x, y)) != want {
					wrong++
				}
			}
		}
		if looked < 5000 || float64(wrong) > 0.02*float64(looked) { // the rope crosses the face
			t.Errorf("%s: %d of %d pixels have another colour", name, wrong, looked)
		}
	}
}

func nearHole(snapshot *document.Snapshot, p geometry.Vec2) bool {
	for _, hole := range snapshot.Blank.Pieces[0].Holes {
		if hole.Center.Sub(p).Length() < hole.Diameter {
			return true
		}
	}
	return false
}

// nearestHue returns the quadrant whose colour is closest whatever the light: by the
// direction of the colour from black.
func nearestHue(c color.Color) color.RGBA {
	r, g, b, _ := c.RGBA()
	v := geometry.Vec3{X: float64(r), Y: float64(g), Z: float64(b)}.Unit()
	best, most := color.RGBA{}, -1.0
	for _, q := range quadrants {
		if d := v.Dot((geometry.Vec3{X: float64(q.R), Y: float64(q.G), Z: float64(q.B)}).Unit()); d > most {
			best, most = q, d
		}
	}
	return best
}
