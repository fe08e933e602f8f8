package proof

import (
	"slices"
	"strings"

	"gussetwright/geometry/check"
	"gussetwright/geometry/phrase"
)

// open returns what is still open, in plain words: in mustChange what keeps the bag from
// being made, in mayChange what the client should know. Each is a sentence, after the
// sides of the bag that it is about where it is about some only, and none is twice.
func (p *Proof) open() (mustChange, mayChange []string) {
	var list []point
	for _, finding := range p.Snapshot.Findings {
		if finding.Severity == check.Note {
			continue
		}
		saying := meaning(finding)
		at := slices.IndexFunc(list, func(known point) bool { return known.says == saying })
		if at < 0 {
			list = append(list, point{says: saying, must: finding.Severity == check.Error})
			at = len(list) - 1
		}
		if side := p.sideOf(finding); side != "" && !slices.Contains(list[at].sides, side) {
			list[at].sides = append(list[at].sides, side)
		}
	}
	for _, each := range list {
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
func (p *Proof) sideOf(finding check.Finding) phrase.Word {
	if !isSided(finding.Code) {
		return ""
	}
	for _, panel := range p.Snapshot.Blank.Pieces[finding.Piece].Panels {
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
		"mark-cut-off", "mark-near-edge", "mark-near-hole", "code-small", "code-large", "code-low", "code-slanted", "code-near-fold":
		return true
	}
	return false
}

// meaning returns what a finding comes to for somebody who buys the bag.
func meaning(finding check.Finding) phrase.Word {
	table, other := risks(), phrase.Word("One more point of the making is to be settled with the maker of the bag.")
	if finding.Severity == check.Error {
		table, other = stops(), "This bag cannot be made as it is."
	}
	if says, known := table[finding.Code]; known {
		return says
	}
	return other
}

// stops returns what errors come to, by their codes.
func stops() map[string]phrase.Word {
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

// risks returns what warnings come to, by their codes.
func risks() map[string]phrase.Word {
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
		"mark-cut-off":           "Text or a part of a picture runs over an edge, where it is cut off or folded round.",
		"mark-near-edge":         "Text or a part of a picture comes close to an edge and may be cut or folded there.",
		"mark-near-hole":         "Text or a part of a picture comes close to the handle.",
		"mark-on-flat-fold":      "A fold runs through text or a picture on the front; bags that are packed flat show it.",
	}
}
