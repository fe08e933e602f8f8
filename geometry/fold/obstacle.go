package fold

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
)

// obstacle returns why a bag cannot be taken through a stage, or nothing when it can.
func obstacle(laid *blank.Blank, stage string) phrase.Phrase {
	body := &laid.Spec.Body
	switch stage {
	case "tube":
		if body.SeamFlap > body.Width {
			return phrase.New("the seam flap is wider than the face that it is glued to")
		}
	case "base-gussets":
		return baseObstacle(laid)
	case "flatten":
		if body.Gusset > body.Width {
			return phrase.New("the gussets are deeper than the face is wide, so they meet before the tube is flat")
		}
	case "base-pinch":
		if body.TurnInDepth() > body.Height {
			return phrase.New("the turn-in reaches below the base crease")
		}
	case "handle":
		return patchObstacle(laid)
	case "packed":
		return packingObstacle(laid)
	}
	return phrase.Phrase{}
}

// anyObstacle returns why the paper of a bag cannot be folded and packed, or nothing
// when it can.
func anyObstacle(laid *blank.Blank) phrase.Phrase {
	stages := []string{"tube", "base-gussets", "packed"}
	if laid.Spec.Body.Base == bag.BasePinch {
		stages = []string{"tube", "flatten", "base-pinch", "packed"}
	}
	for _, stage := range stages {
		if why := obstacle(laid, stage); !why.Empty() {
			return why
		}
	}
	return phrase.Phrase{}
}

// baseObstacle returns why a block base cannot be folded.
func baseObstacle(laid *blank.Blank) phrase.Phrase {
	body := &laid.Spec.Body
	flap := body.BaseFlap()
	switch {
	case body.TurnInDepth() > body.Height:
		return phrase.New("the turn-in reaches below the base crease")
	case flap > body.Gusset:
		return phrase.New("the base flaps of the faces are longer than the base is deep")
	case body.Base == bag.BaseBlock && gussetFlapsMeet(body):
		return phrase.New("the base flaps are longer than half the face, so the corner creases cross")
	case flap > body.Width:
		return phrase.New("the base flaps of the gussets are longer than the base is wide")
	case body.Base == bag.BaseBlock && seamFlapInCorner(laid):
		return phrase.New("the seam flap reaches into the far corner of the base, where it has no crease")
	}
	return phrase.Phrase{}
}

// patchObstacle returns why the patch of a glued handle does not fit.
func patchObstacle(laid *blank.Blank) phrase.Phrase {
	h, body := &laid.Spec.Handle, &laid.Spec.Body
	switch {
	case !h.Kind.HasPatch():
		return phrase.Phrase{}
	case h.PatchWidth > body.Width:
		return phrase.New("the patch of the handle is wider than the face")
	case h.Drop+h.PatchHeight > body.Height:
		return phrase.New("the patch of the handle reaches below the base crease")
	}
	return phrase.Phrase{}
}

// seamFlapInCorner tells whether the seam flap, glued to the base flap of a face,
// passes the base corner crease on the far side.
func seamFlapInCorner(laid *blank.Blank) bool {
	body := &laid.Spec.Body
	for i := range laid.Pieces {
		piece := &laid.Pieces[i]
		panel := rowOf(piece, "seam-flap", blank.RowBase)
		if panel == nil {
			continue
		}
		for _, corner := range cornersOf(panel) {
			across := corner.X - panel.Box.Min.X + body.SeamRelief
			if below := piece.Levels.Base - corner.Y; across+below > body.Width+geometry.Tolerance {
				return true
			}
		}
	}
	return false
}

// packingObstacle returns why a standing bag cannot be packed flat.
func packingObstacle(laid *blank.Blank) phrase.Phrase {
	body := &laid.Spec.Body
	switch {
	case body.Base == bag.BasePinch:
		return phrase.Phrase{}
	case body.Gusset > body.Width:
		return phrase.New("the gussets are deeper than the face is wide, so they meet when the bag is packed flat")
	case body.Height < body.Gusset:
		return phrase.New("the bag is lower than its base is deep, so the base cannot be folded up against the face")
	case body.TurnInDepth() > body.Height-body.Gusset/2:
		return phrase.New("the turn-in reaches below the flat-fold crease, where it has no crease")
	}
	return phrase.Phrase{}
}
