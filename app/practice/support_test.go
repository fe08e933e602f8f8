package practice

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"testing"
	"time"

	"gussetwright/app/document"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/pdf"
	"gussetwright/render/report"
)

var day = time.Date(2026, time.March, 31, 0, 0, 0, 0, time.UTC)

// orders are of every construction that looks different on paper.
func orders(t testing.TB) map[string]Order {
	pinch := bag.Default()
	pinch.Body.Base, pinch.Handle.Kind = bag.BasePinch, bag.HandleTwisted
	two := bag.OfSize(420, 150, 380)
	two.Body.Seams = bag.SeamsTwo
	small := bag.OfSize(60, 40, 80)
	zigzag := bag.OfSize(180, 80, 240)
	zigzag.Body.Top, zigzag.Handle.Kind = bag.TopZigzag, bag.HandleHandHole
	return map[string]Order{
		"usual":           {Snapshot: derive(t, bag.Default())},
		"pinch base":      {Snapshot: derive(t, pinch), Margin: 5},
		"two pieces":      {Snapshot: derive(t, two)},
		"in inches":       {Snapshot: derive(t, zigzag), Unit: geometry.Inch},
		"not to be tiled": {Snapshot: derive(t, small)},
		"on A3":           {Snapshot: derive(t, bag.Default()), Paper: A3},
		"on Tabloid":      {Snapshot: derive(t, zigzag), Unit: geometry.Inch, Paper: Tabloid},
	}
}

func derive(t testing.TB, spec bag.Spec) *document.Snapshot {
	t.Helper()
	snapshot, err := document.Derive(spec)
	if err != nil {
		t.Fatal(err)
	}
	return snapshot
}

// written returns the path of the PDF file of an order.
func written(t testing.TB, order Order) string {
	t.Helper()
	var out bytes.Buffer
	order.Date = day
	if err := Write(context.Background(), &out, order); err != nil {
		t.Fatal(err)
	}
	return inFile(t, out.Bytes())
}

func inFile(t testing.TB, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "file.pdf")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// perMM is how many pixels a mm takes: at 127 to the inch a whole number.
const perMM = 5

// rasterised returns the pages of a PDF file as poppler's pdftoppm draws them.
func rasterised(t testing.TB, path string) []*image.RGBA {
	t.Helper()
	folder := t.TempDir()
	geomtest.Run(t, "pdftoppm", "-r", fmt.Sprint(perMM*25.4), "-png", path, filepath.Join(folder, "page"))
	names, err := filepath.Glob(filepath.Join(folder, "page*.png"))
	if err != nil || len(names) == 0 {
		t.Fatalf("no page was drawn: %v", err)
	}
	var pages []*image.RGBA
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		decoded, err := png.Decode(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		picture := image.NewRGBA(decoded.Bounds())
		draw.Draw(picture, picture.Rect, decoded, image.Point{}, draw.Src)
		pages = append(pages, picture)
	}
	return pages
}

// whole returns the drawing of a sheet, as large as all its tiles together, on one page.
func whole(t testing.TB, s *sheet) *image.RGBA {
	t.Helper()
	g := &s.grid
	all := g.part(place{0, g.rows - 1}).Union(g.part(place{g.columns - 1, 0}))
	tr := transfer{scale: 1, origin: all.Min.Scale(-1)}
	page := report.Page{Width: all.Width(), Height: all.Height(), Items: tr.items(s.drawing, all)}
	var out bytes.Buffer
	if err := pdf.WriteReport(&out, []report.Page{page}, pdf.Info{Title: "whole", Date: day}); err != nil {
		t.Fatal(err)
	}
	return rasterised(t, inFile(t, out.Bytes()))[0]
}
