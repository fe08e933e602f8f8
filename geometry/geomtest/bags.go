package geomtest

import (
	"math"
	"math/rand/v2"

	"gussetwright/geometry/bag"
)

// WorkedExample returns the bag every check begins with (common practice, no
// published source): face 240, gusset 100, 310 up to the flat-fold crease,
// turn-in 50, base overlap 20, seam flap 20, no relief, rope holes of 5, on half
// of a 1000 × 700 sheet with 20 kept free along a long edge.
func WorkedExample() bag.Spec {
	spec := bag.Default()
	spec.Name = "worked example"
	spec.Body.Width, spec.Body.Gusset = 240, 100
	spec.Body.Height = bag.HeightFromFlatFold(310, 100)
	spec.Body.TurnIn, spec.Body.BaseOverlap = 50, 20
	spec.Body.SeamFlap, spec.Body.SeamRelief = 20, 0
	spec.Sheet = bag.Sheet{Width: 700, Height: 500, Gripper: 20, GripperEdge: bag.GripperLong, Grain: bag.GrainEither, GrainRule: bag.GrainRequired}
	return spec
}

// RandomBag returns a valid bag of any construction, with sizes to a tenth of a
// millimetre.
func RandomBag(random *rand.Rand) bag.Spec {
	for {
		spec := randomBag(random)
		if spec.Validate() == nil {
			return spec
		}
	}
}

func randomBag(random *rand.Rand) bag.Spec {
	between := func(least, most float64) float64 {
		return math.Round((least+random.Float64()*(most-least))*10) / 10
	}
	spec := bag.Default()
	b := &spec.Body
	b.Width, b.Gusset, b.Height = between(60, 500), between(20, 250), between(60, 700)
	b.TurnIn, b.BaseOverlap = between(0, 90), between(0, 60)
	b.SeamFlap, b.SeamRelief, b.Chamfer = between(8, 40), between(0, 2), between(5, 80)
	b.SlotWidth, b.ZigzagPitch, b.ZigzagDepth = between(0, 5), between(5, 30), between(1, 12)
	b.Seams = pick(random, bag.SeamsOne, bag.SeamsTwo, bag.SeamsAuto)
	b.Base = pick(random, bag.BaseBlock, bag.BaseBlock, bag.BaseSlotted, bag.BasePinch)
	b.Top = pick(random, bag.TopTurnIn, bag.TopTurnIn, bag.TopStraight, bag.TopZigzag)
	if b.Base == bag.BasePinch && random.IntN(3) == 0 {
		b.Gusset = 0
	}
	spec.Handle.Kind = pick(random, bag.HandleNone, bag.HandleRope, bag.HandleRibbon,
		bag.HandleTape, bag.HandleHandHole, bag.HandleTwisted, bag.HandleStrip)
	spec.Handle.HoleDiameter = between(4, 12)
	spec.Handle.SlitHeight = 2 * spec.Handle.HoleDiameter // no bag has both
	spec.Paper.Grammage = between(70, 300)
	spec.Derive(func(path string) bool { return path == "bag.turn_in_mm" })
	return spec
}

func pick[T any](random *rand.Rand, options ...T) T { return options[random.IntN(len(options))] }
