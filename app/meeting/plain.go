package meeting

import (
	"slices"

	"gussetwright/app/document"
	"gussetwright/app/plain"
	"gussetwright/app/words"
	"gussetwright/geometry/check"
)

// complaint returns why a bag cannot be made, in words that are nobody's trade, or else
// that a part of a picture is cut off, or "". Of no snapshot it says that the bag cannot be
// made.
// What else may go wrong is for the designer, afterwards.
func complaint(snapshot *document.Snapshot) string {
	if snapshot == nil {
		return cannotBeMade()
	}
	// Errors are the first among the findings.
	worst := slices.IndexFunc(snapshot.Findings, func(f check.Finding) bool { return f.Severity == check.Error || f.Code == plain.CutOff })
	if worst < 0 {
		return ""
	}
	return words.OfWord(plain.Meaning(snapshot.Findings[worst]))
}

// cannotBeMade is said of a bag where nothing plainer can be.
func cannotBeMade() string { return words.OfWord(plain.Unmakeable) }
