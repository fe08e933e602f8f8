package solid

import (
	"cmp"
	"math"
	"slices"

	"gussetwright/geometry"
)

// border is an edge of a shape that is being filled, from its upper to its lower end.
type border struct {
	first, last int     // rows, last exclusive
	x, slope    float64 // x at the middle of row 0, and what it grows by each row
	winding     int     // 1 when the shape runs down along it, −1 when up
	at          float64 // x in the row at hand
}

// scanner fills shapes of straight edges row by row. A pixel is filled when its
// middle lies within, so shapes that share an edge neither overlap nor leave a gap.
type scanner struct {
	borders []border
	active  []int
}

// begin forgets the last shape.
func (s *scanner) begin() { s.borders = s.borders[:0] }

// edge adds an edge of the shape, in pixels. Rows beyond height are left out.
func (s *scanner) edge(a, b geometry.Vec2, height int) {
	winding := 1
	if a.Y > b.Y {
		a, b, winding = b, a, -1
	}
	first, last := firstMiddle(a.Y, height), firstMiddle(b.Y, height)
	if first >= last {
		return
	}
	slope := (b.X - a.X) / (b.Y - a.Y)
	s.borders = append(s.borders, border{first: first, last: last, x: a.X + (0.5-a.Y)*slope, slope: slope, winding: winding})
}

// firstMiddle returns the first pixel, 0 to most, whose middle is not before v.
func firstMiddle(v float64, most int) int {
	v = math.Ceil(v - 0.5)
	if !(v > 0) {
		return 0
	}
	if v >= float64(most) {
		return most
	}
	return int(v)
}

// polygon adds the edges of a closed polygon.
func (s *scanner) polygon(corners []geometry.Vec2, height int) {
	last := len(corners) - 1
	for i, c := range corners {
		s.edge(corners[last], c, height)
		last = i
	}
}

// anyTurn fills what the edges wind round either way.
const anyTurn = 0

// fill calls span for every run of pixels within the shape, from left inclusive to
// right exclusive. Within is where the edges wind in the direction of turn, 1 or −1:
// holes that overlap each other or the border stay open.
func (s *scanner) fill(width, turn int, span func(row, left, right int)) {
	if len(s.borders) < 2 {
		return
	}
	slices.SortFunc(s.borders, func(a, b border) int { return cmp.Compare(a.first, b.first) })
	s.active = s.active[:0]
	next := 0
	for row := s.borders[0].first; next < len(s.borders) || len(s.active) > 0; row++ {
		kept := s.active[:0]
		for _, i := range s.active {
			if s.borders[i].last > row {
				kept = append(kept, i)
			}
		}
		s.active = kept
		for ; next < len(s.borders) && s.borders[next].first <= row; next++ {
			s.active = append(s.active, next)
		}
		s.order(float64(row))
		s.spans(row, width, turn, span)
	}
}

// order sorts the active borders by where they cross the row. They hardly change
// from row to row, so each moves only a little.
func (s *scanner) order(row float64) {
	for n, i := range s.active {
		b := &s.borders[i]
		b.at = b.x + row*b.slope
		for ; n > 0 && s.borders[s.active[n-1]].at > b.at; n-- {
			s.active[n] = s.active[n-1]
		}
		s.active[n] = i
	}
}

func (s *scanner) spans(row, width, turn int, span func(row, left, right int)) {
	winding := 0
	for n, i := range s.active {
		winding += s.borders[i].winding
		if outside := winding*turn <= 0 && turn != anyTurn || winding == 0; outside || n+1 == len(s.active) {
			continue
		}
		left := firstMiddle(s.borders[i].at, width)
		right := firstMiddle(s.borders[s.active[n+1]].at, width)
		if left < right {
			span(row, left, right)
		}
	}
}
