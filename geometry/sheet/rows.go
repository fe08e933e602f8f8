package sheet

import "slices"

// mostRows bounds the lengths of rows that the finer methods look at: with more, the
// pieces are so small beside the sheet that plain blocks waste next to nothing.
const mostRows = 400

// place is a distance from the left or lower edge of a room, as its index in the
// lengths that rows of pieces can have.
type place = int16

// rows are all lengths that rows of pieces can have up to the longer side of a room:
// i × long + j × short. Pieces need lie nowhere else.
type rows struct {
	instance
	length     []int64 // in order, from 0
	less       []place // less[a*n+b] is the fullest row in length[a] − length[b]
	wide, high place   // the fullest rows in the room
	byLong     []place // what a row becomes with one more long side, −1 past the end
	byShort    []place
}

// newRows returns nil where there are too many lengths.
func newRows(in instance) *rows {
	r := &rows{instance: in, length: in.sums(max(in.width, in.height))}
	n := len(r.length)
	if n == 0 {
		return nil
	}
	r.less = make([]place, n*n)
	for a := range n {
		row := a
		for b := 0; b <= a; b++ {
			for r.length[row] > r.length[a]-r.length[b] {
				row--
			}
			r.less[a*n+b] = place(row)
		}
	}
	r.byLong, r.byShort = r.longer(in.long), r.longer(in.short)
	r.wide, r.high = place(floorOf(r.length, in.width)), place(floorOf(r.length, in.height))
	return r
}

// sums returns the lengths, or nil where there are more than mostRows.
func (in instance) sums(most int64) []int64 {
	var all []int64
	for row := int64(0); row <= most; row += in.long {
		for sum := row; sum <= most; sum += in.short {
			all = append(all, sum)
		}
		if len(all) > 8*mostRows {
			return nil
		}
	}
	slices.Sort(all)
	if all = slices.Compact(all); len(all) > mostRows {
		return nil
	}
	return all
}

func (r *rows) longer(by int64) []place {
	next := make([]place, len(r.length))
	for i, length := range r.length {
		next[i] = -1
		if at, found := slices.BinarySearch(r.length, length+by); found {
			next[i] = place(at)
		}
	}
	return next
}

// minus returns the fullest row in the difference of two places.
func (r *rows) minus(a, b place) place { return r.less[int(a)*len(r.length)+int(b)] }

// plus returns the place one side of a piece further on, −1 past the end.
func (r *rows) plus(a place, long bool) place {
	if long {
		return r.byLong[a]
	}
	return r.byShort[a]
}

// raster returns the places along a room at which pieces need to be tried, in order:
// what the fullest rows leave free of it (the raster points of Scheithauer & Terno,
// "The G4-heuristic for the pallet loading problem", J. Oper. Res. Soc. 47, 1996).
func (r *rows) raster(room place) []place {
	points := make([]place, 0, room+1)
	last := place(-1)
	for i := room; i >= 0; i-- {
		if at := r.minus(room, i); at != last {
			points = append(points, at)
			last = at
		}
	}
	return points
}

// floorOf returns the index of the greatest of sorted lengths that is not above
// length, which is not negative.
func floorOf(sorted []int64, length int64) int {
	at, found := slices.BinarySearch(sorted, length)
	if found {
		return at
	}
	return at - 1
}
