package vector

import (
	"bytes"
	"context"
	"encoding/base64"
	"fmt"
	"image"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
	"gussetwright/render/ink"
	"gussetwright/render/pdf/object"
)

// onePage writes a file with the form on a page of its size, 72/25.4 points to the
// millimetre.
func onePage(form *object.Form) []byte {
	const points = 72 / 25.4
	var objects []object.Object
	numbering := object.Numbering{
		Reserve: func() object.Reference {
			objects = append(objects, nil)
			return object.Reference(len(objects))
		},
		Set: func(n object.Reference, o object.Object) { objects[n-1] = o },
	}
	pages := &object.Indirect{}
	page := &object.Indirect{Value: object.Dict{
		{Key: "Type", Value: object.Name("Page")},
		{Key: "Parent", Value: pages},
		{Key: "MediaBox", Value: object.Numbers(0, 0, form.Width*points, form.Height*points)},
		{Key: "Resources", Value: object.Dict{{Key: "XObject", Value: object.Dict{{Key: "F", Value: form.XObject()}}}}},
		{Key: "Contents", Value: &object.Indirect{Value: object.Plain{Data: fmt.Appendf(nil, "%.8f 0 0 %.8f 0 0 cm /F Do", points, points)}}},
	}}
	pages.Value = object.Dict{{Key: "Type", Value: object.Name("Pages")}, {Key: "Kids", Value: object.Array{page}}, {Key: "Count", Value: object.Integer(1)}}
	root := numbering.Place(&object.Indirect{Value: object.Dict{{Key: "Type", Value: object.Name("Catalog")}, {Key: "Pages", Value: pages}}})
	file := []byte("%PDF-1.6\n")
	var places []int
	for i, o := range objects {
		places = append(places, len(file))
		file = fmt.Appendf(file, "%d 0 obj\n", i+1)
		file = append(o.AppendTo(file), "\nendobj\n"...)
	}
	table := len(file)
	file = fmt.Appendf(file, "xref\n0 %d\n0000000000 65535 f \n", len(objects)+1)
	for _, place := range places {
		file = fmt.Appendf(file, "%010d 00000 n \n", place)
	}
	return fmt.Appendf(file, "trailer\n<< /Size %d /Root %s >>\nstartxref\n%d\n%%%%EOF\n", len(objects)+1, root.AppendTo(nil), table)
}

// writePage writes the drawing as a file of one page and returns its path.
func writePage(t testing.TB, d *Drawing) string {
	t.Helper()
	form, err := d.Form(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "page.pdf")
	if err := os.WriteFile(path, onePage(form), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// rasterised returns the page as poppler and as mupdf draw it.
func rasterised(t testing.TB, path string, width, height int) map[string]*image.RGBA {
	t.Helper()
	folder := filepath.Dir(path)
	geomtest.Run(t, "pdftoppm", "-png", "-singlefile", "-scale-to-x", fmt.Sprint(width), "-scale-to-y", fmt.Sprint(height), path, filepath.Join(folder, "poppler"))
	geomtest.Run(t, "mutool", "draw", "-q", "-w", fmt.Sprint(width), "-h", fmt.Sprint(height), "-o", filepath.Join(folder, "mupdf.png"), path)
	pictures := map[string]*image.RGBA{}
	for _, name := range []string{"poppler", "mupdf"} {
		data, err := os.ReadFile(filepath.Join(folder, name+".png"))
		if err != nil {
			t.Fatal(err)
		}
		pictures[name] = decode(t, data)
	}
	return pictures
}

// tolerated is how far programs may differ, in 255ths. Both draw the edges of images
// and gradients without smoothing them, and poppler moves straight lines to whole
// pixels.
var tolerated = map[string]struct{ mean, worst float64 }{"poppler": {1.8, 36}, "mupdf": {1, 28}}

// TestFormAsDrawn compares the form on a page, as poppler and mupdf draw it, with
// the picture of Render.
func TestFormAsDrawn(t *testing.T) {
	const width, height = 600, 400
	for _, c := range drawings() {
		t.Run(c.name, func(t *testing.T) {
			d := mustRead(t, c.svg)
			path := writePage(t, d)
			if output := geomtest.Run(t, "qpdf", "--check", path); bytes.Contains(output, []byte("WARNING")) {
				t.Errorf("qpdf: %s", output)
			}
			ours := onWhite(t, d, width, height)
			pictures := rasterised(t, path, width, height)
			keep(t, "pdf "+c.name, ours, pictures["poppler"], pictures["mupdf"])
			for name, theirs := range pictures {
				if ours.Rect != theirs.Rect {
					t.Fatalf("the picture of %s has %v pixels", name, theirs.Rect)
				}
				mean, worst, at := apart(ours, theirs, 8)
				t.Logf("%s: mean %.3f, worst block %.1f at %v", name, mean, worst, at)
				if mean > tolerated[name].mean || worst > tolerated[name].worst {
					t.Errorf("%s differs by %.2f of 255 on the mean, by %.1f in the block at %v", name, mean, worst, at)
				}
			}
		})
	}
}

// inkJPEG is a picture of 16 × 12 pixels of full cyan and half yellow, written by
// ImageMagick.
const inkJPEG = "/9j/7gAOQWRvYmUAZAAAAAAC/9sAQwADAgIDAgIDAwMDBAMDBAUIBQUEBAUKBwcGCAwKDAwLCgsLDQ4SEA0OEQ4LCxAWEBETFBUV" +
	"FQwPFxgWFBgSFBUU/9sAQwEDBAQFBAUJBQUJFA0LDRQUFBQUFBQUFBQUFBQUFBQUFBQUFBQUFBQUFBQUFBQUFBQUFBQUFBQUFBQU" +
	"FBQUFBQU/8AAFAgADAAQBAERAAIRAQMRAQQRAP/EABYAAQEBAAAAAAAAAAAAAAAAAAAHCf/EABQQAQAAAAAAAAAAAAAAAAAAAAD/" +
	"xAAWAQEBAQAAAAAAAAAAAAAAAAAABgn/xAAUEQEAAAAAAAAAAAAAAAAAAAAA/9oADgQBAAIRAxEEAAA/AI4uGnDVMAAAB//Z"

func decoded(t testing.TB, text string) []byte {
	t.Helper()
	data, err := base64.StdEncoding.DecodeString(text)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// Images come out of the file as they went in: pdfimages, a program of poppler,
// takes JPEGs out unchanged and lists what stands in the file.
func TestJPEGsPassThrough(t *testing.T) {
	photo := jpegPhoto()
	d := mustRead(t, head+`width="200mm" height="100mm" viewBox="0 0 200 100"><image width="90" height="60" href="`+dataJPEG()+`"/><image x="100" width="80" height="60" href="data:image/jpeg;base64,`+inkJPEG+`"/><image y="80" width="24" height="17" href="`+dataPNG()+`"/></svg>`)
	path := writePage(t, d)
	list := string(geomtest.Run(t, "pdfimages", "-list", path))
	for _, want := range []string{"900   600  rgb     3   8  jpeg", "16    12  cmyk    4   8  jpeg", "240   170  rgb     3   8  image", "240   170  gray    1   8  image"} {
		if !strings.Contains(list, want) {
			t.Errorf("%q is not in the list of images:\n%s", want, list)
		}
	}
	folder := t.TempDir()
	geomtest.Run(t, "pdfimages", "-all", path, filepath.Join(folder, "image"))
	for name, want := range map[string][]byte{"image-000.jpg": photo, "image-001.jpg": decoded(t, inkJPEG)} {
		got, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil || !bytes.Equal(got, want) {
			t.Errorf("%s is not the file that was embedded (%v)", name, err)
		}
	}
	// Our screen shows inks as render/ink does, readers as they think right, but not
	// the other way round.
	want := ink.RGB(1, 0, 0.5, 0)
	picture := onWhite(t, d, 400, 200)
	if got := picture.RGBAAt(280, 60); far(got.R, want.R) || far(got.G, want.G) || far(got.B, want.B) {
		t.Errorf("cyan and yellow look like %v, want %v", got, want)
	}
	for name, picture := range rasterised(t, path, 400, 200) {
		if got := picture.RGBAAt(280, 60); got.R > 80 || got.G < 100 || got.B < 80 {
			t.Errorf("%s shows cyan and yellow as %v", name, got)
		}
	}
}

func far(a, b uint8) bool { return max(a, b)-min(a, b) > 8 }

// Inks stay inks, in plain colours, lines and gradients.
func TestInksStayInks(t *testing.T) {
	d := mustRead(t, head+small+`<linearGradient id="g"><stop stop-color="device-cmyk(1 0 0 0)"/><stop offset="1" stop-color="device-cmyk(0 0 1 .5)"/></linearGradient>
<linearGradient id="m"><stop stop-color="device-cmyk(1 0 0 0)"/><stop offset="1" stop-color="red"/></linearGradient>
<rect width="50" height="50" fill="device-cmyk(0 .25 1 .125)" stroke="device-cmyk(0 0 0 1)"/><rect y="50" width="50" height="50" fill="url(#g)"/><rect x="50" width="50" height="50" fill="url(#m)"/></svg>`)
	form, err := d.Form(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"0 0.25 1 0.125 k\n", "0 0 0 1 K\n"} {
		if !strings.Contains(string(form.Content), want) {
			t.Errorf("%q is not in\n%s", want, form.Content)
		}
	}
	page := string(onePage(form))
	for _, want := range []string{"/ColorSpace /DeviceCMYK", "/C0 [1 0 0 0] /C1 [0 0 1 0.5]", "/ColorSpace /DeviceRGB"} {
		if !strings.Contains(page, want) {
			t.Errorf("%q is not in the page", want)
		}
	}
	if form.Group != nil {
		t.Error("nothing is seen through, but the form asks for a group")
	}
}

// A form asks for a group when something in it is seen through.
func TestFormAsksForGroup(t *testing.T) {
	for _, inside := range []string{
		`<rect width="5" height="5" opacity=".5"/>`,
		`<g opacity=".5"><rect width="5" height="5"/><rect width="3" height="3" fill="red"/></g>`,
		`<image width="5" height="5" href="` + dataPNG() + `"/>`,
		`<clipPath id="c"><circle r="3"/><circle cx="2" r="3"/></clipPath><rect width="5" height="5" clip-path="url(#c)"/>`,
	} {
		form, err := mustRead(t, head+small+inside+`</svg>`).Form(context.Background())
		if err != nil || form.Group == nil {
			t.Errorf("%.60s: no group (%v)", inside, err)
		}
	}
}
