package sheet

import (
	"math"

	"gussetwright/geometry"
)

// nest takes a layout of columns, or rows, that lie head to tail in turn and reach
// into each other where that holds more than boxes side by side.
func (p *Plan) nest() {
	if p.Up() == 0 {
		return // outlines need no less room than one box
	}
	outline := newContour(p.Piece.Outline)
	bound := math.MaxInt
	if p.Piece.Area > 0 {
		if bound = p.coreBound(&outline); p.Up() >= bound {
			p.Bound = p.Up()
			return
		}
	}
	for _, turn := range p.turns() {
		lying := outline
		if turn == 90 {
			lying = outline.onItsSide()
		}
		room := geometry.Vec2{X: p.Usable.Width(), Y: p.Usable.Height()}
		for _, upward := range [2]bool{false, true} {
			if upward {
				lying, room = lying.transposed(), swapped(room)
			}
			if pieces := newNesting(lying, room, p.Gap()).best(p.Up()); len(pieces) > p.Up() {
				p.takeNested(pieces, turn, upward)
			}
		}
	}
	if p.Piece.Area > 0 {
		p.Bound = max(p.Up(), bound)
	}
}

// lain is a piece of a nesting.
type lain struct {
	at         geometry.Vec2
	headToTail bool
}

func (p *Plan) takeNested(pieces []lain, turn int, upward bool) {
	p.Placements = make([]Placement, len(pieces))
	for i, piece := range pieces {
		at := piece.at
		if upward {
			at = swapped(at)
		}
		p.Placements[i] = Placement{X: p.Usable.Min.X + at.X, Y: p.Usable.Min.Y + at.Y, Turn: turn}
		if piece.headToTail {
			p.Placements[i].Turn += 180
		}
	}
	p.Turn, p.Nested, p.TooLong = turn, true, geometry.Vec2{}
}

// nesting lays columns of pieces, upright and head to tail in turn, from left to
// right.
type nesting struct {
	gap         float64
	room        geometry.Vec2
	piece, tail contour // as it lies, and head to tail
	right, left flank   // of the piece
	over, under flank   // of the tail: the right and the left one, upside down
	pitch       float64 // from piece to piece in a column
	rows        int
}

func newNesting(piece contour, room geometry.Vec2, gap float64) *nesting {
	n := &nesting{gap: gap, room: room, piece: piece, tail: piece.headToTail(), pitch: piece.size.Y + gap}
	n.rows, _ = times(room.Y, gap, piece.size.Y)
	n.right, n.left = piece.right(), piece.left()
	n.over, n.under = n.tail.left(), n.tail.right()
	return n
}

// best returns a layout of more pieces than toBeat, or nil.
func (n *nesting) best(toBeat int) []lain {
	columns, _ := times(n.room.X, n.gap, n.piece.size.X)
	if n.rows == 0 || columns == 0 {
		return nil
	}
	most := n.columns(n.hoped())
	if most <= columns || most*n.rows <= toBeat {
		return nil
	}
	p := n.closest(most)
	if found := n.laid(p); len(found) > toBeat && n.apart(p) {
		return found
	}
	return nil
}

// pair is how columns follow each other when those head to tail are raised by rise.
type pair struct{ rise, there, back float64 }

// hoped returns distances that no columns can beat: a neighbour reaches no deeper
// than the flank falls back, and where two flanks face each other, which is all along
// the piece but for one gap, they keep the gap on the average as well.
func (n *nesting) hoped() pair {
	even := math.Inf(1)
	if facing := n.piece.size.Y - n.gap; facing > 0 {
		even = 2 * n.piece.missing() / facing
	}
	return pair{there: n.pitchAcross() - min(n.right.depth, even), back: n.pitchAcross() - min(n.left.depth, even)}
}

func (n *nesting) pitchAcross() float64 { return n.piece.size.X + n.gap }

// width returns how wide so many columns are.
func (n *nesting) width(p pair, columns int) float64 {
	return float64(columns/2)*p.there + float64((columns-1)/2)*p.back + n.piece.size.X
}

// columns returns how many fit.
func (n *nesting) columns(p pair) int {
	count := 1
	for n.width(p, count+1) <= n.room.X+geometry.Tolerance {
		count++
	}
	return count
}

// at returns the distances of columns for a rise. Above and below a piece others
// follow in both columns.
func (n *nesting) at(rise float64) pair {
	there, back := math.Inf(-1), math.Inf(-1)
	for row := -1.0; row <= 1; row++ {
		there = max(there, meet(&n.right, &n.over, rise+row*n.pitch, n.gap))
		back = max(back, meet(&n.under, &n.left, -rise+row*n.pitch, n.gap))
	}
	return pair{rise, n.piece.size.X + there, n.piece.size.X + back}
}

// closest returns the best distances that columns of as many rows allow, or the
// first with which enough columns fit. Rises near none are tried by steps finer than
// the teeth of an edge, others by coarse ones; then the best is refined.
func (n *nesting) closest(enough int) pair {
	spare := max(0, n.room.Y-float64(n.rows)*n.pitch+n.gap)
	best := n.at(0)
	fits := n.columns(best) >= enough
	try := func(rise float64) {
		if fits || math.Abs(rise) > spare {
			return
		}
		if p := n.at(rise); p.there+p.back < best.there+best.back-geometry.Tolerance {
			best = p
			fits = n.columns(best) >= enough
		}
	}
	const fine, steps = 0.3, 40
	coarse := spare / steps
	for i := 1; i <= steps; i++ {
		for _, step := range [2]float64{fine, coarse} {
			try(float64(i) * step)
			try(float64(-i) * step)
		}
	}
	for step := max(fine, coarse); step > 1e-4; step /= 2 {
		center := best.rise
		try(center - step/2)
		try(center + step/2)
	}
	return best
}

// laid returns the pieces of as many columns as fit.
func (n *nesting) laid(p pair) []lain {
	columns := n.columns(p)
	list := make([]lain, 0, columns*n.rows)
	for column := range columns {
		x := float64((column+1)/2)*p.there + float64(column/2)*p.back
		y := max(0, -p.rise)
		if column%2 == 1 {
			y += p.rise
		}
		for row := range n.rows {
			list = append(list, lain{geometry.Vec2{X: x, Y: y + float64(row)*n.pitch}, column%2 == 1})
		}
	}
	return list
}

// apart tests the distances by the contours themselves.
func (n *nesting) apart(p pair) bool {
	for row := -1.0; row <= 1; row++ {
		up := row * n.pitch
		if distance(&n.piece, &n.tail, geometry.Vec2{X: p.there, Y: p.rise + up}) < n.gap-geometry.Tolerance ||
			distance(&n.tail, &n.piece, geometry.Vec2{X: p.back, Y: -p.rise + up}) < n.gap-geometry.Tolerance {
			return false
		}
	}
	// Columns that are not neighbours must not meet through the one between.
	return p.there+p.back >= n.pitchAcross()-geometry.Tolerance
}
