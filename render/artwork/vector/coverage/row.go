package coverage

import "math/bits"

// row adds up the coverage of one row of pixels. Each edge leaves in the pixels that
// it passes how much it covers to its right, so that the sum from the left is the
// coverage. A bit for each pixel that was passed lets the sum skip what lies between.
type row struct {
	width  int
	area   []float32 // two pixels more than the row, for what runs out on the right
	passed []uint64
}

func (r *row) reset(width int) {
	r.width = width
	if len(r.area) < width+2 {
		r.area = make([]float32, width+2)
		r.passed = make([]uint64, (width+2+63)/64)
	}
}

// add puts an edge between two places in the row; height, signed, is what it covers
// of the pixels right of it.
func (r *row) add(left, right, height float32) {
	if left > right {
		left, right = right, left
	}
	left, right = min(max(left, 0), float32(r.width)), min(max(right, 0), float32(r.width))
	first, last := int(left), int(right)
	if first == last {
		share := (left+right)/2 - float32(first)
		r.put(first, height*(1-share))
		r.put(first+1, height*share)
		return
	}
	// The edge crosses several pixels: each takes the part above the edge in it.
	perPixel := height / (right - left)
	before := float32(0)
	for pixel := first; pixel <= last; pixel++ {
		from, to := max(left, float32(pixel)), min(right, float32(pixel+1))
		part := perPixel * (to - from)
		share := (from+to)/2 - float32(pixel)
		r.put(pixel, before+part*(1-share))
		before = part * share
	}
	r.put(last+1, before)
}

func (r *row) put(pixel int, area float32) {
	r.area[pixel] += area
	r.passed[pixel>>6] |= 1 << (pixel & 63)
}

// least is the coverage that is told of: half a step of 255, and far more than what
// rounding leaves in the sums.
const least = 1.0 / 512

// hand tells of the runs of covered pixels and empties the row.
func (r *row) hand(run func(from, to int, cover float32)) {
	tell := func(from, to int, cover float32) {
		if to = min(to, r.width); from < to && cover > least {
			if cover > 1-least {
				cover = 1
			}
			run(from, to, cover)
		}
	}
	sum, done := float32(0), 0
	for word, marks := range r.passed {
		if marks == 0 {
			continue
		}
		r.passed[word] = 0
		for ; marks != 0; marks &= marks - 1 {
			pixel := word<<6 + bits.TrailingZeros64(marks)
			tell(done, pixel, sum)
			sum += r.area[pixel]
			r.area[pixel] = 0
			tell(pixel, pixel+1, sum)
			done = pixel + 1
		}
	}
	tell(done, r.width, sum)
}
