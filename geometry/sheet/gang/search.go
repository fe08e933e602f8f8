package gang

import (
	"context"
	"encoding/binary"
	"math"
	"slices"

	"gussetwright/geometry/sheet/skyline"
)

// verdict is what a search came to.
type verdict int

const (
	undecided verdict = iota
	possible
	impossible
)

// upperEdge is that of what is laid, in ticks.
type upperEdge = skyline.Line[int64]

// cell is where a grown piece lies in the room, in ticks from its lower left corner.
type cell struct {
	item, turn int
	x, y       int64
}

// kind is a grown piece in one of its turns.
type kind struct {
	item, turn    int
	width, height int64
}

// search lays counts of pieces from below, always at the lowest and there the leftmost
// free place, any piece or none, and turns back as soon as more must stay empty than
// may. What is thorough leaves free the least stretch that may matter, and so proves
// that nothing fits when it comes to an end; what is not gives the whole step up.
type search struct {
	ctx           context.Context
	width, height int64
	turned        bool // x and y are exchanged
	thorough      bool
	kinds         []kind // in the order in which they are tried
	left          []int  // pieces of each item
	onX, onY      []int64
	spare         float64 // mm² that may stay empty
	laid          []cell
	filled        float64
	most          []cell // of the fullest layout
	fullest       float64
	lines         []skyline.Step[int64]
	seen          map[string]struct{}
	key           []byte
	effort        int
}

// longestRaster is the most lengths of rows that a thorough search looks at.
const longestRaster = 600

// newSearch returns a search for counts, nil where a thorough one would look at too
// many places.
func newSearch(p *problem, m *mode, counts []int, turned, thorough bool) *search {
	s := &search{width: p.width, height: p.height, turned: turned, thorough: thorough, left: slices.Clone(counts)}
	if turned {
		s.width, s.height = s.height, s.width
	}
	area := 0.0
	var across, up []stack
	for item, n := range counts {
		if n == 0 {
			continue
		}
		for _, shape := range m.shapes[item] {
			k := kind{item, shape.turn, shape.width, shape.height}
			if turned {
				k.width, k.height = k.height, k.width
			}
			s.kinds = append(s.kinds, k)
			across, up = append(across, stack{k.width, n}), append(up, stack{k.height, n})
		}
		if len(m.shapes[item]) > 0 {
			area += float64(n) * area2(m.shapes[item][0].width, m.shapes[item][0].height)
		}
	}
	s.spare = area2(s.width, s.height) - area + 1e-6
	if !thorough {
		return s
	}
	s.seen = map[string]struct{}{}
	s.onX, s.onY = sums(across, s.width, longestRaster), sums(up, s.height, longestRaster)
	if s.onX == nil || s.onY == nil {
		return nil
	}
	return s
}

// area2 returns the area of a rectangle given in ticks, in mm².
func area2(width, height int64) float64 { return float64(width) / ticks * (float64(height) / ticks) }

// run looks at no more places than effort.
func (s *search) run(ctx context.Context, effort int) verdict {
	s.ctx, s.effort = ctx, effort
	switch {
	case s.spare < 0:
		return impossible
	case s.fill(upperEdge{{}}):
		return possible
	case s.effort < 0 || !s.thorough:
		return undecided
	}
	return impossible
}

// cells returns a layout in the room as it lies.
func (s *search) cells(laid []cell) []cell {
	list := slices.Clone(laid)
	if s.turned {
		for i := range list {
			list[i].x, list[i].y = list[i].y, list[i].x
		}
	}
	return list
}

// stop tells whether the search is over, by effort or by the user.
func (s *search) stop() bool {
	s.effort--
	if s.effort%256 == 0 && s.ctx.Err() != nil {
		s.effort = -1
	}
	return s.effort < 0
}

// fill lays the rest above a skyline.
func (s *search) fill(line upperEdge) bool {
	if s.stop() {
		return false
	}
	drawn := len(s.lines)
	defer func() { s.lines = s.lines[:drawn] }()
	if s.done() {
		return true
	}
	line = s.settle(line)
	at := line.Lowest()
	from, low, end := line[at].From, line[at].High, line.End(at, s.width)
	if low >= s.height || s.tooEmpty(line) || s.thorough && s.tried(line) {
		return false
	}
	for i := range s.kinds {
		k := &s.kinds[i]
		if s.left[k.item] == 0 || from+k.width > end || low+k.height > s.height {
			continue
		}
		s.lay(k, from, low)
		if s.fill(s.raise(line, at, from+k.width, low+k.height)) {
			return true
		}
		s.lift(k)
		if s.effort < 0 {
			return false
		}
	}
	return s.fill(s.leave(line, at))
}

func (s *search) lay(k *kind, x, y int64) {
	s.laid = append(s.laid, cell{k.item, k.turn, x, y})
	s.left[k.item]--
	if s.filled += area2(k.width, k.height); s.filled > s.fullest {
		s.fullest, s.most = s.filled, append(s.most[:0], s.laid...)
	}
}

func (s *search) lift(k *kind) {
	s.laid = s.laid[:len(s.laid)-1]
	s.left[k.item]++
	s.filled -= area2(k.width, k.height)
}

func (s *search) done() bool {
	for _, n := range s.left {
		if n > 0 {
			return false
		}
	}
	return true
}

// leave returns the skyline when nothing is laid at the lowest place.
func (s *search) leave(line upperEdge, at int) upperEdge {
	from, low, end := line[at].From, line[at].High, line.End(at, s.width)
	if !s.thorough {
		return s.raise(line, at, end, min(line.Walls(at, s.height)))
	}
	return s.raise(line, at, min(end, after(s.onX, from, s.width)), after(s.onY, low, s.height))
}

// after returns the first of sorted places behind a place, or the end.
func after(places []int64, at, end int64) int64 {
	if next := floorOf(places, at) + 1; next < len(places) {
		return places[next]
	}
	return end
}

func (s *search) raise(line upperEdge, at int, right, high int64) upperEdge {
	start := len(s.lines)
	s.lines = line.Raised(s.lines, at, right, high, line.End(at, s.width))
	return s.lines[start:len(s.lines):len(s.lines)]
}

// settle gives up steps into which no piece fits that is left.
func (s *search) settle(line upperEdge) upperEdge {
	narrowest, lowestPiece := int64(math.MaxInt64), int64(math.MaxInt64)
	for i := range s.kinds {
		if k := &s.kinds[i]; s.left[k.item] > 0 {
			narrowest, lowestPiece = min(narrowest, k.width), min(lowestPiece, k.height)
		}
	}
	for {
		at := line.Lowest()
		from, low, end := line[at].From, line[at].High, line.End(at, s.width)
		switch {
		case low >= s.height:
			return line
		case low+lowestPiece > s.height:
			line = s.raise(line, at, end, s.height)
		case end-from < narrowest:
			line = s.raise(line, at, end, min(line.Walls(at, s.height)))
		default:
			return line
		}
	}
}

// tooEmpty tells whether more is empty below a skyline, or must stay so above it, than
// may.
func (s *search) tooEmpty(line upperEdge) bool {
	empty := -s.filled
	for i := range line {
		wide := line.End(i, s.width) - line[i].From
		high := line[i].High
		if s.thorough && high < s.height {
			above := s.height - high
			high += above - s.onY[floorOf(s.onY, above)]
		}
		empty += area2(wide, high)
	}
	return empty > s.spare
}

// tried tells whether the same skyline was reached before with the same pieces left,
// and remembers it: a search looks at all that follows before it turns back.
func (s *search) tried(line upperEdge) bool {
	s.key = s.key[:0]
	for _, step := range line {
		s.key = binary.LittleEndian.AppendUint64(s.key, uint64(step.From))
		s.key = binary.LittleEndian.AppendUint64(s.key, uint64(step.High))
	}
	for _, n := range s.left {
		s.key = binary.AppendUvarint(s.key, uint64(n))
	}
	if _, seen := s.seen[string(s.key)]; seen {
		return true
	}
	s.seen[string(s.key)] = struct{}{}
	return false
}
