package fold

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
)

// Measures of handles that the spec leaves open, in mm: common practice, no
// published source.
const (
	ropeShare     = 0.42 // radius of a rope as a share of the hole diameter
	ribbonShare   = 0.9  // half width of a ribbon, likewise; of a tape, as a share of half its slit
	ribbonDepth   = 0.5
	stitchedDepth = 1.0 // half of that of the folded end of a tape
	twistedRadius = 2.2
	stripWide     = 6.0
	stripDeep     = 0.8
	eyeletRim     = 1.3
)

// arcPieces is the number of straight pieces that stand for the bend of a handle.
const arcPieces = 28

// How far off a loose part begins its way to its place, in mm.
const (
	topCardWay = 120.0
	beyondTop  = 40.0 // past the top edge
)

// cards adds the loose parts that can be seen: the base card, and the top cards
// until the turn-in hides them.
func (b *builder) cards() {
	for _, card := range b.laid.Cards {
		if card.Width <= 0 || card.Height <= 0 {
			continue
		}
		switch card.Role {
		case "base":
			b.baseCard(card)
		case "top":
			b.topCards(card)
		}
	}
}

func (b *builder) baseCard(card blank.Card) {
	arrives := b.stance.baseCard
	if !arrives.shown {
		return
	}
	body := b.spec.Body
	lift := cardOnBase*b.caliper + bag.Paper{Kind: bag.PaperBoard, Grammage: card.Grammage}.Thickness()
	lift += arrives.left * (body.Height + beyondTop)
	pose := Pose{
		Origin: geometry.Vec3{X: (body.Width - card.Width) / 2, Y: (body.Gusset - card.Height) / 2, Z: lift},
		Right:  geometry.Vec3{X: 1}, Up: geometry.Vec3{Y: 1},
	}
	b.addCard(geometry.RectAt(0, 0, card.Width, card.Height), pose, nil)
}

// topCards lays a card on the reverse of each face, its upper edge along the top fold. It
// has the openings of the face.
func (b *builder) topCards(card blank.Card) {
	arrives := b.stance.topCards
	if !arrives.shown {
		return
	}
	for _, face := range b.faces {
		box, piece := face.panel.Box, &b.laid.Pieces[face.piece]
		shape := geometry.RectAt(box.Center().X-card.Width/2, piece.Levels.TopFold-card.Height, card.Width, card.Height)
		b.addCard(shape, face.pose.Sink(layerTopCard*b.caliper+arrives.left*topCardWay), openingsOf(piece))
	}
}

func (b *builder) addCard(shape geometry.Rect, pose Pose, openings []Opening) {
	corners := make([]geometry.Vec2, 0, 4)
	for _, v := range shape.Path().Vertices {
		corners = append(corners, v.Vec2)
	}
	b.body.Cards = append(b.body.Cards, newFacet("", -1, corners, pose, openings))
}

// handles adds a handle to each face.
func (b *builder) handles() {
	if !b.stance.handle.shown {
		return
	}
	for _, face := range b.faces {
		levels := b.laid.Pieces[face.piece].Levels
		fixing := geometry.Vec2{X: face.panel.Box.Min.X + b.spec.Body.Width/2, Y: levels.TopFold - b.spec.Handle.Drop}
		switch kind := b.spec.Handle.Kind; {
		case kind.HasSlits():
			b.taped(face.pose, fixing)
		case kind.HasHoles():
			b.threaded(face.pose, fixing)
		case kind.HasPatch():
			b.glued(face.pose, fixing)
		}
	}
}

// threaded adds a rope or ribbon that comes out of the holes of a face, with a knot
// behind each, and the eyelets. While it is being threaded it reaches only so far,
// and the knot behind the second hole comes last.
func (b *builder) threaded(pose Pose, fixing geometry.Vec2) {
	h := b.spec.Handle
	wide := h.HoleDiameter * ropeShare
	deep := wide
	if h.Kind == bag.HandleRibbon {
		wide, deep = h.HoleDiameter*ribbonShare, ribbonDepth
	}
	arch := b.arch(pose.Sink(-deep), fixing)
	out := pose.Out()
	behind := func(end geometry.Vec3, depth float64) geometry.Vec3 {
		return end.Sub(out.Scale(deep + depth + layerPatch*b.caliper))
	}
	first, last := arch[0], arch[len(arch)-1]
	path := append([]geometry.Vec3{behind(first, 0)}, arch...)
	left := b.stance.handle.left
	b.cord(begun(append(path, behind(last, 0)), 1-left), out, wide, deep)
	for i, end := range []geometry.Vec3{first, last} {
		if b.spec.Body.Gusset > 0 && !b.flat && (i == 0 || left == 0) { // a closed bag has no room for knots
			knot := max(h.HoleDiameter*0.7, deep)
			b.cord([]geometry.Vec3{behind(end, 0.3*knot), behind(end, 1.3*knot)}, pose.Up, knot, knot)
		}
		if h.Eyelets {
			b.eyelet(pose, end.Sub(out.Scale(deep)))
		}
	}
}

// taped adds a tape that comes out of the slits of a face and covers them, with its
// stitched ends behind. While it is being threaded the second end comes last.
func (b *builder) taped(pose Pose, fixing geometry.Vec2) {
	wide, down := b.spec.Handle.SlitHeight/2*ribbonShare, pose.Up.Scale(-b.spec.Handle.SlitHeight/2)
	arch := b.arch(pose.Sink(-ribbonDepth), fixing)
	out, left := pose.Out(), b.stance.handle.left
	first, last := arch[0], arch[len(arch)-1]
	path := append([]geometry.Vec3{first.Add(down)}, arch...)
	b.cord(begun(append(path, last.Add(down)), 1-left), out, wide, ribbonDepth)
	if b.spec.Body.Gusset == 0 || b.flat { // a closed bag has no room for the ends
		return
	}
	for i, end := range []geometry.Vec3{first, last} {
		if i == 0 || left == 0 {
			behind := end.Sub(out.Scale(ribbonDepth + layerPatch*b.caliper + stitchedDepth))
			b.cord([]geometry.Vec3{behind.Add(down), behind.Sub(down)}, out, wide, stitchedDepth)
		}
	}
}

// begun returns the first part of a path, of at least two points: the given share of
// its length.
func begun(path []geometry.Vec3, share float64) []geometry.Vec3 {
	if share >= 1 {
		return path
	}
	length := 0.0
	for i := 1; i < len(path); i++ {
		length += path[i].Sub(path[i-1]).Length()
	}
	rest := max(share*length, length/1000)
	for i := 1; i < len(path); i++ {
		step := path[i].Sub(path[i-1])
		if along := step.Length(); along < rest {
			rest -= along
			continue
		}
		return append(path[:i:i], path[i-1].Add(step.Unit().Scale(rest)))
	}
	return path
}

func (b *builder) cord(path []geometry.Vec3, out geometry.Vec3, wide, deep float64) {
	stuff := Textile
	if b.spec.Handle.Kind.HasPatch() {
		stuff = Paper
	}
	b.body.Cords = append(b.body.Cords, Cord{Path: path, Out: out, Wide: wide, Deep: deep, Stuff: stuff})
}

// eyelet adds the rim of an eyelet around a hole.
func (b *builder) eyelet(pose Pose, center geometry.Vec3) {
	radius := b.spec.Handle.HoleDiameter/2 + eyeletRim*0.6
	var path []geometry.Vec3
	for step := range arcPieces + 1 {
		sin, cos := math.Sincos(2 * math.Pi * float64(step) / arcPieces)
		path = append(path, center.Add(pose.Right.Scale(radius*cos)).Add(pose.Up.Scale(radius*sin)))
	}
	b.body.Cords = append(b.body.Cords, Cord{
		Path: path, Out: pose.Out(), Wide: eyeletRim, Deep: eyeletRim * 0.5, Stuff: Metal,
	})
}

// glued adds a cord or strip that comes out from under a patch on the inside, and
// the patch.
func (b *builder) glued(pose Pose, fixing geometry.Vec2) {
	h := b.spec.Handle
	wide, deep := twistedRadius, twistedRadius
	if h.Kind == bag.HandleStrip {
		wide, deep = stripWide, stripDeep
	}
	// Both come down into the bag along the face.
	inside := pose.Sink(layerPatch * b.caliper)
	inside = inside.Move(pose.Up.Scale(b.stance.handle.left * (h.Drop + h.PatchHeight + beyondTop)))
	patch := geometry.RectAt(fixing.X-h.PatchWidth/2, fixing.Y-h.PatchHeight, h.PatchWidth, h.PatchHeight)
	// A card shows its print side inward: the patch is seen from within the bag.
	// The strip of a closed flat bag has no room beside the patch, so it lies in
	// the plane of it.
	b.addCard(patch, inside, nil)
	if b.spec.Body.Gusset > 0 && !b.flat {
		inside = inside.Sink(deep)
	}
	b.cord(b.arch(inside, fixing), pose.Out(), wide, deep)
}

// arch returns the handle from one fixing to the other: two legs and a half circle,
// or less of a circle where the legs would vanish. Its length is spacing + 2 × rise,
// the rope of one handle without the knots.
func (b *builder) arch(pose Pose, fixing geometry.Vec2) []geometry.Vec3 {
	h := b.spec.Handle
	half := h.Spacing / 2
	length := h.Spacing + 2*h.Rise
	leg := (length - math.Pi*half) / 2
	radius, angle := half, quarter // the angle is half of that of the bend
	if leg < 0 {
		leg = 0
		angle = bendOf(length / h.Spacing)
		radius = half / math.Sin(angle)
	}
	var path []geometry.Vec3
	at := func(x, y float64) { path = append(path, pose.At(fixing.Add(geometry.Vec2{X: x, Y: y}))) }
	if leg > 0 {
		at(-half, 0)
	}
	center := leg - radius*math.Cos(angle)
	for step := range arcPieces + 1 {
		turned := angle * (2*float64(step)/arcPieces - 1)
		at(radius*math.Sin(turned), center+radius*math.Cos(turned))
	}
	if leg > 0 {
		at(half, 0)
	}
	return path
}

// bendOf returns the angle, 0 to π, at which an arc is as long as its half chord
// times ratio over the sine: angle / sin(angle) = ratio, found by halving.
func bendOf(ratio float64) float64 {
	low, high := 0.0, math.Pi
	for range 60 {
		middle := (low + high) / 2
		if middle/math.Sin(middle) < ratio {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}
