package gang

import (
	"math"
	"slices"
)

// nought is what numbers of the linear programs, whose right sides are scaled to at
// most 1, may err by.
const nought = 1e-9

// program is a linear program: the least sum of runs of columns so that each row gets
// its demand. It is solved by the revised simplex method with a dense inverse.
type program struct {
	columns [][]float64
	demand  []float64 // scaled
	basis   []int     // of each row: a column; from len(columns) on a surplus, then a missing piece
	inverse [][]float64
	runs    []float64 // of the basis
	prices  []float64
	column  []float64
	dear    float64 // cost of what is missing
}

// relaxed returns runs of columns, not whole, that meet the demand with the least sum,
// and what one piece of each row is worth then. Where a row is in no column ok is
// false. A piece that is missing costs two sheets, more than any piece is worth.
func relaxed(columns [][]int, demand []int) (sum float64, runs, prices []float64, ok bool) {
	pieces := make([]float64, len(demand))
	for i, d := range demand {
		pieces[i] = float64(d)
	}
	shares := make([][]float64, len(columns))
	all := make([]float64, len(columns)*len(demand))
	for j, column := range columns {
		shares[j], all = all[:len(demand)], all[len(demand):]
		for i, n := range column {
			shares[j][i] = float64(n)
		}
	}
	return leastSum(shares, pieces, 2)
}

// leastSum is relaxed for any columns and a cost of what is missing.
func leastSum(columns [][]float64, demand []float64, dear float64) (sum float64, runs, prices []float64, ok bool) {
	most := slices.Max(demand)
	runs = make([]float64, len(columns))
	if most <= 0 {
		return 0, runs, make([]float64, len(demand)), true
	}
	p := newProgram(columns, demand, most)
	p.dear = dear
	p.solve()
	ok = true
	for row, b := range p.basis {
		switch {
		case b < len(columns):
			runs[b] = max(0, p.runs[row]) * most
			sum += runs[b]
		case b >= len(columns)+len(demand) && p.runs[row] > 1e-7:
			ok = false
		}
	}
	return sum, runs, p.prices, ok
}

func newProgram(columns [][]float64, demand []float64, scale float64) *program {
	m := len(demand)
	p := &program{
		columns: columns, demand: make([]float64, m), basis: make([]int, m), inverse: make([][]float64, m),
		runs: make([]float64, m), prices: make([]float64, m), column: make([]float64, m),
	}
	for i := range m {
		p.demand[i] = demand[i] / scale
		p.basis[i] = len(columns) + m + i
		p.inverse[i] = make([]float64, m)
		p.inverse[i][i] = 1
		p.runs[i] = p.demand[i]
	}
	return p
}

func (p *program) cost(b int) float64 {
	switch {
	case b < len(p.columns):
		return 1
	case b < len(p.columns)+len(p.demand):
		return 0
	}
	return p.dear
}

// solve exchanges columns until none helps. After many exchanges the first column
// that helps is taken, which cannot go round in circles (Bland's rule).
func (p *program) solve() {
	const patience, most = 400, 5000
	for step := range most {
		p.price()
		enter := p.entering(step > patience)
		if enter < 0 {
			return
		}
		p.express(enter)
		leave := p.leaving()
		if leave < 0 {
			return
		}
		p.exchange(leave, enter)
	}
}

func (p *program) price() {
	for i := range p.prices {
		sum := 0.0
		for row, b := range p.basis {
			sum += float64(p.cost(b) * p.inverse[row][i])
		}
		p.prices[i] = sum
	}
}

// entering returns the column that gains most, or the first that gains, or −1.
func (p *program) entering(first bool) int {
	best, gain := -1, nought
	for j, column := range p.columns {
		if g := worth(p.prices, column) - 1; g > gain {
			if best, gain = j, g; first {
				return j
			}
		}
	}
	for i, price := range p.prices {
		if -price > gain {
			if best, gain = len(p.columns)+i, -price; first {
				return best
			}
		}
	}
	return best
}

// worth returns what the pieces of a column are worth.
func worth[N int | float64](prices []float64, column []N) float64 {
	sum := 0.0
	for i, n := range column {
		if n != 0 {
			sum += float64(prices[i] * float64(n))
		}
	}
	return sum
}

// express writes a column in terms of the basis.
func (p *program) express(j int) {
	for row := range p.column {
		if surplus := j - len(p.columns); surplus >= 0 {
			p.column[row] = -p.inverse[row][surplus]
			continue
		}
		p.column[row] = worth(p.inverse[row], p.columns[j])
	}
}

// leaving returns the row whose column runs out first, of several that with the least
// index; −1 when none does.
func (p *program) leaving() int {
	leave, least := -1, math.Inf(1)
	for row, c := range p.column {
		if c <= nought {
			continue
		}
		ratio := max(0, p.runs[row]) / c
		if ratio < least-1e-12 || ratio <= least+1e-12 && p.basis[row] < p.basis[leave] {
			leave, least = row, ratio
		}
	}
	return leave
}

func (p *program) exchange(leave, enter int) {
	pivot := p.column[leave]
	for i := range p.inverse[leave] {
		p.inverse[leave][i] /= pivot
	}
	p.runs[leave] = max(0, p.runs[leave]) / pivot
	for row, c := range p.column {
		if row == leave || c == 0 {
			continue
		}
		for i, v := range p.inverse[leave] {
			p.inverse[row][i] -= float64(c * v)
		}
		p.runs[row] -= float64(c * p.runs[leave])
	}
	p.basis[leave] = enter
}
