package page_test

import (
	"bytes"
	"context"
	"image"
	"image/color"
	"image/jpeg"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"gussetwright/geometry"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/pdf"
	"gussetwright/render/scene"
)

// photo returns a JPEG file with a run of colours and some noise.
func photo(t testing.TB, width, height int) []byte {
	t.Helper()
	picture := image.NewRGBA(image.Rect(0, 0, width, height))
	for y := range height {
		for x := range width {
			noise := uint8(x * y * 2654435761 >> 13 & 31)
			picture.SetRGBA(x, y, color.RGBA{uint8(255 * x / width), uint8(255 * y / height), 128 + noise, 255})
		}
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, picture, &jpeg.Options{Quality: 85}); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// withPhoto is a page with a JPEG of 200 × 100 pixels on 144 × 144 points.
func withPhoto(t testing.TB, picture []byte) []byte {
	return onePage("/MediaBox[0 0 200 200]/Resources<</XObject<</Photo 5 0 R>>>>", "q 144 0 0 144 20 30 cm /Photo Do Q",
		streamed("/Type/XObject/Subtype/Image/Width 200/Height 100/BitsPerComponent 8/ColorSpace/DeviceRGB/Filter/DCTDecode", string(picture)))
}

// The JPEG in the other file is the JPEG in the first, byte by byte (pdfimages).
func TestJPEGStays(t *testing.T) {
	picture := photo(t, 200, 100)
	p := read(t, withPhoto(t, picture), 1)
	path := file(t, "placed.pdf", placed(t, p))
	root := filepath.Join(filepath.Dir(path), "image")
	geomtest.Run(t, "pdfimages", "-all", path, root)
	got, err := os.ReadFile(root + "-000.jpg")
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, picture) {
		t.Errorf("the JPEG has %d bytes and had %d, or other ones", len(got), len(picture))
	}
	if list := string(geomtest.Run(t, "pdfimages", "-list", path)); !strings.Contains(list, " 100 ") || !strings.Contains(list, " 50 ") {
		t.Errorf("pdfimages does not see 100 × 50 pixels to the inch:\n%s", list)
	}
	if len(p.Images) != 1 || p.Images[0].Width != 200 || p.Images[0].Height != 100 {
		t.Fatalf("pictures %v", p.Images)
	}
	at := geometry.Stretch(25.4/72, 25.4/72).Bounds(geometry.RectAt(20, 30, 144, 144))
	if got := p.Images[0]; got.PPI < 49.99 || got.PPI > 50.01 || !got.At.Min.Near(at.Min) || !got.At.Max.Near(at.Max) {
		t.Errorf("picture %v, want 50 pixels to the inch at %v", got, at)
	}
	if !p.LeastPPI.Found || p.LeastPPI.Value != p.Images[0].PPI {
		t.Errorf("coarsest %v", p.LeastPPI)
	}
}

// byGhostscript is a page that Ghostscript made of PostScript, with a subset font.
func byGhostscript(t testing.TB) []byte {
	source := file(t, "a.ps", []byte("%!PS\n<</PageSize [300 200]>> setpagedevice /Helvetica findfont 24 scalefont setfont "+
		"30 100 moveto (Boxes & Bags) show 0.25 setlinewidth 1 0 0 setrgbcolor 20 20 moveto 280 20 lineto stroke "+
		"/Helvetica findfont 6 scalefont setfont 30 50 moveto 0.2 0.4 0.6 0 setcmykcolor (small print) show showpage"))
	out := strings.TrimSuffix(source, ".ps") + ".pdf"
	geomtest.Run(t, "gs", "-q", "-dBATCH", "-dNOPAUSE", "-sDEVICE=pdfwrite", "-dPDFSETTINGS=/prepress", "-o", out, source)
	return load(t, out)
}

// byRSVG is a page that librsvg made of an SVG drawing, with transparency.
func byRSVG(t testing.TB) []byte {
	source := file(t, "a.svg", []byte(`<svg xmlns="http://www.w3.org/2000/svg" width="300" height="200">
<rect width="200" height="150" fill="#3a6"/><circle cx="150" cy="100" r="80" fill="#c33" opacity="0.5"/>
<text x="20" y="60" font-size="30" fill="white">Kraft</text></svg>`))
	out := strings.TrimSuffix(source, ".svg") + ".pdf"
	geomtest.Run(t, "rsvg-convert", "-f", "pdf", "-o", out, source)
	return load(t, out)
}

// ours is a page of this program.
func ours(t testing.TB) []byte {
	trim := geometry.RectAt(0, 0, 100, 60)
	drawing := scene.Drawing{
		Title: "Front", Trim: trim, Bleed: trim.Inset(-3), Media: trim.Inset(-10),
		Items: []scene.Item{
			scene.Stroke{Role: scene.Cutting, Path: trim.Path(), Width: 0.35},
			scene.Label{Role: scene.Legend, Text: "100 × 60 mm", At: geometry.Vec2{X: 50, Y: 30}, Size: 4, Anchor: scene.Middle},
		},
	}
	var out bytes.Buffer
	if err := pdf.Write(&out, []scene.Drawing{drawing}, pdf.Info{Title: "Bag", Date: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)}); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func load(t testing.TB, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// encrypted is a page that qpdf encrypted: with an owner's password only it can be
// read by all.
func encrypted(t testing.TB, data []byte, user string) []byte {
	path := file(t, "plain.pdf", data)
	out := strings.TrimSuffix(path, ".pdf") + "-closed.pdf"
	geomtest.Run(t, "qpdf", "--encrypt", user, "owner", "256", "--print=none", "--", path, out)
	return load(t, out)
}

// Files by programs of other makers look the same when their page is placed in
// another file, and their fonts come along (pdffonts).
func TestProducers(t *testing.T) {
	for _, test := range []struct {
		name          string
		data          []byte
		width, height int
		fonts         int
		most          float64 // of the difference that readers have among each other
	}{
		{"Ghostscript", byGhostscript(t), 600, 400, 1, 2},
		{"librsvg", byRSVG(t), 600, 400, 1, 2},
		{"Ghostscript, encrypted by qpdf", encrypted(t, byGhostscript(t), ""), 600, 400, 1, 2},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := read(t, test.data, 1)
			out := placed(t, p)
			poppler, mupdf := byPoppler(t, test.data, 1, test.width, test.height), byMuPDF(t, test.data, 1, test.width, test.height)
			alike(t, "drawn, against pdftoppm", render(t, p, test.width, test.height), poppler, test.most)
			alike(t, "drawn, against mutool", render(t, p, test.width, test.height), mupdf, test.most)
			alike(t, "placed, by pdftoppm", byPoppler(t, out, 1, test.width, test.height), poppler, 0.1)
			alike(t, "placed, by mutool", byMuPDF(t, out, 1, test.width, test.height), mupdf, 0.1)
			before, after := fonts(t, test.data), fonts(t, out)
			if len(before) != test.fonts || strings.Join(before, "|") != strings.Join(after, "|") {
				t.Errorf("fonts %q, and before %q", after, before)
			}
			if len(p.Fonts) != test.fonts || !p.Fonts[0].Embedded {
				t.Errorf("fonts %v, want %d, embedded", p.Fonts, test.fonts)
			}
			geomtest.Run(t, "qpdf", "--check", file(t, "placed.pdf", out))
		})
	}
}

// fonts lists what pdffonts says of each font but its object number.
func fonts(t *testing.T, data []byte) []string {
	t.Helper()
	var list []string
	lines := strings.Split(strings.TrimSpace(string(geomtest.Run(t, "pdffonts", file(t, "a.pdf", data)))), "\n")
	for _, line := range lines[2:] {
		words := strings.Fields(line)
		list = append(list, strings.Join(words[:len(words)-2], " "))
	}
	return list
}

// A file of this program can be artwork too: the bleed is placed, the layers merged.
func TestOwnFile(t *testing.T) {
	data := ours(t)
	p := read(t, data, 1)
	if want := (geometry.Vec2{X: 106, Y: 66}); p.Size.Sub(want).Length() > 0.01 || p.Box != "BleedBox" {
		t.Errorf("%s of %v mm, want the BleedBox of %v", p.Box, p.Size, want)
	}
	if p.Trim.Min.Sub(geometry.Vec2{X: 3, Y: 3}).Length() > 0.01 {
		t.Errorf("trim at %v, want (3, 3)", p.Trim.Min)
	}
	if len(p.Colours.Spots) == 0 || len(p.Fonts) == 0 || !p.Fonts[0].Embedded {
		t.Errorf("colours %v, fonts %v; want spot colours and an embedded font", p.Colours, p.Fonts)
	}
	if bytes.Contains(placed(t, p), []byte("/OCG")) {
		t.Error("the layers are still there")
	}
}

// The same file gives the same form, byte by byte, whoever reads it and when.
func TestSameEveryTime(t *testing.T) {
	for _, data := range [][]byte{motifPage(90), byGhostscript(t), layered("/OFF[11 0 R]"), encrypted(t, byRSVG(t), "")} {
		first := placed(t, read(t, data, 1))
		if second := placed(t, read(t, data, 1)); !bytes.Equal(first, second) {
			t.Errorf("%d bytes, then %d others", len(first), len(second))
		}
	}
}

// Several goroutines read and draw at once.
func TestAtOnce(t *testing.T) {
	data := byRSVG(t)
	p := read(t, data, 1)
	want := render(t, p, 300, 200)
	done := make(chan error)
	for range 6 {
		go func() {
			again, err := p.Render(context.Background(), 300, 200)
			if err == nil && !bytes.Equal(again.Pix, want.Pix) {
				err = os.ErrInvalid
			}
			done <- err
		}()
	}
	for range 6 {
		if err := <-done; err != nil {
			t.Error(err)
		}
	}
}
