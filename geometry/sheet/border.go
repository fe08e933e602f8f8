package sheet

import (
	"cmp"
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// border is where a run of pieces begins to fit as two eases grow:
// first × the one amount + second × the other = total.
type border struct{ first, second, total float64 }

// lengths are what decides which rows fit, in mm, each with one gap added.
type lengths struct {
	room   [2]float64 // along x and y
	across [2]float64 // sides of the piece
}

func lengthsOf(s bag.Sheet, piece Piece) lengths {
	room, gap := usable(s, piece.Bleed), max(s.Gap, 2*piece.Bleed)
	return lengths{
		room:   [2]float64{room.Width() + gap, room.Height() + gap},
		across: [2]float64{piece.Width + gap, piece.Height + gap},
	}
}

// run is a row of so many pieces that lie with their width, and so many with their
// height, along an axis.
type run struct {
	axis  int
	count [2]float64
}

// lacks returns by how much a run is too long; negative when it fits.
func (l *lengths) lacks(r run) float64 {
	return r.count[0]*l.across[0] + r.count[1]*l.across[1] - l.room[r.axis]
}

// runs returns the runs that fit. Where all pieces lie alike, they are not mixed.
func (l *lengths) runs(mixed bool) []run {
	var list []run
	for axis, room := range l.room {
		room += geometry.Tolerance
		for i := 0.0; i*l.across[0] <= room; i++ {
			for j := 0.0; i*l.across[0]+j*l.across[1] <= room; j++ {
				if mixed || i == 0 || j == 0 {
					list = append(list, run{axis, [2]float64{i, j}})
				}
				if !mixed && i > 0 {
					break
				}
			}
		}
	}
	return list
}

// newBorders returns the borders that two eases cross up to the amounts one and two.
// All lengths must change evenly up to there.
func newBorders(s bag.Sheet, piece Piece, first Ease, one float64, second Ease, two float64) []border {
	at := func(a, b float64) lengths {
		eased, smaller := first.By(a, s, piece)
		return lengthsOf(second.By(b, eased, smaller))
	}
	zero, aside, ahead, full := at(0, 0), at(one, 0), at(0, two), at(one, two)
	if full.across[0] <= 0 || full.across[1] <= 0 {
		return nil
	}
	slope := func(r run, l *lengths, amount float64) float64 {
		if amount == 0 {
			return 0
		}
		return (zero.lacks(r) - l.lacks(r)) / amount
	}
	var list []border
	for _, r := range full.runs(piece.Grain != GrainRequired) {
		if lack := zero.lacks(r); lack > 0 {
			list = append(list, border{slope(r, &aside, one), slope(r, &ahead, two), lack})
		}
	}
	return list
}

// Both returns the least amounts of two eases, up to the most of each in mm, at which
// together they make the sheet hold up pieces; false when none do. Least is the sum
// of the shares of the most. Neither ease may change the bleed. The area where the
// sheet holds enough is edged by borders, so its nearest point is where two of them
// meet, or one meets the edge of what is allowed.
func Both(s bag.Sheet, piece Piece, up int, first Ease, one float64, second Ease, two float64) (a, b float64, ok bool) {
	holds := func(a, b float64) bool {
		eased, smaller := first.By(a, s, piece)
		eased, smaller = second.By(b, eased, smaller)
		return Holds(eased, smaller, up)
	}
	mostA, mostB := first.useful(s, piece, one), second.useful(s, piece, two)
	if !holds(mostA, mostB) {
		return 0, 0, false
	}
	points := corners(newBorders(s, piece, first, mostA, second, mostB), mostA, mostB)
	slices.SortFunc(points, func(a, b geometry.Vec2) int { return cmp.Compare(a.X/one+a.Y/two, b.X/one+b.Y/two) })
	for _, c := range points {
		if holds(c.X, c.Y) {
			return c.X, c.Y, true
		}
	}
	return mostA, mostB, true
}

// corners returns where borders meet each other and the edges of the allowed amounts.
func corners(borders []border, one, two float64) []geometry.Vec2 {
	borders = append(borders, border{1, 0, 0}, border{0, 1, 0}, border{1, 0, one}, border{0, 1, two})
	var list []geometry.Vec2
	for i, p := range borders {
		for _, q := range borders[:i] {
			turn := p.first*q.second - q.first*p.second
			if turn == 0 {
				continue
			}
			c := geometry.Vec2{X: (p.total*q.second - q.total*p.second) / turn, Y: (p.first*q.total - q.first*p.total) / turn}
			if c.X >= -geometry.Tolerance && c.X <= one+geometry.Tolerance && c.Y >= -geometry.Tolerance && c.Y <= two+geometry.Tolerance {
				list = append(list, geometry.Vec2{X: min(max(c.X, 0), one), Y: min(max(c.Y, 0), two)})
			}
		}
	}
	return list
}
