package ink

import (
	"image/color"
	"math/rand/v2"
	"testing"
)

// The corners of the equations are the primaries themselves. Values from memory:
// offset printing on coated paper.
func TestFullInks(t *testing.T) {
	for _, c := range []struct {
		name       string
		c, m, y, k float64
		want       color.RGBA
	}{
		{"paper", 0, 0, 0, 0, color.RGBA{255, 255, 255, 255}},
		{"cyan", 1, 0, 0, 0, color.RGBA{0, 158, 224, 255}},
		{"magenta", 0, 1, 0, 0, color.RGBA{230, 0, 126, 255}},
		{"yellow", 0, 0, 1, 0, color.RGBA{255, 237, 0, 255}},
		{"blue", 1, 1, 0, 0, color.RGBA{49, 39, 131, 255}},
		{"green", 1, 0, 1, 0, color.RGBA{0, 150, 64, 255}},
		{"red", 0, 1, 1, 0, color.RGBA{227, 6, 19, 255}},
		{"three inks", 1, 1, 1, 0, color.RGBA{55, 48, 45, 255}},
		{"black", 0, 0, 0, 1, color.RGBA{29, 29, 27, 255}},
		{"beyond the ends", -1, 2, -3, 0, color.RGBA{230, 0, 126, 255}},
	} {
		if got := RGB(c.c, c.m, c.y, c.k); got != c.want {
			t.Errorf("%s is %v, want %v", c.name, got, c.want)
		}
	}
}

// A half tone is the mean of its ends by the equations: black of 50 % has
// (255 + 29) / 2 of red.
func TestHalfTone(t *testing.T) {
	if got, want := RGB(0, 0, 0, 0.5), (color.RGBA{142, 142, 141, 255}); got != want {
		t.Errorf("black of 50 %% is %v, want %v", got, want)
	}
}

// More of any ink is never lighter. Luma by Rec. 601: 0.299, 0.587, 0.114.
func TestMoreInkIsNotLighter(t *testing.T) {
	const steps = 8
	luma := func(inks [4]int) float64 {
		c := RGB(float64(inks[0])/steps, float64(inks[1])/steps, float64(inks[2])/steps, float64(inks[3])/steps)
		return 0.299*float64(c.R) + 0.587*float64(c.G) + 0.114*float64(c.B)
	}
	for i := range (steps + 1) * (steps + 1) * (steps + 1) * (steps + 1) {
		var inks [4]int
		for j := range inks {
			inks[j], i = i%(steps+1), i/(steps+1)
		}
		for j := range inks {
			more := inks
			if more[j]++; more[j] > steps {
				continue
			}
			// Each channel is rounded to a whole number.
			if a, b := luma(inks), luma(more); b > a+0.51 {
				t.Fatalf("%v of %d has luma %.1f and with more ink, %v, %.1f", inks, steps, a, more, b)
			}
		}
	}
}

func TestTableAgrees(t *testing.T) {
	table := NewTable()
	random := rand.New(rand.NewPCG(1, 2))
	for range 200_000 {
		bits := random.Uint32()
		c, m, y, k := uint8(bits), uint8(bits>>8), uint8(bits>>16), uint8(bits>>24)
		r, g, b := table.RGB(c, m, y, k)
		want := RGB(float64(c)/255, float64(m)/255, float64(y)/255, float64(k)/255)
		if apart(r, want.R) > 2 || apart(g, want.G) > 2 || apart(b, want.B) > 2 {
			t.Fatalf("%d %d %d %d is %d %d %d by the table and %v by the equations", c, m, y, k, r, g, b, want)
		}
	}
	if r, g, b := table.RGB(0, 0, 0, 0); r != 255 || g != 255 || b != 255 {
		t.Errorf("paper is %d %d %d by the table", r, g, b)
	}
}

func apart(a, b uint8) int { return int(max(a, b)) - int(min(a, b)) }

func BenchmarkTable(b *testing.B) {
	table := NewTable()
	random := rand.New(rand.NewPCG(3, 4))
	samples := make([]uint32, 1<<16)
	for i := range samples {
		samples[i] = random.Uint32()
	}
	for i := 0; b.Loop(); i++ {
		s := samples[i&0xffff]
		table.RGB(uint8(s), uint8(s>>8), uint8(s>>16), uint8(s>>24))
	}
}

func BenchmarkNewTable(b *testing.B) {
	for b.Loop() {
		NewTable()
	}
}
