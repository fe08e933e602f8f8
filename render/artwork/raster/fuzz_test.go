package raster

import (
	"context"
	"image"
	"image/color"
	"testing"

	"gussetwright/render/pdf/object"
)

// seeds are small files of every kind that need no outside tool.
func seeds(t testing.TB) map[string][]byte {
	grey := image.NewGray(image.Rect(0, 0, 9, 7))
	palette := image.NewPaletted(image.Rect(0, 0, 9, 7), color.Palette{color.Black, color.NRGBA{200, 10, 10, 100}})
	for i := range grey.Pix {
		grey.Pix[i], palette.Pix[i] = uint8(4*i), uint8(i&1)
	}
	return map[string][]byte{
		"PNG":             asPNG(t, sample()),
		"PNG alpha":       asPNG(t, clear()),
		"PNG grey":        asPNG(t, grey),
		"PNG palette":     asPNG(t, palette),
		"JPEG":            asJPEG(t, sample()),
		"JPEG grey":       asJPEG(t, grey),
		"JPEG profile":    inParts(asJPEG(t, grey), profile("GRAY"), false),
		"TIFF inks":       plainTIFF(0, 0),
		"WebP lossless":   fromHex(t, losslessWebP),
		"WebP lossy":      fromHex(t, lossyWebP),
		"WebP with alpha": fromHex(t, alphaWebP),
	}
}

func FuzzRead(f *testing.F) {
	for _, data := range seeds(f) {
		f.Add(data)
	}
	for _, c := range []struct{ tag, value int }{{259, 5}, {259, 8}, {259, 32773}, {259, 7}, {262, 2}, {262, 1}, {277, 3}, {278, 7}, {284, 2}} {
		f.Add(plainTIFF(uint16(c.tag), uint32(c.value)))
	}
	f.Add(fromHex(f, animatedWebP))
	small := limits{side: 4096, pixels: 1 << 18, memory: 8 << 20}
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := read(context.Background(), data, small)
		if err != nil {
			if err.Error() == "" {
				t.Error("an error without words")
			}
			return
		}
		if size := p.Levels[0].Rect.Size(); size != p.Size || size.X < 1 || size.Y < 1 {
			t.Errorf("%v pixels are shown as %v", p.Size, size)
		}
		if p.Ink != nil {
			if most, _ := p.Ink.Greatest(); most < 0 || most > 400 {
				t.Errorf("ink of %g %%", most)
			}
		}
		form, err := p.Form(context.Background())
		if err != nil {
			t.Fatalf("a picture that was read cannot be packed: %v", err)
		}
		picture := form.Resources.Get("XObject").(object.Dict).Get("Picture").(*object.Indirect)
		if data := picture.Value.(object.Plain).Data; len(data) == 0 {
			t.Error("the image object has no data")
		}
	})
}
