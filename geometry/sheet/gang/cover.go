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

// roundUp takes whole runs of the linear program of all patterns that are known, again
// and again while what is missing then leads to new patterns.
func (s *solver) roundUp() {
	const most, budget = 4, 120_000
	stop := s.work - budget
	for range most {
		patterns, counts := s.columns()
		_, runs, prices, ok := relaxed(counts, s.demand)
		if !ok || s.ended() || s.work < stop {
			return
		}
		var used []run
		for j, r := range runs {
			if r > 1e-9 {
				used = append(used, run{patterns[j], int(math.Ceil(r - 1e-9))})
			}
		}
		s.offer(s.trimmed(used))
		for less := 0; less <= 3 && !s.ended() && s.work > stop; less++ {
			s.fillUp(patterns, runs, prices, less)
		}
	}
}

// fillUp takes runs of the linear program, rounded down and shorter still, and looks for
// the least sheets for what is missing then.
func (s *solver) fillUp(patterns []*pattern, runs, prices []float64, less int) {
	var base []run
	for j, r := range runs {
		if n := int(r+1e-9) - less; n > 0 {
			base = append(base, run{patterns[j], n})
		}
	}
	left := s.missing(base)
	s.offer(s.trimmed(joined(append(slices.Clone(base), s.inTurn(left, prices)...))))
	known, _ := s.columns()
	c := cover{patterns: known, prices: prices, ctx: s.ctx}
	for sheets := max(0, s.result.Bound-sheetsOf(base)); sheetsOf(base)+sheets < s.result.Sheets || !s.found(); sheets++ {
		const effort = 4_000
		c.effort = effort
		done := c.meet(left, sheets)
		s.work -= effort - max(0, c.effort)
		if done {
			s.offer(s.trimmed(joined(append(base, c.taken()...))))
			return
		}
		if sheets > 4*len(s.demand) {
			return
		}
	}
}

// inTurn fills one sheet after the other with what is worth most of what is left.
func (s *solver) inTurn(left []int, prices []float64) []run {
	worths := make([]float64, len(prices))
	for i, price := range prices {
		worths[i] = max(price, 1e-3/float64(s.pure[i].counts[i]))
	}
	left = slices.Clone(left)
	var runs []run
	for most := 4 * len(left); !none(left) && most > 0 && s.ctx.Err() == nil; most-- {
		q := s.fullest(left, worths)
		runs = append(runs, run{q, 1})
		for i, n := range q.counts {
			left[i] = max(0, left[i]-n)
		}
	}
	return joined(runs)
}

// fullest returns a pattern of what is left that is worth much.
func (s *solver) fullest(left []int, worths []float64) *pattern {
	best, most := s.pure[0], 0.0
	take := func(q *pattern) {
		sum := 0.0
		for i, n := range q.counts {
			sum += float64(worths[i] * float64(min(n, left[i])))
		}
		if sum > most {
			best, most = q, sum
		}
	}
	patterns, _ := s.columns()
	for _, q := range patterns {
		take(q)
	}
	const tries, effort = 6, 600
	for _, m := range s.modes {
		for range tries {
			k := m.knapsack(worths, most+nought, m.doubted, effort)
			k.most = make([]int, len(left))
			for i := range left {
				k.most[i] = min(left[i], m.most[i])
			}
			counts := k.search()
			s.work -= effort - max(0, k.effort)
			if counts == nil {
				break
			}
			v, q := s.fits(s.ctx, m, counts, glance)
			if q != nil {
				take(q)
			}
			if v == possible || s.ctx.Err() != nil {
				break
			}
		}
	}
	return best
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
