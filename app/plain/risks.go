package plain

import "gussetwright/geometry/phrase"

// Risks returns what warnings come to, by their codes.
func Risks() map[string]phrase.Word {
	const (
		bottom   phrase.Word = "In this size the bottom is hard to fold and to glue; a sample should show that it holds."
		standing phrase.Word = "In this size the bag cannot be packed flat; delivered standing it takes more room."
		top      phrase.Word = "The folded edge at the top may not lie flat."
		tear     phrase.Word = "The paper at the handle may tear; a sample should show what it holds."
		printing phrase.Word = "How the bags are laid out for printing is to be settled with the printer. It does not change how a bag looks."
		dark     phrase.Word = "Where the print is darkest it may smear; the printer should lighten it a little."
		code     phrase.Word = "The bar code may be hard to read at the till."
	)
	return map[string]phrase.Word{
		"pinch-short":            bottom,
		"base-shallow":           bottom,
		"gussets-meet":           standing,
		"too-low-to-pack":        standing,
		"turn-in-on-crease":      top,
		"turn-in-short":          top,
		"seam-flap-narrow":       "The glued seam of the bag is narrow and may not hold.",
		"card-tight":             "The boards inside the bag may not fit well.",
		"card-without-place":     "There is no place for one of the boards inside the bag.",
		"load-over":              "The bag may be too weak for what is to be carried in it; a sample should show what it holds.",
		"hole-near-edge":         tear,
		"hole-near-top":          tear,
		"hole-not-backed":        tear,
		"hole-near-turn-in-edge": tear,
		"holes-close":            tear,
		"patch-wide":             "The place where the handle is glued on nearly fills the width of the bag.",
		"patch-narrow":           tear,
		"hand-hole-upright":      "The opening for the hand comes out as a circle.",
		"grammage-light":         "The paper is thin for a bag of this kind; a sample should show what it holds.",
		"grain-across":           "The folds along the bag may crack or look wavy.",
		"bleed-in-gripper":       printing,
		"gap-less-than-bleed":    printing,
		"margin-less-than-bleed": printing,
		"gripper-narrow":         printing,
		"artwork-rgb":            "One of the pictures may come out duller in print than it looks on a screen.",
		"ink-heavy":              dark,
		"background-heavy":       dark,
		"artwork-without-place":  "One of the pictures is not shown on this bag.",
		"artwork-without-bleed":  "A thin white line may show along the edge of one of the pictures.",
		"artwork-other-size":     "One of the pictures was made for a bag of another size.",
		"artwork-upside-down":    "One of the pictures stands on its head.",
		"artwork-soft":           "One of the pictures may look a little blurred in print.",
		"pattern-too-small":      "A pattern does not fill its place.",
		"line-thin":              "Some lines are so thin that they may not show in print.",
		"text-small":             "Some of the text is too small to be read well.",
		"code-large":             code,
		"code-low":               code,
		"code-slanted":           code,
		"code-near-fold":         code,
		CutOff:                   "Text or a part of a picture runs over an edge, where it is cut off or folded round.",
		"mark-near-edge":         "Text or a part of a picture comes close to an edge and may be cut or folded there.",
		"mark-near-hole":         "Text or a part of a picture comes close to the handle.",
		"mark-on-flat-fold":      "A fold runs through text or a picture on the front; bags that are packed flat show it.",
	}
}
