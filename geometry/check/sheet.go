package check

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/sheet"
)

// leastGripper is the narrowest gripper of usual presses in mm.
const leastGripper = 8

// sheet looks at the blank on the sheet.
func (l *inspection) sheet() {
	s := l.spec.Sheet
	piece := &l.blank.Pieces[0]
	at := geometry.Vec2{X: piece.Width / 2, Y: piece.Height}
	if l.plan.Up() == 0 {
		l.noSheet(at)
		return
	}
	l.otherGrip(at)
	bleed := l.spec.Print.Bleed
	if l.plan.Up() > 1 && s.Gap < 2*bleed {
		l.find(Warning, "gap-less-than-bleed", at,
			sentence("the gap of %s between blanks is less than twice the bleed, so neighbours print into each other", mm(s.Gap)),
			sentence("make the gap at least %s", mm(2*bleed)))
	}
	if min(s.Side, s.Tail) < bleed {
		l.find(Warning, "margin-less-than-bleed", at,
			sentence("the bleed of %s does not fit into the side margin of %s and the tail margin of %s", mm(bleed), mm(s.Side), mm(s.Tail)),
			sentence("make both margins at least %s, or take a larger sheet", mm(bleed)))
	}
	if off := l.plan.OffGripper(); off < l.plan.Piece.Ink-geometry.Tolerance {
		l.find(Warning, "bleed-in-gripper", at,
			sentence("nothing is printed in the gripper, so ink that runs off the blank there has a bleed of %s instead of %s", mm(off), mm(bleed)),
			sentence("turn on room for bleed, or take a larger sheet"))
	}
	if s.Gripper < leastGripper {
		l.find(Warning, "gripper-narrow", at,
			sentence("%s for the gripper is less than presses need", mm(s.Gripper)),
			sentence("ask the printer; %s to %s is usual", geometry.BareLength(leastGripper), mm(20)))
	}
}

// otherGrip tells when the same sheet takes more pieces gripped at its other edge.
func (l *inspection) otherGrip(at geometry.Vec2) {
	turned := l.spec.Sheet
	turned.GripperEdge = bag.GripperShort
	if l.spec.Sheet.GripperEdge == bag.GripperShort {
		turned.GripperEdge = bag.GripperLong
	}
	if more := sheet.Lay(turned, l.plan.Piece).Up(); more > l.plan.Up() {
		l.find(Note, "other-gripper-edge", at,
			sentence("gripped at the %s edge the sheet takes %d pieces instead of %d", phrase.Word(turned.GripperEdge), more, l.plan.Up()),
			sentence("ask the printer whether the press can grip the %s edge", phrase.Word(turned.GripperEdge)))
	}
}

func (l *inspection) noSheet(at geometry.Vec2) {
	s := l.spec.Sheet
	piece := &l.blank.Pieces[0]
	best := sheet.Rank(s, l.plan.Piece)[0]
	var remedy phrase.Phrase
	switch {
	case best.Plan.Up() > 0 && l.blank.Seams == 1:
		remedy = sentence("choose a sheet it fits, such as %s (%s × %s), or two seams", best.Name, mm(best.Width), mm(best.Height))
	case best.Plan.Up() > 0:
		remedy = sentence("choose a sheet it fits, such as %s (%s × %s)", best.Name, mm(best.Width), mm(best.Height))
	case l.blank.Seams == 1:
		remedy = sentence("choose two seams, a smaller bag, or ask the printer for a larger sheet")
	default:
		remedy = sentence("make the bag smaller, or ask the printer for a larger sheet; no usual one takes it")
	}
	usable := l.plan.Usable
	l.find(Error, "no-sheet-fits", at,
		sentence("the %s of %s × %s does not fit the sheet of %s × %s, of which %s × %s are usable", phrase.Word(piece.Name),
			mm(piece.Width), mm(piece.Height), mm(s.Width), mm(s.Height), mm(max(usable.Width(), 0)), mm(max(usable.Height(), 0))),
		remedy)
}
