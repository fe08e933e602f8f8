package check

import (
	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/sheet"
)

// NearMiss returns the note that one entry, a little less, makes the sheet of a plan hold
// more. then says what would be held on which condition, and value in mm is what the entry
// has to be. It is not among the findings of Inspect: to find such a change takes
// milliseconds, and package advice does it.
func NearMiss(laid *blank.Blank, plan *sheet.Plan, then phrase.Phrase, entry phrase.Word, value float64) Finding {
	l := inspection{blank: laid}
	piece := &laid.Pieces[0]
	l.find(Note, "near-miss", geometry.Vec2{X: piece.Width / 2, Y: piece.Height},
		sentence("the sheet is %d-up; %s", plan.Up(), then),
		sentence("make the %s %s, unless it has to be as it is", entry, mm(value)))
	return l.findings[0]
}
