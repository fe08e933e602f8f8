package raster

import (
	"bytes"
	"compress/zlib"
	"io"

	"golang.org/x/image/ccitt"
	"golang.org/x/image/tiff/lzw"

	"gussetwright/geometry/phrase"
)

// blocks is how the pixels of a TIFF file are cut: into strips of rows, or tiles
// (TIFF 6.0, sections 3 and 15).
type blocks struct {
	width, height   int // of a block in pixels
	across, down    int
	tiled           bool
	offsets, counts uint16 // the tags with where the blocks are
}

// layBlocks finds out where the blocks are.
func (f *tiffFile) layBlocks() error {
	d, b := f.directory, &f.blocks
	*b = blocks{width: f.size.X, height: d.number(tagRowsPerStrip, 0, f.size.Y), offsets: tagStripOffsets, counts: tagStripCounts}
	if _, tiled := d.entries[tagTileWidth]; tiled {
		*b = blocks{d.number(tagTileWidth, 0, 0), d.number(tagTileHeight, 0, 0), 0, 0, true, tagTileOffsets, tagTileCounts}
	} else {
		b.height = min(b.height, f.size.Y) // 2³² − 1 stands for all
	}
	if b.width < 1 || b.height < 1 || b.width > standard.side || b.height > standard.side {
		return refuse("the TIFF is cut into blocks of %d × %d pixels, which cannot be: save it again as TIFF", b.width, b.height)
	}
	b.across, b.down = (f.size.X+b.width-1)/b.width, (f.size.Y+b.height-1)/b.height
	needed := b.across * b.down
	if f.separate {
		needed *= f.stored
	}
	if d.entries[b.offsets].count < needed {
		return phrase.Errorf("%d of %d blocks of pixels are listed", d.entries[b.offsets].count, needed)
	}
	if b.tiled || f.packing() == packedJPEG {
		// A band of blocks is held, and one decoded.
		f.memory = 2 * 4 * int64(b.across) * int64(b.width) * int64(b.height)
	}
	return f.checkCounts(needed)
}

// checkCounts refuses a list of blocks that has more bytes than the file. Such a
// file keeps a reader busy for hours with the same few bytes.
func (f *tiffFile) checkCounts(blocks int) error {
	total := 0
	for i := range blocks {
		total += len(f.packed(i))
		if total > 2*len(f.data) {
			return phrase.Errorf("blocks of pixels overlap")
		}
	}
	return nil
}

// packed returns the bytes of a block as they are in the file, or nil.
func (f *tiffFile) packed(block int) []byte {
	from := f.directory.number(f.blocks.offsets, block, len(f.data))
	count := f.directory.number(f.blocks.counts, block, len(f.data)-min(from, len(f.data)))
	bytes, _ := slice(f.data, uint64(from), uint64(count))
	return bytes
}

// decode returns the rows. Blocks are unpacked when their rows are asked for: strips
// row by row, tiles and blocks of JPEG by a band of them at a time.
func (f *tiffFile) decode(source *source) (samples, error) {
	model := straight
	if f.colours == CMYK {
		model = inks
	}
	if f.blocks.tiled || f.packing() == packedJPEG {
		return samples{model, f.bands(source)}, nil
	}
	return samples{model, f.strips()}, nil
}

// strips gives the rows of a picture that is cut into strips.
func (f *tiffFile) strips() func(y int, line []byte) error {
	var planes []*plane
	return func(y int, line []byte) (err error) {
		if y%f.blocks.height == 0 {
			if planes, err = f.open(y/f.blocks.height, min(f.blocks.height, f.size.Y-y)); err != nil {
				return err
			}
		}
		return f.row(planes, line)
	}
}

// bands gives the rows of a picture whose blocks do not reach across it, or cannot
// be unpacked row by row.
func (f *tiffFile) bands(source *source) func(y int, line []byte) error {
	b := f.blocks
	stride := 4 * b.across * b.width
	band, current := make([]byte, stride*b.height), -1
	return func(y int, line []byte) error {
		if at := y / b.height; at != current {
			for i := range b.across {
				if err := source.ctx.Err(); err != nil {
					return err
				}
				if err := f.fill(at*b.across+i, band[4*i*b.width:], stride); err != nil {
					return err
				}
			}
			current = at
		}
		copy(line, band[y%b.height*stride:])
		return nil
	}
}

// fill unpacks a whole block into its place.
func (f *tiffFile) fill(number int, place []byte, stride int) error {
	if f.packing() == packedJPEG {
		return f.jpegBlock(number, place, stride)
	}
	planes, err := f.open(number, f.blocks.height)
	if err != nil {
		return err
	}
	for y := range f.blocks.height {
		if err := f.row(planes, place[y*stride:][:4*f.blocks.width]); err != nil {
			return err
		}
	}
	return nil
}

// plane is a block that is being unpacked: every channel of it, or one of them where
// they are stored apart.
type plane struct {
	unpacked    io.Reader
	first, last int // channels that are looked at
	stored      int // channels that are stored
	packed      []byte
	eight       []byte
}

// open begins to unpack a block of so many rows.
func (f *tiffFile) open(number, rows int) ([]*plane, error) {
	whole := []*plane{{last: f.used(), stored: f.stored}}
	if f.separate {
		whole = nil
		for c := range f.used() {
			whole = append(whole, &plane{first: c, last: c + 1, stored: 1})
		}
	}
	for i, p := range whole {
		samples := f.blocks.width * p.stored
		p.packed, p.eight = make([]byte, (samples*f.bits+7)/8), make([]byte, samples)
		var err error
		if p.unpacked, err = f.unpack(f.packed(i*f.blocks.across*f.blocks.down+number), rows); err != nil {
			return nil, err
		}
	}
	return whole, nil
}

// used returns how many channels are looked at.
func (f *tiffFile) used() int {
	if f.alpha != noAlpha {
		return f.coded() + 1
	}
	return f.coded()
}

// row unpacks the next row of a block and puts its samples in their places, four to
// a pixel.
func (f *tiffFile) row(planes []*plane, line []byte) error {
	for _, p := range planes {
		if _, err := io.ReadFull(p.unpacked, p.packed); err != nil {
			return err
		}
		if f.directory.number(tagPredictor, 0, 1) == 2 && f.packing() != packedFax4 {
			unpredict(p.packed, f.bits, p.stored, f.directory.order)
		}
		eight := f.eightBits(p.packed, p.eight)
		for c := p.first; c < p.last; c++ {
			slot := c
			if c == f.coded() {
				slot = 3 // alpha
			}
			from := eight[c-p.first:]
			for x := range f.blocks.width {
				line[4*x+slot] = from[x*p.stored]
			}
		}
	}
	f.finish(line)
	return nil
}

// unpack returns a block of so many rows without its packing.
func (f *tiffFile) unpack(packed []byte, rows int) (io.Reader, error) {
	if packed == nil {
		return nil, io.ErrUnexpectedEOF
	}
	reader := bytes.NewReader(packed)
	switch f.packing() {
	case packedBits:
		return &runs{from: reader}, nil
	case packedLZW:
		return lzw.NewReader(reader, lzw.MSB, 8), nil
	case packedDeflate, packedZIP:
		return zlib.NewReader(reader)
	case packedFax4:
		return f.fax(reader, rows), nil
	}
	return reader, nil
}

// fax unpacks pictures of black and white (ITU T.6).
func (f *tiffFile) fax(packed io.Reader, rows int) io.Reader {
	const lowBitFirst = 2
	order := ccitt.MSB
	if f.directory.number(tagFillOrder, 0, 1) == lowBitFirst {
		order = ccitt.LSB
	}
	return ccitt.NewReader(packed, order, ccitt.Group4, f.blocks.width, rows,
		&ccitt.Options{Invert: f.photometric() == whiteIsZero})
}

// finish makes colours of the samples of a row.
func (f *tiffFile) finish(line []byte) {
	if f.photometric() == paletted {
		f.lookUp(line)
	}
	for at := 0; at < len(line) && f.colours != CMYK; at += 4 {
		pixel := line[at:][:4]
		if f.photometric() == whiteIsZero {
			pixel[0] = ^pixel[0]
		}
		if f.colours == Grey {
			pixel[1], pixel[2] = pixel[0], pixel[0]
		}
		switch f.alpha {
		case noAlpha:
			pixel[3] = 255
		case multiplied:
			unmultiply(pixel)
		}
	}
}

// lookUp puts the colours of the palette in place of their numbers. The palette has
// all reds, then all greens, then all blues, of 16 bits.
func (f *tiffFile) lookUp(line []byte) {
	palette, size := f.directory.entries[tagPalette].values, 1<<f.bits
	for at := 0; at < len(line); at += 4 {
		number := int(line[at])
		for c := range 3 {
			line[at+c] = from16(f.directory.order.Uint16(palette[2*(c*size+number):]))
		}
	}
}
