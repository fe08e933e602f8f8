package advice

import (
	"gussetwright/geometry/blank"
	"gussetwright/geometry/check"
	"gussetwright/geometry/sheet"
)

// Note returns the note that the bag's own sheet would hold more if one entry were a
// little less, the change that is least felt, and false where no single one does it.
// Where the other gripper edge holds more as the bag is, or nothing fits at all, package
// check says so already.
//
// It takes milliseconds, where Near takes some more.
func Note(laid *blank.Blank, plan *sheet.Plan) (check.Finding, bool) {
	if plan.Up() == 0 {
		return check.Finding{}, false
	}
	a := newAdviser(laid, plan.Piece)
	up := plan.Up() + 1
	if sheet.Holds(gripped(plan.Sheet), a.piece, up) || a.hopeless(plan.Sheet, up) {
		return check.Finding{}, false
	}
	near := a.verified(a.single(plan.Sheet, up, false), up, 1)
	if len(near) == 0 {
		return check.Finding{}, false
	}
	change := near[0].Changes[0]
	return check.NearMiss(laid, plan, near[0].Phrase(), change.Name, change.To), true
}
