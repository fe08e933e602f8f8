package sheet

import (
	"math"

	"gussetwright/geometry"
)

// ticks is how many units of whole-number lengths make a millimetre. They are so
// fine that what is rounded away in a row of pieces stays far below
// geometry.Tolerance, and let layouts be compared exactly.
const ticks = 1e9

func toTicks(length float64) int64 { return int64(math.Round(length * ticks)) }

// instance is equal rectangles to be laid in a room without gaps: every piece, and
// the room, has grown by one gap to the right and up. Lengths are in ticks.
type instance struct {
	width, height int64 // of the room
	long, short   int64 // sides of a piece, long ≥ short > 0
}

// newInstance returns the problem of pieces with a gap between them in a room of
// the given size, all in mm. It is empty where a length is not positive.
func newInstance(room geometry.Rect, gap, width, height float64) (instance, bool) {
	if width <= 0 || height <= 0 || room.Width() <= 0 || room.Height() <= 0 {
		return instance{}, false
	}
	const slack = geometry.Tolerance / 2
	in := instance{
		width: toTicks(room.Width() + gap + slack), height: toTicks(room.Height() + gap + slack),
		long: toTicks(max(width, height) + gap), short: toTicks(min(width, height) + gap),
	}
	return in, in.short > 0
}

// cell is a piece in a room, in ticks from the lower left corner. Along means with
// its long side along x.
type cell struct {
	x, y  int64
	along bool
}

// size returns the extent of a piece that lies as told.
func (in instance) size(along bool) (width, height int64) {
	if along {
		return in.long, in.short
	}
	return in.short, in.long
}

// uniform returns how many pieces fit in a room that all lie the same way, and
// whether along is the better way.
func (in instance) uniform(width, height int64) (count int64, along bool) {
	lying := (width / in.long) * (height / in.short)
	standing := (width / in.short) * (height / in.long)
	if lying >= standing {
		return lying, true
	}
	return standing, false
}

// fullest returns the greatest length of a row of pieces that fits in room.
func (in instance) fullest(room int64) int64 { return in.fullestMeasured(room, in.long, in.short) }

// fullestMeasured returns the greatest length of a row that fits in room when the
// sides of its pieces are measured anew.
func (in instance) fullestMeasured(room, long, short int64) int64 {
	best := int64(0)
	for i := int64(0); i*in.long <= room; i++ {
		best = max(best, i*long+(room-i*in.long)/in.short*short)
	}
	return best
}
