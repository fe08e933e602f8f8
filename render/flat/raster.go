package flat

import (
	"image"
	"image/color"
	"math"
	"math/bits"
)

// raster finds how much of each pixel lies inside outlines, and fills them.
//
// Each edge leaves in the pixels that it passes how much area it puts to its right.
// Summed from left to right these give the share of each pixel that is covered,
// exactly for outlines that do not overlap. A bit for each pixel that was passed lets
// the sum skip what lies between, so that filling costs as much as there is outline
// and ink, not as much as there is picture.
type raster struct {
	width, height int
	stride        int       // of area, two pixels more than a row, for what runs out on the right
	area          []float32 // signed, by pixel
	words         int       // of a row of passed
	passed        []uint64  // a bit by pixel
	top, bottom   int       // the rows passed, bottom excluded
}

// reset makes the raster as large as a picture, and empty. It is empty already
// after every fill.
func (r *raster) reset(width, height int) {
	if width == r.width && height == r.height {
		return
	}
	r.width, r.height = width, height
	r.stride, r.words = width+2, (width+2+63)/64
	r.area = empty(r.area, r.stride*height)
	r.passed = empty(r.passed, r.words*height)
	r.top, r.bottom = height, 0
}

// empty returns room that is empty, out of one that is where that is large enough and not
// much too large.
func empty[T any](room []T, size int) []T {
	const muchTooLarge = 4
	if had := cap(room); had < size || had > muchTooLarge*size {
		return make([]T, size)
	}
	return room[:size]
}

// edge adds the edge of an outline from one point to another, in pixels, y down.
// Outlines of one fill must all run the same way round.
func (r *raster) edge(x0, y0, x1, y1 float64) {
	if sum := x0 + y0 + x1 + y1; y0 == y1 || sum-sum != 0 {
		return // level, or not a number
	}
	sign := float32(1)
	if y0 > y1 {
		x0, y0, x1, y1, sign = x1, y1, x0, y0, -1
	}
	if y1 <= 0 || y0 >= float64(r.height) {
		return
	}
	slope := (x1 - x0) / (y1 - y0)
	if y0 < 0 {
		x0, y0 = x0-y0*slope, 0
	}
	if bottom := float64(r.height); y1 > bottom {
		x1, y1 = x1+(bottom-y1)*slope, bottom
	}
	r.clipped(x0, y0, x1, y1, slope, sign)
}

// clipped adds an edge that runs down inside the rows of the picture. What lies
// left of it counts at its left side, what lies right of it not at all.
func (r *raster) clipped(x0, y0, x1, y1, slope float64, sign float32) {
	right := float64(r.width)
	switch {
	case x0 >= right && x1 >= right:
		return
	case x0 <= 0 && x1 <= 0:
		r.inside(0, y0, 0, y1, 0, sign)
		return
	}
	for _, border := range [2]float64{0, right} {
		if min(x0, x1) < border && border < max(x0, x1) {
			y := min(max(y0+(border-x0)/slope, y0), y1)
			r.clipped(x0, y0, border, y, slope, sign)
			r.clipped(border, y, x1, y1, slope, sign)
			return
		}
	}
	r.inside(x0, y0, x1, y1, slope, sign)
}

// inside adds an edge that runs down inside the picture.
func (r *raster) inside(x0, y0, x1, y1, slope float64, sign float32) {
	if y0 >= y1 {
		return
	}
	first, last := int(y0), int(math.Ceil(y1))
	r.top, r.bottom = min(r.top, first), max(r.bottom, last)
	x := x0
	for row := first; row < last; row++ {
		height := min(float64(row+1), y1) - max(float64(row), y0)
		next := x1
		if row+1 < last {
			next = x + slope*height
		}
		r.row(row, min(x, next), max(x, next), sign*float32(height))
		x = next
	}
}

// row adds the part of an edge in one row: it runs from left to right, and its
// height, signed, is what it puts on the pixels to its right.
func (r *raster) row(row int, left, right float64, height float32) {
	left, right = min(max(left, 0), float64(r.width)), min(max(right, 0), float64(r.width))
	first, end := int(left), int(right)
	area := r.area[row*r.stride : (row+1)*r.stride]
	passed := r.passed[row*r.words : (row+1)*r.words]
	if first == end {
		share := float32((left+right)/2 - float64(first))
		area[first] += height * (1 - share)
		area[first+1] += height * share
		passed[first>>6] |= 1 << (first & 63)
		passed[(first+1)>>6] |= 1 << ((first + 1) & 63)
		return
	}
	// The edge crosses several pixels: each takes the trapezium above the edge in it.
	perPixel := height / float32(right-left)
	before := float32(0)
	for pixel := first; pixel <= end; pixel++ {
		from, to := max(left, float64(pixel)), min(right, float64(pixel+1))
		run := perPixel * float32(to-from)
		share := float32((from+to)/2 - float64(pixel))
		area[pixel] += before + run*(1-share)
		before = run * share
		passed[pixel>>6] |= 1 << (pixel & 63)
	}
	area[end+1] += before
	passed[(end+1)>>6] |= 1 << ((end + 1) & 63)
}

// fill paints what was outlined and empties the raster.
func (r *raster) fill(picture *image.RGBA, ink color.NRGBA) {
	brush := newBrush(ink)
	r.paint(picture, &brush)
}

// paint is fill with a brush.
func (r *raster) paint(picture *image.RGBA, brush *brush) {
	for row := r.top; row < r.bottom; row++ {
		line := picture.Pix[row*picture.Stride : row*picture.Stride+4*r.width]
		r.fillRow(line, row, brush)
	}
	r.top, r.bottom = r.height, 0
}

// least is the coverage below which nothing is painted: half a step of 255, and
// far more than what rounding leaves in the sums.
const least = 1.0 / 512

func (r *raster) fillRow(line []uint8, row int, brush *brush) {
	area := r.area[row*r.stride : (row+1)*r.stride]
	passed := r.passed[row*r.words : (row+1)*r.words]
	sum, done := float32(0), 0
	for word, marks := range passed {
		if marks == 0 {
			continue
		}
		passed[word] = 0
		for ; marks != 0; marks &= marks - 1 {
			pixel := word<<6 + bits.TrailingZeros64(marks)
			if pixel > done && abs(sum) > least {
				brush.run(line[4*done:4*min(pixel, r.width)], abs(sum))
			}
			sum += area[pixel]
			area[pixel] = 0
			if pixel < r.width && abs(sum) > least {
				brush.run(line[4*pixel:4*pixel+4], abs(sum))
			}
			done = pixel + 1
		}
	}
	if done < r.width && abs(sum) > least {
		brush.run(line[4*done:], abs(sum))
	}
}

func abs(x float32) float32 { return max(x, -x) }

// brush paints in one colour.
type brush struct {
	ink   [4]uint8 // premultiplied
	alpha float32  // 0 to 255
	need  *need    // of the pixels that are painted; nil paints all
}

func newBrush(ink color.NRGBA) brush {
	flat := color.RGBAModel.Convert(ink).(color.RGBA)
	return brush{ink: [4]uint8{flat.R, flat.G, flat.B, flat.A}, alpha: float32(flat.A)}
}

// run paints neighbouring pixels that are covered by the same share.
func (b *brush) run(pixels []uint8, cover float32) {
	if b.need != nil {
		b.runNear(pixels, cover)
		return
	}
	if cover > 1-least && b.alpha == 255 {
		for len(pixels) >= 4 {
			pixels[0], pixels[1], pixels[2], pixels[3] = b.ink[0], b.ink[1], b.ink[2], 255
			pixels = pixels[4:]
		}
		return
	}
	b.blend(pixels, cover)
}

// blend paints neighbouring pixels over what they hold.
func (b *brush) blend(pixels []uint8, cover float32) {
	share := uint32(min(cover, 1)*256 + 0.5)
	rest := 256*255 - share*uint32(b.ink[3])
	for len(pixels) >= 4 {
		for c := range 4 {
			pixels[c] = uint8((uint32(pixels[c])*rest + uint32(b.ink[c])*share*255 + 256*255/2) / (256 * 255))
		}
		pixels = pixels[4:]
	}
}
