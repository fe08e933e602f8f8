package dieline

import (
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
)

// titleTexts returns the lines of the title block: size, paper, make and date, and what
// to take care of.
func (d *drafter) titleTexts(date string) []phrase.Phrase {
	b, p := d.spec.Body, d.spec.Paper
	texts := []phrase.Phrase{
		phrase.New("Bag: face width W %s × gusset depth D %s × standing height H %s mm", d.number(b.Width), d.number(b.Gusset), d.number(b.Height)),
		d.blankText(),
		phrase.New("Paper: %s g/m² %s, caliper %s µm, grain along the %s",
			d.number(p.Grammage), phrase.Word(p.Kind), d.number(p.CaliperMicrons()), phrase.Word(p.Grain)),
		phrase.New("Made: %s; %s; seam flap G %s, relief r %s", d.baseText(), d.topText(), d.number(b.SeamFlap), d.number(b.SeamRelief)),
		phrase.New("Carried by: %s", d.handleText()),
	}
	if date != "" {
		texts = append(texts, phrase.New("Date: %s", date))
	}
	return append(texts,
		phrase.New("Scale 1:1, all measures in millimetres. Drawn with Gussetwright."),
		phrase.New("Have the die-maker check this drawing and make a white sample before cutting a die. Cutting rules are sharp."))
}

// blankText says how large the piece is, and how many pieces make a bag.
func (d *drafter) blankText() phrase.Phrase {
	width, height := d.number(d.piece.Width), d.number(d.piece.Height)
	if len(d.laid.Pieces) == 1 {
		return phrase.New("Blank: %s × %s mm flat, seen from the print side", width, height)
	}
	return phrase.New("Blank: %s × %s mm flat, seen from the print side; one of two pieces with the same outline", width, height)
}

func (d *drafter) baseText() phrase.Phrase {
	overlap := d.number(d.spec.Body.BaseOverlap)
	switch d.spec.Body.Base {
	case bag.BaseSlotted:
		return phrase.New("block base with slotted corners, overlap V %s", overlap)
	case bag.BasePinch:
		return phrase.New("pinch base, folded over by V %s", overlap)
	}
	return phrase.New("block base with envelope corners, overlap V %s", overlap)
}

func (d *drafter) topText() phrase.Phrase {
	b := d.spec.Body
	switch {
	case b.Top == bag.TopZigzag:
		return phrase.New("top cut in a zigzag, pitch %s, depth %s", d.number(b.ZigzagPitch), d.number(b.ZigzagDepth))
	case b.TurnInDepth() == 0:
		return phrase.New("top cut straight")
	}
	return phrase.New("top turned in by T %s", d.number(b.TurnIn))
}

func (d *drafter) handleText() phrase.Phrase {
	h := d.spec.Handle
	switch h.Kind {
	case bag.HandleNone:
		return phrase.New("no handle")
	case bag.HandleHandHole:
		return phrase.New("hand hole %s × %s mm", d.number(h.HandHoleWidth), d.number(h.HandHoleHeight))
	case bag.HandleTape:
		return phrase.New("tape through slits of %s × %s mm", d.number(h.SlitHeight), d.number(blank.SlitWidth))
	case bag.HandleRope:
		return phrase.New("rope through holes of %s mm", d.number(h.HoleDiameter))
	case bag.HandleRibbon:
		return phrase.New("ribbon through holes of %s mm", d.number(h.HoleDiameter))
	case bag.HandleTwisted:
		return phrase.New("twisted handle under a patch of %s × %s mm", d.number(h.PatchWidth), d.number(h.PatchHeight))
	}
	return phrase.New("strip handle under a patch of %s × %s mm", d.number(h.PatchWidth), d.number(h.PatchHeight))
}
