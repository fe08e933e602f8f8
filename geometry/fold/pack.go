package fold

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
)

// Layers of a packed block bag on the outside of its front, in calipers from the
// print side of that toward the viewer: the strip of the front below the flat-fold
// crease with what is glued to it, the small triangles of the gussets, the triangles
// beside the base, and the base, whose own layers lie between that and gussetBase
// less.
const (
	packedStrip        = 1.0
	packedSeam         = 1.2 // from the strip
	packedSmall        = 3.5
	packedBaseTriangle = 5.0
	packedBase         = 11.0
)

// Packed returns the bag packed flat, upright, the front toward the viewer. A bag
// with a block base lies with its base folded up against the front, as if each fold
// were closed by π: with u across a gusset from front to back and y up from the base
// crease, the gusset goes to the depth min(u, D − u) from the side at the height y
// above the pack creases, to the depth u at D − y between flat-fold and front pack
// crease, and to the depth y at D − u beside the base. A bag that does not pack, as
// the obstacle of its lesson says, is returned as if its layers could pass.
func Packed(laid *blank.Blank) Body { return packing(laid, 1) }

// packing returns the bag on its way from standing, at moment 0, to packed flat, at
// moment 1. With a pinch base that is exact. With a block base faces, turn-ins, base
// and the upper gussets move as plane paper would, joined at all creases; the two
// triangles at each end of the base that close the corner are stretched and pressed
// on the way, since no motion of plane facets does it.
func packing(laid *blank.Blank, moment float64) Body {
	s := standingStance(&laid.Spec.Body)
	s.baseCard.shown = false // it is taken out before
	b := newBuilder(laid, s)
	b.flat = moment > 0
	if b.pinched() {
		b.stance.open = 1 - moment
		for i := range laid.Pieces {
			b.pinchPiece(&laid.Pieces[i], i, openingsOf(&laid.Pieces[i]))
		}
	} else {
		p := packer{builder: b, collapse: collapseAt(moment), depth: laid.Spec.Body.Gusset, weight: moment}
		for i := range laid.Pieces {
			p.piece(&laid.Pieces[i], i)
		}
	}
	b.cards()
	b.handles()
	return b.body
}

// collapse is how far a block bag is packed, angles in radians: the strip of the
// front below the flat-fold crease has turned up, from 0 to π, the base has swung up
// about the base crease of the back, and the gussets lean from square to flat.
type collapse struct{ strip, base, tuck float64 }

// collapseAt returns a moment of the packing. Strip and base keep their lengths and
// stay joined: the front lies D·cos(tuck) before the back, the front edge of the
// base D·cos(base) before and D·sin(base) above the base crease of the back, and the
// strip of D/2 leads from the height D/2 on the front to that edge.
func collapseAt(moment float64) collapse {
	switch {
	case moment <= 0:
		return collapse{}
	case moment >= 1:
		return collapse{math.Pi, quarter, quarter}
	}
	strip := stripAt(moment)
	base := math.Asin((1 - math.Cos(strip)) / 2)
	return collapse{strip, base, math.Acos(min(max(math.Cos(base)-math.Sin(strip)/2, 0), 1))}
}

// stripAt eases the strip in: the gussets move with the root of its angle at first.
func stripAt(moment float64) float64 {
	return math.Pi * moment * moment * (2 - moment)
}

// packer builds a block bag on its way to the flat state, in which its back stays
// where it stands.
type packer struct {
	*builder
	collapse
	depth  float64 // D
	weight float64 // share to which the layers lie on each other
}

// ahead is the distance of a layer of the packed bag from the plane of the back, in
// mm, given in calipers from the front.
func (p *packer) ahead(layer float64) float64 {
	return (flatGap - layer) * p.caliper * p.weight
}

func (p *packer) piece(piece *blank.Piece, index int) {
	openings := openingsOf(piece)
	lastFace := ""
	for _, column := range columnsOf(piece) {
		switch {
		case isGusset(column.Column):
			p.gusset(piece, index, column)
		case column.Column == "seam-flap":
			p.seamFlap(piece, index, column, p.glueFace(lastFace))
		default:
			lastFace = column.Column
			p.bodyFace(piece, index, column, openings)
		}
	}
}

// facePlane returns where the upper part of a face lies, with a point of the blank
// on the base crease at its left edge.
func (p *packer) facePlane(face string, left geometry.Vec2) Pose {
	pose := Pose{Right: geometry.Vec3{X: 1}, Up: geometry.Vec3{Z: 1}}
	at := geometry.Vec3{Y: p.depth*(1-math.Cos(p.tuck)) - p.ahead(0)}
	if face == "back" {
		pose.Right.X = -1
		at = geometry.Vec3{X: p.spec.Body.Width, Y: p.depth}
	}
	pose.Origin = at.Sub(pose.At(left))
	return pose
}

// bodyFace adds a face: the front is folded along the flat-fold crease.
func (p *packer) bodyFace(piece *blank.Piece, index int, column *blank.Panel, openings []Opening) {
	levels := piece.Levels
	pose := p.facePlane(column.Column, geometry.Vec2{X: column.Box.Min.X, Y: levels.Base})
	if column.Column == "front" {
		from, to := level(levels.FlatFold)
		above := line{from, to}
		p.face(column, index, clip(cornersOf(column), above), pose, openings)
		p.add(column, index, clip(cornersOf(column), above.turned()), p.strip(pose, levels), openings)
	} else {
		p.face(column, index, cornersOf(column), pose, openings)
	}
	p.turnIn(piece, index, column, pose, layerTurnIn, openings)
	if panel := rowOf(piece, column.Column, blank.RowBase); panel != nil {
		from := len(p.body.Facets)
		p.faceFlap(panel, index, p.standing(column.Column, column.Box.Min.X, levels.Base), column.Column, levels.Base)
		p.swing(from)
	}
}

// strip returns where the part of the front below the flat-fold crease has turned.
func (p *packer) strip(front Pose, levels blank.Levels) Pose {
	from, to := level(levels.FlatFold)
	return front.Sink(-packedStrip*p.caliper*p.weight).Turn(to, from, p.collapse.strip)
}

// seamFlap adds the seam flap on the inside of the face it is glued to.
func (p *packer) seamFlap(piece *blank.Piece, index int, column *blank.Panel, face string) {
	levels := piece.Levels
	glued := column.Box.Min.X - p.spec.Body.SeamRelief
	plane := p.facePlane(face, geometry.Vec2{X: glued, Y: levels.Base})
	pose := plane.Sink(layerFlap * p.caliper)
	if face == "front" {
		from, to := level(levels.FlatFold)
		above := line{from, to}
		p.add(column, index, clip(cornersOf(column), above), pose, nil)
		depth := lerp(layerFlap, packedSeam, p.weight) * p.caliper
		p.add(column, index, clip(cornersOf(column), above.turned()), p.strip(plane, levels).Sink(depth), nil)
	} else {
		p.add(column, index, cornersOf(column), pose, nil)
	}
	p.turnIn(piece, index, column, pose, layerFlapTurnIn-layerFlap, nil)
	if panel := rowOf(piece, column.Column, blank.RowBase); panel != nil {
		from := len(p.body.Facets)
		p.flapBase(panel, index, p.standing(face, glued, levels.Base), face, levels.Base, 0)
		p.swing(from)
	}
}

// standing returns where a face of the standing bag is, with left its left edge on
// the blank.
func (p *packer) standing(face string, left, base float64) Pose {
	if face == "front" {
		return Pose{geometry.Vec3{X: -left, Z: -base}, geometry.Vec3{X: 1}, geometry.Vec3{Z: 1}}
	}
	return Pose{geometry.Vec3{X: p.spec.Body.Width + left, Y: p.depth, Z: -base}, geometry.Vec3{X: -1}, geometry.Vec3{Z: 1}}
}

// swing moves the facets from an index on, which were added to the base of the
// standing bag, up with the base.
func (p *packer) swing(from int) {
	hinge := geometry.Vec3{Y: p.depth}
	for i := from; i < len(p.body.Facets); i++ {
		f := &p.body.Facets[i]
		f.Pose = f.Pose.Move(geometry.Vec3{Z: -p.ahead(-packedBase)}).about(hinge, geometry.Vec3{X: 1}, -p.collapse.base)
		for c, corner := range f.Corners {
			f.Points[c] = f.Pose.At(corner)
		}
	}
}
