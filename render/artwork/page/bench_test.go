package page_test

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"gussetwright/geometry/geomtest"
)

// busy is a page such as a designer exports: 420 × 297 mm with a photo of 7 megapixels,
// 3000 curves and 400 lines of text.
func busy(b testing.TB) []byte {
	picture := photo(b, 3200, 2200)
	var operators strings.Builder
	operators.WriteString("q 1190 0 0 842 0 0 cm /Photo Do Q\n")
	for i := range 3000 {
		x, y := i%60*20, i/60*17
		fmt.Fprintf(&operators, "%.2f 0.4 0.3 rg %d %d m %d %d %d %d %d %d c h B\n", float64(i%9)/9, x, y, x+4, y+12, x+9, y-3, x+14, y+6)
	}
	for i := range 400 {
		fmt.Fprintf(&operators, "BT 0 g /F 7 Tf %d %d Td (Handle with care, number %d) Tj ET\n", i%10*119, i/10*21, i)
	}
	return onePage("/MediaBox[0 0 1190 842]/Resources<</Font<</F<</Type/Font/Subtype/Type1/BaseFont/Helvetica>>>>/XObject<</Photo 5 0 R>>>>", operators.String(),
		streamed("/Type/XObject/Subtype/Image/Width 3200/Height 2200/BitsPerComponent 8/ColorSpace/DeviceRGB/Filter/DCTDecode", string(picture)))
}

func BenchmarkRead(b *testing.B) {
	data := busy(b)
	for b.Loop() {
		read(b, data, 1)
	}
}

func BenchmarkReadLastOf10000(b *testing.B) {
	data := manyPages(10_000)
	for b.Loop() {
		read(b, data, 10_000)
	}
}

// BenchmarkRender draws a picture 1000 pixels wide, and has pdftoppm draw the same;
// the ratio is how many times as long it takes here. pdftoppm reads and writes files.
func BenchmarkRender(b *testing.B) {
	data := busy(b)
	p := read(b, data, 1)
	path := file(b, "busy.pdf", data)
	var here, there time.Duration
	for b.Loop() {
		start := time.Now()
		render(b, p, 1000, 708)
		here += time.Since(start)
		b.StopTimer()
		start = time.Now()
		geomtest.Run(b, "pdftoppm", "-singlefile", "-scale-to-x", "1000", "-scale-to-y", "708", path, strings.TrimSuffix(path, ".pdf"))
		there += time.Since(start)
		b.StartTimer()
	}
	b.ReportMetric(float64(here)/float64(there), "×pdftoppm")
	b.ReportMetric(float64(there.Microseconds())/1000/float64(b.N), "pdftoppm-ms")
}

// BenchmarkForm takes the page out of the file and writes it into another.
func BenchmarkForm(b *testing.B) {
	p := read(b, busy(b), 1)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := p.Form(context.Background()); err != nil {
			b.Fatal(err)
		}
		placed(b, p)
	}
}
