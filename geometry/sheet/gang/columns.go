package gang

import "math"

// gain is by how much the pieces of a pattern must be worth more than a sheet for the
// pattern to be looked at.
const gain = 1e-6

// columns returns the counts of all patterns that are known.
func (p *problem) columns() ([]*pattern, [][]int) {
	var patterns []*pattern
	for _, m := range p.modes {
		patterns = append(patterns, m.fit...)
	}
	counts := make([][]int, len(patterns))
	for i, q := range patterns {
		counts[i] = q.counts
	}
	return patterns, counts
}

// boundBy returns a number of sheets that no runs pass from below, by prices with which
// no counts that may fit are worth more than ceiling (Farley, "A note on bounding a
// class of linear programming problems", Operations Research 38, 1990). Any prices make
// a bound; what they err by makes it weaker, not wrong.
func (p *problem) boundBy(prices []float64, ceiling float64) float64 {
	for i, price := range prices {
		prices[i] = max(0, price)
	}
	return worth(prices, p.demand) / ceiling
}

// wholly rounds a bound up to whole sheets, but for what arithmetic may have added.
func wholly(bound float64) int { return int(math.Ceil(bound - float64(1e-6*max(1, bound)))) }

// byCuts adds patterns of straight cuts as long as they help.
func (s *solver) byCuts() {
	cuts := make([]*guillotine, len(s.modes))
	for i, m := range s.modes {
		cuts[i] = newGuillotine(s.problem, m)
	}
	const most = 60
	for range most {
		_, counts := s.columns()
		_, _, prices, _ := relaxed(counts, s.demand)
		helped := false
		for i, m := range s.modes {
			if s.ctx.Err() != nil {
				return
			}
			cells := cuts[i].best(prices)
			worthOf := 0.0
			for _, c := range cells {
				worthOf += prices[c.item]
			}
			if worthOf > 1+gain {
				s.newPattern(m, cells)
				helped = true
			}
		}
		if !helped {
			return
		}
	}
}

// dearestOfAll returns the counts that are worth most in any mode, and their mode; and
// a ceiling of what counts that are not ruled out are worth. When a short search finds
// some that help, it leaves the rest for the next prices.
func (s *solver) dearestOfAll(prices []float64, rough bool, ruled func(*mode, []int) bool) (best *candidate, ceiling float64) {
	efforts := []int{1_000, 40_000}
	if rough {
		efforts = []int{20_000}
	}
	for _, effort := range efforts {
		most := 1 + gain
		ceiling = 1
		for _, m := range s.modes {
			k := m.knapsack(prices, most, func(c []int) bool { return ruled(m, c) }, effort)
			if rough {
				k = m.roughKnapsack(prices, most, k.ruled, effort)
			}
			counts := k.search()
			s.work -= (effort - max(0, k.effort)) / 4
			if ceiling = max(ceiling, k.ceiling); counts != nil {
				best, most = &candidate{counts, k.bestLie, m}, worth(prices, counts)
			}
		}
		if best != nil || ceiling <= 1+gain {
			break
		}
	}
	return best, ceiling
}

// raise raises the bound: the linear program of all counts that may fit, of which
// those in its way are looked at one after the other, until it is that of layouts, or
// only of such counts as are neither laid nor ruled out. Limits are
// tightened on the way. Roughly, pieces count by items, however they lie, and limits stay.
func (s *solver) raise(budget int, rough bool, e effort) {
	stop := s.work - budget
	var open []candidate
	for s.work > stop && s.ctx.Err() == nil {
		patterns, counts := s.columns()
		for _, c := range open {
			counts = append(counts, c.counts)
		}
		_, runs, prices, _ := relaxed(counts, s.demand)
		found, ceiling := s.dearestOfAll(prices, rough, (*mode).ruledOut)
		for _, c := range counts {
			ceiling = max(ceiling, worth(prices, c))
		}
		s.setBound(wholly(s.boundBy(prices, ceiling)))
		if s.ended() {
			return
		}
		if found != nil {
			if rough || !s.tighten(found) {
				if v, _ := s.fits(s.ctx, found.mode, found.counts, e); v == undecided {
					open = append(open, *found)
				}
			}
		} else if !s.decide(open, runs[len(patterns):]) {
			return
		}
		open = stillOpen(open)
	}
}

// candidate is counts of which it is not known whether they fit.
type candidate struct {
	counts []int
	lying  []int // pieces of each lie that keep the limits
	mode   *mode
}

func stillOpen(open []candidate) []candidate {
	var still []candidate
	for _, c := range open {
		if !c.mode.ruledOut(c.counts) && c.mode.keeps(c.counts) && c.mode.known(c.counts) == nil {
			still = append(still, c)
		}
	}
	return still
}

// decide looks hard at the open counts that the linear program uses, and tells whether
// one was laid or ruled out.
func (s *solver) decide(open []candidate, runs []float64) bool {
	for i, c := range open {
		if runs[i] <= 0 {
			continue
		}
		if v, _ := s.fits(s.ctx, c.mode, c.counts, stare); v != undecided {
			return true
		}
	}
	return false
}

// gather adds patterns that help the linear program of layouts, until none is worth
// looking at or the budget is used up.
func (s *solver) gather(budget int, e effort) {
	stop := s.work - budget
	for s.work > stop && s.ctx.Err() == nil {
		_, counts := s.columns()
		sum, _, prices, _ := relaxed(counts, s.demand)
		if wholly(sum) <= s.result.Bound {
			return
		}
		found, _ := s.dearestOfAll(prices, true, (*mode).doubted)
		if found == nil {
			return
		}
		s.fits(s.ctx, found.mode, found.counts, e)
	}
}

// ended tells whether there is nothing left to gain.
func (s *solver) ended() bool {
	return s.ctx.Err() != nil || s.found() && s.result.Sheets <= s.result.Bound
}
