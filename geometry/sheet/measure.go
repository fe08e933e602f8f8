package sheet

import (
	"cmp"
	"slices"
)

// measure is another measure of length along both sides of a room: of[i] for the row
// length[i], with new sides for the pieces. It never makes a row shorter than the sum
// of its pieces, so a layout in the room is one in the measured room as well, and
// what must stay empty there shows what cannot be laid here.
type measure struct {
	of    []float64
	piece float64 // area of a piece
}

// mostMeasures bounds in how many measures a search reckons.
const mostMeasures = 4

// measures returns the measures in which the room is smallest beside the pieces, the
// smallest first. Only the ratio of the sides counts; tried are the true one and
// those at which the fullest row of a side of the room changes.
func (r *rows) measures() []measure {
	all := []measure{r.measured(float64(r.long), float64(r.short))}
	for _, room := range []int64{r.length[r.wide], r.length[r.high]} {
		for _, s := range r.scales(room) {
			if s.long > 0 && s.short > 0 {
				all = append(all, r.measured(s.long, s.short))
			}
		}
	}
	slices.SortStableFunc(all, func(a, b measure) int { return cmp.Compare(r.share(a), r.share(b)) })
	return all[:min(len(all), mostMeasures)]
}

// share returns how many pieces have the area of the room.
func (r *rows) share(m measure) float64 { return m.of[r.wide] * m.of[r.high] / m.piece }

// measured returns the measure with new sides: every length is that of the longest
// row in it.
func (r *rows) measured(long, short float64) measure {
	m := measure{of: make([]float64, len(r.length)), piece: long * short}
	for i := range r.length {
		if i > 0 {
			m.of[i] = max(m.of[i], m.of[i-1])
		}
		if next := r.byLong[i]; next >= 0 {
			m.of[next] = max(m.of[next], m.of[i]+long)
		}
		if next := r.byShort[i]; next >= 0 {
			m.of[next] = max(m.of[next], m.of[i]+short)
		}
	}
	return m
}
