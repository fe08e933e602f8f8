package proof

import (
	"bytes"
	"context"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"gussetwright/app/document"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/report"
)

var day = time.Date(2026, time.November, 25, 0, 0, 0, 0, time.UTC)

// lakeBag returns an invented bag with artwork on its faces and its gussets.
func lakeBag() (bag.Spec, map[string][]byte) {
	spec := bag.Default()
	spec.Name = "Ferrow Lake Bakery"
	spec.Artwork = []bag.Artwork{bag.NewArtwork("lake.svg", bag.OnFaces), bag.NewArtwork("waves.png", bag.OnGussets)}
	spec.Print.Background = bag.Background{Cyan: 20, Yellow: 10}
	return spec, map[string][]byte{"lake.svg": []byte(lake), "waves.png": waves()}
}

// lake is a drawing of the size of a face with large areas of four colours: a red roof
// on the left, a yellow sun on the right, above a blue lake that states its inks.
const lake = `<svg xmlns="http://www.w3.org/2000/svg" width="246mm" height="366mm" viewBox="0 0 246 366">
<rect width="246" height="366" fill="#e8f0e0"/>
<circle cx="180" cy="110" r="40" fill="#f0c020"/>
<path d="M20 190V120L65 75L110 120V190Z" fill="#b02818"/>
<rect y="210" width="246" height="156" fill="#1f4f9f device-cmyk(0.9 0.7 0.1 0.05)"/>
<path d="M30 260h186v6h-186z M30 300h186v2h-186z" fill="#ffffff"/>
</svg>`

func waves() []byte {
	const width, height = 600, 2160
	picture := image.NewRGBA(image.Rect(0, 0, width, height))
	for y := range height {
		for x := range width {
			c := color.RGBA{232, 240, 224, 255}
			if math.Mod(float64(y)+20*math.Sin(float64(x)/40), 120) < 60 {
				c = color.RGBA{60, 130, 90, 255}
			}
			picture.SetRGBA(x, y, c)
		}
	}
	return asPNG(picture)
}

func asPNG(picture image.Image) []byte {
	var out bytes.Buffer
	if err := png.Encode(&out, picture); err != nil {
		panic(err) // a buffer takes everything
	}
	return out.Bytes()
}

func derive(t testing.TB, spec bag.Spec, files map[string][]byte) *document.Snapshot {
	t.Helper()
	snapshot, err := document.DeriveWithArt(context.Background(), spec, files)
	if err != nil {
		t.Fatal(err)
	}
	return snapshot
}

// proofOf returns the proof of a bag with the lake on it after a change.
func proofOf(t testing.TB, change func(*bag.Spec)) *Proof {
	t.Helper()
	spec, files := lakeBag()
	if change != nil {
		change(&spec)
	}
	return New(context.Background(), Order{Snapshot: derive(t, spec, files), Date: day})
}

// written returns the PDF file of a proof.
func written(t testing.TB, p *Proof) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := p.PDF(&out); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// inFile returns the path of a file with the data.
func inFile(t testing.TB, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// read returns the text of a PDF file as poppler's pdftotext reads it, with single
// spaces.
func read(t testing.TB, path string) string {
	t.Helper()
	text := string(geomtest.Run(t, "pdftotext", "-enc", "UTF-8", path, "-"))
	return strings.Join(strings.Fields(text), " ")
}

// textsOn returns the texts of a page.
func textsOn(page report.Page) []string {
	var texts []string
	for _, item := range page.Items {
		if text, is := item.(report.Text); is {
			texts = append(texts, text.Text)
		}
	}
	return texts
}
