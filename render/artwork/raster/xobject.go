package raster

import (
	"bytes"
	"compress/zlib"
	"context"

	"gussetwright/geometry/phrase"
	"gussetwright/render/pdf/object"
)

// XObject returns the picture as an image object of a PDF file (ISO 32000-1, 8.9),
// as stored and not turned upright; see Form. Every call returns the same object,
// so that a file holds the picture once.
//
// A JPEG file is passed on byte for byte, and the packed pixels of a PNG file are
// where PDF can read them. Others are packed anew without loss, with 8 bits a
// channel; inks stay inks, and alpha becomes a soft mask.
func (p *Picture) XObject(ctx context.Context) (made *object.Indirect, err error) {
	p.making.Lock()
	defer p.making.Unlock()
	if p.made != nil {
		return p.made, nil
	}
	defer contain(p.Format, &err)
	image, err := p.image(ctx)
	if err != nil {
		return nil, err
	}
	p.made = &object.Indirect{Value: image}
	return p.made, nil
}

// Form returns the XObject as a drawing of Size.X × Size.Y units, a pixel being one,
// that stands upright.
func (p *Picture) Form(ctx context.Context) (*object.Form, error) {
	image, err := p.XObject(ctx)
	if err != nil {
		return nil, err
	}
	width, height := float64(p.Size.X), float64(p.Size.Y)
	var content []byte
	content = append(content, "q "...)
	for _, number := range orientation(p.Orientation).matrix(width, height) {
		content = append(object.AppendNumber(content, number, object.Decimals), ' ')
	}
	return &object.Form{
		Width: width, Height: height,
		Content:   append(content, "cm /Picture Do Q\n"...),
		Resources: object.Dict{{Key: "XObject", Value: object.Dict{{Key: "Picture", Value: image}}}},
	}, nil
}

// image returns the stream of the image object.
func (p *Picture) image(ctx context.Context) (object.Plain, error) {
	coding, data := p.file.passed()
	var mask *object.Indirect
	if data == nil {
		var err error
		if coding, data, mask, err = p.packed(ctx); err != nil {
			return object.Plain{}, err
		}
	}
	dict := append(p.imageDict(p.colourSpace()), coding...)
	if mask != nil {
		dict = append(dict, object.Entry{Key: "SMask", Value: mask})
	}
	return object.Plain{Dict: dict, Data: data}, nil
}

func (p *Picture) imageDict(space object.Object) object.Dict {
	return object.Dict{
		{Key: "Type", Value: object.Name("XObject")},
		{Key: "Subtype", Value: object.Name("Image")},
		{Key: "Width", Value: object.Integer(p.Stored.X)},
		{Key: "Height", Value: object.Integer(p.Stored.Y)},
		{Key: "ColorSpace", Value: space},
	}
}

// colourSpace returns what the samples in a PDF file mean (ISO 32000-1, 8.6).
func (p *Picture) colourSpace() object.Object {
	plain := [...]object.Name{"DeviceGray", "DeviceRGB", "DeviceCMYK"}[p.Colours]
	var space object.Object = plain
	if p.Profile != nil {
		space = object.Array{object.Name("ICCBased"), &object.Indirect{Value: object.Stream{Dict: object.Dict{
			{Key: "N", Value: object.Integer(p.Colours.Channels())}, {Key: "Alternate", Value: plain},
		}, Data: p.Profile}}}
	}
	if f, is := p.file.(*pngFile); is && f.colourType == pngPalette && f.passable() {
		last := len(f.palette)/3 - 1
		return object.Array{object.Name("Indexed"), space, object.Integer(last), object.Binary(f.palette)}
	}
	return space
}

// packed decodes the picture and packs it anew: the colours, and alpha where
// something is not opaque.
func (p *Picture) packed(ctx context.Context) (coding object.Dict, data []byte, mask *object.Indirect, err error) {
	pixels, err := p.decode(ctx)
	if err != nil {
		return nil, nil, nil, err
	}
	if pixels.model == lightness {
		return nil, nil, nil, phrase.Errorf("put the %s picture into the PDF file: its colours are not turned to RGB; save it again as PNG", p.Format)
	}
	colours, alpha := newPacker(0, p.Colours.Channels(), p.Stored.X), newPacker(3, 1, p.Stored.X)
	err = p.eachRow(ctx, pixels, 0, p.Stored.Y, func(line []byte) {
		colours.add(line)
		if p.Alpha {
			alpha.add(line)
		}
	})
	if err != nil {
		return nil, nil, nil, err
	}
	if p.Alpha {
		dict := append(p.imageDict(object.Name("DeviceGray")), alpha.coding()...)
		mask = &object.Indirect{Value: object.Plain{Dict: dict, Data: alpha.finish()}}
	}
	return colours.coding(), colours.finish(), mask, nil
}

// packer packs some channels of rows in the manner of PNG: each sample less the one
// above it, then deflated.
type packer struct {
	first, channels int
	above, row      []byte
	out             bytes.Buffer
	deflate         *zlib.Writer
}

func newPacker(first, channels, width int) *packer {
	p := &packer{first: first, channels: channels, above: make([]byte, channels*width), row: make([]byte, 1+channels*width)}
	const up = 2 // the filter: ISO/IEC 15948, 9.2
	p.row[0] = up
	p.deflate, _ = zlib.NewWriterLevel(&p.out, zlib.BestSpeed) // the level is a valid one
	return p
}

// add takes a row of four channels.
func (p *packer) add(line []byte) {
	row := p.row[1:]
	for i, at := 0, p.first; i < len(row); i, at = i+p.channels, at+4 {
		for c := range p.channels {
			value := line[at+c]
			row[i+c] = value - p.above[i+c]
			p.above[i+c] = value
		}
	}
	p.deflate.Write(p.row) // a buffer takes everything
}

func (p *packer) finish() []byte {
	p.deflate.Close() // a buffer takes everything
	return p.out.Bytes()
}

func (p *packer) coding() object.Dict {
	return object.Dict{
		{Key: "BitsPerComponent", Value: object.Integer(8)},
		{Key: "Filter", Value: object.Name("FlateDecode")},
		{Key: "DecodeParms", Value: pngRows(p.channels, 8, len(p.above)/p.channels)},
	}
}
