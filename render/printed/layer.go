package printed

import (
	"encoding/binary"
	"image"
	"math"

	"gussetwright/geometry"
	"gussetwright/render/flat"
)

// paint paints every copy of the file into the picture.
func (l *layer) paint(picture *image.RGBA, view flat.View, quality Quality) {
	if l.opacity == 0 {
		return
	}
	left, top := view.At(geometry.Vec2{X: l.placed.Clip.Min.X, Y: l.placed.Clip.Max.Y})
	right, bottom := view.At(geometry.Vec2{X: l.placed.Clip.Max.X, Y: l.placed.Clip.Min.Y})
	clip := window{left, top, right, bottom}.pixels().Intersect(picture.Rect)
	if clip.Empty() {
		return
	}
	l.placed.Each(func(at geometry.Affine) {
		c := copyOf(at, view, l.levels)
		if area := c.area.pixels().Intersect(clip); !area.Empty() {
			c.paint(picture, area, l.opacity, quality)
		}
	})
}

// window is a rectangle in the picture, in pixels, y down.
type window struct{ left, top, right, bottom float64 }

// pixels returns the pixels whose middle lies within, so that windows which share an
// edge neither overlap nor leave a gap.
func (w window) pixels() image.Rectangle {
	const far = 1 << 20
	at := func(v float64) int { return int(math.Ceil(max(-far, min(v, far)) - 0.5)) }
	return image.Rect(at(w.left), at(w.top), at(w.right), at(w.bottom))
}

// copied is one appearance of a file: which of its pictures is painted, and where in
// that picture a pixel of the view lies.
type copied struct {
	from *image.RGBA
	area window          // that holds the copy
	back geometry.Affine // from pixels of the view to those of from, both y down
}

// copyOf chooses the picture whose pixels are about as large as those of the view.
func copyOf(at geometry.Affine, view flat.View, levels []*image.RGBA) copied {
	toView := geometry.Affine{
		U: geometry.Vec2{X: view.Scale}, V: geometry.Vec2{Y: -view.Scale},
		Origin: geometry.Vec2{X: -view.Origin.X * view.Scale, Y: view.Origin.Y * view.Scale},
	}
	onView := toView.After(at) // the unit square in pixels of the view
	box := onView.Bounds(geometry.RectAt(0, 0, 1, 1))
	c := copied{area: window{box.Min.X, box.Min.Y, box.Max.X, box.Max.Y}}
	const finer = 1.4 // pixels of the file to one of the view, where mixing four of them still suffices
	for _, c.from = range levels {
		if float64(c.from.Rect.Dx()) <= finer*onView.U.Length() && float64(c.from.Rect.Dy()) <= finer*onView.V.Length() {
			break
		}
	}
	width, height := float64(c.from.Rect.Dx()), float64(c.from.Rect.Dy())
	fromUnit := geometry.Affine{U: geometry.Vec2{X: width}, V: geometry.Vec2{Y: -height}, Origin: geometry.Vec2{Y: height}}
	back, possible := onView.Inverse()
	if !possible {
		c.area = window{}
		return c
	}
	c.back = fromUnit.After(back)
	return c
}

// paint paints the part of the copy that lies in area, over what is there.
func (c *copied) paint(picture *image.RGBA, area image.Rectangle, opacity uint32, quality Quality) {
	pick := c.mixed
	if quality == Draft {
		pick = c.nearest
	}
	upright := c.back.U.Y == 0 && c.back.V.X == 0
	size := c.from.Rect.Size()
	for y := area.Min.Y; y < area.Max.Y; y++ {
		start := c.back.At(geometry.Vec2{X: float64(area.Min.X) + 0.5, Y: float64(y) + 0.5})
		if upright && !(start.Y >= 0 && start.Y < float64(size.Y)) {
			continue
		}
		first, last := c.span(start, area.Dx())
		if first >= last {
			continue
		}
		row := picture.Pix[y*picture.Stride+4*(area.Min.X+first):][:4*(last-first)]
		pick(row, start.Add(c.back.U.Scale(float64(first))), opacity)
	}
}

// span returns which of the pixels of a row lie in the file, from first to before
// last.
func (c *copied) span(start geometry.Vec2, count int) (first, last int) {
	low, high := 0.0, float64(count)
	size := c.from.Rect.Size()
	for _, side := range [2][3]float64{{start.X, c.back.U.X, float64(size.X)}, {start.Y, c.back.U.Y, float64(size.Y)}} {
		at, step, most := side[0], side[1], side[2]
		if step == 0 {
			if !(at >= 0 && at < most) {
				return 0, 0
			}
			continue
		}
		enter, leave := -at/step, (most-at)/step
		if enter > leave {
			enter, leave = leave, enter
		}
		low, high = max(low, enter), min(high, leave)
	}
	return int(math.Ceil(low)), int(math.Ceil(high))
}

// fraction is how finely places in a picture are told apart: 1/256 of a pixel, with
// room for pictures of 2^39 pixels a side.
const fraction = 1 << 24

// nearest paints a row with the pixels of the file nearest to it.
func (c *copied) nearest(row []byte, at geometry.Vec2, opacity uint32) {
	x, y := int64(at.X*fraction), int64(at.Y*fraction)
	stepX, stepY := int64(c.back.U.X*fraction), int64(c.back.U.Y*fraction)
	limitX, limitY := int64(c.from.Rect.Dx()-1), int64(c.from.Rect.Dy()-1)
	stride, pixels := c.from.Stride, c.from.Pix
	for i := 0; i+3 < len(row); i += 4 {
		column, line := min(max(x>>24, 0), limitX), min(max(y>>24, 0), limitY)
		lay(row[i:i+4:i+4], binary.LittleEndian.Uint32(pixels[int(line)*stride+4*int(column):]), opacity)
		x, y = x+stepX, y+stepY
	}
}

// mixed paints a row, each pixel mixed from the four of the file around it.
func (c *copied) mixed(row []byte, at geometry.Vec2, opacity uint32) {
	x, y := int64((at.X-0.5)*fraction), int64((at.Y-0.5)*fraction)
	stepX, stepY := int64(c.back.U.X*fraction), int64(c.back.U.Y*fraction)
	limitX, limitY := int64(c.from.Rect.Dx()-1), int64(c.from.Rect.Dy()-1)
	stride, pixels := c.from.Stride, c.from.Pix
	for i := 0; i+3 < len(row); i += 4 {
		column, line := x>>24, y>>24
		left, right := min(max(column, 0), limitX), min(max(column+1, 0), limitX)
		upper, lower := int(min(max(line, 0), limitY))*stride, int(min(max(line+1, 0), limitY))*stride
		shareX, shareY := uint32(x>>16)&255, uint32(y>>16)&255
		a := binary.LittleEndian.Uint32(pixels[upper+4*int(left):])
		b := binary.LittleEndian.Uint32(pixels[upper+4*int(right):])
		d := binary.LittleEndian.Uint32(pixels[lower+4*int(left):])
		e := binary.LittleEndian.Uint32(pixels[lower+4*int(right):])
		if a != b || a != d || a != e {
			a = mix(mix(a, b, shareX), mix(d, e, shareX), shareY)
		}
		lay(row[i:i+4:i+4], a, opacity)
		x, y = x+stepX, y+stepY
	}
}

// mix returns share of 256 of the way from a to b, all four channels at once.
func mix(a, b, share uint32) uint32 {
	const even = 0x00ff00ff
	low := (a&even*(256-share) + b&even*share) >> 8 & even
	high := (a>>8&even*(256-share) + b>>8&even*share) & 0xff00ff00
	return low | high
}

// lay puts a premultiplied pixel of the given opacity, of 256, over another.
func lay(lower []byte, upper, opacity uint32) {
	if opacity != 256 {
		upper = mix(0, upper, opacity)
	}
	switch alpha := upper >> 24; alpha {
	case 0:
	case 255:
		binary.LittleEndian.PutUint32(lower, upper)
	default:
		lower[0] = over(uint8(upper), lower[0], alpha)
		lower[1] = over(uint8(upper>>8), lower[1], alpha)
		lower[2] = over(uint8(upper>>16), lower[2], alpha)
		lower[3] = over(uint8(alpha), lower[3], alpha)
	}
}
