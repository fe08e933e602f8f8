package raster

import (
	"bytes"
	"context"
	"fmt"
	"image/png"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
	"gussetwright/render/pdf/object"
)

// page writes a PDF file of one page that a picture fills, a pixel at so many to the
// inch.
func page(t *testing.T, p *Picture, ppi float64) string {
	t.Helper()
	form, err := p.Form(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	var objects []object.Object
	numbering := object.Numbering{
		Reserve: func() object.Reference {
			objects = append(objects, nil)
			return object.Reference(len(objects))
		},
		Set: func(number object.Reference, o object.Object) { objects[number-1] = o },
	}
	scale := 72 / ppi
	pages := &object.Indirect{}
	sheet := &object.Indirect{Value: object.Dict{
		{Key: "Type", Value: object.Name("Page")},
		{Key: "Parent", Value: pages},
		{Key: "MediaBox", Value: object.Numbers(0, 0, form.Width*scale, form.Height*scale)},
		{Key: "Resources", Value: object.Dict{{Key: "XObject", Value: object.Dict{{Key: "Form", Value: form.XObject()}}}}},
		{Key: "Contents", Value: &object.Indirect{Value: object.Stream{Data: fmt.Appendf(nil, "%f 0 0 %f 0 0 cm /Form Do", scale, scale)}}},
	}}
	pages.Value = object.Dict{{Key: "Type", Value: object.Name("Pages")}, {Key: "Count", Value: object.Integer(1)}, {Key: "Kids", Value: object.Array{sheet}}}
	root := numbering.Place(&object.Indirect{Value: object.Dict{{Key: "Type", Value: object.Name("Catalog")}, {Key: "Pages", Value: pages}}})

	file := []byte("%PDF-1.6\n%\xe2\xe3\xcf\xd3\n")
	table := fmt.Appendf(nil, "xref\n0 %d\n0000000000 65535 f \n", len(objects)+1)
	for i, o := range objects {
		table = fmt.Appendf(table, "%010d 00000 n \n", len(file))
		file = append(o.AppendTo(fmt.Appendf(file, "%d 0 obj\n", i+1)), "\nendobj\n"...)
	}
	start := len(file)
	file = append(append(file, table...), "trailer\n"...)
	file = object.Dict{{Key: "Size", Value: object.Integer(len(objects) + 1)}, {Key: "Root", Value: root}}.AppendTo(file)
	return write(t, "page.pdf", fmt.Appendf(file, "\nstartxref\n%d\n%%%%EOF\n", start))
}

// listed returns the columns of the pictures that pdfimages finds in a file.
func listed(t *testing.T, path string) []map[string]string {
	t.Helper()
	lines := strings.Split(strings.TrimSpace(string(geomtest.Run(t, "pdfimages", "-list", path))), "\n")
	// The heads of the columns "object" and "ID" stand over one number each.
	names := strings.Fields(lines[0])
	var found []map[string]string
	for _, line := range lines[2:] {
		row := map[string]string{}
		for i, value := range strings.Fields(line) {
			row[names[i]] = value
		}
		found = append(found, row)
	}
	return found
}

// Source: pdfimages of poppler lists the pictures and takes them out; qpdf finds no
// fault.
func TestImageObjects(t *testing.T) {
	rgb, inks := profile("RGB "), profile("CMYK")
	path := write(t, "rgb.icc", rgb)
	for _, c := range []struct {
		name        string
		data        []byte
		space       string // as pdfimages names it
		bits, coded string
		mask        bool
	}{
		{"JPEG", asJPEG(t, sample()), "rgb", "8", "jpeg", false},
		{"JPEG progressive", convert(t, sample(), "jpg:", "-interlace", "JPEG"), "rgb", "8", "jpeg", false},
		{"JPEG grey", convert(t, sample(), "jpg:", "-colorspace", "gray"), "gray", "8", "jpeg", false},
		{"JPEG inks", convert(t, sample(), "jpg:", asInks...), "cmyk", "8", "jpeg", false},
		{"JPEG profile", inParts(asJPEG(t, sample()), rgb, false), "icc", "8", "jpeg", false},
		{"JPEG inks profile", inParts(convert(t, sample(), "jpg:", asInks...), inks, false), "icc", "8", "jpeg", false},
		{"PNG", asPNG(t, sample()), "rgb", "8", "image", false},
		{"PNG profile", convert(t, sample(), "png24:", "-profile", path), "icc", "8", "image", false},
		{"PNG two tones", convert(t, sample(), "png:", "-monochrome", "-define", "png:bit-depth=1", "-define", "png:color-type=0"), "gray", "1", "image", false},
		{"PNG palette", convert(t, sample(), "png8:"), "index", "8", "image", false},
		{"PNG palette of 4 bits", convert(t, sample(), "png:", "-colors", "12", "-define", "png:color-type=3"), "index", "4", "image", false},
		{"PNG interlaced", convert(t, sample(), "png:", "-interlace", "PNG"), "rgb", "8", "image", false},
		{"PNG 16 bits", convert(t, sample(), "png48:"), "rgb", "8", "image", false},
		{"PNG alpha", asPNG(t, clear()), "rgb", "8", "image", true},
		{"PNG grey and alpha", convert(t, clear(), "png:", "-colorspace", "gray", "-define", "png:color-type=4"), "gray", "8", "image", true},
		{"TIFF", convert(t, sample(), "tiff:", "-compress", "LZW"), "rgb", "8", "image", false},
		{"TIFF JPEG", convert(t, sample(), "tiff:", "-compress", "JPEG"), "rgb", "8", "image", false},
		{"TIFF inks", convert(t, sample(), "tiff:", asInks...), "cmyk", "8", "image", false},
		{"WebP", fromHex(t, lossyWebP), "rgb", "8", "image", false},
		{"WebP alpha", fromHex(t, alphaWebP), "rgb", "8", "image", true},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := mustRead(t, c.data)
			file := page(t, p, 300)
			if out := string(geomtest.Run(t, "qpdf", "--check", file)); !strings.Contains(out, "No syntax or stream encoding errors found") {
				t.Errorf("qpdf: %s", out)
			}
			found := listed(t, file)
			if want := 1 + map[bool]int{true: 1}[c.mask]; len(found) != want {
				t.Fatalf("pdfimages lists %v, want %d", found, want)
			}
			got := found[0]
			if got["color"] != c.space || got["bpc"] != c.bits || got["enc"] != c.coded || got["x-ppi"] != "300" || got["y-ppi"] != "300" {
				t.Errorf("pdfimages lists %v", got)
			}
			if got["width"] != strconv.Itoa(p.Stored.X) || got["height"] != strconv.Itoa(p.Stored.Y) {
				t.Errorf("pdfimages lists %v, want %v pixels", got, p.Stored)
			}
			if c.mask && found[1]["type"] != "smask" {
				t.Errorf("the second picture is %v", found[1])
			}
			if c.coded == "jpeg" || c.space != "icc" { // colours by a profile are turned to sRGB
				checkTakenOut(t, file, p, c.coded == "jpeg")
			}
		})
	}
}

// checkTakenOut compares what pdfimages takes out of a file with the picture: a JPEG
// byte for byte, others pixel for pixel.
func checkTakenOut(t *testing.T, file string, p *Picture, whole bool) {
	t.Helper()
	root := filepath.Join(filepath.Dir(file), "out")
	geomtest.Run(t, "pdfimages", "-all", file, root)
	names, _ := filepath.Glob(root + "-000.*")
	if len(names) != 1 {
		t.Fatalf("pdfimages wrote %v", names)
	}
	data, err := os.ReadFile(names[0])
	if err != nil {
		t.Fatal(err)
	}
	if whole {
		if !bytes.Equal(data, p.data) {
			t.Errorf("the JPEG in the file has %d bytes and differs from the %d read", len(data), len(p.data))
		}
		return
	}
	kind, want := "rgb", stored(t, p)
	if p.Colours == CMYK {
		kind = "cmyk"
	} else {
		opaque := want[:0]
		for i := 0; i < len(want); i += 4 {
			opaque = append(opaque, want[i:i+3]...)
		}
		want = opaque
	}
	compare(t, pixels(t, data, kind), want, 0, 0)
}

// Source: poppler and mupdf draw the page; each pixel of the picture must stand where
// the orientation puts it.
func TestDrawnUpright(t *testing.T) {
	for turn := 1; turn <= 8; turn++ {
		for name, data := range turned(t, turn) {
			t.Run(fmt.Sprint(name, turn), func(t *testing.T) {
				p := mustRead(t, data)
				most, mean := 1, 0.5
				if name == "JPEG" {
					most, mean = 110, 4 // programs make half of the colours full in their ways
				}
				for tool, drawn := range drawnBy(t, p) {
					t.Log(tool)
					compare(t, drawn, p.Levels[0].Pix, most, mean)
				}
			})
		}
	}
}

// enlarged is how many pixels a side readers draw for one of the picture. Below 5
// poppler smooths.
const enlarged = 5

// drawnBy has both readers draw the page of a picture and returns the pixels in the
// middle of each of the picture.
func drawnBy(t *testing.T, p *Picture) map[string][]byte {
	t.Helper()
	path := page(t, p, 72)
	root, ppi := filepath.Join(filepath.Dir(path), "drawn"), strconv.Itoa(72*enlarged)
	geomtest.Run(t, "pdftoppm", "-png", "-singlefile", "-r", ppi, path, root)
	geomtest.Run(t, "mutool", "draw", "-q", "-r", ppi, "-c", "rgb", "-o", root+"-mu.png", path)
	drawn := map[string][]byte{}
	for tool, name := range map[string]string{"poppler": root + ".png", "mupdf": root + "-mu.png"} {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		m, err := png.Decode(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		if size := m.Bounds().Size(); size != p.Size.Mul(enlarged) {
			t.Fatalf("%s draws %v as %v", tool, p.Size, size)
		}
		for i := range p.Size.X * p.Size.Y {
			x, y := i%p.Size.X, i/p.Size.X
			r, g, b, a := m.At(x*enlarged+enlarged/2, y*enlarged+enlarged/2).RGBA()
			drawn[tool] = append(drawn[tool], byte(r>>8), byte(g>>8), byte(b>>8), byte(a>>8))
		}
	}
	return drawn
}

// Inks of a JPEG must come out as those of a TIFF with the same picture: one that
// counts inks the wrong way round draws a negative. Source: poppler and mupdf draw
// both.
func TestInksAreDrawnAlike(t *testing.T) {
	tiff := mustRead(t, convert(t, sample(), "tiff:", asInks...))
	data := convert(t, sample(), "jpg:", append([]string{"-quality", "98", "-sampling-factor", "4:4:4"}, asInks...)...)
	jpeg := mustRead(t, data)
	want := drawnBy(t, tiff)
	for tool, drawn := range drawnBy(t, jpeg) {
		t.Log(tool)
		compare(t, drawn, want[tool], 12, 1.5)
		if c := want[tool]; c[0] < 2*c[1] || c[0] < 2*c[2] {
			t.Errorf("%s draws the red corner of the TIFF as %v", tool, c[:4])
		}
	}
}

// A JPEG may hold red, green and blue as they are: its channels are named by these
// letters, or the marker of Adobe says so. Sources: ImageMagick reads the colours,
// poppler and mupdf draw them.
func TestPlainRGBInJPEG(t *testing.T) {
	plain := asJPEG(t, sample())
	named := bytes.Clone(plain)
	frame, scan := bytes.Index(named, []byte{0xff, 0xc0}), bytes.Index(named, []byte{0xff, 0xda})
	for i, letter := range []byte("RGB") {
		named[frame+10+3*i], named[scan+5+2*i] = letter, letter
	}
	marked := withSegment(plain, 0xee, adobeMarker(0)[4:])
	for name, data := range map[string][]byte{"letters": named, "marker": marked} {
		p := mustRead(t, data)
		want := stored(t, p)
		if bytes.Equal(want, stored(t, mustRead(t, plain))) {
			t.Errorf("%s: the colours are read as lightness and colour", name)
		}
		compare(t, want, pixels(t, data, "rgba"), 110, 4)
		for tool, drawn := range drawnBy(t, p) {
			t.Log(name, tool)
			compare(t, drawn, want, 110, 4)
		}
	}
}

// Alpha is drawn over the white of the page.
func TestAlphaIsDrawn(t *testing.T) {
	p := mustRead(t, asPNG(t, clear()))
	want := make([]byte, len(p.Levels[0].Pix))
	for i := range want {
		want[i] = p.Levels[0].Pix[i] + 255 - p.Levels[0].Pix[i|3]
	}
	for tool, drawn := range drawnBy(t, p) {
		t.Log(tool)
		compare(t, drawn, want, 2, 0.7)
	}
}

func TestSharesObjects(t *testing.T) {
	p := mustRead(t, inParts(asJPEG(t, sample()), profile("RGB "), false))
	a, err := p.XObject(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	b, err := p.XObject(context.Background())
	if err != nil || a != b {
		t.Errorf("a picture has two image objects (%v)", err)
	}
	path := page(t, p, 72)
	file, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	found := regexp.MustCompile(`(\d+) 0 obj\n<< /N 3 /Alternate /DeviceRGB`).FindAllSubmatch(file, -1)
	if len(found) != 1 {
		t.Fatalf("the file holds the profile %d times", len(found))
	}
	// Source: mupdf unpacks the stream.
	if out := geomtest.Run(t, "mutool", "show", "-b", path, string(found[0][1])); !bytes.Equal(out, profile("RGB ")) {
		t.Errorf("the profile in the file has %d bytes and differs from the one read", len(out))
	}
}
