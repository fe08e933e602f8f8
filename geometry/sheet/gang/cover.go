package gang

import (
	"cmp"
	"math"
	"slices"
)

// run is a pattern and the sheets that are printed of it.
type run struct {
	of     *pattern
	sheets int
}

func sheetsOf(runs []run) int {
	sum := 0
	for _, r := range runs {
		sum += r.sheets
	}
	return sum
}

// missing returns the pieces that runs do not make.
func (p *problem) missing(runs []run) []int {
	left := slices.Clone(p.demand)
	for _, r := range runs {
		for i, n := range r.of.counts {
			left[i] -= n * r.sheets
		}
	}
	for i := range left {
		left[i] = max(0, left[i])
	}
	return left
}

// trimmed takes sheets away that are not needed, of the shortest runs first.
func (p *problem) trimmed(runs []run) []run {
	slices.SortStableFunc(runs, func(a, b run) int { return cmp.Compare(a.sheets, b.sheets) })
	for k := range runs {
		made := make([]int, len(p.demand))
		for _, r := range runs {
			for i, n := range r.of.counts {
				made[i] += n * r.sheets
			}
		}
		spare := runs[k].sheets
		for i, n := range runs[k].of.counts {
			if n > 0 {
				spare = min(spare, (made[i]-p.demand[i])/n)
			}
		}
		runs[k].sheets -= spare
	}
	return slices.DeleteFunc(runs, func(r run) bool { return r.sheets == 0 })
}

// roundUp takes whole runs of the linear program of all patterns that are known.
func (s *solver) roundUp() {
	patterns, counts := s.columns()
	_, runs, prices, ok := relaxed(counts, s.demand)
	if !ok {
		return
	}
	var used []run
	for j, r := range runs {
		if r > 1e-9 {
			used = append(used, run{patterns[j], int(math.Ceil(r - 1e-9))})
		}
	}
	s.offer(s.trimmed(used))
	for less := 1; less <= 3 && !s.ended(); less++ {
		s.fillUp(patterns, runs, prices, less)
	}
}

// fillUp takes runs of the linear program, rounded down and shorter still, and looks for
// the least sheets for what is missing then.
func (s *solver) fillUp(patterns []*pattern, runs, prices []float64, less int) {
	var base []run
	for j, r := range runs {
		if n := int(r+1e-9) - less + 1; n > 0 {
			base = append(base, run{patterns[j], n})
		}
	}
	left := s.missing(base)
	c := cover{patterns: patterns, prices: prices, ctx: s.ctx}
	for sheets := max(0, s.result.Bound-sheetsOf(base)); !s.found() || sheetsOf(base)+sheets < s.result.Sheets; sheets++ {
		const effort = 6_000
		c.effort = effort
		done := c.meet(left, sheets)
		s.work -= effort - max(0, c.effort)
		if done {
			s.offer(s.trimmed(joined(append(base, c.taken()...))))
			return
		}
		if sheets > len(s.demand)+3*less {
			return
		}
	}
}

// joined puts runs of the same pattern together.
func joined(runs []run) []run {
	var list []run
	for _, r := range runs {
		if at := slices.IndexFunc(list, func(l run) bool { return l.of == r.of }); at >= 0 {
			list[at].sheets += r.sheets
			continue
		}
		list = append(list, r)
	}
	return list
}
