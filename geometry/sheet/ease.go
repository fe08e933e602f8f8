package sheet

import (
	"slices"
	"sort"

	"gussetwright/geometry/bag"
)

// Ease says by how much lengths become less for every millimetre that something is
// made smaller: the face of a bag with one seam takes 2 from the width of its blank.
// No entry is negative, so pieces only ever gain room; of gap, gripper, side and tail
// no two are positive together.
type Ease struct {
	Width, Height            float64 // of the piece
	Gap, Gripper, Side, Tail float64
	Bleed                    float64
}

// By returns the sheet and the piece eased by an amount in mm. Area and outline of
// the piece are left as they are.
func (e Ease) By(amount float64, s bag.Sheet, piece Piece) (bag.Sheet, Piece) {
	less := func(length *float64, by float64) { *length = max(0, *length-by*amount) }
	less(&piece.Width, e.Width)
	less(&piece.Height, e.Height)
	less(&piece.Bleed, e.Bleed)
	less(&s.Gap, e.Gap)
	less(&s.Gripper, e.Gripper)
	less(&s.Side, e.Side)
	less(&s.Tail, e.Tail)
	return s, piece
}

// Least returns the least amount up to most, in mm, at which the eased sheet holds up
// pieces, laid by their boxes; false when no amount does. What a sheet holds changes
// only where a row of pieces just fits, so only those amounts are looked at.
func (e Ease) Least(s bag.Sheet, piece Piece, up int, most float64) (amount float64, ok bool) {
	holds := func(amount float64) bool {
		eased, smaller := e.By(amount, s, piece)
		return Holds(eased, smaller, up)
	}
	most = e.useful(s, piece, most)
	if !holds(most) {
		return 0, false
	}
	amounts := e.thresholds(s, piece, most)
	// More room never holds less: the amounts that do follow those that do not.
	first := sort.Search(len(amounts), func(i int) bool { return holds(amounts[i]) })
	if first == len(amounts) {
		return most, true
	}
	return amounts[first], true
}

// thresholds returns the amounts up to most, in order, at which a row of pieces just
// fits, and 0.
func (e Ease) thresholds(s bag.Sheet, piece Piece, most float64) []float64 {
	amounts := []float64{0}
	bends := e.bends(s, piece, most)
	for i := 1; i < len(bends); i++ {
		from, length := bends[i-1], bends[i]-bends[i-1]
		begun, smaller := e.By(from, s, piece)
		for _, l := range newBorders(begun, smaller, e, length, Ease{}, 0) {
			amounts = append(amounts, from+l.total/l.first)
		}
	}
	slices.Sort(amounts)
	return slices.Compact(amounts)
}

// useful returns the amount, up to most, past which a gap or a margin makes no more
// room: it is 0, or the bleed needs what is left.
func (e Ease) useful(s bag.Sheet, piece Piece, most float64) float64 {
	end := func(length, least, less float64) {
		if less > 0 && e.Bleed == 0 {
			most = min(most, max(0, length-least)/less)
		}
	}
	end(s.Gap, 2*piece.Bleed, e.Gap)
	end(s.Side, piece.Bleed, e.Side)
	end(s.Tail, piece.Bleed, e.Tail)
	end(s.Gripper, 0, e.Gripper)
	return most
}

// bends returns 0, most, and the amounts between at which the bleed begins or stops
// to need more room than gap and margins give. Between them all lengths change evenly.
func (e Ease) bends(s bag.Sheet, piece Piece, most float64) []float64 {
	amounts := []float64{0, most}
	meet := func(bleed, bleedLess, has, hasLess float64) {
		if bleedLess == hasLess {
			return
		}
		if at := (bleed - has) / (bleedLess - hasLess); at > 0 && at < most {
			amounts = append(amounts, at)
		}
	}
	meet(2*piece.Bleed, 2*e.Bleed, s.Gap, e.Gap)
	meet(piece.Bleed, e.Bleed, s.Side, e.Side)
	meet(piece.Bleed, e.Bleed, s.Tail, e.Tail)
	slices.Sort(amounts)
	return amounts
}

// Holds tells whether at least so many pieces are found to fit by their boxes. It
// answers sooner than Lay.
func Holds(s bag.Sheet, piece Piece, up int) bool {
	plan := Plan{Sheet: s, Piece: piece, Usable: usable(s, piece.Bleed)}
	for _, turn := range plan.turns() {
		width, height := piece.size(turn)
		if fit(plan.Usable, plan.Gap(), width, height).count() >= up {
			return true
		}
	}
	if piece.Grain == GrainRequired {
		return false
	}
	in, ok := newInstance(plan.Usable, plan.Gap(), piece.Width, piece.Height)
	return ok && in.bound() >= up && len(in.solve().cells) >= up
}
