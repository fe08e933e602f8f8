package fold

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
)

// Layers of a pinch base on the outside of the back, in calipers from its print
// side: what was behind lies inside, the front outermost.
const (
	pinchBack        = 1.0
	pinchGussetBack  = 2.0
	pinchGussetFront = 3.0
	pinchSeam        = 4.2
	pinchFront       = 5.0
)

// Layers of the gusset parts that lie on the inside of a face, in calipers from its
// print side, and how much further in those of the left gusset lie, because two
// deep gussets reach past each other.
const (
	layerGussetTurnIn = 4.2
	layerGusset       = 5.0
	layerOtherGusset  = 0.4
)

// widestOpening is how far a face may lean, as a share of its height.
const widestOpening = 0.6

// wedge is the shape of a bag with a pinch base that is held open. The fold at the
// bottom lies at z = 0; the faces lean so that the top stands open by half of the
// gusset to each side, or less on a low bag.
type wedge struct {
	half   float64 // half of the gusset, D/2
	reach  float64 // of the top edge of a face from the middle plane
	rise   float64 // height of the top edge
	height float64 // of a face on the blank
	gap    float64 // half of the space between the faces where they meet
}

func (b *builder) wedge(height float64) wedge {
	w := wedge{half: b.spec.Body.Gusset / 2, height: height, gap: flatGap / 2 * b.caliper}
	w.reach = min(w.half, widestOpening*height) * math.Sin(b.stance.open*quarter)
	w.rise = math.Sqrt(height*height - w.reach*w.reach)
	return w
}

// middle is y of the plane half way between front and back: the front stands at
// y = 0 at the top.
func (w wedge) middle() float64 { return w.reach + w.gap }

// face returns where a face leans, blank heights counted from the base crease at
// base: side −1 for the front, 1 for the back.
func (w wedge) face(left, base, width, side float64) Pose {
	up := geometry.Vec3{Y: side * w.reach / w.height, Z: w.rise / w.height}
	pose := Pose{Right: geometry.Vec3{X: -side}, Up: up}
	at := geometry.Vec3{Y: w.middle() + side*w.gap}
	if side > 0 {
		at.X = width
	}
	pose.Origin = at.Sub(pose.At(geometry.Vec2{X: left, Y: base}))
	return pose
}

// creaseTop returns where the gusset crease meets the top, measured inward from
// the side of the bag and up from its bottom. It lies D/2 from the top corner of a
// face, (0, reach, rise), and a face's height from the bottom of the crease,
// (D/2, 0, 0). Of the two solutions the one that folds to the inside is taken; they
// are the same where the top stands fully open.
func (w wedge) creaseTop() (inward, up float64) {
	if w.reach == w.half {
		return 0, w.rise
	}
	d, s := w.half, w.height
	// The difference of the two spheres: inward = p + q·up.
	p, q := d-s*s/d, w.rise/d
	// Put into (inward − d)² + up² = s².
	a, half, c := q*q+1, q*(p-d), (p-d)*(p-d)-s*s
	root := math.Sqrt(max(half*half-a*c, 0))
	up = (-half + root) / a
	return p + q*up, up
}

// pinchPiece folds a piece of a bag with a pinch base whose tube is closed.
func (b *builder) pinchPiece(piece *blank.Piece, index int, openings []Opening) {
	base := piece.Levels.Base
	w := b.wedge(piece.Levels.TopFold - base)
	lastFace := ""
	for _, column := range columnsOf(piece) {
		left := column.Box.Min.X
		switch {
		case isGusset(column.Column):
			for _, g := range b.gussetHalves(piece, index, column, w) {
				b.pinchGusset(&g)
			}
		case column.Column == "seam-flap":
			side := sideOf(b.glueFace(lastFace))
			// The crease of the flap lies inside of the face's edge by the relief.
			pose := w.face(left-b.spec.Body.SeamRelief, base, b.spec.Body.Width, side).Sink(layerFlap * b.caliper)
			b.add(column, index, cornersOf(column), pose, nil)
			b.turnIn(piece, index, column, pose, layerFlapTurnIn-layerFlap, nil)
			b.hang(piece, index, column, pose)
		default:
			lastFace = column.Column
			pose := w.face(left, base, b.spec.Body.Width, sideOf(column.Column))
			b.face(column, index, cornersOf(column), pose, openings)
			b.turnIn(piece, index, column, pose, layerTurnIn, openings)
			b.hang(piece, index, column, pose)
		}
	}
}

// sideOf returns −1 for the front and 1 for the back.
func sideOf(face string) float64 {
	if face == "front" {
		return -1
	}
	return 1
}

// hang adds the row below the base crease of a column: of one layer of the tube.
func (b *builder) hang(piece *blank.Piece, index int, column *blank.Panel, pose Pose) {
	layer := pinchSeam
	switch column.Column {
	case "front":
		layer = pinchFront
	case "back":
		layer = pinchBack
	}
	if panel := rowOf(piece, column.Column, blank.RowBase); panel != nil {
		b.add(panel, index, cornersOf(panel), b.foldedOver(pose, piece.Levels.Base, layer), nil)
	}
}

// foldedOver returns where the paper below the base crease goes of a part that lies
// along a face: up the outside of the back, at a layer of it.
func (b *builder) foldedOver(pose Pose, base, layer float64) Pose {
	switch turned := b.stance.pinch; {
	case turned == 0:
		return pose
	case turned < math.Pi:
		back := flatGap * b.caliper
		pose = pose.Move(geometry.Vec3{Y: (back - layer*b.caliper - pose.Origin.Y) * turned / math.Pi})
		return pose.about(geometry.Vec3{Y: back}, geometry.Vec3{X: 1}, turned)
	}
	w := b.wedge(b.laid.Pieces[0].Levels.TopFold - base)
	back := w.face(0, base, b.spec.Body.Width, 1)
	side := pose.At(geometry.Vec2{Y: base}).X
	folded := Pose{Right: pose.Right, Up: back.Up.Scale(-1)}
	at := back.At(geometry.Vec2{Y: base}).Add(back.Out().Scale(layer * b.caliper))
	at.X = side
	folded.Origin = at.Sub(folded.At(geometry.Vec2{Y: base}))
	return folded
}

// gussetHalf is one half of a gusset of a pinch base.
type gussetHalf struct {
	piece  *blank.Piece
	index  int
	column *blank.Panel
	wedge
	crease float64 // x of the gusset crease on the blank
	half   float64 // −1 left of the crease, 1 right of it
	inward float64 // direction along x to the inside of the bag
	face   float64 // the face it hangs on: −1 front, 1 back
	sunk   float64 // calipers that it lies further in
	side   geometry.Vec3
}

// gussetHalves returns the left and the right half of a gusset.
func (b *builder) gussetHalves(piece *blank.Piece, index int, column *blank.Panel, w wedge) [2]gussetHalf {
	g := gussetHalf{
		piece: piece, index: index, column: column, wedge: w, crease: column.Box.Min.X + w.half,
		half: -1, inward: -1, face: sideOf("front"),
		side: geometry.Vec3{X: b.spec.Body.Width, Y: w.middle()}, // the bottom end of the panel edge
	}
	if column.Column == "gusset-left" {
		g.inward, g.sunk, g.side.X = 1, layerOtherGusset, 0
		g.face = sideOf("back")
	}
	other := g
	other.half, other.face = 1, -g.face
	return [2]gussetHalf{g, other}
}

// pinchGusset adds half of a gusset of a wedge: from the foot of its crease, which
// lies between the faces, a triangle against the face and one up to the top edge.
func (b *builder) pinchGusset(g *gussetHalf) {
	levels := g.piece.Levels
	edge := g.crease + g.half*g.wedge.half
	foot, corner := geometry.Vec2{X: g.crease, Y: levels.Base}, geometry.Vec2{X: edge, Y: levels.TopFold}
	top := geometry.Vec2{X: g.crease, Y: levels.TopFold}
	ending := geometry.Vec2{X: edge, Y: levels.Base}

	footAt := g.side.Add(geometry.Vec3{X: g.inward * g.wedge.half})
	cornerAt := g.side.Add(geometry.Vec3{Y: g.face * g.reach, Z: g.rise})
	in, up := g.creaseTop()
	topAt := g.side.Add(geometry.Vec3{X: g.inward * in, Z: up})

	against := through(foot, corner, ending, footAt, cornerAt, g.side)
	above := through(foot, corner, top, footAt, cornerAt, topAt)

	// Everything above was reckoned in the plane between the faces: the part against
	// a face goes out to its layer there, the other as far as the bag is still flat.
	outward := geometry.Vec3{Y: g.face * g.gap}
	leans := g.wedge.face(0, levels.Base, 0, g.face)
	layer := outward.Sub(leans.Out().Scale((layerGusset + g.sunk) * b.caliper))
	open := b.stance.open
	b.addGussetHalf(g, against.Move(layer), above.Move(layer.Scale(1-open)), lerp(layerGusset-layerGussetTurnIn, layerTurnIn, open))
}

// addGussetHalf adds the part against the face and the part up to the top, with
// their turn-ins and the part in the base. aboveTurnIn is the layer of the turn-in
// of the part up to the top.
func (b *builder) addGussetHalf(g *gussetHalf, against, above Pose, aboveTurnIn float64) {
	levels := g.piece.Levels
	edge := g.crease + g.half*g.wedge.half
	crease := line{geometry.Vec2{X: g.crease, Y: levels.Base}, geometry.Vec2{X: edge, Y: levels.TopFold}}
	if g.half < 0 {
		crease = crease.turned() // what lies against the face is below it
	}
	middle := upright(g.crease)
	if g.half > 0 {
		middle = middle.turned()
	}
	b.addPart(g, rowOf(g.piece, g.column.Column, blank.RowBody), against, middle, crease.turned())
	b.addPart(g, rowOf(g.piece, g.column.Column, blank.RowBody), above, middle, crease)
	if turnIn := rowOf(g.piece, g.column.Column, blank.RowTurnIn); turnIn != nil {
		mirrored := crease.mirrored(levels.TopFold)
		below := lerp(layerTurnIn, layerGusset-layerGussetTurnIn, b.stance.tuck/quarter)
		b.addPart(g, turnIn, b.turnedDown(against, levels.TopFold, below), middle, mirrored.turned())
		b.addPart(g, turnIn, b.turnedDown(above, levels.TopFold, aboveTurnIn), middle, mirrored)
	}
	if base := rowOf(g.piece, g.column.Column, blank.RowBase); base != nil {
		depth := pinchGussetFront
		if g.face > 0 {
			depth = pinchGussetBack
		}
		b.addPart(g, base, b.foldedOver(against, levels.Base, depth+g.sunk), middle)
	}
}

func (b *builder) addPart(g *gussetHalf, panel *blank.Panel, pose Pose, lines ...line) {
	b.add(panel, g.index, clip(cornersOf(panel), lines...), pose, nil)
}
