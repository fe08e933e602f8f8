package entry

import (
	"math"

	"gussetwright/geometry"
)

// reach returns what the slider covers: the usual values of the quantity, or all of its
// limits where none are given. It is the same for every value, so that a value has its
// place on the slider and the thumb stays where it is let go.
func (q *Quantity) reach(unit geometry.Unit) (low, high float64) {
	low, high = max(q.roundEnd(q.Low, unit), q.Least), min(q.roundEnd(q.High, unit), q.Most)
	if q.Low >= q.High || low >= high {
		return q.Least, q.Most
	}
	return low, high
}

// roundEnd returns an end of the slider that is a round number of inches where these are
// shown; those of the usual values are round in the metric units.
func (q *Quantity) roundEnd(end float64, unit geometry.Unit) float64 {
	if !q.isLength() || unit != geometry.Inch {
		return end
	}
	inches := 1.0
	if q.High-q.Low < 8*geometry.Inch.Length() {
		inches = 1.0 / 4
	}
	notch := inches * geometry.Inch.Length()
	return math.Round(end/notch) * notch
}

// reachTexts returns the ends of the slider as they stand below it.
func (q *Quantity) reachTexts(unit geometry.Unit) (low, high string) {
	from, to := q.reach(unit)
	low, high = q.limits(unit)
	if from != q.Least {
		low = q.inText(from, unit)
	}
	if to != q.Most {
		high = q.inText(to, unit)
	}
	return low, high
}

// slideTo returns what a place of a slider of so many pixels stands for: a round value,
// or an end. What lies between two of them is for the arrow keys.
func (q *Quantity) slideTo(value, pixels float64, unit geometry.Unit) float64 {
	low, high := q.reach(unit)
	notch := q.notch(pixels, unit)
	const noise = 1e-9
	switch slack := (high - low) * noise; {
	case value <= low+slack:
		return low
	case value >= high-slack:
		return high
	}
	scale := q.scale(unit)
	rounded := math.Round(value/notch) * (notch / scale) * scale
	return min(max(math.Round(rounded*1e6)/1e6, low), high)
}

// notch returns how far it is from one value of the slider to the next: a round step that
// takes a pixel at least.
func (q *Quantity) notch(pixels float64, unit geometry.Unit) float64 {
	low, high := q.reach(unit)
	notch := q.step(normal, unit)
	if high-low < 20*notch {
		notch = q.step(fine, unit)
	}
	larger := []float64{2, 2.5, 2} // 1, 2, 5, 10
	if q.isLength() && unit == geometry.Inch {
		larger = []float64{2} // a rule in inches is divided by halves
	}
	for i := 0; notch*pixels < high-low; i++ {
		notch *= larger[i%len(larger)]
	}
	return notch
}
