package raster

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/jpeg"
	"io"

	"gussetwright/geometry"
	"gussetwright/render/pdf/object"
)

// jpegFile is a JPEG file (ITU T.81) whose header was read.
type jpegFile struct {
	header
	data        []byte
	scan        int // where the pixels begin
	components  []component
	progressive bool
	jfif        bool     // has a JFIF header
	adobe       bool     // has the marker of Adobe (TN 5116)
	transform   byte     // of that marker: 0 says that colours are stored as they are
	parts       [][]byte // of the ICC profile
}

// Markers (ITU T.81, table B.1).
const (
	startOfScan = 0xda
	endOfImage  = 0xd9
)

// component is a channel as it is stored.
type component struct{ id, across, down byte }

func (f *jpegFile) head() *header { return &f.header }

func openJPEG(data []byte) (file, error) {
	f := &jpegFile{header: header{format: "JPEG", bits: 8, orientation: 1}, data: data}
	if err := f.walk(data[2:]); err != nil {
		return nil, err
	}
	switch len(f.components) {
	case 1:
		f.colours = Grey
	case 3:
		f.colours = RGB
	case 4:
		f.colours = CMYK
	default:
		return nil, refuse("the JPEG has %d channels, not 1, 3 or 4: save it again as RGB or CMYK", len(f.components))
	}
	if f.parts != nil {
		f.takeProfile(bytes.Join(f.parts, nil))
	}
	f.memory = int64(float64(f.size.X) * float64(f.size.Y) * f.bytesPerPixel())
	f.starved = f.fewestBits() > 8*len(data)
	return f, nil
}

// walk reads the segments ahead of the pixels.
func (f *jpegFile) walk(rest []byte) error {
	for {
		if len(rest) < 4 {
			return io.ErrUnexpectedEOF
		}
		if rest[0] != 0xff || rest[1] == 0xff {
			rest = rest[1:] // bytes that fill
			continue
		}
		marker := rest[1]
		if marker == startOfScan || marker == endOfImage {
			f.scan = len(f.data) - len(rest)
			return nil
		}
		length := int(binary.BigEndian.Uint16(rest[2:]))
		if length < 2 || 2+length > len(rest) {
			return io.ErrUnexpectedEOF
		}
		if err := f.segment(marker, rest[4:2+length]); err != nil {
			return err
		}
		rest = rest[2+length:]
	}
}

func (f *jpegFile) segment(marker byte, body []byte) error {
	switch {
	case marker == 0xe0 && begins("JFIF\x00")(body):
		f.jfif = true
		f.density(body)
	case marker == 0xe1 && begins("Exif\x00\x00")(body):
		f.exif(body[6:])
	case marker == 0xe2 && begins("ICC_PROFILE\x00")(body):
		f.profilePart(body[12:])
	case marker == 0xee && begins("Adobe")(body) && len(body) >= 12:
		f.adobe, f.transform = true, body[11]
	case marker >= 0xc0 && marker <= 0xcf && marker != 0xc4 && marker != 0xc8 && marker != 0xcc:
		return f.frame(marker, body)
	}
	return nil
}

// density reads the resolution of JFIF 1.02. EXIF goes before it, wherever it
// stands: cameras write 72 there for want of anything better.
func (f *jpegFile) density(body []byte) {
	if len(body) < 12 || f.perMM != (geometry.Vec2{}) {
		return
	}
	stated := geometry.Vec2{X: float64(binary.BigEndian.Uint16(body[8:])), Y: float64(binary.BigEndian.Uint16(body[10:]))}
	switch body[7] {
	case 1:
		f.perMM = resolution(stated, 25.4)
	case 2:
		f.perMM = resolution(stated, 10)
	}
}

// profilePart takes a part of the ICC profile: its number, how many there are, and
// its bytes (ISO 15076-1, annex B.4). Parts may stand in any order; one that is
// missing leaves a hole that makes the profile a damaged one.
func (f *jpegFile) profilePart(body []byte) {
	if len(body) < 2 || body[0] < 1 || body[0] > body[1] {
		return
	}
	if f.parts == nil {
		f.parts = make([][]byte, body[1])
	}
	if int(body[0]) <= len(f.parts) {
		f.parts[body[0]-1] = body[2:]
	}
}

// frame reads the size and the channels.
func (f *jpegFile) frame(marker byte, body []byte) error {
	if marker > 0xc2 {
		return refuse("the JPEG is coded in a rare way (SOF%d): save it again as a usual JPEG", marker-0xc0)
	}
	if len(body) < 6 || len(body) < 6+3*int(body[5]) {
		return io.ErrUnexpectedEOF
	}
	if body[0] != 8 {
		return refuse("the JPEG has %d bits a channel, not 8: save it again as a usual JPEG", body[0])
	}
	f.progressive = marker == 0xc2
	f.size = image.Pt(int(binary.BigEndian.Uint16(body[3:])), int(binary.BigEndian.Uint16(body[1:])))
	f.components = nil
	for list := body[6 : 6+3*int(body[5])]; len(list) > 0; list = list[3:] {
		f.components = append(f.components, component{list[0], list[1] >> 4, list[1] & 15})
	}
	return nil
}

// sampling returns how often channels are stored in the smallest unit of the
// coding: the greatest across and down, and all together.
func (f *jpegFile) sampling() (across, down, all int) {
	for _, c := range f.components {
		across, down = max(across, int(c.across)), max(down, int(c.down))
		all += int(c.across) * int(c.down)
	}
	return max(across, 1), max(down, 1), all
}

// bytesPerPixel returns the bytes that decoding takes for a pixel.
func (f *jpegFile) bytesPerPixel() float64 {
	across, down, all := f.sampling()
	stored := float64(all) / float64(across*down)
	total := stored
	if f.progressive {
		total += 4 * stored // coefficients of 4 bytes
	}
	if f.colours == CMYK || f.asRGB() {
		total += 4 // put together into one picture
	}
	return total
}

// fewestBits returns the bits that so many pixels take at least, however plain they
// are: one for each smallest unit of the coding.
func (f *jpegFile) fewestBits() int {
	across, down, _ := f.sampling()
	return f.size.X / (8 * across) * (f.size.Y / (8 * down))
}

// asRGB tells whether the channels hold red, green and blue instead of lightness
// and two of colour.
func (f *jpegFile) asRGB() bool {
	if len(f.components) != 3 || f.jfif {
		return false
	}
	c := f.components
	return f.adobe && f.transform == 0 || c[0].id == 'R' && c[1].id == 'G' && c[2].id == 'B'
}

func (f *jpegFile) decode(source *source) (samples, error) {
	var reader io.Reader = source
	unmarked := f.colours == CMYK && !f.adobe
	if unmarked {
		// The decoder wants the marker of Adobe in a picture of four channels. With
		// it, it takes 255 for no ink, which has to be undone.
		start := make([]byte, 2)
		if _, err := io.ReadFull(source, start); err != nil {
			return samples{}, err
		}
		reader = io.MultiReader(bytes.NewReader(append(start, adobeMarker(0)...)), source)
	}
	picture, err := jpeg.Decode(reader)
	if err != nil && !bytes.Contains(f.data[f.scan:], []byte{0xff, endOfImage}) {
		err = io.ErrUnexpectedEOF // the decoder says it in many ways
	}
	if err != nil {
		return samples{}, err
	}
	if inks, is := picture.(*image.CMYK); is && unmarked {
		for i := range inks.Pix {
			inks.Pix[i] = ^inks.Pix[i]
		}
	}
	return newSamples(picture)
}

// adobeMarker returns the marker of Adobe (TN 5116): transform 0 says that channels
// are red, green and blue or inks, 1 that they are lightness and two of colour.
func adobeMarker(transform byte) []byte {
	return append([]byte("\xff\xee\x00\x0eAdobe\x00\x64\x00\x00\x00\x00"), transform)
}

// passed returns the file as it is, as the data of an image object.
func (f *jpegFile) passed() (object.Dict, []byte) {
	dict := object.Dict{{Key: "BitsPerComponent", Value: object.Integer(8)}, {Key: "Filter", Value: object.Name("DCTDecode")}}
	if f.asRGB() && !f.adobe {
		// Without the marker, three channels would count as lightness and colour.
		dict = append(dict, object.Entry{Key: "DecodeParms", Value: object.Dict{{Key: "ColorTransform", Value: object.Integer(0)}}})
	}
	if f.colours == CMYK && f.adobe {
		// Such files store 255 for no ink; PDF reads 0 as none (ISO 32000-1, 8.9.5.2).
		dict = append(dict, object.Entry{Key: "Decode", Value: object.Numbers(1, 0, 1, 0, 1, 0, 1, 0)})
	}
	return dict, f.data
}
