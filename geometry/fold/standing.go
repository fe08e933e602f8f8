package fold

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
)

// Layers, in calipers from the print side of a face or gusset toward the inside of
// the bag. A sheet is drawn as its print side, so a layer whose print side shows to
// the inside lies one further in than its reverse.
const (
	layerTopCard    = 1.0 // under the turn-in
	layerTurnIn     = 2.0 // folded over first, while the blank lies flat
	layerFlap       = 3.0 // the seam flap, glued onto face and turn-in
	layerFlapTurnIn = 3.5 // its own turn-in
	layerPatch      = 5.0
)

// flatGap is how far apart front and back of a closed bag are: twelve calipers for
// all that lies between them.
const flatGap = 12.0

const quarter = math.Pi / 2

// builder gathers the facets of a body.
type builder struct {
	laid    *blank.Blank
	spec    *bag.Spec
	caliper float64
	stance  stance
	faces   []facePose // of the faces, for what hangs on them
	flat    bool       // packed, so that nothing has room between the faces
	body    Body
}

// facePose is where a face lies, or the upper part of it.
type facePose struct {
	panel  *blank.Panel
	piece  int
	pose   Pose
	lifted float64 // mm to the print side of where paper without thickness would be
}

// Standing returns the bag as it stands open on its base.
//
// A bag with a pinch base has no block to stand on. It is shown held open: the
// faces lean from the fold at the bottom to the open top, and each gusset makes a
// triangle between them with two more against the faces, which is exact with the
// same creases as the packed bag has beside its base. A flat bag is shown closed,
// as it comes from the gluer, front and back some millimetres apart, because
// it opens only by bending its faces.
func Standing(laid *blank.Blank) Body {
	return folded(laid, standingStance(&laid.Spec.Body))
}

// folded returns the bag with its folds as far closed as the stance says.
func folded(laid *blank.Blank, s stance) Body {
	b := newBuilder(laid, s)
	for i := range laid.Pieces {
		piece := &laid.Pieces[i]
		openings := openingsOf(piece)
		if b.shut() {
			b.pinchPiece(piece, i, openings)
		} else {
			b.tubePiece(piece, i, openings)
		}
	}
	b.cards()
	b.handles()
	return b.body
}

func newBuilder(laid *blank.Blank, s stance) *builder {
	b := &builder{laid: laid, spec: &laid.Spec, caliper: laid.Spec.Paper.Thickness(), stance: s}
	b.body.Caliper = b.caliper
	b.body.Facets = make([]Facet, 0, 48)
	return b
}

// shut tells whether the tube of a bag with a pinch base is closed flat, from where
// on it folds as a wedge.
func (b *builder) shut() bool {
	s := &b.stance
	return b.pinched() && s.seam == 1 && (b.spec.Body.Gusset == 0 || s.tuck == quarter)
}

// face adds a face, or the upper part of it.
func (b *builder) face(panel *blank.Panel, piece int, corners []geometry.Vec2, pose Pose, openings []Opening) {
	b.faces = append(b.faces, facePose{panel: panel, piece: piece, pose: pose})
	b.add(panel, piece, corners, pose, openings)
}

// add makes a facet of part of a panel, if there is any of it.
func (b *builder) add(panel *blank.Panel, piece int, corners []geometry.Vec2, pose Pose, openings []Opening) {
	if len(corners) < 3 {
		return
	}
	if panel.Column == "seam-flap" {
		openings = nil
	}
	b.body.Facets = append(b.body.Facets, newFacet(panel.ID, piece, corners, pose, openings))
}

// openingsOf returns the holes, hand holes and slits of a piece.
func openingsOf(piece *blank.Piece) []Opening {
	var openings []Opening
	for _, h := range piece.Holes {
		openings = append(openings, Opening{h.Center, h.Center, h.Diameter / 2})
	}
	for _, cut := range piece.CutOuts() {
		// One straight edge leads there, the other back.
		there, back := cut.Shape.Edge(0), cut.Shape.Edge(2)
		openings = append(openings, Opening{
			From: there.From.Mid(back.To), To: there.To.Mid(back.From),
			Radius: back.From.Sub(there.To).Length() / 2,
		})
	}
	return openings
}

// columnsOf returns the body panel of each column of a piece, from left to right.
func columnsOf(piece *blank.Piece) []*blank.Panel {
	var columns []*blank.Panel
	for i := range piece.Panels {
		if piece.Panels[i].Row == blank.RowBody {
			columns = append(columns, &piece.Panels[i])
		}
	}
	return columns
}

// rowOf returns a panel of the same column in another row, or nil.
func rowOf(piece *blank.Piece, column string, row blank.Row) *blank.Panel {
	for i := range piece.Panels {
		if p := &piece.Panels[i]; p.Column == column && p.Row == row {
			return p
		}
	}
	return nil
}

func isGusset(column string) bool { return column == "gusset-right" || column == "gusset-left" }

// halves returns the two halves of a panel of a gusset, or the whole of any other.
// The crease lies half a gusset from the left: the relief is taken from the right.
func (b *builder) halves(panel *blank.Panel) [][]geometry.Vec2 {
	corners := cornersOf(panel)
	if !isGusset(panel.Column) {
		return [][]geometry.Vec2{corners}
	}
	crease := upright(panel.Box.Min.X + b.spec.Body.Gusset/2)
	return [][]geometry.Vec2{clip(corners, crease), clip(corners, crease.turned())}
}

// level returns the two ends of a horizontal crease, from left to right, for turns
// about it.
func level(y float64) (from, to geometry.Vec2) { return geometry.Vec2{Y: y}, geometry.Vec2{X: 1, Y: y} }
