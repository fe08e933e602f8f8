package raster

import (
	"image"
	"io"
	"math"

	bounds "gussetwright/render/limits"
)

// MostShown is the number of pixels that the finest level of a picture has at most.
const MostShown = bounds.PictureShownPixels

// limits bound what a file may ask for, so that a small file cannot take all memory.
type limits struct {
	side   int   // pixels of width and height
	pixels int   // pixels in all
	memory int64 // bytes for decoding
}

// standard are the limits of Read.
var standard = limits{side: bounds.PictureSide, pixels: bounds.PicturePixels, memory: bounds.PictureMemoryBytes}

// check compares a picture with the limits before anything is decoded.
func (l limits) check(h *header) error {
	width, height := h.size.X, h.size.Y
	if width < 1 || height < 1 {
		return refuse("the %s file has no pixels, %d × %d: save it again", h.format, width, height)
	}
	if width > l.side || height > l.side {
		return refuse("the picture is %d × %d pixels, more than %d a side: save it with fewer pixels", width, height, l.side)
	}
	if width*height > l.pixels {
		return refuse("the picture is %d × %d pixels, %d million and more than %d million: save it with fewer pixels",
			width, height, width*height/1_000_000, l.pixels/1_000_000)
	}
	if h.memory > l.memory {
		return refuse("the picture of %d × %d pixels takes %d MB to open, more than %d MB: save it with 8 bits a channel or with fewer pixels",
			width, height, h.memory>>20, l.memory>>20)
	}
	if h.starved {
		return damaged(h.format, io.ErrUnexpectedEOF)
	}
	return nil
}

// shown returns the size of the finest level of a picture.
func shown(size image.Point) image.Point {
	divisor := math.Sqrt(max(1, float64(size.X)*float64(size.Y)/MostShown))
	return image.Pt(max(1, int(float64(size.X)/divisor)), max(1, int(float64(size.Y)/divisor)))
}
