package fold

import (
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
)

func blankStage() Stage {
	return Stage{
		Name:    "blank",
		Title:   phrase.New("The flat blank"),
		Caption: phrase.New("With the print side up, press in every crease with the bone folder along a ruler. Then lay the blank on the table, the print side down and the top edge toward you, and find the panels."),
		Tip:     phrase.New("Press along the line, do not rub across it. A crease folds best away from the side it was pressed on, as a mountain does; bend a valley once both ways."),
		Caution: phrase.New("Where you cut with a knife, cut away from your hand and put the cap on before you fold."),
		Check:   phrase.New("Every crease can be felt from end to end, and no edge is torn."),
	}
}

func topCardsStage(laid *blank.Blank) Stage {
	stage := Stage{
		Name:    "top-cards",
		Title:   phrase.New("Lay on the top cards"),
		Caption: phrase.New("Put glue on the reverse of each face where the card goes. Lay the card on it, with its upper edge along the top fold and the same space to both sides."),
		Tip:     phrase.New("A card that stands back a hair from the top fold lets the turn-in fold sharply."),
		Caution: hotGlue(),
		Check:   phrase.New("No card crosses the top fold or a panel edge."),
		Glue:    []blank.GlueRole{blank.GlueTopCard},
	}
	if !cardsArePierced(laid) {
		return stage
	}
	name := openingName(laid.Spec.Handle.Kind)
	stage.Caption = phrase.New("Make the %s in the cards first, where the face has them. Put glue on the reverse of each face where the card goes, but not round the %s, and lay the card on it with its upper edge along the top fold.", name, name)
	stage.Check = phrase.New("You can look through all %s, and no card crosses the top fold or a panel edge.", name)
	if !laid.Spec.Handle.Kind.HasHoles() {
		stage.Caution = both(hotGlue(), phrase.New("Cut with the knife away from your hand."))
	}
	return stage
}

// cardsArePierced tells whether the top cards have the openings of the faces.
func cardsArePierced(laid *blank.Blank) bool {
	return slices.ContainsFunc(laid.Cards, func(card blank.Card) bool { return len(laid.CardOpenings(&card)) > 0 })
}

// openingName names the openings of a handle, of which a bag has several.
func openingName(kind bag.HandleKind) phrase.Word {
	switch {
	case kind.HasHoles():
		return "holes"
	case kind.HasSlits():
		return "slits"
	}
	return "hand holes"
}

func hotGlue() phrase.Phrase {
	return phrase.New("Hot glue burns. Keep fingers off it and off the nozzle.")
}

// both joins two cautions, either of which may be none.
func both(first, second phrase.Phrase) phrase.Phrase {
	switch {
	case first.Empty():
		return second
	case second.Empty():
		return first
	}
	return phrase.New("%s %s", first, second)
}

func turnInStage(laid *blank.Blank) Stage {
	stage := Stage{
		Name:    "turn-in",
		Title:   phrase.New("Fold the turn-in"),
		Caption: phrase.New("Put glue on the strip above the top fold and fold it over to the reverse, across all panels at once. Run the bone folder along the top fold."),
		Tip:     phrase.New("Fold from the middle to both ends, so that the strip cannot run off."),
		Caution: hotGlue(),
		Check:   phrase.New("The panel edges of the turn-in lie on those of the body within 1 mm."),
		Glue:    []blank.GlueRole{blank.GlueTurnIn},
	}
	if turnInIsPierced(laid) {
		name := openingName(laid.Spec.Handle.Kind)
		stage.Caption = phrase.New("Put glue on the strip above the top fold, but not round the %s. Fold it over to the reverse, across all panels at once, and run the bone folder along the top fold.", name)
		stage.Check = phrase.New("The panel edges of the turn-in lie on those of the body within 1 mm, and you can look through all %s.", name)
	}
	return stage
}

// turnInIsPierced tells whether the turn-in has the openings of the faces.
func turnInIsPierced(laid *blank.Blank) bool {
	piece := &laid.Pieces[0]
	return slices.ContainsFunc(openingsOf(piece), func(o Opening) bool { return o.From.Y > piece.Levels.TopFold })
}

func tubeStage(body *bag.Body, seams int) Stage {
	stage := Stage{
		Name:    "tube",
		Title:   phrase.New("Fold the tube"),
		Caption: phrase.New("Fold every panel edge away from the print side until the panels stand square to each other. Fold the seam flap a little further in."),
		Tip:     phrase.New("Crease the panel edges through the turn-in too: it is twice as thick there."),
		Check:   phrase.New("The raw edge of the front runs along the crease of the seam flap from top to base."),
	}
	switch {
	case body.Gusset == 0 && seams == 2:
		stage.Title = phrase.New("Fold the seam flaps")
		stage.Caption = phrase.New("Fold the seam flap of each piece over to its reverse and press it flat.")
		stage.Tip = phrase.Phrase{}
		stage.Check = phrase.New("Each flap lies flat and parallel to the edge of its face.")
	case body.Gusset == 0:
		stage.Caption = phrase.New("Fold the seam flap over to the reverse, then fold the back over onto the front.")
	case seams == 2:
		stage.Title = phrase.New("Fold both pieces")
		stage.Check = phrase.New("Both pieces have the same height and stand square.")
	}
	return stage
}

func joinStage() Stage {
	return Stage{
		Name:    "pieces",
		Title:   phrase.New("Bring the pieces together"),
		Caption: phrase.New("Turn the back piece over and set it on the front piece, so that each seam flap goes to the inside of the face beside it."),
		Check:   phrase.New("The top edges of both pieces are level."),
	}
}

func seamStage(seams int) Stage {
	stage := Stage{
		Name:    "seam",
		Title:   phrase.New("Glue the seam"),
		Caption: phrase.New("Put glue on the print side of the seam flap and press it to the inside of the front, the raw edge along the crease of the flap."),
		Tip:     phrase.New("Put a strip of waste board into the tube to press against."),
		Caution: hotGlue(),
		Check:   phrase.New("The top edges meet within 1 mm and no glue has come out."),
		Glue:    []blank.GlueRole{blank.GlueSeam},
	}
	if seams == 2 {
		stage.Title = phrase.New("Glue both seams")
		stage.Caption = phrase.New("Put glue on the print side of each seam flap and press it to the inside of the face beside it, the raw edge along the crease of the flap.")
	}
	return stage
}

func upendStage() Stage {
	return Stage{
		Name:    "upend",
		Title:   phrase.New("Stand the tube on its top"),
		Caption: phrase.New("Open the tube square and stand it on its top edge, the base flaps up."),
		Check:   phrase.New("Seen from above the tube is a rectangle with square corners."),
	}
}

func gussetFlapsStage(base bag.Base) Stage {
	stage := Stage{
		Name:    "base-gussets",
		Title:   phrase.New("Close the base: gusset flaps"),
		Caption: phrase.New("Push the gusset flaps in and let the front and the back flap spread outward. The corners of these fold over along the base corner creases."),
		Tip:     phrase.New("Set each base corner with the tip of the bone folder, so that the corner crease starts right in it."),
		Check:   phrase.New("The gusset flaps lie flat on the inside, and both slanted edges of each spread flap start in a base corner."),
	}
	if base == bag.BaseSlotted {
		stage.Caption = phrase.New("Fold both gusset flaps in along the base crease until they lie flat.")
		stage.Tip = phrase.Phrase{}
		stage.Check = phrase.New("The gusset flaps lie square to the panel edges.")
	}
	return stage
}

func frontFlapStage(base bag.Base) Stage {
	stage := Stage{
		Name:    "base-front",
		Title:   phrase.New("Close the base: front flap"),
		Caption: phrase.New("Put glue on the folded corners of the front flap and on what they will cover of the gusset flaps. Fold the front flap over and press it down."),
		Tip:     phrase.New("Leave the triangle between the slanted edges bare at both sides: no flap covers it, it stays on the outside."),
		Caution: phrase.New("Hot glue burns and sets within seconds. Try the flap without glue first, then glue and press it at once."),
		Check:   phrase.New("The free edge of the front flap runs parallel to the base crease of the back within 1 mm."),
		Glue:    []blank.GlueRole{blank.GlueGussetFront, blank.GlueCornerFront},
	}
	if base == bag.BaseSlotted {
		stage.Caption = phrase.New("Put glue on the gusset flaps as far as the front flap will cover them. Fold the front flap over and press it down.")
		stage.Tip = phrase.Phrase{}
		stage.Glue = []blank.GlueRole{blank.GlueGussetFront}
	}
	return stage
}

func backFlapStage(base bag.Base) Stage {
	stage := Stage{
		Name:    "base-back",
		Title:   phrase.New("Close the base: back flap"),
		Caption: phrase.New("Put glue on the folded corners of the back flap and on what it will cover of the front flap and the gusset flaps. Fold the back flap over and press until it holds."),
		Tip:     phrase.New("Press with a flat block from outside against a board inside the bag."),
		Caution: phrase.New("Hot glue burns and comes out where you press. Use the block, not your fingers."),
		Check:   phrase.New("The base is flat, its edges are straight and it does not spring open."),
		Glue:    []blank.GlueRole{blank.GlueBase, blank.GlueGussetBack, blank.GlueCornerBack},
	}
	if base == bag.BaseSlotted {
		stage.Caption = phrase.New("Put glue on what the back flap will cover of the front flap and the gusset flaps. Fold the back flap over and press until it holds.")
		stage.Glue = []blank.GlueRole{blank.GlueBase, blank.GlueGussetBack}
	}
	return stage
}

func uprightStage() Stage {
	return Stage{
		Name:    "standing",
		Title:   phrase.New("Turn the bag upright"),
		Caption: phrase.New("Turn the bag over and set it on its base."),
		Check:   phrase.New("It stands without rocking, and all four upright edges are plumb."),
	}
}

func tuckStage() Stage {
	return Stage{
		Name:    "flatten",
		Title:   phrase.New("Press the tube flat"),
		Caption: phrase.New("Push both gussets in along their creases while the back comes down onto the front. Run the bone folder along all upright edges."),
		Check:   phrase.New("Front and back lie on each other, edge on edge within 1 mm."),
	}
}

func pinchStage() Stage {
	return Stage{
		Name:    "base-pinch",
		Title:   phrase.New("Fold over the bottom"),
		Caption: phrase.New("Put glue across the back above the base crease, fold all layers below it over onto the back and press."),
		Tip:     phrase.New("Fold over the edge of a ruler: many layers make a round fold."),
		Caution: hotGlue(),
		Check:   phrase.New("The fold is straight and square to the upright edges."),
		Glue:    []blank.GlueRole{blank.GluePinch},
	}
}

func openStage(gusseted bool) Stage {
	stage := Stage{
		Name:    "standing",
		Title:   phrase.New("Open the bag"),
		Caption: phrase.New("Raise the bag and pull front and back apart at the top. The gussets open from the top down."),
		Check:   phrase.New("The top edge opens to a rectangle and the bottom stays closed."),
	}
	if !gusseted {
		stage.Title = phrase.New("Raise the bag")
		stage.Caption = phrase.New("Raise the bag. Without gussets it opens only by bending its faces.")
		stage.Check = phrase.New("Front and back come apart at the top and hold at both sides and at the bottom.")
	}
	return stage
}

func baseCardStage() Stage {
	return Stage{
		Name:    "base-card",
		Title:   phrase.New("Put in the base card"),
		Caption: phrase.New("Let the base card down into the bag and press it flat onto the base. It lies there loose, without glue."),
		Check:   phrase.New("The card lies flat and clear of all four walls."),
	}
}

func threadStage(h *bag.Handle) Stage {
	stage := Stage{
		Name:      "handle",
		Title:     phrase.New("Thread the rope"),
		Caption:   phrase.New("Lead one end of each rope from the inside through a hole, over the outside and in again through the other hole of the same face. Knot both ends on the inside."),
		Tip:       phrase.New("Tape around the end of a rope makes it easy to thread."),
		Check:     phrase.New("Both handles are equally high, and no knot slips through when you pull."),
		Schematic: true,
	}
	if h.Kind == bag.HandleRibbon {
		stage.Title = phrase.New("Thread the ribbon")
		stage.Caption = phrase.New("Lead one end of each ribbon from the inside through a hole, over the outside and in again through the other hole of the same face. Knot both ends on the inside.")
		stage.Tip = phrase.New("Keep the ribbon from twisting between the holes.")
	}
	if h.Kind == bag.HandleTape {
		stage.Title = phrase.New("Thread the tape")
		stage.Caption = phrase.New("Lead one end of each tape from the inside through a slit, over the outside and in again through the other slit of the same face. Stitch or knot both ends on the inside, wider than the slit.")
		stage.Tip = phrase.New("Fold the end of the tape to a point and push it through with the bone folder, its edges up and down.")
		stage.Check = phrase.New("Both handles are equally high and lie untwisted, and no end slips through when you pull.")
	}
	if h.Eyelets && h.Kind.HasHoles() {
		stage.Caution = phrase.New("Set the eyelets first, on a firm support: the tool pinches.")
	}
	stage.Caution = both(stage.Caution, longLoop(h))
	return stage
}

func patchStage(h *bag.Handle) Stage {
	return Stage{
		Name:    "handle",
		Title:   phrase.New("Glue in the handles"),
		Caption: phrase.New("Put glue on the patch of each handle, let it down along the inside of the face and press it on."),
		Tip:     phrase.New("Mark the middle of the face lightly on the turn-in first."),
		Caution: both(hotGlue(), longLoop(h)),
		Check:   phrase.New("Both handles stand in the middle and at the same height within 1 mm."),
		Glue:    []blank.GlueRole{blank.GluePatch},
	}
}

// longLoop reminds of small children where a handle makes a long loop; nothing where it
// does not.
func longLoop(h *bag.Handle) phrase.Phrase {
	loop := h.Loop()
	if loop <= bag.LongLoop {
		return phrase.Phrase{}
	}
	return phrase.New("A handle makes a loop of %s, long enough to be dangerous to small children: say so on bags for toys or children's goods, and follow the local rules for cords.", geometry.Length(loop))
}

func packedStage(body *bag.Body, card bool) Stage {
	stage := Stage{
		Name:      "packed",
		Title:     phrase.New("Pack it flat"),
		Caption:   phrase.New("Push the gussets in, swing the base up against the front along the flat-fold crease and press the bag flat. The paper bends on the way: these creases alone do not let it."),
		Check:     phrase.New("The bag lies flat, the base outside on the front, with no new folds in the faces."),
		Schematic: true,
	}
	if card {
		stage.Tip = phrase.New("Take the base card out first, and lay it into the flat bag.")
	}
	if body.Base == bag.BasePinch {
		stage.Caption = phrase.New("Push the gussets in and press front and back together.")
		stage.Check = phrase.New("The bag lies flat, edge on edge within 1 mm.")
		stage.Schematic = false
	}
	if body.Gusset == 0 {
		stage.Caption = phrase.New("Lay the bag down. It is flat as it comes from the table.")
	}
	return stage
}
