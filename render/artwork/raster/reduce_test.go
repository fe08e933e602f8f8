package raster

import (
	"bytes"
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"image"
	"image/color"
	"math/rand/v2"
	"sync/atomic"
	"testing"
)

// Shares of pixels must leave nothing out and count nothing twice.
func TestSpansShareAll(t *testing.T) {
	for _, c := range [][2]int{{1, 1}, {2, 1}, {3, 2}, {7, 7}, {61, 31}, {8268, 4830}, {65535, 33000}, {9, 2}, {5, 1}} {
		from, to := c[0], c[1]
		list := spans(from, to)
		covered := make([]float64, from)
		for i, s := range list {
			total := uint64(0)
			for j, weight := range s.weights {
				total += weight
				covered[s.first+j] += float64(weight) / 256 * float64(from) / float64(to)
			}
			if total != 256 {
				t.Fatalf("%d to %d: weights of pixel %d add up to %d", from, to, i, total)
			}
		}
		slack := float64(from) / float64(to) / 64 // weights are rounded to 1/256
		for i, share := range covered {
			if share < 1-slack || share > 1+slack {
				t.Fatalf("%d to %d: pixel %d counts %.3f times", from, to, i, share)
			}
		}
	}
}

func reduceInBands(m *image.RGBA, to image.Point, count int) *image.RGBA {
	got := image.NewRGBA(image.Rectangle{Max: to})
	for i := range count {
		r := newBand(m.Rect.Max, to, i*to.Y/count, (i+1)*to.Y/count, func(y int, line []byte) { copy(got.Pix[y*got.Stride:], line) })
		for first, end := r.rows(); first < end; first++ {
			r.add(m.Pix[first*m.Stride:][:m.Stride])
		}
	}
	return got
}

// The reduced picture is the mean of areas: computed here in another way, with
// fractions of pixels in floating point.
func TestReducesByAreas(t *testing.T) {
	const from, to = 37, 22
	random := rand.New(rand.NewPCG(7, 8))
	m := image.NewRGBA(image.Rect(0, 0, from, from))
	for i := range m.Pix {
		m.Pix[i] = byte(random.Uint32())
	}
	got := reduceInBands(m, image.Pt(to, to), 1)
	for _, count := range []int{2, 3, to} {
		if !bytes.Equal(reduceInBands(m, image.Pt(to, to), count).Pix, got.Pix) {
			t.Errorf("%d bands are not the same picture as one", count)
		}
	}
	share := func(i, pixel int) float64 {
		const ratio = float64(from) / to
		return max(0, min(float64(i+1)*ratio, float64(pixel+1))-max(float64(i)*ratio, float64(pixel))) / ratio
	}
	for i := range got.Pix {
		x, y, c := i/4%to, i/4/to, i%4
		want := 0.0
		for j := range from * from {
			want += share(x, j%from) * share(y, j/from) * float64(m.Pix[4*j+c])
		}
		if apart := float64(got.Pix[i]) - want; apart < -2 || apart > 2 {
			t.Fatalf("channel %d at %d, %d is %d, want %.2f", c, x, y, got.Pix[i], want)
		}
	}
}

// Halving is reducing to half: no channel differs by more than rounding.
func TestHalvesLikeAReducer(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	m := image.NewRGBA(image.Rect(0, 0, 46, 34))
	for i := range m.Pix {
		m.Pix[i] = byte(random.Uint32())
	}
	got := image.NewRGBA(image.Rect(0, 0, 23, 17))
	halve(got, m)
	for i, want := range reduceInBands(m, got.Rect.Max, 1).Pix {
		if apart := int(got.Pix[i]) - int(want); apart < -1 || apart > 1 {
			t.Fatalf("byte %d is %d, want %d", i, got.Pix[i], want)
		}
	}
}

func BenchmarkLevels(b *testing.B) {
	for name, side := range map[string]int{"even": 2048, "odd": 2049} {
		b.Run(name, func(b *testing.B) {
			m := image.NewRGBA(image.Rect(0, 0, side, side))
			for b.Loop() {
				Levels(m)
			}
		})
	}
}

func TestLevels(t *testing.T) {
	for _, c := range []struct {
		size  image.Point
		sizes []image.Point
	}{
		{image.Pt(1, 1), []image.Point{{1, 1}}},
		{image.Pt(64, 20), []image.Point{{64, 20}}},
		{image.Pt(65, 20), []image.Point{{65, 20}, {33, 10}}},
		{image.Pt(300, 3), []image.Point{{300, 3}, {150, 2}, {75, 1}, {38, 1}}},
	} {
		p := mustRead(t, asPNG(t, image.NewGray(image.Rectangle{Max: c.size})))
		var got []image.Point
		for _, level := range p.Levels {
			got = append(got, level.Rect.Size())
		}
		if fmt.Sprint(got) != fmt.Sprint(c.sizes) {
			t.Errorf("levels of %v are %v, want %v", c.size, got, c.sizes)
		}
	}
}

// Quarters of a picture of 24 million pixels stand where they should in every level,
// whatever its orientation.
func TestLargePictureIsReduced(t *testing.T) {
	m := image.NewPaletted(image.Rect(0, 0, 6001, 4000), color.Palette{
		color.RGBA{200, 0, 0, 255}, color.RGBA{0, 200, 0, 255}, color.RGBA{0, 0, 200, 255}, color.RGBA{90, 90, 90, 255},
	})
	for i := range m.Pix {
		x, y := i%m.Stride, i/m.Stride
		m.Pix[i] = byte(x/3001 + y/2000*2)
	}
	p := mustRead(t, withChunk(asPNG(t, m), "eXIf", exif(binary.BigEndian, 6, 0, 0, 0)))
	finest := p.Levels[0].Rect.Size()
	if pixels := finest.X * finest.Y; pixels > MostShown || pixels < MostShown*99/100 {
		t.Errorf("finest level is %v, %d pixels", finest, pixels)
	}
	for i, level := range p.Levels {
		size := level.Rect.Size()
		for _, c := range []struct {
			x, y int // quarters of the picture as shown
			want color.RGBA
		}{
			{3, 1, color.RGBA{200, 0, 0, 255}},
			{3, 3, color.RGBA{0, 200, 0, 255}},
			{1, 1, color.RGBA{0, 0, 200, 255}},
			{1, 3, color.RGBA{90, 90, 90, 255}},
		} {
			if got := level.RGBAAt(size.X*c.x/4, size.Y*c.y/4); got != c.want {
				t.Errorf("level %d of %v has %v at %d/4, %d/4, want %v", i, size, got, c.x, c.y, c.want)
			}
		}
	}
}

// Clear pixels must not bleed their colour into means.
func TestAlphaIsMultiplied(t *testing.T) {
	m := image.NewNRGBA(image.Rect(0, 0, 100, 100))
	for i := range 100 * 100 {
		m.SetNRGBA(i%100, i/100, [2]color.NRGBA{{255, 0, 0, 0}, {0, 0, 255, 255}}[i%2])
	}
	p := mustRead(t, asPNG(t, m))
	if got := p.Levels[0].RGBAAt(0, 0); got != (color.RGBA{}) {
		t.Errorf("clear red is %v", got)
	}
	if got := p.Levels[1].RGBAAt(10, 10); got.R != 0 || got.B != got.A || got.A < 127 || got.A > 128 {
		t.Errorf("half of opaque blue is %v", got)
	}
}

// spent is a context that ends when it was asked so many times, by whatever goroutine.
type spent struct {
	context.Context
	calls *atomic.Int64
}

func (s spent) Err() error {
	if s.calls.Add(-1) < 0 {
		return context.Canceled
	}
	return nil
}

// The work must end whenever it is told to, be it decoding or reducing.
func TestStopsHalfWay(t *testing.T) {
	for name, data := range map[string][]byte{
		"PNG": asPNG(t, sample()), "JPEG": asJPEG(t, sample()), "TIFF": plainTIFF(0, 0), "WebP": fromHex(t, lossyWebP),
	} {
		var calls atomic.Int64
		for all := 1; ; all++ {
			calls.Store(int64(all))
			_, err := Read(spent{context.Background(), &calls}, data)
			if calls.Load() >= 0 {
				if err != nil {
					t.Errorf("%s: %v", name, err)
				}
				if all < 20 {
					t.Errorf("%s: only %d times it is asked whether to stop", name, all)
				}
				break
			}
			if !errors.Is(err, context.Canceled) {
				t.Fatalf("%s: stopped after %d calls with %v", name, all, err)
			}
		}
	}
}

func TestStops(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	for name, data := range map[string][]byte{
		"PNG": asPNG(t, sample()), "JPEG": asJPEG(t, sample()),
		"TIFF": convert(t, sample(), "tiff:"), "WebP": convert(t, sample(), "webp:"),
	} {
		_, err := Read(ctx, data)
		if want := "reading the " + name + " picture was stopped: context canceled"; err == nil || err.Error() != want {
			t.Errorf("%s: %v, want %s", name, err, want)
		}
		p := mustRead(t, data)
		if name == "TIFF" || name == "WebP" {
			if _, err := p.XObject(ctx); err == nil {
				t.Errorf("%s: packed although stopped", name)
			}
			if _, err := p.XObject(context.Background()); err != nil {
				t.Errorf("%s: stays stopped: %v", name, err)
			}
		}
	}
}
