package meeting

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// Steps of a slider, in mm: round numbers are easier to talk about than exact ones. With
// the shift key the arrow keys take fine steps.
const (
	metricStep, metricFine = 5, 1
	inchStep, inchFine     = 25.4 / 4, 25.4 / 16
)

func stepOf(unit geometry.Unit, fine bool) float64 {
	switch {
	case unit == geometry.Inch && fine:
		return inchFine
	case unit == geometry.Inch:
		return inchStep
	case fine:
		return metricFine
	}
	return metricStep
}

// leastDepth is the least depth of a bag that is not flat: what is narrower cannot be
// creased down its middle.
const leastDepth = 10

// limits returns the least and the most that the measure of a bag may be.
func (a axis) limits(spec *bag.Spec) (least, most float64) {
	field, _ := bag.FieldAt(a.path())
	least, most = field.Least, field.Most
	if a == depth && spec.Body.Base != bag.BasePinch {
		least = leastDepth // without depth there is no block to stand on
	}
	return least, most
}

// span returns what the slider of a measure covers: from half the value to double.
func (a axis) span(value float64, spec *bag.Spec) (low, high float64) {
	const round = 10
	const room = 100 // near 0 half to double is next to nothing
	least, most := a.limits(spec)
	low, high = math.Floor(value/2/round)*round, math.Ceil(2*value/round)*round
	return max(low, least), min(max(high, low+room), most)
}

// allowed brings a value of the measure within its limits.
func (a axis) allowed(value float64, spec *bag.Spec) float64 {
	least, most := a.limits(spec)
	value = min(max(value, least), most)
	if a == depth && value < leastDepth && least == 0 {
		return math.Round(value/leastDepth) * leastDepth
	}
	return value
}

// nearest returns the whole number of steps that is nearest to a value.
func nearest(value, step float64) float64 { return clean(math.Round(value/step) * step) }

// next returns the next whole number of steps above a value, or below it.
func next(value, step float64, up bool) float64 {
	const slack = 1e-6 // of a step; what is that close to a whole one is on it
	if up {
		return clean((math.Floor(value/step+slack) + 1) * step)
	}
	return clean((math.Ceil(value/step-slack) - 1) * step)
}

// clean takes away what arithmetic leaves behind the last digit that means anything.
func clean(value float64) float64 { return math.Round(value*1e6) / 1e6 }
