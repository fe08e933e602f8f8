package blank

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// liner gathers the cuts and creases of a piece.
type liner struct{ lines []Line }

func (l *liner) crease(role Role, fold Fold, x1, y1, x2, y2 float64) {
	if math.Hypot(x2-x1, y2-y1) <= geometry.Tolerance {
		return
	}
	edge := geometry.Edge{From: geometry.Vec2{X: x1, Y: y1}, To: geometry.Vec2{X: x2, Y: y2}}
	l.lines = append(l.lines, Line{Edge: edge, Kind: Crease, Role: role, Fold: fold})
}

// lines returns the cuts of the outline and all creases. A crease is one line as
// long as its fold direction stays the same, so that a die-maker can bend it
// from one length of rule.
func (f *frame) lines(outline geometry.Path) []Line {
	l := liner{make([]Line, 0, outline.Len()+48)}
	for i := range outline.Len() {
		l.lines = append(l.lines, Line{Edge: outline.Edge(i), Kind: Cut, Role: RoleOutline, Fold: NoFold})
	}
	f.panelEdges(&l)
	f.gussetCreases(&l)
	f.baseCrease(&l)
	if f.hasTurnIn() {
		l.crease(RoleTopFold, Mountain, 0, f.levels.TopFold, f.width(), f.levels.TopFold)
	}
	if f.levels.FlatFold > f.levels.Base {
		f.flatFold(&l)
		f.packCreases(&l)
	}
	if f.body.Base == bag.BaseBlock {
		f.baseCorners(&l)
	}
	return l.lines
}

// panelEdges draws the vertical creases between columns. In the turn-in they
// fold the other way, since it shows its print side to the inside of the bag;
// below the base crease of a block base they turn the corners in.
func (f *frame) panelEdges(l *liner) {
	for _, c := range f.columns[1:] {
		x := c.left
		if f.hasBlock() {
			l.crease(RolePanelEdge, Mountain, x, f.levels.Base, x, f.bodyTop())
			if f.slot == 0 {
				l.crease(RolePanelEdge, Valley, x, 0, x, f.levels.Base)
			}
		} else {
			l.crease(RolePanelEdge, Mountain, x, 0, x, f.bodyTop())
		}
		if f.hasTurnIn() {
			l.crease(RolePanelEdge, Valley, x, f.levels.TopFold, x, f.levels.Top)
		}
	}
}

// bodyTop is where creases of the body end: at the top fold, or at the foot of
// the teeth of a zigzag.
func (f *frame) bodyTop() float64 {
	if f.hasTurnIn() {
		return f.levels.TopFold
	}
	return f.lowEdge()
}

// gussetCreases draws the middle of each gusset, from the flat-fold crease up.
// Below it the gusset stays a plane triangle when the bag packs flat. A pinch
// base is folded with the gussets closed, so there the crease runs through.
func (f *frame) gussetCreases(l *liner) {
	bottom := f.levels.FlatFold
	if !f.hasBlock() {
		bottom = 0
	}
	for _, c := range f.columns {
		if c.kind != gusset {
			continue
		}
		top := f.bodyTop()
		if f.teeth > 0 {
			top = f.topEdgeAt(c, c.center())
		}
		l.crease(RoleGusset, Valley, c.center(), bottom, c.center(), top)
		if f.hasTurnIn() {
			l.crease(RoleGusset, Mountain, c.center(), f.levels.TopFold, c.center(), f.levels.Top)
		}
	}
}

// topEdgeAt returns the height of the zigzag above the point x of a column.
func (f *frame) topEdgeAt(c column, x float64) float64 {
	pitch := c.width / float64(f.teethOn(c))
	phase := math.Mod(c.right()-x, pitch) / pitch
	return f.lowEdge() + f.teeth*(1-math.Abs(2*phase-1))
}

// baseCrease draws the line between body and base flaps. A block base folds away
// from the viewer all round. A pinch base folds the closed tube over to the back
// as one, so the layers that face the other way fold the other way.
func (f *frame) baseCrease(l *liner) {
	y := f.levels.Base
	if f.hasBlock() {
		right := f.width()
		if f.slot > 0 {
			right -= f.columns[len(f.columns)-1].width
		}
		l.crease(RoleBase, Mountain, 0, y, right, y)
		return
	}
	f.strips(func(left, right float64, with facing, inGusset bool) {
		fold := Mountain
		if (with == withBack) != inGusset {
			fold = Valley
		}
		l.crease(RoleBase, fold, left, y, right, y)
	})
}

// flatFold draws the line half a gusset above the base on the front, on the half
// gussets beside it and on the seam flap that is glued to it.
func (f *frame) flatFold(l *liner) {
	y := f.levels.FlatFold
	f.strips(func(left, right float64, with facing, inGusset bool) {
		switch {
		case with == withBack:
		case inGusset:
			l.crease(RoleFlatFold, Mountain, left, y, right, y)
		default:
			l.crease(RoleFlatFold, Valley, left, y, min(right, f.rightEdgeAt(y)), y)
		}
	})
}

// strips visits each face, half gusset and seam flap from left to right with the
// face it moves with.
func (f *frame) strips(visit func(left, right float64, with facing, inGusset bool)) {
	for _, c := range f.columns {
		if c.kind == gusset {
			visit(c.left, c.center(), c.with, true)
			visit(c.center(), c.right(), c.with.other(), true)
			continue
		}
		visit(c.left, c.right(), c.with, false)
	}
}

// packCreases draws the lines from the base corners up at 45° to where gusset
// crease and flat-fold crease meet. Beside the seam flap the corner itself lies
// in the relief, so the line ends on the panel edge that much higher.
func (f *frame) packCreases(l *liner) {
	for _, c := range f.columns {
		if c.kind != gusset {
			continue
		}
		x, y := c.center(), f.levels.FlatFold
		l.crease(RolePack, Valley, c.left, y-(x-c.left), x, y)
		l.crease(RolePack, Valley, c.right(), y-(c.right()-x), x, y)
	}
}

// baseCorners draws the lines from the base corners down at 45° into the front
// and back base flaps, and through the seam flap that is glued to such a flap.
func (f *frame) baseCorners(l *liner) {
	base := f.levels.Base
	for _, c := range f.columns {
		switch c.kind {
		case face:
			reach := min(base, c.width)
			l.crease(RoleBaseCorner, Mountain, c.left, base, c.left+reach, base-reach)
			l.crease(RoleBaseCorner, Mountain, c.right(), base, c.right()-reach, base-reach)
		case seamFlap:
			from := base - f.body.SeamRelief
			slope := f.flap.Vertices[1].Y / c.width
			reach := min(from/(1+slope), c.width)
			l.crease(RoleBaseCorner, Mountain, c.left, from, c.left+reach, from-reach)
		}
	}
}
