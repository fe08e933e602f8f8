package raster

import (
	"bytes"
	"context"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"gussetwright/geometry/geomtest"
)

// sample returns a picture whose corners tell its orientation: red at the top left,
// green at the top right, blue at the bottom left, a shade of grey at the bottom
// right. Its sides are odd, so that halves of it are not whole.
func sample() *image.NRGBA {
	const width, height = 61, 43
	m := image.NewNRGBA(image.Rect(0, 0, width, height))
	for i := range width * height {
		x, y := i%width, i/width
		c := color.NRGBA{uint8(4 * x), uint8(4 * x), uint8(4 * x), 255}
		switch left, top := x < width/2, y < height/2; {
		case left && top:
			c = color.NRGBA{220, 20, 30, 255}
		case top:
			c = color.NRGBA{10, 160, 40, 255}
		case left:
			c = color.NRGBA{20, 40, 200, 255}
		}
		m.SetNRGBA(x, y, c)
	}
	return m
}

// clear returns the sample with alpha that grows from the left to the right.
func clear() *image.NRGBA {
	m := sample()
	for i := 3; i < len(m.Pix); i += 4 {
		m.Pix[i] = uint8(i / 4 % m.Rect.Dx() * 4)
	}
	return m
}

func asPNG(t testing.TB, m image.Image) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := png.Encode(&out, m); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func asJPEG(t testing.TB, m image.Image) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := jpeg.Encode(&out, m, &jpeg.Options{Quality: 95}); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// write puts data into a file of the test.
func write(t testing.TB, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// convert has ImageMagick make a file of a picture. kind is a format with a colon.
func convert(t testing.TB, m image.Image, kind string, args ...string) []byte {
	t.Helper()
	args = append([]string{write(t, "from.png", asPNG(t, m))}, args...)
	return geomtest.Run(t, "convert", append(args, kind+"-")...)
}

// pixels has ImageMagick read a file and give its pixels, as RGBA or CMYK.
func pixels(t testing.TB, data []byte, kind string, args ...string) []byte {
	t.Helper()
	args = append([]string{write(t, "file", data) + "[0]"}, args...)
	return geomtest.Run(t, "convert", append(args, "-depth", "8", kind+":-")...)
}

func mustRead(t testing.TB, data []byte) *Picture {
	t.Helper()
	p, err := Read(context.Background(), data)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// stored returns the pixels of a picture as they are stored, four bytes each.
func stored(t testing.TB, p *Picture) []byte {
	t.Helper()
	decoded, err := p.decode(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	all := make([]byte, 4*p.Stored.X*p.Stored.Y)
	for y := range p.Stored.Y {
		line := all[4*y*p.Stored.X:][:4*p.Stored.X]
		if err := decoded.row(y, line); err != nil {
			t.Fatal(err)
		}
		if decoded.model == lightness {
			lightnessToRGB(line)
		}
	}
	return all
}

// compare checks that no byte differs by more than most, nor all by more than mean.
func compare(t *testing.T, got, want []byte, most int, mean float64) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%d bytes of pixels, want %d", len(got), len(want))
	}
	total, worst, where := 0, 0, 0
	for i := range got {
		apart := int(max(got[i], want[i])) - int(min(got[i], want[i]))
		if total += apart; apart > worst {
			worst, where = apart, i
		}
	}
	if worst > most {
		t.Errorf("channel %d of pixel %d is %d, want %d", where%4, where/4, got[where], want[where])
	}
	if average := float64(total) / float64(len(got)); average > mean {
		t.Errorf("channels differ by %.2f in the mean, more than %.2f", average, mean)
	}
}

// exif returns metadata with an orientation, and a resolution of x and y pixels per
// unit (2 inch, 3 cm) where x is not 0 (TIFF 6.0, section 2; EXIF 2.3, 4.6).
func exif(order binary.AppendByteOrder, turn, x, y, unit int) []byte {
	data := []byte("MM\x00*\x00\x00\x00\x08")
	if order == binary.AppendByteOrder(binary.LittleEndian) {
		data = []byte("II*\x00\x08\x00\x00\x00")
	}
	field := func(tag, kind, value int) {
		data = order.AppendUint16(order.AppendUint16(data, uint16(tag)), uint16(kind))
		data = order.AppendUint32(data, 1)
		if kind == 3 {
			data = order.AppendUint16(order.AppendUint16(data, uint16(value)), 0)
		} else {
			data = order.AppendUint32(data, uint32(value))
		}
	}
	if x == 0 {
		data = order.AppendUint16(data, 1)
		field(274, 3, turn)
		return order.AppendUint32(data, 0)
	}
	const after = 8 + 2 + 4*12 + 4
	data = order.AppendUint16(data, 4)
	field(274, 3, turn)
	field(282, 5, after)
	field(283, 5, after+8)
	field(296, 3, unit)
	data = order.AppendUint32(data, 0)
	for _, value := range []int{x, y} {
		data = order.AppendUint32(order.AppendUint32(data, uint32(10*value)), 10)
	}
	return data
}

// withSegment puts a segment into a JPEG file, after its start.
func withSegment(file []byte, marker byte, body []byte) []byte {
	segment := binary.BigEndian.AppendUint16([]byte{0xff, marker}, uint16(len(body)+2))
	return bytes.Join([][]byte{file[:2], segment, body, file[2:]}, nil)
}

// withChunk puts a chunk into a PNG file, after its header.
func withChunk(file []byte, name string, body []byte) []byte {
	const head = 8 + 25
	return bytes.Join([][]byte{file[:head], pngChunk(name, body), file[head:]}, nil)
}

func pngChunk(name string, body []byte) []byte {
	chunk := binary.BigEndian.AppendUint32(nil, uint32(len(body)))
	chunk = append(append(chunk, name...), body...)
	return binary.BigEndian.AppendUint32(chunk, crc32.ChecksumIEEE(chunk[4:]))
}
