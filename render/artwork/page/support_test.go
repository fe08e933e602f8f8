package page_test

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
	"gussetwright/render/artwork/page"
	"gussetwright/render/pdf/object"
)

// handmade writes a PDF file from objects numbered from 1; the first is the catalog.
// A value that begins with "stream" and a dictionary is a stream: see streamed.
func handmade(objects ...string) []byte {
	file := []byte("%PDF-1.7\n")
	offsets := make([]int, len(objects))
	for i, o := range objects {
		offsets[i] = len(file)
		file = fmt.Appendf(file, "%d 0 obj\n%s\nendobj\n", i+1, o)
	}
	start := len(file)
	file = fmt.Appendf(file, "xref\n0 %d\n0000000000 65535 f \n", len(objects)+1)
	for _, offset := range offsets {
		file = fmt.Appendf(file, "%010d 00000 n \n", offset)
	}
	return fmt.Appendf(file, "trailer\n<</Size %d/Root 1 0 R>>\nstartxref\n%d\n%%%%EOF\n", len(objects)+1, start)
}

// streamed returns a stream for handmade, its dictionary given without brackets.
func streamed(entries, data string) string {
	return fmt.Sprintf("<<%s/Length %d>>\nstream\n%s\nendstream", entries, len(data), data)
}

// onePage writes a file with one page: its entries, its operators, and more objects
// numbered from 5.
func onePage(entries, operators string, more ...string) []byte {
	return handmade(append([]string{
		"<</Type/Catalog/Pages 2 0 R>>", "<</Type/Pages/Count 1/Kids[3 0 R]>>",
		"<</Type/Page/Parent 2 0 R/Contents 4 0 R" + entries + ">>", streamed("", operators),
	}, more...)...)
}

func read(t testing.TB, data []byte, number int) *page.Page {
	t.Helper()
	p, err := page.Read(context.Background(), data, number)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func render(t testing.TB, p *page.Page, width, height int) *image.RGBA {
	t.Helper()
	picture, err := p.Render(context.Background(), width, height)
	if err != nil {
		t.Fatal(err)
	}
	return picture
}

// placed writes a file with nothing on its page but the form.
func placed(t testing.TB, p *page.Page) []byte {
	t.Helper()
	form, err := p.Form(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	var objects []string
	numbering := object.Numbering{
		Reserve: func() object.Reference {
			objects = append(objects, "")
			return object.Reference(len(objects))
		},
		Set: func(number object.Reference, o object.Object) {
			objects[number-1] = string(o.AppendTo(nil))
		},
	}
	pages := &object.Indirect{}
	sheet := object.Dict{
		{Key: "Type", Value: object.Name("Page")},
		{Key: "Parent", Value: pages},
		{Key: "MediaBox", Value: object.Numbers(0, 0, form.Width, form.Height)},
		{Key: "Contents", Value: &object.Indirect{Value: object.Stream{Data: []byte("/Placed Do")}}},
		{Key: "Resources", Value: object.Dict{{Key: "XObject", Value: object.Dict{{Key: "Placed", Value: form.XObject()}}}}},
	}
	pages.Value = object.Dict{
		{Key: "Type", Value: object.Name("Pages")},
		{Key: "Count", Value: object.Integer(1)},
		{Key: "Kids", Value: object.Array{&object.Indirect{Value: sheet}}},
	}
	numbering.Place(&object.Indirect{Value: object.Dict{
		{Key: "Type", Value: object.Name("Catalog")}, {Key: "Pages", Value: pages},
	}})
	return handmade(objects...)
}

func file(t testing.TB, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// byPoppler draws a page with pdftoppm on white.
func byPoppler(t testing.TB, data []byte, number, width, height int) image.Image {
	t.Helper()
	path := file(t, "a.pdf", data)
	n := fmt.Sprint(number)
	out := strings.TrimSuffix(path, ".pdf")
	geomtest.Run(t, "pdftoppm", "-png", "-singlefile", "-cropbox", "-f", n, "-l", n,
		"-scale-to-x", fmt.Sprint(width), "-scale-to-y", fmt.Sprint(height), path, out)
	return open(t, out+".png")
}

// byMuPDF draws a page with mutool on white.
func byMuPDF(t testing.TB, data []byte, number, width, height int) image.Image {
	t.Helper()
	path := file(t, "a.pdf", data)
	out := strings.TrimSuffix(path, ".pdf") + ".png"
	geomtest.Run(t, "mutool", "draw", "-q", "-o", out, "-f", "-w", fmt.Sprint(width), "-h", fmt.Sprint(height), path, fmt.Sprint(number))
	return open(t, out)
}

func open(t testing.TB, path string) image.Image {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	picture, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return picture
}

// apart returns the mean difference of the channels of two pictures on white, of 255.
func apart(t testing.TB, a, b image.Image) float64 {
	t.Helper()
	size := a.Bounds().Size()
	if size != b.Bounds().Size() {
		t.Fatalf("pictures of %v and %v pixels", size, b.Bounds().Size())
	}
	sum := 0
	for y := range size.Y {
		for x := range size.X {
			p, q := onWhite(a.At(x, y)), onWhite(b.At(x, y))
			for i := range p {
				sum += max(p[i]-q[i], q[i]-p[i])
			}
		}
	}
	return float64(sum) / float64(3*size.X*size.Y)
}

func onWhite(c color.Color) [3]int {
	r, g, b, a := c.RGBA()
	rest := 0xffff - a
	return [3]int{int(r+rest) >> 8, int(g+rest) >> 8, int(b+rest) >> 8}
}

// alike fails the test where two pictures differ by more than so much on average.
func alike(t *testing.T, what string, got, want image.Image, most float64) {
	t.Helper()
	if difference := apart(t, got, want); difference > most {
		t.Errorf("%s: the pictures differ by %.2f of 255 on average, more than %v (see %s)", what, difference, most, kept(t, got, want))
	} else {
		t.Logf("%s: %.2f of 255", what, difference)
	}
}

// kept writes two pictures where they outlive the test.
func kept(t *testing.T, pictures ...image.Image) string {
	t.Helper()
	folder, err := os.MkdirTemp("", "page")
	if err != nil {
		t.Fatal(err)
	}
	for i, picture := range pictures {
		var out bytes.Buffer
		if err := png.Encode(&out, picture); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(folder, fmt.Sprintf("%d.png", i)), out.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return folder
}
