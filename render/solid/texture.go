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
	t := &Texture{}
	t.Take(picture, scale, height)
	return t
}

// Take makes the texture that of another picture, as NewTexture does, in the memory that
// it has. No view that is being drawn may show it.
func (t *Texture) Take(picture image.Image, scale, height float64) {
	box := picture.Bounds()
	base := t.room(0, box.Dx(), box.Dy(), scale)
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
	t.build(base, height)
}

func newTexture(base level, height float64) *Texture {
	t := &Texture{}
	t.build(base, height)
	return t
}

// build makes the smaller versions.
func (t *Texture) build(base level, height float64) {
	if base.width < 1 || base.height < 1 {
		base = level{width: 1, height: 1, pixels: []packed{0xffffff}, scale: base.scale}
	}
	const most = 6
	levels := []level{base}
	for l := base; l.width > 8 && l.height > 8 && len(levels) < most; {
		half := t.room(len(levels), l.width/2, l.height/2, l.scale/2)
		l.halve(half.pixels)
		l = half
		levels = append(levels, l)
	}
	t.levels, t.height = levels, height
}

// muchTooLarge is how many times as large as needed memory is let go of: a texture for a
// near look takes a hundred times as much as the next for a draft.
const muchTooLarge = 4

// room returns a level with pixels, in the memory of the present one where that will do.
func (t *Texture) room(number, width, height int, scale float64) level {
	l, size := level{width: width, height: height, scale: scale}, width*height
	if number < len(t.levels) {
		if had := cap(t.levels[number].pixels); size <= had && had <= muchTooLarge*size {
			l.pixels = t.levels[number].pixels[:size]
			return l
		}
	}
	l.pixels = make([]packed, size)
	return l
}

// halve fills the pixels of the level at half the size, each the mean of four.
func (l level) halve(half []packed) {
	width := l.width / 2
	for y := range l.height / 2 {
		above, below := l.pixels[2*y*l.width:], l.pixels[(2*y+1)*l.width:]
		row := half[y*width : (y+1)*width]
		for x := range row {
			row[x] = meanOfFour(above[2*x], above[2*x+1], below[2*x], below[2*x+1])
		}
	}
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
