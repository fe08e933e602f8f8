package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"math"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"golang.org/x/image/draw"

	"gussetwright/geometry"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/report"
	"gussetwright/render/scene"
)

// gradient is a picture in which every pixel differs from the next.
func gradient(alpha bool) *image.NRGBA {
	picture := image.NewNRGBA(image.Rect(0, 0, 40, 30))
	for y := range 30 {
		for x := range 40 {
			c := color.NRGBA{uint8(6 * x), uint8(8 * y), uint8(250 - 3*x - 4*y), 255}
			if alpha {
				c.A = uint8(6 * x)
			}
			picture.SetNRGBA(x, y, c)
		}
	}
	return picture
}

func grey() image.Image {
	picture := image.NewRGBA(image.Rect(0, 0, 20, 20))
	for i := range 400 {
		v := uint8(i / 2)
		picture.SetRGBA(i%20, i/20, color.RGBA{v, v, v, 255})
	}
	return picture
}

// readable is a report with all that one can hold.
func readable(t testing.TB) []report.Page {
	c := report.NewColumn(report.Layout{Header: "Prüfblatt – Größe", Accent: report.RGB(20, 90, 95)})
	c.Heading(1, "Proof of a bag")
	c.Paragraph(strings.Repeat("The quick brown bag jumps over the lazy shelf. ", 20))
	c.Pictures(60, report.Figure{Picture: report.Picture{Image: gradient(false)}, Caption: "kept whole"}, report.Figure{Picture: report.Picture{Image: gradient(false), Quality: 80}, Caption: "as JPEG"})
	c.Pictures(40, report.Figure{Picture: report.Picture{Form: quadrants(), Image: gradient(false)}, Caption: "as a drawing"})
	c.Table(report.Table{Columns: []report.TableColumn{{Title: "Part"}, {Title: "Number", Numbers: true}}, Rows: [][]string{{"Cord", "2 400"}, {"紙", "1"}}})
	list, err := c.Pages()
	if err != nil {
		t.Fatal(err)
	}
	form := quadrants()
	second := report.Page{Width: 200, Height: 150, Items: []report.Item{
		report.Box{Rect: geometry.RectAt(10, 10, 30, 30), Fill: report.RGB(200, 40, 90), Line: report.Line{Width: 2, Colour: report.RGB(0, 0, 255)}},
		report.Box{Rect: geometry.RectAt(50, 10, 30, 30), Radius: 8, Fill: report.RGB(0, 120, 60)},
		report.Shape{Path: geometry.Circle(geometry.Vec2{X: 110, Y: 25}, 15), Fill: report.RGB(255, 200, 0)},
		report.Rule{From: geometry.Vec2{X: 130, Y: 10}, To: geometry.Vec2{X: 130, Y: 40}, Line: report.Line{Width: 1, Colour: report.RGB(0, 0, 0), Dash: []float64{5, 5}}},
		report.Picture{Rect: geometry.RectAt(10, 60, 60, 30), Form: form},
		report.Picture{Rect: geometry.RectAt(10, 100, 60, 30), Form: form},
		report.Picture{Rect: geometry.RectAt(90, 60, 40, 30), Image: gradient(true)},
		report.Picture{Rect: geometry.RectAt(140, 60, 40, 30), Image: gradient(false)},
		report.Picture{Rect: geometry.RectAt(90, 100, 20, 20), Image: grey()},
		report.Text{Text: "upwards", At: geometry.Vec2{X: 190, Y: 10}, Size: 5, Turn: math.Pi / 2, Colour: report.RGB(90, 0, 90)},
	}}
	return append(list, second)
}

func produceReport(t testing.TB, pages []report.Page, info Info) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := WriteReport(&out, pages, info); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// Source: qpdf, pdfinfo, pdffonts and pdftotext.
func TestReportReadByOthers(t *testing.T) {
	info := day
	info.Language = "en-GB"
	pages := readable(t)
	data := produceReport(t, pages, info)
	if again := produceReport(t, readable(t), info); !bytes.Equal(again, data) {
		t.Error("the second file differs from the first")
	}
	file := save(t, data)
	if out := string(geomtest.Run(t, "qpdf", "--check", file)); !strings.Contains(out, "No syntax or stream encoding errors found") {
		t.Error(out)
	}
	out := string(geomtest.Run(t, "pdfinfo", "-f", "1", "-l", "2", file))
	for _, want := range []string{"Title:           " + day.Title, "PDF version:     1.6", "Tagged:          no", "JavaScript:      no", "595.276 x 841.89 pts (A4)", "566.929 x 425.197 pts"} {
		if !strings.Contains(out, want) {
			t.Errorf("pdfinfo does not say %q:\n%s", want, out)
		}
	}
	out = string(geomtest.Run(t, "pdffonts", file))
	for _, face := range []string{"GoRegular", "Go-Bold"} {
		if !regexp.MustCompile(`(?m)^[A-Z]{6}\+` + face + ` +CID TrueType +Identity-H +yes yes yes `).MatchString(out) {
			t.Errorf("%s is not embedded as a subset with characters:\n%s", face, out)
		}
	}
	out = strings.Join(strings.Fields(string(geomtest.Run(t, "pdftotext", "-raw", file, "-"))), " ")
	for _, want := range []string{"Prüfblatt – Größe", "Proof of a bag", "over the lazy shelf. The quick", "as a drawing", "Cord 2 400", "? 1", "1 / 1", "upwards"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not found in %q", want, out)
		}
	}
}

func TestReportStructure(t *testing.T) {
	info := day
	info.Language = "de"
	d := readFileByQpdf(t, save(t, produceReport(t, readable(t), info)))
	want := []string{"Lang", "Metadata", "Pages", "Type", "ViewerPreferences"}
	if got := keys(d.root()); !reflect.DeepEqual(got, want) {
		t.Errorf("the catalog has %v, want %v: no layers, no intent, no tags", got, want)
	}
	if got := d.get(d.root(), "Lang"); got != "u:de" {
		t.Errorf("language %v", got)
	}
	if d.get(d.root(), "ViewerPreferences", "PrintScaling") != "/None" || d.get(d.root(), "ViewerPreferences", "DisplayDocTitle") != true {
		t.Error("the pages are not printed at their size, or their title is not shown")
	}
	if got := keys(d.get(d.pages()[1], "Resources")); !reflect.DeepEqual(got, []string{"Font", "XObject"}) {
		t.Errorf("page 2 uses %v", got)
	}
}

// Source: pdfimages. Equal images and forms stand in the file once; JPEG stays JPEG.
func TestPicturesOfReports(t *testing.T) {
	pages := readable(t)
	file := save(t, produceReport(t, pages, day))
	out := string(geomtest.Run(t, "pdfimages", "-list", file))
	// Page, number, kind, width, height, colours, channels, bits, packing, ..., object.
	row := regexp.MustCompile(`(?m)^ +(\d+) +\d+ (\w+) +(\d+) +(\d+) +(\w+) +\d +8 +(\w+) +\w+ +(\d+) +0 `)
	var kinds, numbers []string
	for _, found := range row.FindAllStringSubmatch(out, -1) {
		kind := fmt.Sprintf("%s %s×%s %s %s", found[2], found[3], found[4], found[5], found[6])
		kinds, numbers = append(kinds, kind), append(numbers, found[7])
	}
	want := []string{"image 40×30 rgb image", "image 40×30 rgb jpeg", "image 40×30 rgb image", "smask 40×30 gray image", "image 40×30 rgb image", "image 20×20 gray image"}
	if !reflect.DeepEqual(kinds, want) {
		t.Errorf("images %q, want %q\n%s", kinds, want, out)
	}
	if len(numbers) == 6 && numbers[0] != numbers[4] {
		t.Errorf("the picture of page 1 stands in the file again for page 2: %v", numbers)
	}
	d := readFileByQpdf(t, file)
	forms, images := 0, 0
	for _, object := range d.objects {
		switch object.Stream.Dict["/Subtype"] {
		case "/Form":
			forms++
		case "/Image":
			images++
		}
	}
	// Two forms; kept whole on both pages, JPEG, with alpha and its mask, grey.
	if forms != 2 || images != 5 {
		t.Errorf("%d forms and %d images, want 2 and 5", forms, images)
	}
	// What shows as it was given must be so to the last bit.
	folder := t.TempDir()
	geomtest.Run(t, "pdfimages", "-f", "1", "-l", "1", "-all", file, filepath.Join(folder, "p"))
	comparePixels(t, filepath.Join(folder, "p-000.png"), gradient(false))
	var packed bytes.Buffer
	if err := jpeg.Encode(&packed, gradient(false), &jpeg.Options{Quality: 80}); err != nil {
		t.Fatal(err)
	}
	want80, err := jpeg.Decode(&packed)
	if err != nil {
		t.Fatal(err)
	}
	comparePixels(t, filepath.Join(folder, "p-001.jpg"), want80)
}

func comparePixels(t *testing.T, path string, want image.Image) {
	t.Helper()
	got := decode(t, path)
	if got.Bounds().Size() != want.Bounds().Size() {
		t.Fatalf("%s is %v", path, got.Bounds())
	}
	for y := range want.Bounds().Dy() {
		for x := range want.Bounds().Dx() {
			a, b := color.NRGBAModel.Convert(got.At(x, y)).(color.NRGBA), color.NRGBAModel.Convert(want.At(x, y)).(color.NRGBA)
			if a != b {
				t.Fatalf("%s: pixel %d, %d is %v, want %v", filepath.Base(path), x, y, a, b)
			}
		}
	}
}

// Source: poppler and mupdf. Areas, pictures and forms stand where the page says.
func TestReportSeenByPopplerAndMupdf(t *testing.T) {
	file := save(t, produceReport(t, readable(t)[1:], day))
	look(t, "report", file, geometry.RectAt(0, 0, 200, 150), []seen{
		{25, 25, color.NRGBA{200, 40, 90, 255}},
		{10, 25, blue},
		{5, 25, white},
		{65, 25, color.NRGBA{0, 120, 60, 255}},
		{50.5, 10.5, white},
		{110, 25, color.NRGBA{255, 200, 0, 255}},
		{130, 12, dark},
		{130, 17, white},
		{10.2, 60.2, red},
		{69.8, 60.2, green},
		{10.2, 89.8, blue},
		{69.8, 129.8, yellow},
		// The pixel in column 20 and row 15 of the pictures; 120 of 255 opaque.
		{160.5, 74.5, color.NRGBA{120, 120, 130, 255}},
		{110.5, 74.5, color.NRGBA{191, 191, 196, 255}},
	})
}

// Source: poppler. What Draw shows is what the file shows: seen from as far away as
// letters can be read, hardly a spot differs.
func TestDrawLooksLikeTheFile(t *testing.T) {
	for i, page := range readable(t) {
		file := save(t, produceReport(t, []report.Page{page}, day))
		theirs := rasterise(t, file)["poppler"]
		for j, item := range page.Items {
			if picture, isPicture := item.(report.Picture); isPicture && picture.Form != nil {
				picture.Image = quadrantPicture()
				page.Items[j] = picture
			}
		}
		ours, err := report.Draw(page, pixelsPerMM)
		if err != nil {
			t.Fatal(err)
		}
		// A millimetre square each.
		size := image.Rect(0, 0, int(page.Width), int(page.Height))
		a, b := image.NewRGBA(size), image.NewRGBA(size)
		draw.BiLinear.Scale(a, size, ours, ours.Bounds(), draw.Src, nil)
		draw.BiLinear.Scale(b, size, theirs, theirs.Bounds(), draw.Src, nil)
		differ := 0
		for y := range size.Max.Y {
			for x := range size.Max.X {
				p, q := a.RGBAAt(x, y), b.RGBAAt(x, y)
				if !near(color.NRGBA(p), color.NRGBA(q), 24) {
					differ++
				}
			}
		}
		if share := float64(differ) / float64(size.Max.X*size.Max.Y); share > 0.01 {
			t.Errorf("page %d: %.2f %% of it looks different", i+1, 100*share)
		}
	}
}

// quadrantPicture is what quadrants shows.
func quadrantPicture() image.Image {
	picture := image.NewNRGBA(image.Rect(0, 0, 200, 100))
	for y := range 100 {
		for x := range 200 {
			c := [2][2]color.NRGBA{{blue, yellow}, {red, green}}[y/50][x/100]
			if x >= 80 && x < 120 && y >= 40 && y < 60 {
				c = dark
			}
			picture.SetNRGBA(x, y, c)
		}
	}
	return picture
}

// Source: Ghostscript. Colours given by their inks print in those and no others.
func TestInksOfReports(t *testing.T) {
	page := report.Page{Width: 100, Height: 100, Items: []report.Item{
		report.Box{Rect: geometry.RectAt(0, 0, 100, 100), Fill: report.Ink(scene.CMYK{C: 0.2, M: 0.4, Y: 0.6, K: 0.8})},
	}}
	found := separateFile(t, save(t, produceReport(t, []report.Page{page}, day)))
	for ink, share := range map[string]float64{"Cyan": 0.2, "Magenta": 0.4, "Yellow": 0.6, "Black": 0.8} {
		want := uint8(math.Round(255 * (1 - share)))
		if fullest, emptiest := extremes(found[ink]); !alike(fullest, want) || !alike(emptiest, want) {
			t.Errorf("the %s plate runs from %d to %d, want %d", ink, fullest, emptiest, want)
		}
	}
}

func TestBadReports(t *testing.T) {
	page := report.Page{Width: 100, Height: 100}
	bad := report.Page{Width: 100, Height: 100, Items: []report.Item{report.Text{Text: "x"}}}
	huge := report.Page{Width: 100, Height: 100, Items: []report.Item{report.Picture{
		Rect: geometry.RectAt(0, 0, 9, 9), Image: image.NewGray(image.Rect(0, 0, 70000, 1)), Quality: 50,
	}}}
	for _, c := range []struct {
		pages []report.Page
		info  Info
		want  string
	}{
		{nil, day, "there is no page"},
		{[]report.Page{page, bad}, day, `page 2: item 1: text "x" has the size 0 mm`},
		{[]report.Page{page}, Info{}, "the date is missing"},
		{[]report.Page{page}, Info{Date: day.Date, Language: "English (UK)"}, `the language is "English (UK)"`},
		{[]report.Page{page}, forPress(t), "no claim to be PDF/X"},
		{[]report.Page{huge}, day, "page 1: item 1: pack a picture of 70000 × 1 pixels"}, // JPEG ends at 65 535
		{[]report.Page{{Width: 9000, Height: 100}}, day, "page 1: the page is 9000 × 100 mm"},
	} {
		var out bytes.Buffer
		err := WriteReport(&out, c.pages, c.info)
		if err == nil || !strings.Contains(err.Error(), "make the PDF file: ") || !strings.Contains(err.Error(), c.want) || out.Len() > 0 {
			t.Errorf("error is %v, want one with %q", err, c.want)
		}
	}
	if err := WriteReport(fullDisk{}, []report.Page{page}, day); !errors.Is(err, errFull) {
		t.Errorf("error is %v, want %v", err, errFull)
	}
}

func BenchmarkWriteReport(b *testing.B) {
	pages := readable(b)
	for b.Loop() {
		var out bytes.Buffer
		if err := WriteReport(&out, pages, day); err != nil {
			b.Fatal(err)
		}
	}
}
