package raster

import (
	"encoding/binary"
	"io"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
)

// The tags of TIFF 6.0 (section 8 and on) that are looked at; EXIF has the same.
const (
	tagSubfile        = 254
	tagWidth          = 256
	tagHeight         = 257
	tagBits           = 258
	tagCompression    = 259
	tagPhotometric    = 262
	tagFillOrder      = 266
	tagStripOffsets   = 273
	tagOrientation    = 274
	tagSamples        = 277
	tagRowsPerStrip   = 278
	tagStripCounts    = 279
	tagXResolution    = 282
	tagYResolution    = 283
	tagPlanar         = 284
	tagResolutionUnit = 296
	tagPredictor      = 317
	tagPalette        = 320
	tagTileWidth      = 322
	tagTileHeight     = 323
	tagTileOffsets    = 324
	tagTileCounts     = 325
	tagInkSet         = 332
	tagExtraSamples   = 338
	tagSampleFormat   = 339
	tagJPEGTables     = 347
	tagProfile        = 34675
)

// widths are the bytes of a value by its type (TIFF 6.0, section 2).
var widths = map[uint16]int{1: 1, 2: 1, 3: 2, 4: 4, 5: 8, 6: 1, 7: 1, 8: 2, 9: 4, 10: 8, 11: 4, 12: 8}

// entry is a field of a directory, its values being bytes of the file.
type entry struct {
	kind   uint16
	count  int
	values []byte
}

// directory is the first image file directory of a TIFF file or of EXIF metadata.
type directory struct {
	order   binary.ByteOrder
	entries map[uint16]entry
	next    uint32 // where the next directory is, or 0
}

// readDirectory reads the first directory. Fields that lie outside of the file are
// left out.
func readDirectory(data []byte) (*directory, error) {
	if len(data) < 8 {
		return nil, io.ErrUnexpectedEOF
	}
	var order binary.ByteOrder = binary.LittleEndian
	switch string(data[:4]) {
	case "II*\x00":
	case "MM\x00*":
		order = binary.BigEndian
	default:
		return nil, phrase.Errorf("it begins with %q", data[:4])
	}
	return directoryAt(data, order, order.Uint32(data[4:]))
}

func directoryAt(data []byte, order binary.ByteOrder, at uint32) (*directory, error) {
	rest, ok := slice(data, uint64(at), 2)
	if !ok {
		return nil, io.ErrUnexpectedEOF
	}
	count := uint64(order.Uint16(rest))
	fields, ok := slice(data, uint64(at)+2, 12*count)
	if !ok {
		return nil, io.ErrUnexpectedEOF
	}
	d := &directory{order: order, entries: map[uint16]entry{}}
	for ; len(fields) > 0; fields = fields[12:] {
		if e, ok := readEntry(data, order, fields); ok {
			d.entries[order.Uint16(fields)] = e
		}
	}
	if next, ok := slice(data, uint64(at)+2+12*count, 4); ok {
		d.next = order.Uint32(next)
	}
	return d, nil
}

func readEntry(data []byte, order binary.ByteOrder, field []byte) (e entry, ok bool) {
	e = entry{kind: order.Uint16(field[2:]), count: int(order.Uint32(field[4:]))}
	size := uint64(widths[e.kind]) * uint64(e.count)
	if size <= 4 {
		e.values = field[8 : 8+size]
		return e, size > 0
	}
	e.values, ok = slice(data, uint64(order.Uint32(field[8:])), size)
	return e, ok
}

// slice returns length bytes of data from an offset, if they are there.
func slice(data []byte, from, length uint64) ([]byte, bool) {
	if from > uint64(len(data)) || length > uint64(len(data))-from {
		return nil, false
	}
	return data[from : from+length], true
}

// number returns the value of a field at an index, or the value otherwise.
func (d *directory) number(tag uint16, index, otherwise int) int {
	e := d.entries[tag]
	if index >= e.count || len(e.values) == 0 {
		return otherwise
	}
	switch e.kind {
	case 1, 7:
		return int(e.values[index])
	case 3:
		return int(d.order.Uint16(e.values[2*index:]))
	case 4:
		return int(d.order.Uint32(e.values[4*index:]))
	}
	return otherwise
}

// rational returns a fraction, or 0.
func (d *directory) rational(tag uint16) float64 {
	e := d.entries[tag]
	if e.kind != 5 || len(e.values) < 8 {
		return 0
	}
	above, below := d.order.Uint32(e.values), d.order.Uint32(e.values[4:])
	if below == 0 {
		return 0
	}
	return float64(above) / float64(below)
}

func (d *directory) orientation() orientation {
	if o := d.number(tagOrientation, 0, 1); o >= 1 && o <= 8 {
		return orientation(o)
	}
	return 1
}

// perMM returns the resolution in pixels per mm, or zero.
func (d *directory) perMM() geometry.Vec2 {
	const inch, centimetre = 2, 3 // 1 is no unit
	stated := geometry.Vec2{X: d.rational(tagXResolution), Y: d.rational(tagYResolution)}
	if stated.Y == 0 {
		stated.Y = stated.X
	}
	switch d.number(tagResolutionUnit, 0, inch) {
	case inch:
		return resolution(stated, 25.4)
	case centimetre:
		return resolution(stated, 10)
	}
	return geometry.Vec2{}
}

// resolution returns a count of pixels in a length of so many mm as pixels per mm,
// or zero where it makes no sense: beyond 1 pixel per metre and 1 per micrometre.
func resolution(pixels geometry.Vec2, mm float64) geometry.Vec2 {
	const least, most = 0.001, 1000
	perMM := pixels.Scale(1 / mm)
	if min(perMM.X, perMM.Y) < least || max(perMM.X, perMM.Y) > most {
		return geometry.Vec2{}
	}
	return perMM
}
