package raster

import (
	"bytes"
	"context"
	"encoding/binary"
	"encoding/hex"
	"image"
	"strings"
	"testing"
)

// Small WebP files that ImageMagick wrote: lossless, lossy, lossy with alpha, and an
// animation.
const (
	losslessWebP = "524946461c000000574542505650384c0f0000002f024000000710fd8ffe0722a2ff0100"
	lossyWebP    = "524946465600000057454250565038204a0000007003009d012a140014003f719ac75a3baa282430180c03702e09" +
		"6800bb0017e92771158000fee6ee5a2760edfa92e9e5fb63bf64ca440b6cb15600326a4fb3d92556009c1c4afb2f4000"
	alphaWebP = "524946468000000057454250565038580a00000010000000130000130000414c50480a000000010750c088084444ff03" +
		"56503820500000005003009d012a140014003f397eba54bea725a330180c03d02709680078ce02cdb32cc000fee9801a" +
		"fd5d9adae8a3d5006dfff74e375a20c0bb6083b8502b4631dc801f0dd7fa1f967930c18dd6598000"
	animatedWebP = "52494646c000000057454250565038580a00000002000000010000010000414e494d06000000ffffffff0000414e4d46" +
		"48000000000000000000010000010000640000025650382030000000d001009d012a0200020002003425a00274ba01f8" +
		"0003b000fef0c40bff20b96175c8d7ff203fe407fc80fff8f2000000414e4d4644000000000000000000010000010000" +
		"64000000565038202c0000009401009d012a0200020000003425a00274ba00039800fef9936fff901fff901fff901fff" +
		"203fe2177b203000"
)

func fromHex(t testing.TB, text string) []byte {
	t.Helper()
	data, err := hex.DecodeString(text)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// sized returns a PNG file that says to have another size, depth and colour type.
func sized(t testing.TB, width, height uint32, depth, colourType byte) []byte {
	t.Helper()
	data := asPNG(t, sample())
	head := bytes.Clone(data[16:29])
	binary.BigEndian.PutUint32(head, width)
	binary.BigEndian.PutUint32(head[4:], height)
	head[8], head[9] = depth, colourType
	return bytes.Join([][]byte{data[:8], pngChunk("IHDR", head), data[33:]}, nil)
}

// plainTIFF returns a TIFF file of inks with a field of it set to another value.
func plainTIFF(tag uint16, value uint32) []byte {
	data := inkTIFF(image.Pt(40, 30), 1, func(x, y int) [4]byte { return [4]byte{byte(x), byte(y), 9, 8} })
	for at := 10; at < 10+10*12; at += 12 {
		if binary.LittleEndian.Uint16(data[at:]) == tag {
			binary.LittleEndian.PutUint32(data[at+8:], value)
		}
	}
	return data
}

func TestHostileFiles(t *testing.T) {
	broken := asPNG(t, sample())
	broken[len(broken)-20]++
	jpegSized := asJPEG(t, sample())
	frame := bytes.Index(jpegSized, []byte{0xff, 0xc0})
	copy(jpegSized[frame+5:], []byte{0xff, 0xff, 0xff, 0xff})
	starved := asJPEG(t, sample())
	copy(starved[frame+5:], []byte{0x40, 0, 0x40, 0})
	lossless := bytes.Clone(asJPEG(t, sample()))
	lossless[frame+1] = 0xc3
	bomb := sized(t, 1, 1, 8, 2)
	loop := plainTIFF(0, 0)
	binary.LittleEndian.PutUint32(loop[10+10*12:], 8) // the next directory is the first
	many := plainTIFF(273, 0)
	binary.LittleEndian.PutUint32(many[10+5*12+4:], 1<<31) // count of strips
	unsorted := plainTIFF(259, 5)

	for _, c := range []struct {
		name string
		data []byte
		want string // in the message; "" is no error
	}{
		{"nothing", nil, "the file is empty: save the picture again"},
		{"text", []byte("no picture"), "the content is no PNG, JPEG, TIFF or WebP: save the picture as one of these"},
		{"GIF", []byte("GIF89a...."), "the content is a GIF file, no PNG"},
		{"PDF", []byte("%PDF-1.7\n"), "the content is a PDF file"},
		{"HEIC", []byte("\x00\x00\x00\x18ftypheic"), "the content is a HEIC/AVIF file"},
		{"BigTIFF", []byte("II+\x00\x08\x00\x00\x00"), "the content is a BigTIFF file"},
		{"RIFF of sound", []byte("RIFF\x04\x00\x00\x00WAVE"), "the content is no PNG"},

		{"PNG of 100000 × 100000", sized(t, 100_000, 100_000, 8, 2), "the picture is 100000 × 100000 pixels, more than 65535 a side: save it with fewer pixels"},
		{"PNG of 40000 × 40000", sized(t, 40_000, 40_000, 8, 2), "40000 × 40000 pixels, 1600 million and more than 400 million"},
		{"PNG of 20000 × 20000, 16 bits", sized(t, 20_000, 20_000, 16, 6), "takes 3051 MB to open, more than 2048 MB: save it with 8 bits a channel"},
		{"PNG of 15000 × 15000 without data", sized(t, 15_000, 15_000, 8, 2), "the PNG file is cut off before its end"},
		{"PNG of 2³² − 1", sized(t, 1<<32-1, 1<<32-1, 8, 2), "more than 65535 a side"},
		{"PNG of nothing", sized(t, 0, 10, 8, 2), "has no pixels, 0 × 10"},
		{"PNG of 3 bits", sized(t, 61, 43, 3, 2), "the PNG file is damaged"},
		{"PNG with more data than pixels", bomb, "the PNG file is damaged"},
		{"PNG with a wrong sum", broken, "invalid checksum): save it again as PNG"},
		{"PNG without header", append(bytes.Clone(broken[:8]), pngChunk("IEND", nil)...), "its header is not in its place"},

		{"JPEG of 65535 × 65535", jpegSized, "4294 million and more than 400 million"},
		{"JPEG of 16384 × 16384 without data", starved, "the JPEG file is cut off before its end"},
		{"JPEG without loss", lossless, "the JPEG is coded in a rare way (SOF3): save it again as a usual JPEG"},
		{"JPEG of start only", []byte("\xff\xd8\xff"), "the JPEG file is cut off before its end"},
		{"JPEG of scan only", []byte("\xff\xd8\xff\xda\x00\x02"), "0 channels"},

		{"TIFF in a circle", loop, ""},
		{"TIFF with 2³¹ strips", many, "0 of 1 blocks of pixels are listed"},
		{"TIFF with strips outside", plainTIFF(273, 1<<31), "the TIFF file is cut off before its end"},
		{"TIFF with a short strip", plainTIFF(279, 100), "the TIFF file is cut off before its end"},
		{"TIFF with rows of 0", plainTIFF(278, 0), "cut into blocks of 40 × 0 pixels"},
		{"TIFF with rows of 1", plainTIFF(278, 1), "1 of 30 blocks of pixels are listed"},
		{"TIFF of 2³¹ pixels a side", plainTIFF(256, 1<<31), "more than 65535 a side"},
		{"TIFF of Lab", plainTIFF(262, 8), "has colours of kind 8 (such as Lab): save it as RGB or CMYK"},
		{"TIFF of 70 channels", plainTIFF(277, 70), "has 70 channels, which does not fit"},
		{"TIFF of 1 channel", plainTIFF(277, 1), "has 1 channels, which does not fit its colours, CMYK"},
		{"TIFF of 32 bits", plainTIFF(258, 0x20202020), "has 32 bits a channel (number format 1): save it with 8 bits"},
		{"TIFF of 8 and 16 bits", plainTIFF(258, 0x08081008), "has channels of 8 and 16 bits"},
		{"TIFF of LZW that is none", unsorted, "the TIFF file is"},
		{"TIFF packed as 9999", plainTIFF(259, 9999), "packed in a rare way (compression 9999)"},
		{"TIFF of JPEG that is none", plainTIFF(259, 7), "the TIFF file is damaged"},
		{"TIFF with its directory outside", []byte("II*\x00\xff\xff\xff\xff"), "the TIFF file is cut off"},

		{"WebP animation", fromHex(t, animatedWebP), "the WebP file is an animation: save one picture of it as PNG or WebP"},
		{"WebP of a head", []byte("RIFF\x04\x00\x00\x00WEBP"), "the WebP file is"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, err := Read(context.Background(), c.data)
			switch {
			case c.want == "" && err != nil:
				t.Errorf("not read: %v", err)
			case c.want != "" && err == nil:
				t.Errorf("read as %v", p.Size)
			case c.want != "" && !strings.Contains(err.Error(), c.want):
				t.Errorf("error is %q, want %q in it", err, c.want)
			}
		})
	}
}

// Whatever is missing from the end of a file, it is told.
func TestCutFiles(t *testing.T) {
	for name, data := range seeds(t) {
		t.Run(name, func(t *testing.T) {
			whole := mustRead(t, data)
			for length := 0; length < len(data)-12; length += 1 + len(data)/150 { // some end in bytes that say nothing
				p, err := Read(context.Background(), data[:length])
				if err == nil {
					t.Fatalf("%d of %d bytes are read as %s of %v", length, len(data), p.Format, p.Size)
				}
				if length > len(data)/2 && !strings.Contains(err.Error(), "cut off before its end") {
					t.Errorf("%d of %d bytes of a %s: %v", length, len(data), whole.Format, err)
				}
			}
		})
	}
}

// The content decides, so a name has nothing to say.
func TestFormatOfContent(t *testing.T) {
	for want, data := range map[string][]byte{
		"PNG": asPNG(t, sample()), "JPEG": asJPEG(t, sample()), "TIFF": plainTIFF(0, 0), "WebP": fromHex(t, lossyWebP),
	} {
		if p := mustRead(t, data); p.Format != want {
			t.Errorf("%s is read as %s", want, p.Format)
		}
	}
}

func TestPanicIsContained(t *testing.T) {
	_, err := readKind(context.Background(), nil, standard, "PNG", func(data []byte) (file, error) {
		return nil, refuse("byte %d", data[3])
	})
	if err == nil || !strings.Contains(err.Error(), "the PNG file is damaged") || !strings.Contains(err.Error(), "index out of range") {
		t.Errorf("error is %v", err)
	}
}
