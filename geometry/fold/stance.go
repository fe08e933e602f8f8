package fold

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// stance says how far each fold of a bag is closed: angles in radians, shares from
// 0 to 1. The zero value is the flat blank.
type stance struct {
	turnIn float64 // the row above the top fold, π when it lies on the reverse
	edge   float64 // panel edges, a quarter turn on a square tube, π on a flat bag
	flap   float64 // the crease of the seam flap
	seam   float64 // share to which the seam flap is pressed into its place
	apart  float64 // share of the way that the second of two pieces has still to go
	tuck   float64 // gusset creases of a pinch base, from a square tube to a flat one

	// A block base: how far the gusset flaps are turned in, the front flap and the
	// back flap. A flap that is spread outward is turned by a negative angle.
	right, left, front, back float64

	pinch float64 // the fold at the bottom of a pinch base, up to π
	open  float64 // share to which the wedge of a pinch base is opened

	topCards, baseCard, handle arrival

	tilt float64 // of the whole bag: 0 stands, a quarter turn lies on the front, π stands on its top
}

// arrival is how far a loose part still is from its place.
type arrival struct {
	shown bool
	left  float64 // share of the way that is left
}

func coming(moment float64) arrival { return arrival{shown: true, left: 1 - moment} }

// inPlace is a part that lies where it belongs.
var inPlace = arrival{shown: true}

// standingStance is that of the bag as it stands open.
func standingStance(body *bag.Body) stance {
	s := stance{turnIn: math.Pi, edge: quarter, flap: quarter, seam: 1, baseCard: inPlace, handle: inPlace}
	switch {
	case body.Base != bag.BasePinch:
		s.right, s.left, s.front, s.back = quarter, quarter, quarter, quarter
	case body.Gusset > 0:
		s.tuck, s.pinch, s.open = quarter, math.Pi, 1
	default:
		s.edge, s.flap, s.pinch = math.Pi, math.Pi, math.Pi
	}
	return s
}

// turnedIn returns how far the gusset flaps of an envelope base are turned in while
// the front and the back flap are spread by the angle spread, which may have either
// sign.
//
// Around a base corner lie four sectors: the quarter turn between the two base
// creases, which the square body holds, the gusset flap with another, and of the
// face's flap the corner and the rest with an eighth each. Turned in by a, the
// gusset flap carries the panel edge below the base crease to (sin a, 0, −cos a);
// the face's flap, turned by b, carries the base corner crease to
// (1, sin b, −cos b)/√2. Their angle stays 45°, so sin a + cos a · cos b = 1, that is
// cos b = tan(45° − a/2). The corner goes to the inside, as its crease demands, only
// while b is negative: the flaps spread as the gusset flaps go in. When these lie
// flat each flap is free to fold over them.
func turnedIn(spread float64) float64 { return quarter - 2*math.Atan(math.Cos(spread)) }

// cornerFold returns how far the corner of a face's flap is folded over along the
// base corner crease, 0 to π. It follows from the angle between the base crease and
// the panel edge below it, whose cosine is sin a: two sectors of 45° with the angle A
// between them span cos² 45° + sin² 45° · cos A.
func cornerFold(gussetFlap float64) float64 {
	return math.Acos(min(max(1-2*math.Sin(gussetFlap), -1), 1))
}

// gussetFlap returns how far the base flap of a gusset is turned in.
func (s *stance) gussetFlap(column string) float64 {
	if column == "gusset-right" {
		return s.right
	}
	return s.left
}

// faceFlap returns how far the base flap of a face is turned in.
func (s *stance) faceFlap(face string) float64 {
	if face == "front" {
		return s.front
	}
	return s.back
}

// baseShare returns how far the layers of a face's base flap have come to lie on
// each other: those of an envelope once its corners are folded over.
func (b *builder) baseShare(face string) float64 {
	if b.spec.Body.Base == bag.BaseSlotted {
		return b.stance.faceFlap(face) / quarter
	}
	return cornerFold(b.stance.right) / math.Pi
}

// firstPose returns where the first column of a piece lies: the front of the
// standing bag at y = 0, or the back of a bag of two pieces, which closes over it.
func (b *builder) firstPose(piece int) Pose {
	up := geometry.Vec3{Z: 1}
	base := b.laid.Pieces[piece].Levels.Base
	if piece == 0 {
		return Pose{geometry.Vec3{Z: -base}, geometry.Vec3{X: 1}, up}
	}
	closed := Pose{geometry.Vec3{X: b.spec.Body.Width, Y: b.depth(), Z: -base}, geometry.Vec3{X: -1}, up}
	if b.stance.apart == 0 {
		return closed
	}
	return b.apart(closed)
}

// depth returns how far apart front and back of the closed tube are.
func (b *builder) depth() float64 { return b.spec.Body.Gusset * math.Cos(b.stance.tuck) }

// besidePieces is the space between two pieces that lie beside each other, in mm.
const besidePieces = 30

// apart returns where the second piece is on its way: from beside the first, its
// reverse up, it is lifted, turned over and let down. closed is its place, inside of
// which the first piece lies.
func (b *builder) apart(closed Pose) Pose {
	body := b.spec.Body
	done := 1 - b.stance.apart
	sin, cos := math.Sincos(math.Pi * done)
	away := (b.laid.Pieces[0].Width + besidePieces) * (1 + cos) / 2
	middle := geometry.Vec3{
		X: body.Width/2 + away,
		Y: body.Gusset*(1-cos)/2 + (body.Width/2+body.Gusset)*1.2*sin,
	}
	turned := ease((done-0.15)/0.7) * math.Pi
	arm := closed.Origin.Sub(geometry.Vec3{X: body.Width / 2, Y: body.Gusset})
	axis := geometry.Vec3{Z: 1}
	return Pose{
		Origin: middle.Add(arm.Turn(axis, turned-math.Pi)),
		Right:  closed.Right.Turn(axis, turned-math.Pi),
		Up:     closed.Up,
	}
}

// ease goes from 0 to 1 and rests at both ends.
func ease(x float64) float64 {
	x = min(max(x, 0), 1)
	return x * x * (3 - 2*x)
}

func lerp(from, to, share float64) float64 { return from + (to-from)*share }
