package fold

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
)

// tubePiece folds a piece along its panel edges, from flat to a square tube and, for
// a pinch base, on to a flat one. Places are reckoned for paper without thickness;
// layers are moved apart as they come to lie on each other.
func (b *builder) tubePiece(piece *blank.Piece, index int, openings []Opening) {
	pose := b.firstPose(index)
	lastFace := ""
	for i, column := range columnsOf(piece) {
		if i > 0 {
			angle := b.stance.edge
			if column.Column == "seam-flap" {
				angle = b.stance.flap
			}
			edge := upright(column.Box.Min.X)
			pose = pose.Turn(edge.from, edge.to, angle+b.stance.tuck)
		}
		switch {
		case isGusset(column.Column):
			pose = b.tubeGusset(piece, index, column, pose)
		case column.Column == "seam-flap":
			b.tubeFlap(piece, index, column, pose, b.glueFace(lastFace))
		default:
			lastFace = column.Column
			b.tubeFace(piece, index, column, pose, openings)
		}
	}
}

// tubeFace adds a face with its turn-in and its base flap.
func (b *builder) tubeFace(piece *blank.Piece, index int, column *blank.Panel, pose Pose, openings []Opening) {
	lifted := 0.0
	if column.Column == "back" {
		lifted = b.flatLayer(flatGap)
		pose = pose.Sink(-lifted)
	}
	b.face(column, index, cornersOf(column), pose, openings)
	b.faces[len(b.faces)-1].lifted = lifted
	b.turnIn(piece, index, column, pose, layerTurnIn, openings)
	if b.pinched() {
		b.hang(piece, index, column, pose)
		return
	}
	if panel := rowOf(piece, column.Column, blank.RowBase); panel != nil {
		b.faceFlap(panel, index, pose, column.Column, piece.Levels.Base)
	}
}

// flatLayer returns how far a layer of a closed flat bag, given in calipers, lies
// from where paper without thickness would, in mm.
func (b *builder) flatLayer(layer float64) float64 {
	switch {
	case !b.pinched():
		return 0
	case b.spec.Body.Gusset > 0:
		return layer * b.caliper * b.stance.tuck / quarter
	case b.laid.Seams == 2:
		return layer * b.caliper * (1 - b.stance.apart)
	}
	return layer * b.caliper * b.stance.edge / math.Pi
}

// tubeFlap adds the seam flap, which goes to the inside of a face. Its crease stands
// off the edge of the face by the relief until it is pressed on.
func (b *builder) tubeFlap(piece *blank.Piece, index int, column *blank.Panel, pose Pose, face string) {
	s := &b.stance
	if relief := b.spec.Body.SeamRelief * s.seam; relief > 0 && b.spec.Body.Gusset > 0 {
		sin, cos := math.Sincos(s.tuck)
		pose = pose.Move(pose.Right.Scale(relief * (1 - sin))).Sink(-relief * cos)
	}
	if face == "back" && b.spec.Body.Gusset > 0 {
		pose = pose.Sink(-b.flatLayer(flatGap))
	}
	depth := layerFlap * b.caliper * min(s.flap/quarter, 1)
	if b.spec.Body.Gusset == 0 { // it lies over the face that it hangs on
		own := b.faces[len(b.faces)-1]
		pose = pose.Move(own.pose.Out().Scale(own.lifted))
		depth = (layerFlap - flatGap) * b.caliper * s.flap / math.Pi
	}
	placed := pose.Sink(depth)
	b.add(column, index, cornersOf(column), placed, nil)
	b.turnIn(piece, index, column, placed, layerFlapTurnIn-layerFlap, nil)
	if b.pinched() {
		b.hang(piece, index, column, placed)
		return
	}
	if panel := rowOf(piece, column.Column, blank.RowBase); panel != nil {
		b.flapBase(panel, index, pose, face, piece.Levels.Base, depth)
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

// tubeGusset adds a gusset and returns the pose of its right half.
func (b *builder) tubeGusset(piece *blank.Piece, index int, column *blank.Panel, pose Pose) Pose {
	crease := upright(column.Box.Min.X + b.spec.Body.Gusset/2)
	second := pose.Turn(crease.from, crease.to, -2*b.stance.tuck)
	if !b.pinched() {
		for _, part := range b.halves(column) {
			b.add(column, index, part, pose, nil)
		}
		b.turnIn(piece, index, column, pose, layerTurnIn, nil)
		b.gussetBase(piece, index, column, pose)
		return second
	}
	w := b.wedge(piece.Levels.TopFold - piece.Levels.Base)
	for i, g := range b.gussetHalves(piece, index, column, w) {
		half := pose
		if i == 1 {
			half = second
		}
		// The halves come to lie on the inside of the faces.
		depth := layerGusset + g.sunk
		if g.face > 0 {
			depth = flatGap - depth
		}
		half = half.Move(geometry.Vec3{Y: b.flatLayer(depth)})
		b.addGussetHalf(&g, half, half, lerp(layerTurnIn, layerGusset-layerGussetTurnIn, b.stance.tuck/quarter))
	}
	return second
}

// turnIn folds the row above the top fold to the reverse of its column. layer is how
// many calipers further in it ends.
func (b *builder) turnIn(piece *blank.Piece, index int, column *blank.Panel, pose Pose, layer float64, openings []Opening) {
	panel := rowOf(piece, column.Column, blank.RowTurnIn)
	if panel == nil {
		return
	}
	folded := b.turnedDown(pose, piece.Levels.TopFold, layer)
	for _, part := range b.halves(panel) {
		b.add(panel, index, part, folded, openings)
	}
}

// turnedDown returns where the row above the top fold goes of a part at pose.
func (b *builder) turnedDown(pose Pose, topFold, layer float64) Pose {
	from, to := level(topFold)
	turned := b.stance.turnIn
	return pose.Sink(layer*b.caliper*turned/math.Pi).Turn(to, from, turned)
}

// pinched tells whether the bag has a pinch base.
func (b *builder) pinched() bool { return b.spec.Body.Base == bag.BasePinch }
