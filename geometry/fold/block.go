package fold

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
)

// baseLayers are the layers of the base above the ground, in calipers, of one face:
// its flap, the seam flap glued to that, and their corners turned in over them.
type baseLayers struct{ flap, seam, seamCorner, corner float64 }

// The back flap lies outermost, since the front flap closes first. The gusset flaps
// lie on the inside of all.
var (
	frontBase = baseLayers{flap: 1, seam: 1.5, seamCorner: 2, corner: 2.5}
	backBase  = baseLayers{flap: 0, seam: 0.5, seamCorner: 2.75, corner: 3}
)

const (
	gussetBase = 4.0
	cardOnBase = 5.0
)

// blockPiece folds a piece of a bag with a block base: square round the panel
// edges, the turn-in to the inside, the base flaps over each other.
func (b *builder) blockPiece(piece *blank.Piece, index int, openings []Opening) {
	pose := b.firstPose(index, b.spec.Body.Gusset)
	lastFace := ""
	for i, column := range columnsOf(piece) {
		if i > 0 {
			edge := upright(column.Box.Min.X)
			pose = pose.Turn(edge.from, edge.to, quarter)
		}
		placed := pose
		if column.Column == "seam-flap" {
			placed = b.sinkFlap(pose)
		} else if !isGusset(column.Column) {
			lastFace = column.Column
		}
		for _, part := range b.halves(column) {
			b.add(column, index, part, placed, openings)
		}
		b.turnIn(piece, index, column, placed, openings)
		b.blockBase(piece, index, column, placed, lastFace)
	}
}

// glueFace returns the face that a seam flap is glued to: the one that begins where
// the tube closes.
func (b *builder) glueFace(lastFace string) string {
	if lastFace == "front" {
		return "back" // the first of two pieces
	}
	return "front"
}

// sinkFlap moves the seam flap to the inside of the face it is glued to. Its crease
// stands off the face by the relief already.
func (b *builder) sinkFlap(pose Pose) Pose {
	stands := 0.0
	if b.spec.Body.Gusset > 0 && b.spec.Body.Base != bag.BasePinch {
		stands = b.spec.Body.SeamRelief
	}
	return pose.Sink(max(layerFlap*b.caliper-stands, 0))
}

// turnIn folds the row above the top fold to the inside of its column.
func (b *builder) turnIn(piece *blank.Piece, index int, column *blank.Panel, pose Pose, openings []Opening) {
	panel := rowOf(piece, column.Column, blank.RowTurnIn)
	if panel == nil {
		return
	}
	layer := layerTurnIn
	if column.Column == "seam-flap" {
		layer = layerFlapTurnIn - layerFlap
	}
	from, to := level(piece.Levels.TopFold)
	folded := pose.Sink(layer*b.caliper).Turn(from, to, math.Pi)
	for _, part := range b.halves(panel) {
		b.add(panel, index, part, folded, openings)
	}
}

// blockBase folds what hangs below the base crease under the bag.
func (b *builder) blockBase(piece *blank.Piece, index int, column *blank.Panel, pose Pose, lastFace string) {
	panel := rowOf(piece, column.Column, blank.RowBase)
	if panel == nil {
		return
	}
	from, to := level(piece.Levels.Base)
	pose = pose.Turn(from, to, quarter)
	raise := func(p Pose, layer float64) Pose { return p.Move(geometry.Vec3{Z: layer * b.caliper}) }
	corners := cornersOf(panel)
	if isGusset(panel.Column) {
		b.add(panel, index, corners, raise(pose, gussetBase), nil)
		return
	}
	face := panel.Column
	if face == "seam-flap" {
		face = b.glueFace(lastFace)
	}
	layers := frontBase
	if face == "back" {
		layers = backBase
	}
	flap, corner := layers.flap, layers.corner
	if panel.Column == "seam-flap" {
		flap, corner = layers.seam, layers.seamCorner
	}
	if b.spec.Body.Base == bag.BaseSlotted {
		b.add(panel, index, corners, raise(pose, flap), nil)
		return
	}
	b.envelope(panel, index, raise(pose, flap), (corner-flap)*b.caliper, piece.Levels.Base)
}

// envelope adds a base flap with its corners turned in along the lines that run
// down from the base corners at 45°. lift is how far the corners lie above it.
func (b *builder) envelope(panel *blank.Panel, index int, pose Pose, lift, base float64) {
	corners := cornersOf(panel)
	left := slant(panel.Box.Min.X, base, 1)
	if panel.Column == "seam-flap" {
		left = slant(panel.Box.Min.X, base-b.spec.Body.SeamRelief, 1)
		b.add(panel, index, clip(corners, left), pose, nil)
		b.addCorner(panel, index, clip(corners, left.turned()), left, pose, lift)
		return
	}
	right := slant(panel.Box.Max.X, base, -1)
	middle := upright(panel.Box.Center().X)
	b.add(panel, index, clip(corners, left, right), pose, nil)
	b.addCorner(panel, index, clip(corners, left.turned(), middle), left, pose, lift)
	b.addCorner(panel, index, clip(corners, right.turned(), middle.turned()), right, pose, lift)
}

func (b *builder) addCorner(panel *blank.Panel, index int, corners []geometry.Vec2, crease line, pose Pose, lift float64) {
	folded := pose.Turn(crease.from, crease.to, math.Pi).Move(geometry.Vec3{Z: lift})
	b.add(panel, index, corners, folded, nil)
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
