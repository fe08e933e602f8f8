package raster

import (
	"bytes"
	"encoding/binary"
	"image"
	"io"

	"golang.org/x/image/webp"

	"gussetwright/render/pdf/object"
)

// webpFile is a WebP file (RFC 9649) whose chunks were looked at.
type webpFile struct{ header }

func (f *webpFile) head() *header { return &f.header }

func openWebP(data []byte) (file, error) {
	f := &webpFile{header{format: "WebP", colours: RGB, bits: 8, orientation: 1}}
	if err := f.walk(data); err != nil {
		return nil, err
	}
	config, err := webp.DecodeConfig(bytes.NewReader(data))
	if err != nil {
		return nil, err
	}
	f.size = image.Pt(config.Width, config.Height)
	// Lossless coding takes two pictures of four channels at a time, others less.
	f.memory = 8 * int64(config.Width) * int64(config.Height)
	return f, nil
}

// walk looks at the chunks.
func (f *webpFile) walk(data []byte) error {
	const head = 12
	if len(data) < head {
		return io.ErrUnexpectedEOF
	}
	whole, ok := slice(data, 8, uint64(binary.LittleEndian.Uint32(data[4:])))
	if !ok {
		return io.ErrUnexpectedEOF
	}
	for rest := whole[min(head-8, len(whole)):]; len(rest) >= 8; {
		length := binary.LittleEndian.Uint32(rest[4:])
		body, ok := slice(rest, 8, uint64(length))
		if !ok {
			return io.ErrUnexpectedEOF
		}
		if err := f.chunk(string(rest[:4]), body); err != nil {
			return err
		}
		rest = rest[min(8+len(body)+len(body)%2, len(rest)):]
	}
	return nil
}

func (f *webpFile) chunk(name string, body []byte) error {
	switch name {
	case "VP8X":
		const animation = 2
		if len(body) > 0 && body[0]&animation != 0 {
			return refuse("the WebP file is an animation: save one picture of it as PNG or WebP")
		}
	case "ICCP":
		f.takeProfile(body)
	case "EXIF":
		f.exif(bytes.TrimPrefix(body, []byte("Exif\x00\x00"))) // some writers put the mark of JPEG ahead
	}
	return nil
}

func (f *webpFile) decode(source *source) (samples, error) {
	picture, err := webp.Decode(source)
	if err != nil {
		return samples{}, err
	}
	// The colours of lossy WebP are those of television (RFC 6386, 9.2; Rec. 601),
	// while the type in which they come is read as those of JPEG elsewhere.
	switch picture := picture.(type) {
	case *image.YCbCr:
		return videoSamples(picture, nil, 0), nil
	case *image.NYCbCrA:
		return videoSamples(&picture.YCbCr, picture.A, picture.AStride), nil
	}
	return newSamples(picture)
}

// passed returns nothing: PDF does not know WebP.
func (f *webpFile) passed() (object.Dict, []byte) { return nil, nil }
