package raster

import (
	"image"
	"slices"
	"testing"
)

// asInks are the options with which ImageMagick makes inks of colours, taking black
// out of them, without a profile.
var asInks = []string{"-colorspace", "CMYK"}

// Source: ImageMagick writes the files and reads them too.
func TestReadsWhatOthersWrite(t *testing.T) {
	opaque, alpha := sample(), clear()
	for _, c := range []struct {
		name    string
		picture image.Image
		kind    string
		args    []string
		format  string
		colours Colours
		bits    int
		most    int     // that a channel may differ by, of 255
		mean    float64 // and all of them
	}{
		{"PNG", opaque, "png:", nil, "PNG", RGB, 8, 0, 0},
		{"PNG alpha", alpha, "png32:", nil, "PNG", RGB, 8, 0, 0},
		{"PNG grey", opaque, "png:", []string{"-colorspace", "gray"}, "PNG", Grey, 8, 0, 0},
		{"PNG grey and alpha", alpha, "png:", []string{"-colorspace", "gray", "-define", "png:color-type=4"}, "PNG", Grey, 8, 0, 0},
		{"PNG two tones", opaque, "png:", []string{"-monochrome", "-define", "png:bit-depth=1", "-define", "png:color-type=0"}, "PNG", Grey, 1, 0, 0},
		{"PNG palette", opaque, "png8:", nil, "PNG", RGB, 8, 0, 0},
		{"PNG palette of 4 bits", opaque, "png:", []string{"-colors", "12", "-define", "png:color-type=3"}, "PNG", RGB, 8, 0, 0},
		{"PNG 16 bits", opaque, "png48:", nil, "PNG", RGB, 16, 0, 0},
		{"PNG 16 bits and alpha", alpha, "png64:", nil, "PNG", RGB, 16, 0, 0},
		{"PNG interlaced", opaque, "png:", []string{"-interlace", "PNG"}, "PNG", RGB, 8, 0, 0},

		{"JPEG", opaque, "jpg:", []string{"-sampling-factor", "4:4:4"}, "JPEG", RGB, 8, 3, 0.6},
		// Programs make full resolution of half the colours in different ways.
		{"JPEG 4:2:0", opaque, "jpg:", []string{"-sampling-factor", "4:2:0"}, "JPEG", RGB, 8, 110, 4},
		{"JPEG 4:2:2", opaque, "jpg:", []string{"-sampling-factor", "4:2:2"}, "JPEG", RGB, 8, 110, 4},
		{"JPEG progressive", opaque, "jpg:", []string{"-interlace", "JPEG", "-sampling-factor", "4:4:4"}, "JPEG", RGB, 8, 3, 0.6},
		{"JPEG grey", opaque, "jpg:", []string{"-colorspace", "gray"}, "JPEG", Grey, 8, 2, 0.5},
		{"JPEG inks", opaque, "jpg:", asInks, "JPEG", CMYK, 8, 3, 0.6},

		{"TIFF", opaque, "tiff:", nil, "TIFF", RGB, 8, 0, 0},
		{"TIFF high byte first", opaque, "tiff:", []string{"-endian", "MSB", "-depth", "16"}, "TIFF", RGB, 16, 0, 0},
		{"TIFF low byte first", opaque, "tiff:", []string{"-endian", "LSB", "-depth", "16"}, "TIFF", RGB, 16, 0, 0},
		{"TIFF LZW", opaque, "tiff:", []string{"-compress", "LZW"}, "TIFF", RGB, 8, 0, 0},
		{"TIFF LZW predicted", opaque, "tiff:", []string{"-compress", "LZW", "-define", "tiff:predictor=2"}, "TIFF", RGB, 8, 0, 0},
		{"TIFF ZIP predicted 16 bits", opaque, "tiff:", []string{"-compress", "Zip", "-define", "tiff:predictor=2", "-depth", "16"}, "TIFF", RGB, 16, 0, 0},
		{"TIFF ZIP predicted, high byte first", opaque, "tiff:", []string{"-compress", "Zip", "-define", "tiff:predictor=2", "-depth", "16", "-endian", "MSB"}, "TIFF", RGB, 16, 0, 0},
		{"TIFF PackBits", opaque, "tiff:", []string{"-compress", "RLE"}, "TIFF", RGB, 8, 0, 0},
		{"TIFF strips", opaque, "tiff:", []string{"-define", "tiff:rows-per-strip=5"}, "TIFF", RGB, 8, 0, 0},
		{"TIFF tiles", opaque, "tiff:", []string{"-define", "tiff:tile-geometry=32x16", "-compress", "LZW"}, "TIFF", RGB, 8, 0, 0},
		{"TIFF planes", opaque, "tiff:", []string{"-interlace", "plane", "-define", "tiff:rows-per-strip=7"}, "TIFF", RGB, 8, 0, 0},
		{"TIFF JPEG", opaque, "tiff:", []string{"-compress", "JPEG", "-sampling-factor", "4:4:4"}, "TIFF", RGB, 8, 3, 0.6},
		{"TIFF JPEG grey", opaque, "tiff:", []string{"-compress", "JPEG", "-colorspace", "gray"}, "TIFF", Grey, 8, 2, 0.5},
		{"TIFF JPEG inks", opaque, "tiff:", append([]string{"-compress", "JPEG"}, asInks...), "TIFF", CMYK, 8, 3, 0.6},
		{"TIFF grey", opaque, "tiff:", []string{"-colorspace", "gray"}, "TIFF", Grey, 8, 0, 0},
		{"TIFF white is 0", opaque, "tiff:", []string{"-colorspace", "gray", "-define", "quantum:polarity=min-is-white"}, "TIFF", Grey, 8, 0, 0},
		{"TIFF grey of 4 bits", opaque, "tiff:", []string{"-colorspace", "gray", "-depth", "4"}, "TIFF", Grey, 4, 0, 0},
		{"TIFF palette", opaque, "tiff:", []string{"-type", "Palette"}, "TIFF", RGB, 8, 0, 0},
		{"TIFF two tones", opaque, "tiff:", []string{"-monochrome", "-depth", "1"}, "TIFF", Grey, 1, 0, 0},
		{"TIFF fax", opaque, "tiff:", []string{"-monochrome", "-compress", "Group4"}, "TIFF", Grey, 1, 0, 0},
		{"TIFF alpha", alpha, "tiff:", []string{"-define", "tiff:alpha=unassociated"}, "TIFF", RGB, 8, 0, 0},
		{"TIFF alpha multiplied", alpha, "tiff:", []string{"-define", "tiff:alpha=associated"}, "TIFF", RGB, 8, 1, 0.5},
		{"TIFF grey and alpha", alpha, "tiff:", []string{"-colorspace", "gray", "-define", "tiff:alpha=unassociated"}, "TIFF", Grey, 8, 0, 0},
		{"TIFF inks", opaque, "tiff:", asInks, "TIFF", CMYK, 8, 0, 0},
		{"TIFF inks of 16 bits", opaque, "tiff:", append([]string{"-depth", "16", "-compress", "LZW"}, asInks...), "TIFF", CMYK, 16, 1, 0.5},
		{"TIFF inks in planes", opaque, "tiff:", append([]string{"-interlace", "plane"}, asInks...), "TIFF", CMYK, 8, 0, 0},
		{"TIFF inks and alpha", alpha, "tiff:", append([]string{"-define", "tiff:alpha=unassociated"}, asInks...), "TIFF", CMYK, 8, 0, 0},

		{"WebP lossless", opaque, "webp:", []string{"-define", "webp:lossless=true"}, "WebP", RGB, 8, 0, 0},
		{"WebP lossless alpha", alpha, "webp:", []string{"-define", "webp:lossless=true,exact=true"}, "WebP", RGB, 8, 0, 0},
		{"WebP lossy", opaque, "webp:", []string{"-quality", "95"}, "WebP", RGB, 8, 110, 4},
		{"WebP lossy alpha", alpha, "webp:", []string{"-quality", "95"}, "WebP", RGB, 8, 110, 4},
	} {
		t.Run(c.name, func(t *testing.T) {
			data := convert(t, c.picture, c.kind, c.args...)
			p := mustRead(t, data)
			if p.Format != c.format || p.Colours != c.colours || p.Bits != c.bits || p.Size != image.Pt(61, 43) {
				t.Errorf("read as %s, %v of %d bits, %v", p.Format, p.Colours, p.Bits, p.Size)
			}
			if alpha := c.picture == image.Image(alpha) && c.colours != CMYK; p.Alpha != alpha {
				t.Errorf("alpha is %v, want %v", p.Alpha, alpha)
			}
			kind := "rgba"
			if c.colours == CMYK {
				kind = "cmyk"
			}
			compare(t, withoutClear(stored(t, p), p), withoutClear(pixels(t, data, kind), p), c.most, c.mean)
		})
	}
}

// withoutClear takes the colours out of pixels that are wholly clear: they say
// nothing, and programs write what they like.
func withoutClear(pixels []byte, p *Picture) []byte {
	if p.Colours == CMYK {
		return pixels
	}
	pixels = slices.Clone(pixels)
	for i := 0; i < len(pixels); i += 4 {
		if pixels[i+3] == 0 {
			copy(pixels[i:i+3], []byte{0, 0, 0})
		}
	}
	return pixels
}
