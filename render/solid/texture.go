package solid

import (
	"image"
	"math"

	"gussetwright/geometry"
)

// Texture is a picture of the print side of a piece, with smaller versions of
// itself for surfaces that are far away.
type Texture struct {
	levels []level
	height float64 // of the piece, mm
}

// level is one size of a texture.
type level struct {
	width, height int
	pixels        []packed
	scale         float64 // pixels per mm
}

// NewTexture returns the texture of a piece of the given height in mm from a picture
// of its whole blank: x to the right, the upper edge of the piece first, scale pixels
// per mm. The picture is copied; it must be opaque.
func NewTexture(picture image.Image, scale, height float64) *Texture {
	box := picture.Bounds()
	base := level{width: box.Dx(), height: box.Dy(), scale: scale}
	base.pixels = make([]packed, base.width*base.height)
	if rgba, ok := picture.(*image.RGBA); ok {
		for y := range base.height {
			row := rgba.Pix[y*rgba.Stride:]
			for x := range base.width {
				base.pixels[y*base.width+x] = packed(row[4*x]) | packed(row[4*x+1])<<8 | packed(row[4*x+2])<<16
			}
		}
	} else {
		for y := range base.height {
			for x := range base.width {
				base.pixels[y*base.width+x] = pack(picture.At(box.Min.X+x, box.Min.Y+y))
			}
		}
	}
	return newTexture(base, height)
}

func newTexture(base level, height float64) *Texture {
	t := &Texture{height: height}
	if base.width < 1 || base.height < 1 {
		base = level{width: 1, height: 1, pixels: []packed{0xffffff}, scale: base.scale}
	}
	t.levels = append(t.levels, base)
	for l := base; l.width > 8 && l.height > 8 && len(t.levels) < 6; {
		l = l.halved()
		t.levels = append(t.levels, l)
	}
	return t
}

// halved returns the level at half its size, each pixel the mean of four.
func (l level) halved() level {
	h := level{width: l.width / 2, height: l.height / 2, scale: l.scale / 2}
	h.pixels = make([]packed, h.width*h.height)
	for y := range h.height {
		above, below := l.pixels[2*y*l.width:], l.pixels[(2*y+1)*l.width:]
		row := h.pixels[y*h.width : (y+1)*h.width]
		for x := range row {
			row[x] = meanOfFour(above[2*x], above[2*x+1], below[2*x], below[2*x+1])
		}
	}
	return h
}

func meanOfFour(a, b, c, d packed) packed {
	const even, odd = 0x00ff00ff, 0x0000ff00
	return (a&even+b&even+c&even+d&even+0x00020002)>>2&even | (a&odd+b&odd+c&odd+d&odd+0x00000200)>>2&odd
}

// levelFor returns the level whose pixels are about as large as those of the
// picture, where a mm takes the given number of pixels.
func (t *Texture) levelFor(pixelsPerMM float64) *level {
	step := int(math.Floor(math.Log2(t.levels[0].scale/pixelsPerMM) + 0.4))
	return &t.levels[min(max(step, 0), len(t.levels)-1)]
}

// at returns the colour at a point in pixels from the upper left, mixed from the
// four pixels around it. Points beyond the border get the colour of the border.
func (l *level) at(x, y float64) packed {
	x, y = x-0.5, y-0.5
	limitX, limitY := float64(l.width-1), float64(l.height-1)
	if !(x > 0) {
		x = 0
	} else if x > limitX {
		x = limitX
	}
	if !(y > 0) {
		y = 0
	} else if y > limitY {
		y = limitY
	}
	fixedX, fixedY := uint32(x*256), uint32(y*256)
	column, row := int(fixedX>>8), int(fixedY>>8)
	shareX, shareY := fixedX&255, fixedY&255
	i := row*l.width + column
	right, below := 1, l.width
	if column+1 >= l.width {
		right = 0
	}
	if row+1 >= l.height {
		below = 0
	}
	a, b, c, d := l.pixels[i], l.pixels[i+right], l.pixels[i+below], l.pixels[i+below+right]
	if a == b && a == c && a == d {
		return a
	}
	return mix(mix(a, b, shareX), mix(c, d, shareX), shareY)
}

// Place is a point on a piece of the blank.
type Place struct {
	Piece int
	At    geometry.Vec2
}
