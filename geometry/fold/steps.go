package fold

import (
	"math"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
)

// step is a stage with what moves in it.
type step struct {
	stage Stage
	to    func(s *stance, moment float64)
}

// flapLead is how much further than square the seam flap is folded in before it is
// glued, so that it comes to the inside.
const flapLead = 25 * math.Pi / 180

// lastLetDown is the share of its way over which a piece no longer turns.
const lastLetDown = 0.12

// stepsOf returns the stages of a bag in the order of the work.
func stepsOf(laid *blank.Blank) []step {
	w := work{laid: laid, body: &laid.Spec.Body}
	w.add(blankStage(), func(*stance, float64) {})
	w.turnIn()
	w.tube()
	if w.body.Base == bag.BasePinch {
		w.pinchBase()
	} else {
		w.blockBase()
	}
	w.furnish()
	w.add(packedStage(w.body, w.has("base")), nil)
	return w.steps
}

// work gathers the stages of a bag.
type work struct {
	laid  *blank.Blank
	body  *bag.Body
	steps []step
}

func (w *work) add(stage Stage, to func(s *stance, moment float64)) {
	w.steps = append(w.steps, step{stage, to})
}

// has tells whether a loose part of that role goes into the bag.
func (w *work) has(role string) bool {
	for _, card := range w.laid.Cards {
		if card.Role == role && card.Width > 0 && card.Height > 0 {
			return true
		}
	}
	return false
}

func (w *work) turnIn() {
	if w.body.TurnInDepth() == 0 {
		return
	}
	if w.has("top") {
		w.add(topCardsStage(w.laid), func(s *stance, moment float64) { s.topCards = coming(moment) })
	}
	w.add(turnInStage(w.laid), func(s *stance, moment float64) {
		s.turnIn = math.Pi * moment
		s.topCards.shown = s.topCards.shown && moment < 1 // from then on hidden
	})
}

// tube closes the tube, square or, of a flat bag, flat.
func (w *work) tube() {
	square, lead := quarter, w.lead()
	if w.body.Gusset == 0 {
		square = math.Pi
	}
	almost := square // of one flat piece, whose back is pressed onto the flap at the end
	if w.body.Gusset == 0 && w.laid.Seams == 1 {
		almost -= flapLead
	}
	w.add(tubeStage(w.body, w.laid.Seams), func(s *stance, moment float64) {
		s.edge, s.flap = almost*moment, (square+lead)*moment
	})
	above := 0.0 // share of its way that the second piece of a flat bag is let down in the end
	if w.laid.Seams == 2 {
		if w.body.Gusset == 0 {
			above = lastLetDown
		}
		w.add(joinStage(), func(s *stance, moment float64) { s.apart = lerp(1, above, moment) })
	}
	w.add(seamStage(w.laid.Seams), func(s *stance, moment float64) {
		s.seam = moment
		s.apart = above * (1 - moment)
		s.edge, s.flap = lerp(almost, square, moment), square+lead*(1-moment)
	})
}

// lead returns how much further than its end the seam flap is folded in first.
func (w *work) lead() float64 {
	if w.body.Gusset == 0 {
		return 0
	}
	return min(flapLead, math.Asin(min(w.body.Gusset/2/w.body.SeamFlap, 1)))
}

func (w *work) blockBase() {
	w.add(upendStage(), func(s *stance, moment float64) { s.tilt = quarter + quarter*moment })
	if w.body.Base == bag.BaseSlotted {
		w.slottedBase()
	} else {
		w.envelopeBase()
	}
	w.add(uprightStage(), func(s *stance, moment float64) { s.tilt = math.Pi * (1 - moment) })
}

func (w *work) slottedBase() {
	lead := gussetFlapsMeet(w.body)
	w.add(gussetFlapsStage(w.body.Base), func(s *stance, moment float64) {
		s.right, s.left = quarter*moment, quarter*moment
		if lead { // the right one first
			s.right, s.left = quarter*min(2*moment, 1), quarter*max(2*moment-1, 0)
		}
	})
	w.add(frontFlapStage(w.body.Base), func(s *stance, moment float64) { s.front = quarter * moment })
	w.add(backFlapStage(w.body.Base), func(s *stance, moment float64) { s.back = quarter * moment })
}

func (w *work) envelopeBase() {
	w.add(gussetFlapsStage(w.body.Base), func(s *stance, moment float64) {
		spread := quarter * moment
		in := quarter
		if moment < 1 {
			in = turnedIn(spread)
		}
		s.front, s.back, s.right, s.left = -spread, -spread, in, in
	})
	w.add(frontFlapStage(w.body.Base), func(s *stance, moment float64) { s.front = lerp(-quarter, quarter, moment) })
	w.add(backFlapStage(w.body.Base), func(s *stance, moment float64) { s.back = lerp(-quarter, quarter, moment) })
}

func (w *work) pinchBase() {
	if w.body.Gusset > 0 {
		w.add(tuckStage(), func(s *stance, moment float64) { s.tuck = quarter * moment })
	}
	if w.body.BaseFlap() > 0 {
		w.add(pinchStage(), func(s *stance, moment float64) { s.pinch = math.Pi * moment })
	}
	w.add(openStage(w.body.Gusset > 0), func(s *stance, moment float64) {
		s.tilt = quarter * (1 - moment)
		if w.body.Gusset > 0 {
			s.open = moment
		}
	})
}

// furnish puts in what the standing bag still needs.
func (w *work) furnish() {
	if w.has("base") {
		w.add(baseCardStage(), func(s *stance, moment float64) { s.baseCard = coming(moment) })
	}
	switch h := &w.laid.Spec.Handle; {
	case h.Kind.IsThreaded():
		w.add(threadStage(h), func(s *stance, moment float64) { s.handle = coming(moment) })
	case h.Kind.HasPatch():
		w.add(patchStage(h), func(s *stance, moment float64) { s.handle = coming(moment) })
	}
}
