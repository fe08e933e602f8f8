package artstep

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
)

// reachOn returns how far the sliders move a piece on a place, in mm: across all of the
// place, in full centimetres.
func reachOn(b *blank.Blank, on string) (across, up float64) {
	place := boxOf(b, on)
	const whole = 10
	full := func(length float64) float64 { return max(math.Ceil(length/whole), 1) * whole }
	return full(place.Width()), full(place.Height())
}

// boxOf returns a panel, or the largest piece of the blank for what goes on over all
// panels.
func boxOf(b *blank.Blank, on string) (largest geometry.Rect) {
	switch on {
	case bag.OnFaces:
		on = "front"
	case bag.OnGussets:
		on = "gusset-left"
	}
	for i := range b.Pieces {
		if panel, here := b.Pieces[i].Panel(on); here {
			return panel.Box
		}
		if box := b.Pieces[i].Box(); box.Area() > largest.Area() {
			largest = box
		}
	}
	return largest
}
