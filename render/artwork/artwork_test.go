package artwork_test

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/png"
	"math"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/render/artwork"
)

const drawing = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30"><rect width="20" height="30" fill="#f00"/></svg>`

func picture(t testing.TB, width, height int) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := png.Encode(&out, image.NewGray(image.Rect(0, 0, width, height))); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// page returns a page of 200 × 100 points with a TrimBox 10 points inside its edges.
func page() []byte {
	objects := []string{
		"<< /Type /Catalog /Pages 2 0 R >>",
		"<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
		"<< /Type /Page /Parent 2 0 R /MediaBox [0 0 200 100] /BleedBox [0 0 200 100] /TrimBox [10 10 190 90] /Contents 4 0 R >>",
		"<< /Length 22 >>\nstream\n1 0 0 rg 0 0 9 9 re f \nendstream",
	}
	var file bytes.Buffer
	file.WriteString("%PDF-1.6\n")
	var places []int
	for i, o := range objects {
		places = append(places, file.Len())
		fmt.Fprintf(&file, "%d 0 obj\n%s\nendobj\n", i+1, o)
	}
	table := file.Len()
	fmt.Fprintf(&file, "xref\n0 %d\n0000000000 65535 f \n", len(objects)+1)
	for _, place := range places {
		fmt.Fprintf(&file, "%010d 00000 n \n", place)
	}
	fmt.Fprintf(&file, "trailer\n<< /Size %d /Root 1 0 R >>\nstartxref\n%d\n%%%%EOF\n", len(objects)+1, table)
	return file.Bytes()
}

// Whatever the name says, the content tells what a file is. A point is 25.4 ÷ 72 mm.
func TestOpenTellsByTheContent(t *testing.T) {
	const point = 25.4 / 72
	for _, c := range []struct {
		name   string
		data   []byte
		format string
		size   geometry.Vec2
		stated bool
		trim   geometry.Rect
	}{
		{"wrong.jpg", picture(t, 300, 150), "PNG", geometry.Vec2{X: 25.4, Y: 12.7}, false, geometry.Rect{}},
		{"leaf.png", []byte("\xef\xbb\xbf \n" + drawing), "SVG", geometry.Vec2{X: 40, Y: 30}, true, geometry.Rect{}},
		{"page.svg", page(), "PDF", geometry.Vec2{X: 200 * point, Y: 100 * point}, true, geometry.RectAt(10*point, 10*point, 180*point, 80*point)},
	} {
		art, err := artwork.Open(context.Background(), c.name, c.data, 1)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		near := func(a, b geometry.Vec2) bool { return a.Sub(b).Length() < 0.01 }
		if art.Format != c.format || !near(art.Source.Size, c.size) || art.Stated != c.stated || !near(art.Source.Trim.Min, c.trim.Min) || !near(art.Source.Trim.Max, c.trim.Max) {
			t.Errorf("%s: %s of %v, stated %t, trim %v", c.name, art.Format, art.Source.Size, art.Stated, art.Source.Trim)
		}
		form, err := art.Form(context.Background())
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
		} else if got, want := form.Width/form.Height, c.size.X/c.size.Y; math.Abs(got-want) > 1e-3 {
			t.Errorf("%s: the form is %g × %g", c.name, form.Width, form.Height)
		}
	}
}

// Levels halve down to at most 64 pixels and keep the shape.
func TestLevels(t *testing.T) {
	art, err := artwork.Open(context.Background(), "leaf.svg", []byte(drawing), 1)
	if err != nil {
		t.Fatal(err)
	}
	for i, level := range art.Levels {
		size := level.Rect.Size()
		if i > 0 {
			above := art.Levels[i-1].Rect.Size()
			if size.X != above.X/2 || size.Y != above.Y/2 {
				t.Errorf("level %d is %v below %v", i, size, above)
			}
		}
		left, right := level.RGBAAt(size.X/4, size.Y/2), level.RGBAAt(3*size.X/4, size.Y/2)
		if left.R < 250 || left.G > 5 || right.A != 0 {
			t.Errorf("level %d shows %v and %v", i, left, right)
		}
	}
	first, last := art.Levels[0].Rect.Size(), art.Levels[len(art.Levels)-1].Rect.Size()
	if first.X != 320 || last.X <= 32 || last.X > 64 {
		t.Errorf("levels from %v to %v", first, last)
	}
}

func TestOpenSaysWhatIsWrong(t *testing.T) {
	for _, c := range []struct {
		data []byte
		page int
		says string
	}{
		{nil, 1, `open artwork "x": the file is empty`},
		{picture(t, 9, 9), 2, "only PDF files have pages"},
		{page(), 2, "1"},
		{[]byte("<html></html>"), 1, `open artwork "x": `},
		{[]byte("GIF89a"), 1, `open artwork "x": `},
	} {
		if _, err := artwork.Open(context.Background(), "x", c.data, c.page); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%.20q page %d: error %v, want one that says %q", c.data, c.page, err, c.says)
		}
	}
}

func FuzzOpen(f *testing.F) {
	f.Add([]byte(drawing), 1)
	f.Add(page(), 1)
	f.Add(picture(f, 5, 7), 1)
	f.Fuzz(func(t *testing.T, data []byte, number int) {
		art, err := artwork.Open(context.Background(), "fuzz", data, number)
		if err == nil && (len(art.Levels) == 0 || !(art.Source.Size.X > 0 && art.Source.Size.Y > 0)) {
			t.Errorf("opened with %d levels, %v", len(art.Levels), art.Source.Size)
		}
	})
}
