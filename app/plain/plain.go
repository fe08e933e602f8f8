// Package plain says what findings come to for somebody who buys the bag, in words that are
// nobody's trade. The meeting view and the proof take their sentences from here.
package plain

import (
	"gussetwright/geometry/check"
	"gussetwright/geometry/phrase"
)

// CutOff is the code of the one warning that a client is told at once: it changes what the
// bag says, and nobody sees in a small picture that a letter is missing.
const CutOff = "mark-cut-off"

// Unmakeable is said of a bag that cannot be made where nothing plainer is known.
const Unmakeable phrase.Word = "This bag cannot be made as it is."

// Meaning returns what a finding comes to.
func Meaning(finding check.Finding) phrase.Word {
	table, other := Risks(), phrase.Word("One more point of the making is to be settled with the maker of the bag.")
	if finding.Severity == check.Error {
		table, other = Stops(), Unmakeable
	}
	if says, known := table[finding.Code]; known {
		return says
	}
	return other
}

// Stops returns what errors come to, by their codes.
func Stops() map[string]phrase.Word {
	const (
		wider   phrase.Word = "In this size the front needs to be wider."
		higher  phrase.Word = "In this size the bag needs to be higher."
		handle  phrase.Word = "In this size the handle needs another place."
		picture phrase.Word = "One of the pictures cannot be printed as it is."
	)
	return map[string]phrase.Word{
		"no-sheet-fits":      "This size needs a larger sheet of paper.",
		"base-flap-short":    "The bottom of the bag cannot be glued like this.",
		"base-flap-long":     "In this size the bottom needs more depth.",
		"base-corners-cross": wider,
		"seam-flap-wide":     wider,
		"patch-wide":         wider,
		"turn-in-long":       higher,
		"hole-low":           higher,
		"patch-low":          higher,
		"hole-near-edge":     handle,
		"hole-near-top":      handle,
		"holes-close":        handle,
		"card-too-small":     "This size is too small for the boards inside the bag.",
		"artwork-unreadable": picture,
		"artwork-live-text":  picture,
		"font-missing":       picture,
		"artwork-coarse":     "One of the pictures is not sharp enough to be printed.",
		"code-small":         "The bar code is too small to be read.",
		"ink-in-glue":        "One of the pictures covers a place that must be glued.",
	}
}
