package vector

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
)

func num(v float64) string { return strconv.FormatFloat(v, 'f', 4, 64) }

func mustRead(t testing.TB, svg string) *Drawing {
	t.Helper()
	d, err := Read(context.Background(), []byte(svg))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// onWhite returns what a drawing looks like on white paper.
func onWhite(t testing.TB, d *Drawing, width, height int) *image.RGBA {
	t.Helper()
	drawn, err := d.Render(context.Background(), width, height)
	if err != nil {
		t.Fatal(err)
	}
	paper := image.NewRGBA(drawn.Rect)
	draw.Draw(paper, paper.Rect, image.NewUniform(color.White), image.Point{}, draw.Src)
	draw.Draw(paper, paper.Rect, drawn, image.Point{}, draw.Over)
	return paper
}

func decode(t testing.TB, data []byte) *image.RGBA {
	t.Helper()
	m, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	plain := image.NewRGBA(m.Bounds())
	draw.Draw(plain, plain.Rect, m, m.Bounds().Min, draw.Src)
	return plain
}

// apart returns how much two pictures differ, of 255: on the mean, and in the
// block of pixels where they differ most, with its place.
func apart(a, b *image.RGBA, block int) (mean, worst float64, at image.Point) {
	size := a.Rect.Size()
	for y := 0; y < size.Y; y += block {
		for x := 0; x < size.X; x += block {
			sum, count := 0.0, 0
			for v := y; v < min(y+block, size.Y); v++ {
				for u := x; u < min(x+block, size.X); u++ {
					for c := range 3 {
						sum += math.Abs(float64(a.Pix[a.PixOffset(u, v)+c]) - float64(b.Pix[b.PixOffset(u, v)+c]))
						count++
					}
				}
			}
			mean += sum
			if sum /= float64(count); sum > worst {
				worst, at = sum, image.Pt(x, y)
			}
		}
	}
	return mean / float64(3*size.X*size.Y), worst, at
}

// keep writes pictures for a look at them where the variable names a folder.
func keep(t *testing.T, name string, pictures ...*image.RGBA) {
	t.Helper()
	folder := os.Getenv("GUSSETWRIGHT_LOOK")
	if folder == "" {
		return
	}
	row := image.NewRGBA(image.Rect(0, 0, len(pictures)*pictures[0].Rect.Dx(), pictures[0].Rect.Dy()))
	for i, picture := range pictures {
		draw.Draw(row, picture.Rect.Add(image.Pt(i*picture.Rect.Dx(), 0)), picture, image.Point{}, draw.Src)
	}
	var out bytes.Buffer
	if err := png.Encode(&out, row); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(folder, strings.ReplaceAll(name, " ", "-")+".png")
	if err := os.WriteFile(path, out.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}

// TestAsOthersDraw compares every drawing with what rsvg-convert, the program of
// librsvg, makes of it.
func TestAsOthersDraw(t *testing.T) {
	const width, height = 600, 400
	for _, c := range drawings() {
		if unknownToLibrsvg[c.name] {
			continue
		}
		t.Run(c.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "drawing.svg")
			if err := os.WriteFile(path, []byte(c.svg), 0o644); err != nil {
				t.Fatal(err)
			}
			theirs := decode(t, geomtest.Run(t, "rsvg-convert", "-w", fmt.Sprint(width), "-h", fmt.Sprint(height), "--background-color=white", path))
			d := mustRead(t, c.svg)
			if len(d.Notes) > 0 {
				t.Errorf("notes of a drawing that can be shown: %v", d.Notes)
			}
			ours := onWhite(t, d, width, height)
			keep(t, c.name, ours, theirs)
			if ours.Rect != theirs.Rect {
				t.Fatalf("their picture has %v pixels", theirs.Rect)
			}
			mean, worst, at := apart(ours, theirs, 8)
			t.Logf("mean %.3f, worst block %.1f at %v", mean, worst, at)
			if mean > 0.4 || worst > 8 {
				t.Errorf("differs by %.2f of 255 on the mean, by %.1f in the block at %v", mean, worst, at)
			}
		})
	}
}
