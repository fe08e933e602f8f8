package gang

import "slices"

// mostTightened is how many limits are added to those of the usual measures.
const mostTightened = 110

// tighten looks for a limit that rules out how the pieces of a candidate lie, and tells
// whether one was found. Along one axis the sides are measured as usual; along the other
// by that dual feasible function which measures these pieces longest, the prices of a
// cutting stock problem of rows.
func (s *solver) tighten(c *candidate) bool {
	m := c.mode
	if len(m.limits) >= mostLimits+mostTightened {
		return false
	}
	if l := m.roughly(c.counts); l != nil {
		m.limits = append(m.limits, l)
		return true
	}
	if !s.exact {
		return false
	}
	best, most := limit(nil), 1+1e-6
	for _, axes := range [2][2]*axis{{&m.x, &m.y}, {&m.y, &m.x}} {
		x, y := axes[0], axes[1]
		for _, up := range y.measured {
			s.work -= 40
			across := x.longest(c.lying, up)
			l := product(across, up, *x, *y)
			if w := worth([]float64(l), c.lying); w > most {
				best, most = l, w
			}
		}
	}
	if best != nil {
		m.limits = append(m.limits, best)
	}
	return best != nil
}

// roughly returns a limit of items that counts break, for all lies; or nil.
func (m *mode) roughly(counts []int) limit {
	for _, rough := range m.rough {
		if worth([]float64(rough), counts) <= 1+shade {
			continue
		}
		l := make(limit, len(m.lies))
		for i, lie := range m.lies {
			l[i] = rough[lie.item]
		}
		return l
	}
	return nil
}

// longest returns the measure in which so many pieces, each weighed by its other side,
// are longest in all.
func (a *axis) longest(lying []int, weights measure) measure {
	const whole = 1e9
	demand := make([]int, len(lying))
	for i, n := range lying {
		demand[i] = int(float64(n) * weights[i] * whole)
	}
	for {
		_, _, prices, _ := relaxed(a.rows, demand)
		row, value := a.dearest(prices, demand)
		if value <= 1+1e-7 || len(a.rows) > mostKnownRows {
			return a.scaled(prices, demand, value)
		}
		a.rows = append(a.rows, slices.Clone(row))
	}
}

// mostKnownRows is how many rows are remembered to measure by.
const mostKnownRows = 300

// ready prepares an axis for longest: rows of one side each, and usual measures.
func (a *axis) ready() {
	for i, side := range a.sides {
		row := make([]int, len(a.sides))
		if row[i] = 1; side.most > 0 {
			row[i] = int(a.room / side.length)
		}
		a.rows = append(a.rows, row)
	}
	a.measured = a.measures()
}

// scaled makes a measure of prices, with which no row is worth more than value.
func (a *axis) scaled(prices []float64, demand []int, value float64) measure {
	m := make(measure, len(prices))
	for i, price := range prices {
		if demand[i] > 0 {
			m[i] = max(0, price) / max(value, 1e-9)
		}
	}
	return m
}

// dearest returns the row of sides that is worth most, and what it is worth, for those
// that are in demand.
func (a *axis) dearest(prices []float64, demand []int) ([]int, float64) {
	r := rowSearch{axis: a, prices: prices, row: make([]int, len(prices)), best: make([]int, len(prices))}
	for i, n := range demand {
		if n > 0 && prices[i] > 0 {
			r.order = append(r.order, i)
		}
	}
	slices.SortStableFunc(r.order, func(i, k int) int {
		switch one, other := prices[i]/float64(a.sides[i].length), prices[k]/float64(a.sides[k].length); {
		case one > other:
			return -1
		case one < other:
			return 1
		}
		return 0
	})
	r.try(0, a.room, 0)
	return r.best, r.value
}

// rowSearch looks through all rows by branch and bound.
type rowSearch struct {
	*axis
	prices    []float64
	order     []int
	row, best []int
	value     float64
}

func (r *rowSearch) try(depth int, left int64, value float64) {
	if value > r.value {
		r.value = value
		copy(r.best, r.row)
	}
	if depth == len(r.order) {
		return
	}
	i := r.order[depth]
	side := r.sides[i].length
	if value+float64(r.prices[i]*(float64(left)/float64(side))) <= r.value+1e-12 {
		return
	}
	for n := left / side; n >= 0; n-- {
		r.row[i] = int(n)
		r.try(depth+1, left-n*side, value+float64(r.prices[i]*float64(n)))
	}
	r.row[i] = 0
}
