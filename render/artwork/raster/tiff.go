package raster

import (
	"encoding/binary"
	"image"

	"gussetwright/geometry/phrase"
	"gussetwright/render/pdf/object"
)

// tiffFile is a TIFF file (TIFF 6.0) whose first directory was read.
type tiffFile struct {
	header
	directory *directory
	data      []byte
	stored    int  // channels stored for a pixel
	alpha     int  // what the channel after the colours is: noAlpha, ...
	separate  bool // each channel is stored of its own
	blocks    blocks
}

// What fields of a directory say (TIFF 6.0, section 8 and on).
const (
	whiteIsZero = 0
	blackIsZero = 1
	redGreen    = 2 // and blue
	paletted    = 3
	separated   = 5
	lightColour = 6 // lightness and two of colour

	packedNot     = 1
	packedFax4    = 4
	packedLZW     = 5
	packedJPEG    = 7
	packedDeflate = 8
	packedZIP     = 32946
	packedBits    = 32773

	noAlpha       = 0
	multiplied    = 1 // the colours are multiplied by alpha
	straightAlpha = 2
)

func (f *tiffFile) head() *header { return &f.header }

func openTIFF(data []byte) (file, error) {
	d, err := readDirectory(data)
	if err != nil {
		return nil, err
	}
	f := &tiffFile{directory: d, data: data, header: header{
		format: "TIFF", orientation: d.orientation(), perMM: d.perMM(), bits: d.number(tagBits, 0, 1),
		size: image.Pt(d.number(tagWidth, 0, 0), d.number(tagHeight, 0, 0)),
	}}
	if err := standard.check(&f.header); err != nil {
		return nil, err // before numbers are multiplied that are beyond all sense
	}
	f.stored = d.number(tagSamples, 0, max(1, d.entries[tagBits].count))
	f.separate = d.number(tagPlanar, 0, 1) == 2 && f.stored > 1
	for _, check := range []func() error{f.takeColours, f.checkCoding, f.layBlocks} {
		if err := check(); err != nil {
			return nil, err
		}
	}
	if profile, has := d.entries[tagProfile]; has {
		f.takeProfile(profile.values)
	}
	if pages := countPages(data, d); pages > 1 {
		f.note(phrase.New("The file holds %d pictures; the first is used.", pages))
	}
	return f, nil
}

// takeColours finds out what the channels are.
func (f *tiffFile) takeColours() error {
	switch f.photometric() {
	case whiteIsZero, blackIsZero:
		f.colours = Grey
	case redGreen, paletted, lightColour:
		f.colours = RGB
	case separated:
		const process = 1
		if f.directory.number(tagInkSet, 0, process) != process {
			return refuse("the TIFF is separated into other inks than CMYK: save it as CMYK")
		}
		f.colours = CMYK
	default:
		return refuse("the TIFF has colours of kind %d (such as Lab): save it as RGB or CMYK", f.photometric())
	}
	further := f.stored - f.coded()
	if further < 0 || f.stored > 64 {
		return refuse("the TIFF has %d channels, which does not fit its colours, %s: save it again as TIFF", f.stored, f.colours.word())
	}
	if kind := f.directory.number(tagExtraSamples, 0, noAlpha); further > 0 && f.colours != CMYK && f.photometric() != paletted &&
		(kind == multiplied || kind == straightAlpha) {
		f.alpha = kind
		further--
	}
	if further > 0 {
		f.note(phrase.New("Channels beyond those of the colours are left out: %d, such as alpha or spot colours.", further))
	}
	return nil
}

// coded returns the number of channels in which the colours are stored.
func (f *tiffFile) coded() int {
	if f.photometric() == paletted {
		return 1
	}
	return f.colours.Channels()
}

func (f *tiffFile) photometric() int { return f.directory.number(tagPhotometric, 0, -1) }
func (f *tiffFile) packing() int     { return f.directory.number(tagCompression, 0, packedNot) }

// checkCoding refuses what this reader does not know, before it comes out wrong.
func (f *tiffFile) checkCoding() error {
	d := f.directory
	for i := range d.entries[tagBits].count {
		if d.number(tagBits, i, f.bits) != f.bits && i < f.stored {
			return refuse("the TIFF has channels of %d and %d bits: save it with 8 bits a channel", f.bits, d.number(tagBits, i, 0))
		}
	}
	if format := d.number(tagSampleFormat, 0, 1); f.bits > 16 || f.bits&(f.bits-1) != 0 || f.bits < 1 || format != 1 && format != 4 {
		return refuse("the TIFF has %d bits a channel (number format %d): save it with 8 bits a channel", f.bits, format)
	}
	if f.photometric() == paletted && (f.bits > 8 || len(d.entries[tagPalette].values) < 6<<f.bits) {
		return refuse("the TIFF has a damaged palette: save it again as TIFF")
	}
	switch f.packing() {
	case packedNot, packedBits, packedLZW, packedDeflate, packedZIP:
		if predictor := d.number(tagPredictor, 0, 1); predictor > 2 || predictor == 2 && f.bits < 8 {
			return refuse("the TIFF is packed in a rare way (predictor %d): save it with LZW or without compression", predictor)
		}
		if f.photometric() != lightColour {
			return nil
		}
	case packedFax4:
		if f.bits == 1 && f.stored == 1 && f.coded() == 1 {
			return nil
		}
	case packedJPEG:
		if f.bits == 8 && f.stored == f.coded() && !f.separate && f.photometric() != paletted {
			return nil
		}
	}
	return refuse("the TIFF is packed in a rare way (compression %d): save it with LZW or without compression", f.packing())
}

// passed returns nothing: the blocks of a TIFF file cannot stand in a PDF file.
func (f *tiffFile) passed() (object.Dict, []byte) { return nil, nil }

// countPages counts the pictures in a file, thumbnails aside. Directories may name
// each other in a circle, so it stops at one it has seen.
func countPages(data []byte, first *directory) int {
	const thumbnail, most = 1, 1000
	pages := 1
	seen := map[uint32]bool{}
	for next := first.next; next != 0 && !seen[next] && pages < most; {
		seen[next] = true
		d, err := directoryAt(data, first.order, next)
		if err != nil {
			break
		}
		if d.number(tagSubfile, 0, 0)&thumbnail == 0 {
			pages++
		}
		next = d.next
	}
	return pages
}

// eightBits returns the samples of a row as whole bytes. For 8 bits it is the row.
func (f *tiffFile) eightBits(row, room []byte) []byte {
	switch f.bits {
	case 8:
		return row
	case 16:
		for i := range room[:len(row)/2] {
			room[i] = from16(f.directory.order.Uint16(row[2*i:]))
		}
		return room[:len(row)/2]
	}
	perByte, most := 8/f.bits, byte(1)<<f.bits-1
	scale := 255 / most
	if f.photometric() == paletted {
		scale = 1
	}
	for i := range room {
		room[i] = row[i/perByte] >> (8 - f.bits*(1+i%perByte)) & most * scale
	}
	return room
}

// from16 returns the nearest value of 8 bits.
func from16(v uint16) byte { return byte((uint32(v)*255 + 32895) >> 16) }

// unpredict adds up differences from pixel to pixel (TIFF 6.0, section 14).
func unpredict(row []byte, bits, channels int, order binary.ByteOrder) {
	if bits == 8 {
		for i := channels; i < len(row); i++ {
			row[i] += row[i-channels]
		}
		return
	}
	for i := 2 * channels; i+1 < len(row); i += 2 {
		order.PutUint16(row[i:], order.Uint16(row[i:])+order.Uint16(row[i-2*channels:]))
	}
}
