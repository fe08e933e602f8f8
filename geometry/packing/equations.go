package packing

import "math"

// term is the derivative of a residual by one unknown; unknowns below 0 are fixed.
type term struct {
	unknown int
	slope   float64
}

// equations are the normal equations of a sum of weighted squares. The zero value adds
// up the energy alone.
type equations struct {
	energy   float64
	matrix   [][]float64
	gradient []float64
}

func newEquations(unknown int) *equations {
	e := &equations{matrix: make([][]float64, unknown), gradient: make([]float64, unknown)}
	room := make([]float64, unknown*unknown)
	for i := range e.matrix {
		e.matrix[i] = room[i*unknown : (i+1)*unknown]
	}
	return e
}

// add adds the square of a residual with a weight.
func (e *equations) add(weight, residual float64, terms []term) {
	e.energy += weight * residual * residual
	if e.matrix == nil {
		return
	}
	for _, a := range terms {
		if a.unknown < 0 {
			continue
		}
		e.gradient[a.unknown] += weight * residual * a.slope
		row := e.matrix[a.unknown]
		for _, b := range terms {
			if b.unknown >= 0 {
				row[b.unknown] += weight * a.slope * b.slope
			}
		}
	}
}

// solve returns the step to where the linearised residuals are least, by the
// factorisation of Cholesky, with a little added to the diagonal.
func (e *equations) solve(damping float64) []float64 {
	n := len(e.gradient)
	const least = 1e-12 // of a pivot, against rounding
	for j, pivot := range e.matrix {
		sum := pivot[j] + damping
		for k := range j {
			sum -= pivot[k] * pivot[k]
		}
		pivot[j] = math.Sqrt(max(sum, least))
		for _, row := range e.matrix[j+1:] {
			sum := row[j]
			for k := range j {
				sum -= row[k] * pivot[k]
			}
			row[j] = sum / pivot[j]
		}
	}
	step := make([]float64, n)
	for i, row := range e.matrix {
		sum := -e.gradient[i]
		for k := range i {
			sum -= row[k] * step[k]
		}
		step[i] = sum / row[i]
	}
	for i := n - 1; i >= 0; i-- {
		sum := step[i]
		for k := i + 1; k < n; k++ {
			sum -= e.matrix[k][i] * step[k]
		}
		step[i] = sum / e.matrix[i][i]
	}
	return step
}
