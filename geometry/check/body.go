package check

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// Limits of the body, in mm.
const (
	leastBaseOverlap = 10 // below it the strip of glue is too narrow to hold the base
	leastGusset      = 40 // below it the base flaps of a block base are too short to fold well
	leastTurnIn      = 15 // below it the turn-in springs open
	leastSeamFlap    = 12
	leastPinch       = 20
)

// base looks at the base flaps.
func (l *inspection) base() {
	b := l.spec.Body
	at := l.place("front-base")
	if b.Base == bag.BasePinch {
		if b.BaseOverlap < leastPinch {
			l.find(Warning, "pinch-short", at,
				sentence("the pinch base folds over by %s, less than %s", mm(b.BaseOverlap), mm(leastPinch)),
				sentence("make the base overlap V at least %s, or test the glued base under load", mm(leastPinch)))
		}
		return
	}
	flap := b.BaseFlap()
	if b.BaseOverlap < leastBaseOverlap {
		l.find(Error, "base-flap-short", at,
			sentence("the base flaps overlap by V = %s, too little to glue", mm(b.BaseOverlap)),
			sentence("make the base overlap V at least %s", mm(leastBaseOverlap)))
	}
	if flap > b.Gusset {
		l.find(Error, "base-flap-long", at,
			sentence("the base flap B = %s is longer than the gusset D = %s and would pass the far edge of the base", mm(flap), mm(b.Gusset)),
			sentence("make the base overlap V at most %s, or the gusset deeper", mm(b.Gusset/2)))
	}
	if b.Base == bag.BaseBlock && flap > b.Width/2 {
		l.find(Error, "base-corners-cross", at,
			sentence("the base flap B = %s is longer than half the face, W/2 = %s, so its two corner creases cross", mm(flap), mm(b.Width/2)),
			sentence("make D/2 + V at most %s, the face wider, or choose slotted corners", mm(b.Width/2)))
	}
	if b.Gusset < leastGusset {
		l.find(Warning, "base-shallow", at,
			sentence("a block base only %s deep is hard to fold and to glue", mm(b.Gusset)),
			sentence("make the gusset at least %s deep, or choose a pinch base", mm(leastGusset)))
	}
}

// packing looks at whether the glued bag folds flat.
func (l *inspection) packing() {
	b := l.spec.Body
	if b.Gusset == 0 {
		return
	}
	face := l.firstFace()
	at := geometry.Vec2{X: face.Max.X, Y: l.levels.FlatFold}
	if b.Gusset > b.Width {
		l.find(Warning, "gussets-meet", at,
			sentence("the gusset D = %s is deeper than the face W = %s is wide, so the two gussets meet when the bag is packed flat", mm(b.Gusset), mm(b.Width)),
			sentence("make the face at least as wide as the gusset is deep, or deliver the bag standing"))
	}
	if b.Base != bag.BasePinch && b.Height < b.Gusset {
		l.find(Warning, "too-low-to-pack", at,
			sentence("the bag is H = %s high but its base is D = %s deep, so the base cannot be folded up flat against the face", mm(b.Height), mm(b.Gusset)),
			sentence("make the height at least %s, or deliver the bag standing", mm(b.Gusset)))
	}
}

// topEdge looks at the turn-in.
func (l *inspection) topEdge() {
	b := l.spec.Body
	depth := b.TurnInDepth()
	if depth == 0 {
		return
	}
	at := l.place("front-turn-in")
	switch {
	case depth > b.Height:
		l.find(Error, "turn-in-long", at,
			sentence("the turn-in T = %s is longer than the body, H = %s, and would stand out at the base", mm(depth), mm(b.Height)),
			sentence("make the turn-in at most %s", mm(b.Height)))
	case b.Base != bag.BasePinch && depth > b.Height-b.Gusset/2:
		l.find(Warning, "turn-in-on-crease", at,
			sentence("the turn-in T = %s reaches down over the flat-fold crease and has to be folded with it", mm(depth)),
			sentence("make the turn-in at most %s", mm(b.Height-b.Gusset/2)))
	case depth < leastTurnIn:
		l.find(Warning, "turn-in-short", at,
			sentence("a turn-in of %s springs open", mm(depth)),
			sentence("make the turn-in at least %s, or leave the edge raw", mm(leastTurnIn)))
	}
}

// seam looks at the seam flap.
func (l *inspection) seam() {
	b := l.spec.Body
	at := l.place("seam-flap")
	if b.SeamFlap < leastSeamFlap {
		l.find(Warning, "seam-flap-narrow", at,
			sentence("the seam flap G = %s is narrower than %s; glue runs out of it or does not hold", mm(b.SeamFlap), mm(leastSeamFlap)),
			sentence("make the seam flap at least %s; %s to %s is usual", mm(leastSeamFlap), geometry.BareLength(15), mm(25)))
	}
	if b.SeamFlap > b.Width {
		l.find(Error, "seam-flap-wide", at,
			sentence("the seam flap G = %s is wider than the face it is glued to, W = %s", mm(b.SeamFlap), mm(b.Width)),
			sentence("make the seam flap at most %s; %s to %s is usual", mm(b.Width), geometry.BareLength(15), mm(25)))
	}
}
