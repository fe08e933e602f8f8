package pdf

import (
	"encoding/xml"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/scene"
)

// Source: qpdf, which fails the check on any fault of syntax or of a stream, and
// by its exit code on warnings too.
func TestReadByQpdf(t *testing.T) {
	for name, pages := range map[string][]scene.Drawing{"two pages": pages(), "busy": {busy()}} {
		out := string(geomtest.Run(t, "qpdf", "--check", produceFile(t, pages, true)))
		if !strings.Contains(out, "No syntax or stream encoding errors found") {
			t.Errorf("%s: %s", name, out)
		}
	}
}

// Source of the sizes: pdfinfo of poppler, which prints points with two decimals.
func TestBoxesReadByPoppler(t *testing.T) {
	out := string(geomtest.Run(t, "pdfinfo", "-box", "-f", "1", "-l", "2", produceFile(t, pages(), true)))
	const mm = 72 / 25.4 // points; 72 to the inch
	for _, box := range []struct {
		name                     string
		left, bottom, right, top float64 // mm from the corner of the page
	}{
		{"MediaBox", 0, 0, 350, 250},
		{"BleedBox", 22, 22, 328, 228},
		{"TrimBox", 25, 25, 325, 225},
	} {
		for page := 1; page <= 2; page++ {
			pattern := fmt.Sprintf(`Page +%d %s: +([\d.]+) +([\d.]+) +([\d.]+) +([\d.]+)`, page, box.name)
			found := regexp.MustCompile(pattern).FindStringSubmatch(out)
			if found == nil {
				t.Fatalf("no %s of page %d in %s", box.name, page, out)
			}
			for i, want := range []float64{box.left, box.bottom, box.right, box.top} {
				if got := parse(t, found[i+1]); math.Abs(got-want*mm) > 0.0051 {
					t.Errorf("page %d: %s has %g points, want %g", page, box.name, got, want*mm)
				}
			}
		}
	}
	for _, want := range []string{
		"Title:           " + day.Title, "Creator:         Gussetwright", "Pages:           2",
		"PDF version:     1.6", "Metadata Stream: yes", "JavaScript:      no", "Encrypted:       no",
	} {
		if !strings.Contains(out, want) {
			t.Errorf("pdfinfo does not say %q:\n%s", want, out)
		}
	}
}

func parse(t *testing.T, number string) float64 {
	t.Helper()
	value, err := strconv.ParseFloat(number, 64)
	if err != nil {
		t.Fatal(err)
	}
	return value
}

// Source: pdffonts of poppler.
func TestFontsReadByPoppler(t *testing.T) {
	out := string(geomtest.Run(t, "pdffonts", produceFile(t, pages(), true)))
	for _, face := range []string{"GoRegular", "Go-Bold"} {
		// Name with a tag, kind, encoding, embedded, subset, with characters.
		line := regexp.MustCompile(`(?m)^[A-Z]{6}\+` + face + ` +CID TrueType +Identity-H +yes yes yes `)
		if !line.MatchString(out) {
			t.Errorf("%s is not embedded as a subset with characters:\n%s", face, out)
		}
	}
	if lines := strings.Count(out, "\n"); lines != 4 {
		t.Errorf("%d fonts, want 2 for both pages together:\n%s", lines-2, out)
	}
}

// word is what pdftotext says about a word, in points from the upper left.
type word struct {
	XMin float64 `xml:"xMin,attr"`
	XMax float64 `xml:"xMax,attr"`
	YMin float64 `xml:"yMin,attr"`
	YMax float64 `xml:"yMax,attr"`
	Text string  `xml:",chardata"`
}

func wordsOf(t *testing.T, drawing scene.Drawing) map[string]word {
	t.Helper()
	out := geomtest.Run(t, "pdftotext", "-bbox", produceFile(t, []scene.Drawing{drawing}, true), "-")
	var page struct {
		Words []word `xml:"body>doc>page>word"`
	}
	if err := xml.Unmarshal(out, &page); err != nil {
		t.Fatalf("%v in %s", err, out)
	}
	words := map[string]word{}
	for _, w := range page.Words {
		words[w.Text] = w
	}
	return words
}

// Source: pdftotext of poppler finds all that is written, on each page, with the
// characters that are not in ASCII.
func TestTextReadByPoppler(t *testing.T) {
	file := produceFile(t, pages(), true)
	for i, title := range []string{"Front · piece 1", "Back · piece 2"} {
		number := strconv.Itoa(i + 1)
		out := string(geomtest.Run(t, "pdftotext", "-raw", "-f", number, "-l", number, file, "-"))
		found := strings.Join(strings.Fields(out), " ")
		for _, want := range []string{title, "300 × 200 mm", "45° · 0.2 µm", "20–25 g/m²", "slanted"} {
			if !strings.Contains(found, want) {
				t.Errorf("page %s: %q is not found in %q", number, want, found)
			}
		}
	}
}

// A character that the faces lack is seen, and found, as a question mark.
func TestMissingCharacterReadByPoppler(t *testing.T) {
	d := page("紙袋")
	words := wordsOf(t, d)
	if _, found := words["??"]; !found {
		t.Errorf("no question marks in %v", words)
	}
}

// Source of the places: pdftotext of poppler, which adds up the widths that the
// file states.
func TestAnchorsReadByPoppler(t *testing.T) {
	d := page("Anchors")
	at := geometry.Vec2{X: 150, Y: 100}
	d.Items = nil
	for _, l := range []scene.Label{
		{Text: "Start", Anchor: scene.Start},
		{Text: "Middle", Anchor: scene.Middle, Bold: true},
		{Text: "End", Anchor: scene.End},
		{Text: "UpEnd", Anchor: scene.End, Turn: math.Pi / 2},
		{Text: "UpMiddle", Anchor: scene.Middle, Turn: math.Pi / 2},
	} {
		l.Role, l.At, l.Size = scene.Legend, at, 7
		d.Items = append(d.Items, l)
		at.Y -= 15
	}
	words := wordsOf(t, d)
	mm := func(points float64) float64 { return points * 25.4 / 72 }
	left := 150 - d.Media.Min.X // mm from the left of the page
	down := func(y float64) float64 { return d.Media.Max.Y - y }
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"start of Start", mm(words["Start"].XMin), left},
		{"middle of Middle", mm(words["Middle"].XMin+words["Middle"].XMax) / 2, left},
		{"end of End", mm(words["End"].XMax), left},
		{"end of UpEnd", mm(words["UpEnd"].YMin), down(55)},
		{"middle of UpMiddle", mm(words["UpMiddle"].YMin+words["UpMiddle"].YMax) / 2, down(40)},
	} {
		if math.Abs(c.got-c.want) > 0.02 {
			t.Errorf("%s is at %.3f mm, want %.3f", c.what, c.got, c.want)
		}
	}
}

// Source: mutool reads title and dates from the XMP packet and finds no claim to
// be PDF/X in it.
func TestMetadataReadByMutool(t *testing.T) {
	info := Info{Title: `A < B & "C" – ×`, Date: day.Date}
	file := filepath.Join(t.TempDir(), "drawing.pdf")
	out, err := os.Create(file)
	if err != nil {
		t.Fatal(err)
	}
	if err := Write(out, pages(), info); err != nil {
		t.Fatal(err)
	}
	if err := out.Close(); err != nil {
		t.Fatal(err)
	}
	packet := geomtest.Run(t, "mutool", "show", "-b", file, "trailer/Root/Metadata")
	var xmp struct {
		Title  string `xml:"RDF>Description>title>Alt>li"`
		Tool   string `xml:"RDF>Description>CreatorTool"`
		Create string `xml:"RDF>Description>CreateDate"`
		Modify string `xml:"RDF>Description>ModifyDate"`
	}
	if err := xml.Unmarshal(packet, &xmp); err != nil {
		t.Fatalf("%v in %s", err, packet)
	}
	if xmp.Title != info.Title || xmp.Tool != "Gussetwright" {
		t.Errorf("title %q by %q, want %q", xmp.Title, xmp.Tool, info.Title)
	}
	if want := "2026-11-25T00:00:00+00:00"; xmp.Create != want || xmp.Modify != want {
		t.Errorf("made %s, changed %s, want %s", xmp.Create, xmp.Modify, want)
	}
	if strings.Contains(strings.ToLower(string(packet)), "pdfx") {
		t.Errorf("the packet claims to be PDF/X: %s", packet)
	}
}
