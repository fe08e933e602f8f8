// Package raster reads artwork made of pixels: PNG, JPEG, TIFF and WebP. It gives
// pictures for the screen and image objects for PDF files, in which the colours of
// the file stay as they are.
package raster

import (
	"image"
	"sync"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/pdf/object"
)

// Picture is a raster file that was read. It never changes; use from several
// goroutines is safe.
//
// Its levels are for the screen: inks look about as on coated paper and everything
// else is taken for sRGB. Colour profiles are not applied there; they go to the
// printer with the picture.
type Picture struct {
	Format      string      // PNG, JPEG, TIFF or WebP
	Stored      image.Point // pixels as stored
	Orientation int         // of EXIF and TIFF, 1 to 8: how the picture is turned to be upright
	Size        image.Point // pixels as shown, upright
	// PerMM is the resolution that the file states, in pixels per mm as shown; zero
	// where it states none.
	PerMM   geometry.Vec2
	Colours Colours
	Bits    int    // of a channel, as stored
	Alpha   bool   // holds something that is not opaque
	Profile []byte // ICC profile in the file that fits its colours, or nil
	// Levels are the picture as shown, premultiplied. The first has every pixel, or
	// MostShown; each next is half as wide and high, down to 64 pixels.
	Levels []*image.RGBA
	Ink    *InkMap         // of CMYK pictures, else nil
	Notes  []phrase.Phrase // what a user should know

	file file
	data []byte

	// The image object is made when it is first asked for, and then kept: whatever
	// uses the picture in a PDF file shares it.
	making sync.Mutex
	made   *object.Indirect
}

// Colours is what the channels of a picture are, aside from alpha.
type Colours int

// The colours that can be read.
const (
	Grey Colours = iota
	RGB
	CMYK
)

// Channels returns the number of channels.
func (c Colours) Channels() int { return [...]int{1, 3, 4}[c] }

// String returns the name of the colours.
func (c Colours) String() string { return [...]string{"grey", "RGB", "CMYK"}[c] }

// word returns the name for use in a phrase.
func (c Colours) word() phrase.Word {
	switch c {
	case Grey:
		return "grey"
	case RGB:
		return "RGB"
	}
	return "CMYK"
}

// header is what a file says of its picture ahead of the pixels.
type header struct {
	format      string
	size        image.Point // as stored
	colours     Colours
	bits        int
	orientation orientation
	perMM       geometry.Vec2 // as stored
	profile     []byte
	notes       []phrase.Phrase
	memory      int64 // bytes that decoding takes, about
	starved     bool  // the file has too few bytes for so many pixels, however plain they are
}

// note adds something that a user should know.
func (h *header) note(p phrase.Phrase) { h.notes = append(h.notes, p) }

// exif takes over what metadata in the file say, as far as they can be read.
func (h *header) exif(data []byte) {
	d, err := readDirectory(data)
	if err != nil {
		return // metadata are of no use then, but the picture may well be
	}
	h.orientation = d.orientation()
	if stated := d.perMM(); stated != (geometry.Vec2{}) {
		h.perMM = stated
	}
}

// newPicture returns a picture without its pixels.
func newPicture(f file, data []byte) *Picture {
	h := f.head()
	p := &Picture{
		Format: h.format, Stored: h.size, Orientation: int(h.orientation), Size: h.orientation.size(h.size),
		PerMM: h.perMM, Colours: h.colours, Bits: h.bits, Profile: h.profile, Notes: h.notes,
		file: f, data: data,
	}
	if swap, _, _ := h.orientation.turn(); swap {
		p.PerMM = geometry.Vec2{X: h.perMM.Y, Y: h.perMM.X}
	}
	if p.Bits > 8 {
		p.Notes = append(p.Notes, phrase.New("The picture has %d bits a channel; it is printed with 8.", p.Bits))
	}
	if p.PerMM == (geometry.Vec2{}) {
		p.Notes = append(p.Notes, phrase.New("The file states no resolution."))
	}
	return p
}
