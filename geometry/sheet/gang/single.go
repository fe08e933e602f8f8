package gang

import "slices"

// singleRuns returns the runs at which a form of some items needs one piece less of one
// of them, in order, for a demand; between two of them nothing changes.
func (p *problem) singleRuns(demand []int) []int {
	var runs []int
	for i, d := range demand {
		most := 0
		for _, m := range p.modes {
			most = max(most, m.most[i], p.pure[i].counts[i])
		}
		for n := 1; d > 0 && n <= most; n++ {
			runs = append(runs, (d+n-1)/n)
		}
	}
	slices.Sort(runs)
	return slices.Compact(runs)
}

// perSheet returns the pieces that one sheet must hold so that a run makes a demand.
func perSheet(demand []int, run int) []int {
	counts := make([]int, len(demand))
	for i, d := range demand {
		counts[i] = (d + run - 1) / run
	}
	return counts
}

// allowed tells whether counts may keep the limits of some mode; the best form of one item
// alone is allowed whatever its limits.
func (p *problem) allowed(counts []int) bool {
	for _, m := range p.modes {
		if m.mayKeep(counts) && !m.ruledOut(counts) || m.known(counts) != nil {
			return true
		}
	}
	return false
}

// shortest returns the shortest run that limits allow to one form, 0 when none.
func (p *problem) shortest(demand []int) int {
	runs := p.singleRuns(demand)
	at, _ := slices.BinarySearchFunc(runs, true, func(run int, _ bool) int {
		if p.allowed(perSheet(demand, run)) {
			return 0
		}
		return -1
	})
	if at == len(runs) {
		return 0
	}
	return runs[at]
}

// single looks for the shortest run of one form that makes a demand. The run is that of
// no pattern, and 0, when none was found.
func (s *solver) single(demand []int, e effort) run {
	runs := s.singleRuns(demand)
	low, high := 0, len(runs)
	var best run
	for low < high && s.ctx.Err() == nil {
		middle := (low + high) / 2
		if q := s.laid(perSheet(demand, runs[middle]), e); q != nil {
			best, high = run{q, runs[middle]}, middle
		} else {
			low = middle + 1
		}
	}
	return best
}

// laid returns a pattern of the counts in any mode, or nil.
func (s *solver) laid(counts []int, e effort) *pattern {
	for _, m := range s.modes {
		if v, q := s.fits(s.ctx, m, counts, e); v == possible {
			return q
		}
	}
	return nil
}

// oneForm finds the shortest run of one form and its bound: of the runs in order, the
// first that is not ruled out, and the first that is laid.
func (s *solver) oneForm() {
	s.offerRun(s.single(s.demand, look))
	bounded := false
	for _, r := range s.singleRuns(s.demand) {
		if s.found() && r >= s.result.Sheets || s.ctx.Err() != nil || s.work < 0 && bounded {
			break
		}
		counts := perSheet(s.demand, r)
		if !s.allowed(counts) {
			continue
		}
		q, open := s.tryModes(counts)
		if q == nil && !open {
			continue
		}
		if !bounded {
			s.setBound(r)
			bounded = true
		}
		if q != nil {
			s.offerRun(run{q, r})
			return
		}
	}
	if !bounded && s.found() && s.ctx.Err() == nil {
		s.setBound(s.result.Sheets)
	}
}

// tryModes looks hard for a layout of the counts, and tells whether it stays open.
func (s *solver) tryModes(counts []int) (found *pattern, open bool) {
	for _, m := range s.modes {
		switch v, q := s.fits(s.ctx, m, counts, stare); v {
		case possible:
			return q, false
		case undecided:
			open = true
		}
	}
	return nil, open
}

func (s *solver) offerRun(r run) {
	if r.of != nil {
		s.offer([]run{r})
	}
}
