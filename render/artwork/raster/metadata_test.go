package raster

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"image"
	"math"
	"strconv"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/geomtest"
)

// turned lists files of each kind that state an orientation.
func turned(t *testing.T, turn int) map[string][]byte {
	mark := append([]byte("Exif\x00\x00"), exif(binary.BigEndian, turn, 0, 0, 0)...)
	webp := convert(t, sample(), "webp:", "-define", "webp:lossless=true")
	return map[string][]byte{
		"JPEG": withSegment(asJPEG(t, sample()), 0xe1, mark),
		"PNG":  withChunk(asPNG(t, sample()), "eXIf", exif(binary.LittleEndian, turn, 0, 0, 0)),
		"TIFF": convert(t, sample(), "tiff:", "-orient", [...]string{
			"", "TopLeft", "TopRight", "BottomRight", "BottomLeft",
			"LeftTop", "RightTop", "RightBottom", "LeftBottom",
		}[turn]),
		"WebP": extended(webp, 8, false, "EXIF", exif(binary.LittleEndian, turn, 0, 0, 0)),
	}
}

// extended makes an extended WebP file of a simple one, with a chunk ahead of the
// pixels or behind them and the flag that tells of it (RFC 9649, 2.7).
func extended(webp []byte, flag byte, ahead bool, name string, body []byte) []byte {
	size := sample().Rect.Size()
	head := webpChunk("VP8X", []byte{flag, 0, 0, 0, byte(size.X - 1), 0, 0, byte(size.Y - 1), 0, 0})
	parts := [][]byte{[]byte("WEBP"), head, webp[12:], webpChunk(name, body)}
	if ahead {
		parts[2], parts[3] = parts[3], parts[2]
	}
	return webpChunk("RIFF", bytes.Join(parts, nil))
}

func webpChunk(name string, body []byte) []byte {
	chunk := binary.LittleEndian.AppendUint32([]byte(name), uint32(len(body)))
	return append(append(chunk, body...), make([]byte, len(body)%2)...)
}

// Source of what is upright: ImageMagick's -auto-orient, of the files that it reads
// the orientation of; EXIF 2.3 (4.6.4 A) for the others, which hold the same.
func TestOrientation(t *testing.T) {
	for turn := 1; turn <= 8; turn++ {
		files := turned(t, turn)
		want := pixels(t, files["TIFF"], "rgba", "-auto-orient")
		for name, data := range files {
			t.Run(fmt.Sprint(name, turn), func(t *testing.T) {
				p := mustRead(t, data)
				if p.Orientation != turn || p.Stored != image.Pt(61, 43) {
					t.Errorf("orientation %d of %v", p.Orientation, p.Stored)
				}
				most := 0
				if name == "JPEG" {
					compare(t, p.Levels[0].Pix, pixels(t, data, "rgba", "-auto-orient"), 110, 4)
					most = 110
				}
				compare(t, p.Levels[0].Pix, want, most, float64(most)/20)
			})
		}
	}
}

// Source: identify of ImageMagick, which prints the resolution and its unit.
func TestResolution(t *testing.T) {
	jfif := func(unit byte, x, y uint16) []byte {
		body := binary.BigEndian.AppendUint16(append([]byte("JFIF\x00\x01\x02"), unit), x)
		return withSegment(asJPEG(t, sample()), 0xe0, append(binary.BigEndian.AppendUint16(body, y), 0, 0))
	}
	phys := func(unit byte, x, y uint32) []byte {
		body := binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32(nil, x), y)
		return withChunk(asPNG(t, sample()), "pHYs", append(body, unit))
	}
	camera := append([]byte("Exif\x00\x00"), exif(binary.BigEndian, 1, 240, 240, 2)...)
	for _, c := range []struct {
		name string
		data []byte
		want geometry.Vec2 // pixels per inch
	}{
		{"JFIF in inches", jfif(1, 300, 150), geometry.Vec2{X: 300, Y: 150}},
		{"JFIF in centimetres", jfif(2, 120, 120), geometry.Vec2{X: 304.8, Y: 304.8}},
		{"EXIF", withSegment(asJPEG(t, sample()), 0xe1, camera), geometry.Vec2{X: 240, Y: 240}},
		{"pHYs", phys(1, 11811, 5906), geometry.Vec2{X: 299.9994, Y: 150.0124}},
		{"TIFF in inches", convert(t, sample(), "tiff:", "-units", "PixelsPerInch", "-density", "300x200"), geometry.Vec2{X: 300, Y: 200}},
		{"TIFF in centimetres", convert(t, sample(), "tiff:", "-units", "PixelsPerCentimeter", "-density", "118.11"), geometry.Vec2{X: 299.9994, Y: 299.9994}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := mustRead(t, c.data).PerMM.Scale(25.4)
			if !near(got.X, c.want.X) || !near(got.Y, c.want.Y) {
				t.Errorf("%v pixels per inch, want %v", got, c.want)
			}
			outside := identify(t, c.data)
			if !near(got.X, outside.X) || !near(got.Y, outside.Y) {
				t.Errorf("%v pixels per inch, and by identify %v", got, outside)
			}
		})
	}
	for name, data := range map[string][]byte{
		"ratio in JFIF": jfif(0, 1, 1), "ratio in pHYs": phys(0, 300, 300), "nothing": asPNG(t, sample()),
		"absurd": phys(1, 1<<31, 1),
	} {
		p := mustRead(t, data)
		if p.PerMM != (geometry.Vec2{}) || !noted(p, "The file states no resolution.") {
			t.Errorf("%s: %v, notes %v", name, p.PerMM, p.Notes)
		}
	}
	both := withSegment(jfif(1, 72, 72), 0xe1, camera)
	if got := mustRead(t, both).PerMM.X * 25.4; !near(got, 240) {
		t.Errorf("EXIF of 240 and JFIF of 72 give %g", got)
	}
}

// A picture on its side has its resolutions swapped as shown.
func TestResolutionAsShown(t *testing.T) {
	mark := append([]byte("Exif\x00\x00"), exif(binary.LittleEndian, 6, 300, 150, 2)...)
	p := mustRead(t, withSegment(asJPEG(t, sample()), 0xe1, mark))
	if p.Size != image.Pt(43, 61) || !near(p.PerMM.X*25.4, 150) || !near(p.PerMM.Y*25.4, 300) {
		t.Errorf("%v with %v pixels per mm", p.Size, p.PerMM)
	}
}

func near(a, b float64) bool { return math.Abs(a-b) < 0.006 }

func noted(p *Picture, text string) bool {
	for _, note := range p.Notes {
		if note.String() == text {
			return true
		}
	}
	return false
}

// identify returns the pixels per inch of a file by ImageMagick.
func identify(t *testing.T, data []byte) geometry.Vec2 {
	t.Helper()
	fields := strings.Fields(string(geomtest.Run(t, "identify", "-format", "%x %y %U", write(t, "file", data))))
	var numbers []float64
	unit := ""
	for _, field := range fields {
		if number, err := strconv.ParseFloat(field, 64); err == nil {
			numbers = append(numbers, number)
		} else {
			unit = field
		}
	}
	if len(numbers) != 2 {
		t.Fatalf("identify prints %q", fields)
	}
	found := geometry.Vec2{X: numbers[0], Y: numbers[1]}
	if unit == "PixelsPerCentimeter" {
		return found.Scale(2.54)
	}
	return found
}

func TestNotes(t *testing.T) {
	alpha := convert(t, clear(), "tiff:", append([]string{"-define", "tiff:alpha=unassociated"}, asInks...)...)
	pages := geomtest.Run(t, "convert", write(t, "a.png", asPNG(t, sample())), write(t, "b.png", asPNG(t, sample())), "tiff:-")
	for _, c := range []struct {
		name string
		data []byte
		want string
	}{
		{"16 bits", convert(t, sample(), "png48:"), "The picture has 16 bits a channel; it is printed with 8."},
		{"pages", pages, "The file holds 2 pictures; the first is used."},
		{"further channel", alpha, "Channels beyond those of the colours are left out: 1, such as alpha or spot colours."},
		{"animation", withChunk(asPNG(t, sample()), "acTL", make([]byte, 8)), "The picture is an animation; its first picture is used."},
	} {
		if p := mustRead(t, c.data); !noted(p, c.want) {
			t.Errorf("%s: notes are %v", c.name, p.Notes)
		}
	}
	quiet := mustRead(t, convert(t, sample(), "tiff:", "-units", "PixelsPerInch", "-density", "300"))
	if len(quiet.Notes) != 0 {
		t.Errorf("notes on a plain picture: %v", quiet.Notes)
	}
}
