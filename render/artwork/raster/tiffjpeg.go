package raster

import (
	"bytes"
	"image/jpeg"
	"io"
)

// jpegBlock unpacks a block that is a JPEG file of its own, its tables standing in
// the directory (TIFF technical note 2).
func (f *tiffFile) jpegBlock(number int, place []byte, stride int) error {
	packed := f.packed(number)
	if len(packed) < 4 {
		return io.ErrUnexpectedEOF
	}
	whole := bytes.Join([][]byte{packed[:2], f.jpegMark(), f.jpegTables(), packed[2:]}, nil)
	config, err := jpeg.DecodeConfig(bytes.NewReader(whole))
	if err != nil {
		return err
	}
	if config.Width > f.blocks.width || config.Height > f.blocks.height {
		return refuse("the TIFF has a block of %d × %d pixels in a place of %d × %d: save it again as TIFF",
			config.Width, config.Height, f.blocks.width, f.blocks.height)
	}
	picture, err := jpeg.Decode(bytes.NewReader(whole))
	if err != nil {
		return err
	}
	pixels, err := newSamples(picture)
	if err != nil {
		return err
	}
	for y := range config.Height {
		line := place[y*stride:][:4*config.Width]
		if err := pixels.row(y, line); err != nil {
			return err
		}
		if pixels.model == lightness {
			lightnessToRGB(line)
		}
		if f.colours == CMYK {
			for i := range line {
				line[i] = ^line[i] // the mark makes 255 no ink
			}
		}
	}
	return nil
}

// jpegMark returns the marker of Adobe, which says how the channels are to be read:
// in TIFF the directory says it.
func (f *tiffFile) jpegMark() []byte {
	switch f.photometric() {
	case lightColour:
		return adobeMarker(1)
	case redGreen, separated:
		return adobeMarker(0)
	}
	return nil
}

// jpegTables returns the tables without their own start and end.
func (f *tiffFile) jpegTables() []byte {
	tables := f.directory.entries[tagJPEGTables].values
	if len(tables) < 4 {
		return nil
	}
	return tables[2 : len(tables)-2]
}
