package sheet

import (
	"encoding/binary"

	"gussetwright/geometry/sheet/skyline"
)

// verdict is what an exact search came to.
type verdict int

const (
	undecided verdict = iota
	possible
	impossible
)

// approach is the order in which a search tries: whether the skyline runs along the
// longer side of the room, and whether a standing piece is tried before a lying one.
// What one order misses for hours another finds at once.
type approach struct{ longways, standing bool }

// approaches begin with those that come to an end sooner.
var approaches = [4]approach{{false, false}, {false, true}, {true, false}, {true, true}}

// search fills a room from below, always at the lowest and there the leftmost free
// place, with a lying piece, a standing one or nothing, and turns back as soon as
// more must stay empty, in one measure or another, than the wanted number of pieces
// allows. Pieces need only be tried on the raster.
type search struct {
	*rows
	approach
	width, height place // of the room as the skyline sees it
	turned        bool  // x and y are exchanged
	scales        []measure
	spare         []float64 // area that may stay empty, for each measure
	onX, onY      []place   // the first raster place that is not before a place
	effort        int       // places that may still be looked at
	seen          map[string]int
	key           []byte
	laid          []spot
	skylines      []skyline.Step[place] // those on the way to here, one behind the other
}

// upperEdge is that of what is laid, in places.
type upperEdge = skyline.Line[place]

// spot is where a piece lies.
type spot struct {
	x, y  place
	along bool
}

func newSearch(r *rows, scales []measure, how approach) *search {
	s := &search{rows: r, approach: how, width: r.wide, height: r.high, scales: scales}
	if s.turned = (r.wide > r.high) != how.longways; s.turned {
		s.width, s.height = s.height, s.width
	}
	s.onX, s.onY = s.next(s.width), s.next(s.height)
	return s
}

// next returns for every place the first raster place of a room that is not before it.
func (s *search) next(room place) []place {
	points := s.raster(room)
	next := make([]place, room+1)
	i := 0
	for at := range next {
		for points[i] < place(at) {
			i++
		}
		next[at] = points[i]
	}
	return next
}

// find looks for a layout of count pieces at no more places than effort.
func (s *search) find(count, effort int) verdict {
	s.spare = s.spare[:0]
	for _, m := range s.scales {
		spare := m.of[s.width]*m.of[s.height] - (float64(count)-shade)*m.piece
		if spare < 0 {
			return impossible
		}
		s.spare = append(s.spare, spare)
	}
	s.effort, s.seen, s.laid = effort, map[string]int{}, nil
	if s.fill(upperEdge{{}}) {
		return possible
	}
	if s.effort < 0 {
		return undecided
	}
	return impossible
}

// cells returns the layout that was found.
func (s *search) cells() []cell {
	list := make([]cell, len(s.laid))
	for i, c := range s.laid {
		list[i] = cell{s.length[c.x], s.length[c.y], c.along}
		if s.turned {
			list[i] = cell{s.length[c.y], s.length[c.x], !c.along}
		}
	}
	return list
}

// fill lays the rest above a skyline.
func (s *search) fill(line upperEdge) bool {
	if s.effort--; s.effort < 0 {
		return false
	}
	drawn := len(s.skylines)
	defer func() { s.skylines = s.skylines[:drawn] }()
	line = s.settle(line)
	at := line.Lowest()
	if s.tooEmpty(line) {
		return false
	}
	from, low, end := line[at].From, line[at].High, line.End(at, s.width)
	if low >= s.height {
		return true
	}
	if s.tried(line) {
		return false
	}
	for _, along := range [2]bool{!s.standing, s.standing} {
		right, high := s.plus(from, along), s.plus(low, !along)
		if right < 0 || right > end || high < 0 || high > s.height {
			continue
		}
		s.laid = append(s.laid, spot{from, low, along})
		if s.fill(s.raise(line, at, right, high)) {
			return true
		}
		s.laid = s.laid[:len(s.laid)-1]
	}
	return s.fill(s.raise(line, at, min(end, s.onX[min(from+1, s.width)]), s.onY[min(low+1, s.height)]))
}

func (s *search) raise(line upperEdge, at int, right, high place) upperEdge {
	start := len(s.skylines)
	s.skylines = line.Raised(s.skylines, at, right, high, line.End(at, s.width))
	return s.skylines[start:len(s.skylines):len(s.skylines)]
}

// settle gives up what no piece can cover: stretches narrower than a piece, and what
// lies off the raster.
func (s *search) settle(line upperEdge) upperEdge {
	for {
		at := line.Lowest()
		from, low, end := line[at].From, line[at].High, line.End(at, s.width)
		if low >= s.height {
			return line
		}
		left, right := line.Walls(at, s.height)
		to, high := end, s.onY[low]
		switch {
		case s.minus(end, from) == 0:
			high = min(left, right)
		case high > low:
		case s.onX[from] > from:
			to, high = min(end, s.onX[from]), left
		default:
			return line
		}
		line = s.raise(line, at, to, high)
	}
}

// tried tells whether the same skyline was reached before with as many pieces, and
// remembers it: a search looks at all that follows before it turns back.
func (s *search) tried(line upperEdge) bool {
	s.key = s.key[:0]
	for _, step := range line {
		s.key = binary.LittleEndian.AppendUint32(s.key, uint32(step.From)<<16|uint32(step.High))
	}
	if before, seen := s.seen[string(s.key)]; seen && before >= len(s.laid) {
		return true
	}
	s.seen[string(s.key)] = len(s.laid)
	return false
}

// tooEmpty tells whether in some measure more is or must stay empty than may.
func (s *search) tooEmpty(line upperEdge) bool {
	for i := range s.scales {
		m := &s.scales[i]
		empty := s.below(m, line) - float64(len(s.laid))*m.piece
		if empty > s.spare[i] || empty+s.above(m, line) > s.spare[i] || empty+s.between(m, line) > s.spare[i] {
			return true
		}
	}
	return false
}

// below returns the area under a skyline.
func (s *search) below(m *measure, line upperEdge) float64 {
	sum := 0.0
	for i := range line {
		sum += (m.of[line.End(i, s.width)] - m.of[line[i].From]) * m.of[line[i].High]
	}
	return sum
}

// lost returns what the fullest row leaves of the stretch between two places.
func (s *search) lost(m *measure, from, to place) float64 {
	return m.of[to] - m.of[from] - m.of[s.minus(to, from)]
}

// above adds up what the fullest columns leave above each step.
func (s *search) above(m *measure, line upperEdge) float64 {
	sum := 0.0
	for i := range line {
		sum += (m.of[line.End(i, s.width)] - m.of[line[i].From]) * s.lost(m, line[i].High, s.height)
	}
	return sum
}

// between adds up, level by level, what the fullest rows leave of the stretches
// between the steps.
func (s *search) between(m *measure, line upperEdge) float64 {
	sum := 0.0
	for low := line[line.Lowest()].High; low < s.height; {
		high, lost, from := s.height, 0.0, place(-1)
		for i := range line {
			if line[i].High <= low {
				if from < 0 {
					from = line[i].From
				}
				continue
			}
			if from >= 0 {
				lost += s.lost(m, from, line[i].From)
				from = -1
			}
			high = min(high, line[i].High)
		}
		if from == 0 {
			return sum // above the skyline the whole width is free
		}
		if from > 0 {
			lost += s.lost(m, from, s.width)
		}
		sum += lost * (m.of[high] - m.of[low])
		low = high
	}
	return sum
}
