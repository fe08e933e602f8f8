package proof

import (
	"context"
	"slices"
	"strings"

	"gussetwright/app/document"
	"gussetwright/app/plain"
	"gussetwright/geometry/check"
	"gussetwright/geometry/phrase"
)

// OpenPoints returns how many points are still open, as the proof of the bag says and
// lists them. Findings of one meaning are one point, and notes are none. It takes as long
// as a look at the artwork, where there was none yet.
func OpenPoints(snapshot *document.Snapshot) int {
	if looked, err := snapshot.LookedAt(context.Background()); err == nil { // which never ends a look early
		snapshot = looked
	}
	return len(pointsOf(snapshot))
}

// open returns what is still open, in plain words: in mustChange what keeps the bag from
// being made, in mayChange what the client should know. Each is a sentence, after the
// sides of the bag that it is about where it is about some only, and none is twice.
func (p *Proof) open() (mustChange, mayChange []string) {
	for _, each := range pointsOf(p.Snapshot) {
		if each.must {
			mustChange = append(mustChange, p.sentence(each))
		} else {
			mayChange = append(mayChange, p.sentence(each))
		}
	}
	return mustChange, mayChange
}

// point is one thing that is still open.
type point struct {
	says  phrase.Word
	sides []phrase.Word // that it is about; none where it is about the whole bag
	must  bool          // keeps the bag from being made
}

// pointsOf returns what is still open, in the order of the findings.
func pointsOf(snapshot *document.Snapshot) (list []point) {
	for _, finding := range snapshot.Findings {
		if finding.Severity == check.Note {
			continue
		}
		saying := plain.Meaning(finding)
		at := slices.IndexFunc(list, func(known point) bool { return known.says == saying })
		if at < 0 {
			list = append(list, point{says: saying, must: finding.Severity == check.Error})
			at = len(list) - 1
		}
		if side := sideOf(snapshot, finding); side != "" && !slices.Contains(list[at].sides, side) {
			list[at].sides = append(list[at].sides, side)
		}
	}
	return list
}

func (p *Proof) sentence(open point) string {
	var sides []string
	for _, side := range open.sides {
		sides = append(sides, p.say(side))
	}
	if len(sides) == 0 {
		return p.say(open.says)
	}
	return p.tell(phrase.New("%s: %s", strings.Join(sides, ", "), open.says))
}

// sideOf returns the side of the bag that a finding is about, by the name that its view
// has in the proof; "" where no single side is meant.
func sideOf(snapshot *document.Snapshot, finding check.Finding) phrase.Word {
	if !isSided(finding.Code) {
		return ""
	}
	for _, panel := range snapshot.Blank.Pieces[finding.Piece].Panels {
		if !panel.Box.Contains(finding.At) {
			continue
		}
		switch panel.ID {
		case "front":
			return "Front"
		case "back":
			return "Back"
		case "gusset-left", "gusset-right":
			return "Side"
		}
	}
	return ""
}

// isSided tells whether a finding is told for each side of the bag. Others about artwork
// are told once for a file, wherever it is shown.
func isSided(code string) bool {
	switch code {
	case "artwork-coarse", "artwork-soft", "artwork-upside-down", "artwork-without-bleed",
		plain.CutOff, "mark-near-edge", "mark-near-hole", "code-small", "code-large", "code-low", "code-slanted", "code-near-fold":
		return true
	}
	return false
}
