package gang

import (
	"context"
	"math"
	"slices"

	"gussetwright/geometry/bag"
)

// pattern is counts of pieces with a layout of them on one sheet.
type pattern struct {
	counts []int
	placed []Placed
	fibres bag.Grain
}

// memory is what is known about which counts fit on a sheet.
type memory struct {
	fit   []*pattern
	unfit [][]int // no layout holds them
	doubt []doubt
}

// doubt is counts for which no layout was found at some effort.
type doubt struct {
	counts []int
	effort int
}

// holds tells whether counts a are at least counts b.
func holds(a, b []int) bool {
	for i := range a {
		if a[i] < b[i] {
			return false
		}
	}
	return true
}

// ruledOut tells whether counts are known to fit in no layout.
func (m *mode) ruledOut(counts []int) bool {
	for _, u := range m.unfit {
		if holds(counts, u) {
			return true
		}
	}
	return false
}

// doubted tells whether counts are ruled out or no layout was found of fewer.
func (m *mode) doubted(counts []int) bool {
	for i := range m.doubt {
		if holds(counts, m.doubt[i].counts) {
			return true
		}
	}
	return m.ruledOut(counts)
}

func (m *mode) ruleOut(counts []int) {
	m.unfit = slices.DeleteFunc(m.unfit, func(u []int) bool { return holds(u, counts) })
	m.unfit = append(m.unfit, slices.Clone(counts))
	m.doubt = slices.DeleteFunc(m.doubt, func(d doubt) bool { return holds(d.counts, counts) })
}

// known returns a pattern with at least the counts, without those above them.
func (m *mode) known(counts []int) *pattern {
	for _, f := range m.fit {
		if holds(f.counts, counts) {
			return f.cut(counts)
		}
	}
	return nil
}

// cut returns the pattern with no more than the counts.
func (q *pattern) cut(counts []int) *pattern {
	if slices.Equal(q.counts, counts) {
		return q
	}
	left := slices.Clone(counts)
	fewer := &pattern{counts: slices.Clone(counts), fibres: q.fibres}
	for _, p := range q.placed {
		if left[p.Item] > 0 {
			left[p.Item]--
			fewer.placed = append(fewer.placed, p)
		}
	}
	return fewer
}

// newPattern remembers a layout.
func (p *problem) newPattern(m *mode, cells []cell) *pattern {
	q := &pattern{counts: make([]int, len(p.items)), fibres: m.fibres}
	for _, c := range cells {
		q.counts[c.item]++
		q.placed = append(q.placed, p.place(c))
	}
	m.learn(q)
	return q
}

func (m *mode) learn(q *pattern) {
	for _, f := range m.fit {
		if holds(f.counts, q.counts) {
			return
		}
	}
	m.fit = slices.DeleteFunc(m.fit, func(f *pattern) bool { return holds(q.counts, f.counts) })
	m.fit = append(m.fit, q)
}

// effort is how hard a layout is looked for: starts of the greedy method, and places
// that each search looks at.
type effort struct{ starts, places int }

var (
	glance = effort{24, 300}
	look   = effort{60, 3_000}
	stare  = effort{120, 30_000}
)

// fits tells whether counts fit on a sheet in a mode. When they do, and else where a
// part of them was laid, it returns the pattern.
func (p *problem) fits(ctx context.Context, m *mode, counts []int, e effort) (verdict, *pattern) {
	if known := m.known(counts); known != nil {
		return possible, known
	}
	if m.ruledOut(counts) {
		return impossible, nil
	}
	if !m.keeps(counts) {
		m.ruleOut(counts)
		return impossible, nil
	}
	for i, n := range counts {
		if n > 0 && len(m.shapes[i]) == 0 {
			// Alone it may fit, with the bleed of others it does not.
			m.doubt = append(m.doubt, doubt{slices.Clone(counts), math.MaxInt})
			return undecided, nil
		}
	}
	for i := range m.doubt {
		if m.doubt[i].effort >= e.places && holds(counts, m.doubt[i].counts) {
			return undecided, nil
		}
	}
	cells, all := layGreedily(p, m, counts, e.starts)
	part := p.newPattern(m, cells)
	if all {
		return possible, part
	}
	v, found := p.searchAll(ctx, m, counts, e.places)
	switch {
	case v == possible:
		return possible, found
	case v == impossible && p.exact:
		m.ruleOut(counts)
		return impossible, part
	}
	if ctx.Err() == nil {
		m.doubt = append(m.doubt, doubt{slices.Clone(counts), e.places})
	}
	return undecided, part
}

// searchAll searches along and across the room, quickly and then thoroughly.
func (p *problem) searchAll(ctx context.Context, m *mode, counts []int, places int) (verdict, *pattern) {
	for _, thorough := range [2]bool{false, true} {
		for _, turned := range [2]bool{false, true} {
			s := newSearch(p, m, counts, turned, thorough)
			if s == nil {
				continue
			}
			s.sort()
			v := s.run(ctx, places)
			p.work -= places - max(0, s.effort)
			if v == possible {
				return possible, p.newPattern(m, s.cells(s.laid))
			}
			if v == impossible {
				return impossible, nil
			}
			p.newPattern(m, s.cells(s.most))
		}
	}
	return undecided, nil
}

// sort puts large pieces before small ones.
func (s *search) sort() {
	slices.SortStableFunc(s.kinds, func(a, b kind) int {
		switch areaA, areaB := area2(a.width, a.height), area2(b.width, b.height); {
		case areaA > areaB:
			return -1
		case areaA < areaB:
			return 1
		}
		return 0
	})
}
