package raster

import (
	"bytes"
	"context"
	"image"
	"image/draw"
	"image/jpeg"
	"image/png"
	"math/rand/v2"
	"runtime"
	"testing"
)

// largeWidth and largeHeight are 700 × 480 mm at 300 ppi: 47 million pixels.
const largeWidth, largeHeight = 8268, 5669

// large returns a picture with soft shades, noise as of a photograph, and colours at
// half the resolution.
func large() *image.YCbCr {
	random := rand.New(rand.NewPCG(5, 6))
	m := image.NewYCbCr(image.Rect(0, 0, largeWidth, largeHeight), image.YCbCrSubsampleRatio420)
	for i := range m.Y {
		x, y := i%m.YStride, i/m.YStride
		m.Y[i] = uint8((x/7+y/5)&255)/2 + uint8(random.IntN(24))
	}
	for i := range m.Cb {
		x, y := i%m.CStride, i/m.CStride
		m.Cb[i], m.Cr[i] = uint8(x/40), uint8(y/30)
	}
	return m
}

func BenchmarkReadLargeJPEG(b *testing.B) {
	var data bytes.Buffer
	if err := jpeg.Encode(&data, large(), &jpeg.Options{Quality: 90}); err != nil {
		b.Fatal(err)
	}
	benchmarkRead(b, data.Bytes())
}

func BenchmarkReadLargePNG(b *testing.B) {
	var data bytes.Buffer
	encoder := png.Encoder{CompressionLevel: png.BestSpeed}
	picture := image.NewRGBA(image.Rect(0, 0, largeWidth, largeHeight))
	draw.Draw(picture, picture.Rect, large(), image.Point{}, draw.Src)
	if err := encoder.Encode(&data, picture); err != nil {
		b.Fatal(err)
	}
	benchmarkRead(b, data.Bytes())
}

func BenchmarkReadLargeTIFFOfInks(b *testing.B) {
	benchmarkRead(b, inkTIFF(image.Pt(largeWidth, largeHeight), 1, func(x, y int) [4]byte {
		return [4]byte{byte(x / 40), byte(y / 30), byte(x + y), byte(x * y >> 12)}
	}))
}

// BenchmarkPackLarge packs 47 million pixels anew, as alpha, inks or WebP ask for.
func BenchmarkPackLarge(b *testing.B) {
	p := mustRead(b, inkTIFF(image.Pt(largeWidth, largeHeight), 1, func(x, y int) [4]byte {
		return [4]byte{byte(x / 40), byte(y / 30), byte(x + y), byte(x * y >> 12)}
	}))
	for b.Loop() {
		if _, err := p.image(context.Background()); err != nil {
			b.Fatal(err)
		}
	}
}

func benchmarkRead(b *testing.B, data []byte) {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	for b.Loop() {
		if _, err := Read(context.Background(), data); err != nil {
			b.Fatal(err)
		}
	}
	runtime.ReadMemStats(&after)
	b.ReportMetric(float64(after.TotalAlloc-before.TotalAlloc)/float64(b.N)/(1<<20), "MB-allocated/op")
}
