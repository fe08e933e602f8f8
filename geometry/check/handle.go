package check

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/load"
	"gussetwright/geometry/phrase"
)

// Limits of holes and patches: paper that must stay beside an opening, in mm.
const (
	holeToTop    = 10 // between hole and top edge
	holeToEdge   = 15 // between hole and panel edge
	holeToTurnIn = 5  // of the turn-in beyond the hole
	holeToHole   = 20 // between the two holes of a face
	leastBridge  = 3  // less paper than this cannot be punched at all
	patchToEdge  = 5
	patchOverLeg = 5 // of the patch beyond each leg of the handle
)

// opening is a hole, a slit or a hand hole by its size and place on a face.
type opening struct {
	name          phrase.Word
	width, height float64       // mm
	at            geometry.Vec2 // centre of the right one on the first face
	side          float64       // from the panel edge to the nearest rim
}

// handle looks at how the bag is carried.
func (l *inspection) handle() {
	h := l.spec.Handle
	face := l.firstFace()
	middle, top := face.Center().X, l.levels.TopFold
	switch {
	case h.Kind.HasHoles():
		hole := opening{
			name: "hole", width: h.HoleDiameter, height: h.HoleDiameter,
			at:   geometry.Vec2{X: middle + h.Spacing/2, Y: top - h.Drop},
			side: (face.Width() - h.Spacing - h.HoleDiameter) / 2,
		}
		l.opening(hole)
		l.bridge(hole)
	case h.Kind.HasSlits():
		slit := opening{
			name: "slit", width: blank.SlitWidth, height: h.SlitHeight,
			at:   geometry.Vec2{X: middle + h.Spacing/2, Y: top - h.Drop},
			side: (face.Width() - h.Spacing - blank.SlitWidth) / 2,
		}
		l.opening(slit)
		l.bridge(slit)
	case h.Kind == bag.HandleHandHole:
		l.opening(opening{
			name: "hand hole", width: h.HandHoleWidth, height: h.HandHoleHeight,
			at:   geometry.Vec2{X: middle, Y: top - h.Drop},
			side: (face.Width() - h.HandHoleWidth) / 2,
		})
		l.handHoleShape(geometry.Vec2{X: middle, Y: top - h.Drop})
	case h.Kind.HasPatch():
		l.patch(face)
	}
	if h.Kind != bag.HandleNone && h.Kind != bag.HandleHandHole {
		l.cord(geometry.Vec2{X: middle, Y: top})
	}
	l.load(geometry.Vec2{X: middle, Y: top - h.Drop})
}

// load looks at whether the paper holds the product, as far as its strength tells.
func (l *inspection) load(at geometry.Vec2) {
	estimate, some := load.Of(l.blank)
	if !some {
		return
	}
	if message, remedy, over := estimate.Against(l.spec.Product.Weight); over {
		l.find(Warning, "load-over", at, message, remedy)
	}
}

// opening looks at the paper round a hole.
func (l *inspection) opening(o opening) {
	l.openingTop(o)
	severity := Warning
	if o.side < holeToEdge {
		if o.side < leastBridge {
			severity = Error
		}
		l.find(severity, "hole-near-edge", o.at,
			sentence("the %s ends %s from the panel edge, less than %s", o.name, mm(o.side), mm(holeToEdge)),
			sentence("bring it at least %s further in", mm(holeToEdge-o.side)))
	}
	if low := l.spec.Body.Height - l.spec.Handle.Drop - o.height/2; low < holeToEdge {
		l.find(Error, "hole-low", o.at,
			sentence("the %s lies %s above the base crease, less than %s", o.name, mm(low), mm(holeToEdge)),
			sentence("make the drop at most %s", mm(l.spec.Body.Height-o.height/2-holeToEdge)))
	}
	l.backing(o)
}

func (l *inspection) openingTop(o opening) {
	above := l.spec.Handle.Drop - o.height/2
	if l.spec.Body.Top == bag.TopZigzag {
		above -= l.spec.Body.ZigzagDepth
	}
	if above >= holeToTop {
		return
	}
	severity := Warning
	if above < leastBridge {
		severity = Error
	}
	l.find(severity, "hole-near-top", o.at,
		sentence("the %s begins %s below the top edge, less than %s", o.name, mm(above), mm(holeToTop)),
		sentence("make the drop at least %s", mm(l.spec.Handle.Drop+holeToTop-above)))
}

// backing looks at whether the turn-in doubles the paper round a hole.
func (l *inspection) backing(o opening) {
	depth := l.spec.Body.TurnInDepth()
	farEdge := l.spec.Handle.Drop + o.height/2
	beyond := depth - farEdge
	switch {
	case depth == 0:
		l.find(Warning, "hole-not-backed", o.at,
			sentence("nothing backs the %s: the top edge is raw", o.name),
			sentence("turn the top in by at least %s, or reinforce the holes and confirm the load with a sample test", mm(farEdge+holeToTurnIn)))
	case beyond < -geometry.Tolerance:
		l.find(Warning, "hole-not-backed", o.at,
			sentence("the turn-in T = %s does not back the %s, which reaches %s below the top fold", mm(depth), o.name, mm(farEdge)),
			sentence("make the turn-in at least %s, or the drop at most %s", mm(farEdge+holeToTurnIn), mm(max(depth-holeToTurnIn-o.height/2, 0))))
	case beyond < holeToTurnIn-geometry.Tolerance:
		l.find(Warning, "hole-near-turn-in-edge", o.at,
			sentence("the %s ends %s from the edge of the turn-in, less than %s", o.name, mm(max(beyond, 0)), mm(holeToTurnIn)),
			sentence("make the turn-in at least %s, or the drop at most %s", mm(farEdge+holeToTurnIn), mm(depth-holeToTurnIn-o.height/2)))
	}
}

// bridge looks at the paper between the two holes or slits of a face.
func (l *inspection) bridge(o opening) {
	between := l.spec.Handle.Spacing - o.width
	if between >= holeToHole {
		return
	}
	severity := Warning
	if between < leastBridge {
		severity = Error
	}
	if l.spec.Handle.Kind.HasSlits() {
		l.find(severity, "holes-close", o.at,
			sentence("only %s of paper lie between the two slits of a face; the tape tears it", mm(max(between, 0))),
			sentence("make the spacing at least %s; half the face is usual", mm(o.width+holeToHole)))
		return
	}
	l.find(severity, "holes-close", o.at,
		sentence("only %s of paper lie between the two holes of a face; the rope tears it", mm(max(between, 0))),
		sentence("make the hole spacing at least %s; half the face is usual", mm(o.width+holeToHole)))
}

func (l *inspection) handHoleShape(at geometry.Vec2) {
	h := l.spec.Handle
	if h.HandHoleHeight > h.HandHoleWidth {
		l.find(Warning, "hand-hole-upright", at,
			sentence("the hand hole is %s wide but %s high and becomes a circle of %s", mm(h.HandHoleWidth), mm(h.HandHoleHeight), mm(h.HandHoleWidth)),
			sentence("make it wider than high"))
	}
}

// patch looks at the glued patch of a twisted or flat handle.
func (l *inspection) patch(face geometry.Rect) {
	h := l.spec.Handle
	low := l.levels.TopFold - h.Drop - h.PatchHeight
	at := geometry.Vec2{X: face.Center().X, Y: l.levels.TopFold - h.Drop}
	if beside := (face.Width() - h.PatchWidth) / 2; beside < patchToEdge {
		severity := Warning
		if beside < 0 {
			severity = Error
		}
		l.find(severity, "patch-wide", at,
			sentence("the patch, %s wide, leaves %s beside it on the face", mm(h.PatchWidth), mm(beside)),
			sentence("make the patch at most %s wide", mm(face.Width()-2*patchToEdge)))
	}
	if low < face.Min.Y {
		l.find(Error, "patch-low", at,
			sentence("the patch hangs %s below the base crease", mm(face.Min.Y-low)),
			sentence("make the drop or the patch height smaller"))
	}
	if h.Spacing+2*patchOverLeg > h.PatchWidth {
		l.find(Warning, "patch-narrow", at,
			sentence("the legs of the handle stand %s apart, too far for a patch %s wide", mm(h.Spacing), mm(h.PatchWidth)),
			sentence("make the patch at least %s wide, or the spacing at most %s", mm(h.Spacing+2*patchOverLeg), mm(max(h.PatchWidth-2*patchOverLeg, 0))))
	}
}

// cord reminds of small children where a loop of cord is long.
func (l *inspection) cord(at geometry.Vec2) {
	if loop := l.spec.Handle.Loop(); loop > bag.LongLoop {
		l.find(Note, "cord-loop", at,
			sentence("the handle makes a loop of %s, long enough to be dangerous to small children", mm(loop)),
			sentence("say so on bags for toys or children's goods, and follow the local rules for cords"))
	}
}
