package vector

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"
)

// foliage returns a made-up drawing of about 5000 curves and lines: leaves that are
// filled, outlined and partly seen through, and a gradient behind them.
func foliage() string {
	var b strings.Builder
	b.WriteString(head + `width="200mm" height="200mm" viewBox="0 0 200 200"><linearGradient id="g"><stop stop-color="#fed"/><stop offset="1" stop-color="#cde"/></linearGradient><rect width="200" height="200" fill="url(#g)"/>`)
	for i := range 600 {
		x, y := 100+90*math.Sin(float64(i)*1.7), 100+90*math.Cos(float64(i)*2.3)
		fmt.Fprintf(&b, `<path transform="translate(%.3f %.3f) rotate(%d)" fill="hsl(%d 60%% 45%%)" fill-opacity="%.2f" stroke="#142" stroke-width=".4" d="M0 0C4-6 12-6 16 0s-4 8-8 7-6-3-8-7L-3 2-5-1z M3 0q4-2 8 0"/>`, x, y, i*37%360, i*11%360, 0.5+float64(i%5)/8)
	}
	b.WriteString(`</svg>`)
	return b.String()
}

func BenchmarkRead(b *testing.B) {
	data := []byte(foliage())
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		if _, err := Read(context.Background(), data); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRender(b *testing.B) {
	d := mustRead(b, foliage())
	for b.Loop() {
		if _, err := d.Render(context.Background(), 2000, 2000); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkForm(b *testing.B) {
	d := mustRead(b, foliage())
	for b.Loop() {
		if _, err := d.Form(context.Background()); err != nil {
			b.Fatal(err)
		}
	}
}
