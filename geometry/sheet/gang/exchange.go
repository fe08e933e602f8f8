package gang

import (
	"math"
	"slices"
)

// exchanged returns runs of less sheets in which one pattern is another of those that
// are known, or nil.
func (s *solver) exchanged(runs []run) []run {
	patterns, _ := s.columns()
	columns := make([][]int, len(runs))
	for i, r := range runs {
		columns[i] = r.of.counts
	}
	var best []run
	least := sheetsOf(runs)
	for at := range runs {
		own := columns[at]
		for _, q := range patterns {
			if s.ctx.Err() != nil {
				return nil
			}
			columns[at] = q.counts
			s.work--
			sum, lengths, _, ok := relaxed(columns, s.demand)
			if !ok || wholly(sum) >= least {
				continue
			}
			changed := slices.Clone(runs)
			changed[at].of = q
			for k := range changed {
				changed[k].sheets = int(math.Ceil(lengths[k] - 1e-9))
			}
			if changed = s.trimmed(changed); sheetsOf(changed) < least && none(s.missing(changed)) {
				best, least = changed, sheetsOf(changed)
			}
		}
		columns[at] = own
	}
	return best
}

// refined returns runs of less sheets in which one form is another pattern at another
// run, and one is laid anew for what is missing then; or nil.
func (s *solver) refined(runs []run) []run {
	patterns, _ := s.columns()
	for fixed := range runs {
		for anew := range runs {
			if fixed == anew {
				continue
			}
			var others []run
			for k, r := range runs {
				if k != fixed && k != anew {
					others = append(others, r)
				}
			}
			for _, q := range patterns {
				if better := s.completed(others, q, sheetsOf(runs)); better != nil {
					return better
				}
				if s.work < 0 || s.ctx.Err() != nil {
					return nil
				}
			}
		}
	}
	return nil
}

// completed returns the other runs with a pattern at one of the runs at which it makes
// all of some item, and one more form for what is missing; nil when that takes as many
// sheets as toBeat.
func (s *solver) completed(others []run, q *pattern, toBeat int) []run {
	left := s.missing(others)
	for i, n := range q.counts {
		if n == 0 || left[i] == 0 {
			continue
		}
		first := run{q, (left[i] + n - 1) / n}
		runs := append(slices.Clone(others), first)
		rest := s.missing(runs)
		so := sheetsOf(runs)
		s.work -= 2
		if so >= toBeat || none(rest) {
			continue
		}
		if least := s.shortest(rest); least == 0 || so+least >= toBeat {
			continue
		}
		last := s.single(rest, glance)
		if last.of != nil && so+last.sheets < toBeat {
			return append(runs, last)
		}
	}
	return nil
}
