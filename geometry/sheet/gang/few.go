package gang

import (
	"math"
	"slices"
)

// few looks for the least sheets of at most so many forms: each item on one form only,
// by the best way to share the items among the forms; then with patterns exchanged.
func (s *solver) few(forms int) {
	var runs []run
	if len(s.items) <= 8 {
		runs = s.shared(forms)
	} else {
		runs = s.merged(forms)
	}
	if runs == nil {
		return
	}
	s.offer(runs)
	for s.work > 0 && !s.ended() {
		better := s.exchanged(runs)
		if better == nil {
			better = s.refined(runs)
		}
		if better == nil {
			return
		}
		runs = better
		s.offer(runs)
	}
}

// part returns the demand of the items in a set.
func (p *problem) part(set uint) []int {
	demand := make([]int, len(p.demand))
	for i, d := range p.demand {
		if set>>i&1 == 1 {
			demand[i] = d
		}
	}
	return demand
}

// ofSet returns the best single form of a set of items, looked for once.
func (s *solver) ofSet(set uint) run {
	if r, known := s.sets[set]; known {
		return r
	}
	r := s.single(s.part(set), glance)
	s.sets[set] = r
	return r
}

// shared returns the best way to share all items among at most so many forms, of which
// each item is on one, or nil.
func (s *solver) shared(forms int) []run {
	all := uint(1)<<len(s.items) - 1
	least := make([][]int, forms+1) // sheets, of each number of forms and set
	chosen := make([][]uint, forms+1)
	for k := range least {
		least[k], chosen[k] = make([]int, all+1), make([]uint, all+1)
		for set := uint(1); set <= all; set++ {
			least[k][set] = math.MaxInt / 2
			if k > 0 {
				s.share(least, chosen, k, set)
			}
		}
	}
	if least[forms][all] >= math.MaxInt/2 {
		return nil
	}
	var runs []run
	for k, set := forms, all; set != 0; k-- {
		runs = append(runs, s.ofSet(chosen[k][set]))
		set &^= chosen[k][set]
	}
	return runs
}

// share finds which items of a set share the first of k forms with the first item.
func (s *solver) share(least [][]int, chosen [][]uint, k int, set uint) {
	first := set & -set
	for others := set &^ first; ; others = (others - 1) & (set &^ first) {
		one := others | first
		rest := least[k-1][set&^one]
		if rest < least[k][set] && rest+s.atLeast(one) < least[k][set] {
			if r := s.ofSet(one); r.of != nil && r.sheets+rest < least[k][set] {
				least[k][set], chosen[k][set] = r.sheets+rest, one
			}
		}
		if others == 0 {
			return
		}
	}
}

// atLeast returns a run that no single form of a set passes from below.
func (s *solver) atLeast(set uint) int {
	if r, known := s.shortestOf[set]; known {
		return r
	}
	r := s.shortest(s.part(set))
	if r == 0 {
		r = math.MaxInt / 2
	}
	s.shortestOf[set] = r
	return r
}

// merged starts with a form for each item and puts the two together that cost least,
// until there are few enough. It returns nil when no two fit together.
func (s *solver) merged(forms int) []run {
	var sets []uint
	for i := range s.items {
		sets = append(sets, 1<<i)
	}
	for len(sets) > forms {
		best, a, b := math.MaxInt, 0, 0
		for i := range sets {
			for j := range i {
				one := s.ofSet(sets[i] | sets[j])
				if one.of == nil {
					continue
				}
				if cost := one.sheets - s.ofSet(sets[i]).sheets - s.ofSet(sets[j]).sheets; cost < best {
					best, a, b = cost, i, j
				}
			}
		}
		if best == math.MaxInt || s.ctx.Err() != nil {
			return nil
		}
		sets[b] |= sets[a]
		sets = slices.Delete(sets, a, a+1)
	}
	var runs []run
	for _, set := range sets {
		runs = append(runs, s.ofSet(set))
	}
	return runs
}
