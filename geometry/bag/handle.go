package bag

import "gussetwright/geometry/phrase"

// Name returns what the bag is carried by, in the words of the trade; "" for nothing.
func (k HandleKind) Name() phrase.Word {
	switch k {
	case HandleRope:
		return "rope"
	case HandleRibbon:
		return "ribbon"
	case HandleTape:
		return "flat tape"
	case HandleHandHole:
		return "hand hole"
	case HandleTwisted:
		return "twisted paper cord"
	case HandleStrip:
		return "flat paper strip"
	}
	return ""
}

// LongLoop is the length of a loop of cord, in mm, above which small children are at risk.
// 380 mm is the opening above which EN 71-1 asks more of a toy bag with a drawstring
// (known from an excerpt); a carrier bag is no toy, so this is for a reminder, not a rule.
const LongLoop = 380

// Loop returns the length of the loop that a handle makes with the edge of the bag, in mm;
// 0 where nothing hangs from the bag.
func (h *Handle) Loop() float64 {
	if !h.Kind.IsThreaded() && !h.Kind.HasPatch() {
		return 0
	}
	return 2*h.Rise + h.Spacing
}
