package sheet

import "math"

// shade is added before a quotient of rounded numbers is cut to a whole one, so that
// a bound errs upwards only.
const shade = 1e-9

// bound returns a number that no layout of the instance passes: the least of the
// bounds below.
func (in instance) bound() int {
	in.width, in.height = in.fullest(in.width), in.fullest(in.height)
	if in.width == 0 || in.height == 0 {
		return 0
	}
	return min(in.areaBound(), in.barnesBound(), in.scaleBound())
}

// areaBound compares areas. The room has been cut down to the fullest rows before.
func (in instance) areaBound() int {
	return int(float64(in.width)*float64(in.height)/(float64(in.long)*float64(in.short)) + shade)
}

// barnesBound cuts the pieces into rods one unit wide and counts what the best
// layout of rods leaves empty (F. W. Barnes, "Packing the maximum number of m × n
// tiles in a large p × q rectangle", Discrete Mathematics 26, 1979). It needs all
// four lengths as not too many times a common unit, and else is no bound.
func (in instance) barnesBound() int {
	unit := divisor(divisor(in.width, in.height), divisor(in.long, in.short))
	const largest = 1 << 31
	if max(in.width, in.height)/unit >= largest {
		return math.MaxInt
	}
	width, height, long, short := in.width/unit, in.height/unit, in.long/unit, in.short/unit
	room, piece := width*height, long*short
	empty := max(emptyOfRods(width, height, long), emptyOfRods(width, height, short))
	left := room % piece
	if left < empty {
		left += (empty - left + piece - 1) / piece * piece
	}
	return int(max(0, room-left) / piece)
}

// emptyOfRods returns the least area that rods of 1 × length leave empty.
func emptyOfRods(width, height, length int64) int64 {
	r, s := width%length, height%length
	return min(r*s, (length-r)*(length-s))
}

// rodBound counts rods in other whole measures of the sides: every pair of new sides
// with which all rows still fit a room that is measured anew makes a bound.
func (in instance) rodBound() int {
	const longest = 30
	best := math.MaxInt
	for long := int64(1); long <= longest; long++ {
		for short := int64(1); short <= longest; short++ {
			if divisor(long, short) == 1 {
				width, height := in.fullestMeasured(in.width, long, short), in.fullestMeasured(in.height, long, short)
				best = min(best, instance{width, height, long, short}.barnesBound())
			}
		}
	}
	return best
}

func divisor(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// scale is a pair of new lengths for the sides of a piece, in shares of a room, with
// which every row that fits in the room still fits.
type scale struct{ long, short float64 }

// scaleBound compares areas in other measures: along x and along y the sides of the
// pieces may be measured anew by any conservative scale (Fekete & Schepers, "A
// general framework for bounds for higher-dimensional orthogonal packing problems",
// Math. Methods Oper. Res. 60, 2004). Each pair of scales limits how many pieces lie
// and how many stand; the bound is the most of both together.
func (in instance) scaleBound() int {
	type limit struct{ lying, standing float64 }
	var limits []limit
	down := in.scales(in.height)
	for _, x := range in.scales(in.width) {
		for _, y := range down {
			limits = append(limits, limit{x.long * y.short, x.short * y.long})
		}
	}
	mayLie := in.long <= in.width && in.short <= in.height
	mayStand := in.short <= in.width && in.long <= in.height
	best := 0
	for lying := 0; lying == 0 || mayLie; lying++ {
		left, standing := 1+shade, math.Inf(1)
		for _, l := range limits {
			left = min(left, 1+shade-float64(lying)*l.lying)
			if l.standing > 0 {
				standing = min(standing, (1+shade-float64(lying)*l.lying)/l.standing)
			}
		}
		switch {
		case left < 0:
			return best // no more lie at all
		case !mayStand:
			standing = 0
		}
		best = max(best, lying+int(standing))
	}
	return best
}

// scales returns the extreme conservative scales of a room: the corners of what all
// rows i × long + j × short that fit leave possible, which are the edges of the hull
// of the points (i, j).
func (in instance) scales(room int64) []scale {
	type row struct{ long, short float64 }
	var hull []row
	for i := int64(0); i*in.long <= room; i++ {
		next := row{float64(i), float64((room - i*in.long) / in.short)}
		for len(hull) >= 2 {
			a, b := hull[len(hull)-2], hull[len(hull)-1]
			if (b.long-a.long)*(next.short-a.short) < (b.short-a.short)*(next.long-a.long) {
				break
			}
			hull = hull[:len(hull)-1]
		}
		hull = append(hull, next)
	}
	var found []scale
	if first := hull[0]; first.short > 0 {
		found = append(found, scale{short: 1 / first.short})
	}
	if last := hull[len(hull)-1]; last.long > 0 {
		found = append(found, scale{long: 1 / last.long})
	}
	for i := 1; i < len(hull); i++ {
		a, b := hull[i-1], hull[i]
		turn := a.long*b.short - b.long*a.short
		if s := (scale{(b.short - a.short) / turn, (a.long - b.long) / turn}); s.long > 0 && s.short > 0 {
			found = append(found, s)
		}
	}
	return found
}
