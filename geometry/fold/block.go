package fold

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
)

// baseLayers are the layers of the base above the ground, in calipers, of one face:
// its flap, the seam flap glued to that, and their corners turned in over them.
type baseLayers struct{ flap, seam, seamCorner, corner float64 }

// The back flap lies outermost with its corners, which it brings along when it closes
// over the front flap. The gusset flaps lie on the inside of all.
var (
	frontBase = baseLayers{flap: 2, seam: 2.4, seamCorner: 2.8, corner: 3.2}
	backBase  = baseLayers{flap: 0, seam: 0.4, seamCorner: 0.8, corner: 1.2}
)

const (
	gussetBase = 4.0
	// The left gusset flap lies under the right one where they reach past each other.
	leftGussetBase = 3.25
	cardOnBase     = 5.0
)

func layersOf(face string) baseLayers {
	if face == "back" {
		return backBase
	}
	return frontBase
}

// gussetFlapsMeet tells whether the base flaps of the gussets are longer than half a
// face, so that one lies on the other.
func gussetFlapsMeet(body *bag.Body) bool { return 2*body.BaseFlap() > body.Width }

// gussetBase turns the base flap of a gusset in.
func (b *builder) gussetBase(piece *blank.Piece, index int, column *blank.Panel, pose Pose) {
	panel := rowOf(piece, column.Column, blank.RowBase)
	if panel == nil {
		return
	}
	layer := gussetBase
	if column.Column == "gusset-left" && gussetFlapsMeet(&b.spec.Body) {
		layer = leftGussetBase
	}
	angle := b.stance.gussetFlap(column.Column)
	from, to := level(piece.Levels.Base)
	b.add(panel, index, cornersOf(panel), pose.Turn(from, to, angle).Sink(layer*b.caliper*angle/quarter), nil)
}

// faceFlap turns the base flap of a face in, with its corners.
func (b *builder) faceFlap(panel *blank.Panel, index int, pose Pose, face string, base float64) {
	layers, share := layersOf(face), b.baseShare(face)
	from, to := level(base)
	flap := pose.Turn(from, to, b.stance.faceFlap(face)).Sink(layers.flap * b.caliper * share)
	corners := cornersOf(panel)
	if b.spec.Body.Base == bag.BaseSlotted {
		b.add(panel, index, corners, flap, nil)
		return
	}
	left, right := slant(panel.Box.Min.X, base, 1), slant(panel.Box.Max.X, base, -1)
	middle := upright(panel.Box.Center().X)
	lift := layers.corner - layers.flap
	b.add(panel, index, clip(corners, left, right), flap, nil)
	b.corner(panel, index, clip(corners, left.turned(), middle), left, flap, lift)
	b.corner(panel, index, clip(corners, right.turned(), middle.turned()), right, flap, lift)
}

// flapBase turns in what of the seam flap is glued to the base flap of a face. pose
// is that of the seam flap on the plane of the face, depth how far it is sunk from
// there above the base crease.
func (b *builder) flapBase(panel *blank.Panel, index int, pose Pose, face string, base, depth float64) {
	layers, share := layersOf(face), b.baseShare(face)
	from, to := level(base)
	flap := pose.Turn(from, to, b.stance.faceFlap(face)).Sink(lerp(depth, layers.seam*b.caliper, share))
	corners := cornersOf(panel)
	left := slant(panel.Box.Min.X, base-b.spec.Body.SeamRelief, 1)
	b.add(panel, index, clip(corners, left), flap, nil)
	b.corner(panel, index, clip(corners, left.turned()), left, flap, layers.seamCorner-layers.seam)
}

// corner folds a corner of a base flap over along its crease. lift is how many
// calipers it ends above the flap.
func (b *builder) corner(panel *blank.Panel, index int, corners []geometry.Vec2, crease line, flap Pose, lift float64) {
	turned := cornerFold(b.stance.right)
	lift *= b.caliper * turned / (2 * quarter)
	b.add(panel, index, corners, flap.Sink(lift).Turn(crease.from, crease.to, turned), nil)
}

// slant returns the line from a base corner down at 45° to the right (1) or to the
// left (−1), with the middle of the flap on its left.
func slant(x, y, direction float64) line {
	l := line{geometry.Vec2{X: x, Y: y}, geometry.Vec2{X: x + direction, Y: y - 1}}
	if direction < 0 {
		return l.turned()
	}
	return l
}
