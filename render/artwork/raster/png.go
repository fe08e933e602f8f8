package raster

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"image"
	"image/png"
	"io"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/pdf/object"
)

// pngFile is a PNG file (ISO/IEC 15948) whose chunks were read.
type pngFile struct {
	header
	colourType byte
	depth      int // bits of a sample, or of the number of a colour
	interlaced bool
	palette    []byte
	seeThrough bool // has a tRNS chunk
	pixels     [][]byte
}

// Colour types (ISO/IEC 15948, 11.2.2).
const (
	pngGrey      = 0
	pngRGB       = 2
	pngPalette   = 3
	pngGreyAlpha = 4
	pngRGBAlpha  = 6
)

func (f *pngFile) head() *header { return &f.header }

func openPNG(data []byte) (file, error) {
	f := &pngFile{header: header{format: "PNG", orientation: 1}}
	if err := f.walk(data[8:]); err != nil {
		return nil, err
	}
	f.memory = int64(f.size.X) * int64(f.size.Y) * f.bytesPerPixel()
	f.starved = f.mostBytes() < f.size.Y*(1+(f.size.X*f.samplesPerPixel()*f.depth+7)/8)
	return f, nil
}

// walk reads the chunks. Whether their sums are right is for the decoder to see.
func (f *pngFile) walk(rest []byte) error {
	for first := true; ; first = false {
		if len(rest) < 12 {
			return io.ErrUnexpectedEOF
		}
		length, name := binary.BigEndian.Uint32(rest), string(rest[4:8])
		body, ok := slice(rest, 8, uint64(length))
		if !ok || len(rest) < 12+len(body) {
			return io.ErrUnexpectedEOF
		}
		if first != (name == "IHDR") {
			return refuse("the PNG file is damaged, its header is not in its place: save it again as PNG")
		}
		if name == "IEND" {
			return nil
		}
		if err := f.chunk(name, body); err != nil {
			return err
		}
		rest = rest[12+len(body):]
	}
}

func (f *pngFile) chunk(name string, body []byte) error {
	switch name {
	case "IHDR":
		return f.start(body)
	case "PLTE":
		f.palette = body
	case "tRNS":
		f.seeThrough = true
	case "IDAT":
		f.pixels = append(f.pixels, body)
	case "pHYs":
		const metre = 1
		if len(body) == 9 && body[8] == metre && f.perMM == (geometry.Vec2{}) {
			f.perMM = resolution(geometry.Vec2{X: float64(binary.BigEndian.Uint32(body)), Y: float64(binary.BigEndian.Uint32(body[4:]))}, 1000)
		}
	case "eXIf":
		stated := f.perMM
		f.exif(body)
		if stated != (geometry.Vec2{}) {
			f.perMM = stated
		}
	case "iCCP":
		f.takeProfile(unpackProfile(body))
	case "acTL":
		f.note(phrase.New("The picture is an animation; its first picture is used."))
	}
	return nil
}

// start reads the header chunk.
func (f *pngFile) start(body []byte) error {
	if len(body) != 13 {
		return io.ErrUnexpectedEOF
	}
	const mostSigned = 1<<31 - 1
	width, height := binary.BigEndian.Uint32(body), binary.BigEndian.Uint32(body[4:])
	f.size = image.Pt(int(min(width, mostSigned)), int(min(height, mostSigned)))
	f.depth, f.colourType, f.interlaced = int(body[8]), body[9], body[12] != 0
	f.bits, f.colours = f.depth, RGB
	switch f.colourType {
	case pngGrey, pngGreyAlpha:
		f.colours = Grey
	case pngPalette:
		f.bits = 8 // of a colour in the palette
	}
	return nil
}

// unpackProfile takes the profile out of an iCCP chunk: a name, the way of packing,
// which is always 0, and the packed bytes. It returns nil where they are damaged.
func unpackProfile(body []byte) []byte {
	name := bytes.IndexByte(body, 0)
	if name < 0 || len(body) < name+2 {
		return nil
	}
	packed, err := zlib.NewReader(bytes.NewReader(body[name+2:]))
	if err != nil {
		return nil
	}
	profile, err := io.ReadAll(io.LimitReader(packed, mostProfile+1))
	if err != nil {
		return nil
	}
	return profile
}

// samplesPerPixel returns how many numbers are stored for a pixel.
func (f *pngFile) samplesPerPixel() int {
	switch f.colourType {
	case pngRGB:
		return 3
	case pngGreyAlpha:
		return 2
	case pngRGBAlpha:
		return 4
	}
	return 1
}

// bytesPerPixel returns the bytes that decoding takes for a pixel.
func (f *pngFile) bytesPerPixel() int64 {
	samples := int64(1)
	if f.samplesPerPixel() > 1 || f.seeThrough && f.colourType != pngPalette {
		samples = 4
	}
	decoded := samples * int64(max(1, f.depth/8))
	if f.interlaced {
		decoded += decoded / 2 // the last pass has half of the pixels
	}
	return decoded
}

// mostBytes returns the bytes that the packed pixels can unpack to: deflate gives
// 1032 for one at most.
func (f *pngFile) mostBytes() int {
	const most, slack = 1032, 1 << 16
	total := slack
	for _, part := range f.pixels {
		total += most * len(part)
	}
	return total
}

func (f *pngFile) decode(source *source) (samples, error) {
	picture, err := png.Decode(source)
	if err != nil {
		return samples{}, err
	}
	return newSamples(picture)
}

// passable tells whether PDF can read the pixels as they are packed: it knows the
// rows and filters of PNG (ISO 32000-1, 7.4.4.4), but neither interlacing nor alpha
// among the colours.
func (f *pngFile) passable() bool {
	return !f.interlaced && !f.seeThrough && f.depth <= 8 && f.colourType <= pngPalette
}

// passed returns the pixels as they are packed, or nothing where PDF cannot read
// them so.
func (f *pngFile) passed() (object.Dict, []byte) {
	if !f.passable() {
		return nil, nil
	}
	return object.Dict{
		{Key: "BitsPerComponent", Value: object.Integer(f.depth)},
		{Key: "Filter", Value: object.Name("FlateDecode")},
		{Key: "DecodeParms", Value: pngRows(f.samplesPerPixel(), f.depth, f.size.X)},
	}, bytes.Join(f.pixels, nil)
}

// pngRows says how rows of PNG are to be read.
func pngRows(samples, depth, width int) object.Dict {
	const filterOfEachRow = 15
	return object.Dict{
		{Key: "Predictor", Value: object.Integer(filterOfEachRow)},
		{Key: "Colors", Value: object.Integer(samples)},
		{Key: "BitsPerComponent", Value: object.Integer(depth)},
		{Key: "Columns", Value: object.Integer(width)},
	}
}
