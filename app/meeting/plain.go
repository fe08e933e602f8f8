package meeting

import (
	"slices"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/geometry/check"
)

// cutOff is the code of the one warning that a client is told: it changes what the bag
// says, and nobody sees in a small picture that a letter is missing.
const cutOff = "mark-cut-off"

// complaint returns why a bag cannot be made, in words that are nobody's trade, or else
// that a part of a picture is cut off, or "". Of no snapshot it says that the bag cannot be
// made.
// What else may go wrong is for the designer, afterwards.
func complaint(snapshot *document.Snapshot) string {
	if snapshot == nil {
		return cannotBeMade()
	}
	// Errors are the first among the findings.
	worst := slices.IndexFunc(snapshot.Findings, func(f check.Finding) bool { return f.Severity == check.Error || f.Code == cutOff })
	if worst < 0 {
		return ""
	}
	if sentence, known := plain()[snapshot.Findings[worst].Code]; known {
		return sentence
	}
	return cannotBeMade()
}

// cannotBeMade is said of a bag where nothing plainer can be.
func cannotBeMade() string { return lang.L("This bag cannot be made as it is.") }

// plain returns what findings come to in plain words, by their codes.
func plain() map[string]string {
	deeper, wider := lang.L("In this size the bottom needs more depth."), lang.L("In this size the front needs to be wider.")
	handle, higher := lang.L("In this size the handle needs another place."), lang.L("In this size the bag needs to be higher.")
	picture := lang.L("One of the pictures cannot be printed as it is.")
	return map[string]string{
		"no-sheet-fits":      lang.L("This size needs a larger sheet of paper."),
		"base-flap-short":    lang.L("The bottom of the bag cannot be glued like this."),
		"base-flap-long":     deeper,
		"base-corners-cross": wider,
		"seam-flap-wide":     wider,
		"patch-wide":         wider,
		"turn-in-long":       higher,
		"hole-low":           higher,
		"patch-low":          higher,
		"hole-near-edge":     handle,
		"hole-near-top":      handle,
		"holes-close":        handle,
		"card-too-small":     lang.L("This size is too small for the boards inside the bag."),
		"artwork-unreadable": picture,
		"artwork-live-text":  picture,
		"font-missing":       picture,
		"artwork-coarse":     lang.L("One of the pictures is not sharp enough to be printed."),
		"code-small":         lang.L("The bar code is too small to be read."),
		cutOff:               lang.L("A part of the picture is cut off at the edge."),
		"ink-in-glue":        lang.L("One of the pictures covers a place that must be glued."),
	}
}
