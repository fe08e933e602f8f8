package job

import (
	"math"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/sheet"
)

// Packing is how the bags of a run lie in cartons, and these on pallets. A bag that
// cannot be packed flat, or that is too heavy for a carton, is in none: what follows from
// there on is 0.
type Packing struct {
	// One bag packed flat, in mm: its paper where most layers lie, without handle and
	// cards. 0 for a bag that cannot be folded or packed.
	Width, Height, Thickness float64
	// PileThickness is what one bag adds to a pile in mm: with cards and looseness. Rope
	// is folded down inside and counts as looseness.
	PileThickness float64

	BagsPerCarton float64 // as wanted, or fewer that are not too heavy
	Inside        Box     // of a carton
	Outside       Box
	CartonGrams   float64 // of a full carton
	Cartons       float64
	Kilograms     float64 // of all cartons, the last of which may not be full

	Layer           sheet.Plan // cartons on a pallet, seen from above
	PerPallet       float64    // cartons on a pallet; 0 when one is too large or too heavy
	Pallets         float64
	PalletHeight    float64 // mm of the fullest pallet of the run, with its deck
	PalletKilograms float64 // kg of the fullest pallet of the run, with the pallet
}

// Box is the size of a box in mm.
type Box struct{ Width, Length, Height float64 }

// Pack returns how the run is packed. It folds the bag, which takes a while.
func Pack(laid *blank.Blank, run *Job) Packing {
	spec := &laid.Spec
	var p Packing
	p.Width, p.Height, p.Thickness = fold.PackedSize(laid)
	if p.Thickness <= 0 {
		return p
	}
	p.PileThickness = p.withCards(laid) * (1 + spec.Packing.Looseness/100)
	p.fillCartons(&spec.Packing, run)
	p.loadPallets(&spec.Packing)
	return p
}

// withCards returns the thickness of the bag with its cards, which is that of the thicker
// of two places: the top edge, where the layers of the tube lie twice where it is turned
// in, with the top cards between them; and the place where most paper lies, with the base
// card, which is taken out and laid in flat, on it at worst. Board has the bulk of its
// kind, see bag.Paper.
func (p *Packing) withCards(laid *blank.Blank) float64 {
	spec := &laid.Spec
	top := float64(tubeLayers(&spec.Body)) * spec.Paper.Thickness()
	if spec.Body.TurnInDepth() > 0 {
		top *= 2
	}
	thickest := p.Thickness
	for _, card := range laid.Cards {
		board := bag.Paper{Kind: bag.PaperBoard, Grammage: card.Grammage}.Thickness() * float64(card.Count)
		switch card.Role {
		case "top":
			top += board
		case "base":
			thickest += board
		}
	}
	return max(thickest, top)
}

// tubeLayers counts the layers of the flat tube beside the seam: two faces, the two
// halves of the gusset, and the seam flap.
func tubeLayers(b *bag.Body) int {
	if b.Gusset == 0 {
		return 3
	}
	return 5
}

// fillCartons lays the bags flat on each other. The carton is of the usual slotted kind
// (common practice, no published source): its flaps lie twofold on its top and beneath
// its bottom.
func (p *Packing) fillCartons(packing *bag.Packing, run *Job) {
	p.BagsPerCarton = packing.BagsPerCarton
	if run.BagGrams > 0 {
		p.BagsPerCarton = min(p.BagsPerCarton, wholes((1000*packing.CartonMost-packing.CartonWeight)/run.BagGrams))
	}
	if p.BagsPerCarton == 0 {
		return
	}
	p.Inside = Box{p.Width + packing.CartonRoom, p.Height + packing.CartonRoom, p.BagsPerCarton * p.PileThickness}
	p.Outside = Box{
		p.Inside.Width + 2*packing.CartonWall, p.Inside.Length + 2*packing.CartonWall, p.Inside.Height + 4*packing.CartonWall,
	}
	p.CartonGrams = p.BagsPerCarton*run.BagGrams + packing.CartonWeight
	p.Cartons = math.Ceil(run.Quantity / p.BagsPerCarton)
	p.Kilograms = (run.Quantity*run.BagGrams + p.Cartons*packing.CartonWeight) / 1000
}

// wholes returns how many whole units are in a number of them, forgiving what rounding
// took away; never less than none.
func wholes(units float64) float64 { return max(math.Floor(units+1e-9), 0) }

// loadPallets stacks full cartons in like layers, upright, turned as the most of them go
// on a layer. Nothing reaches over the edge of the pallet.
func (p *Packing) loadPallets(packing *bag.Packing) {
	if p.Cartons == 0 {
		return
	}
	p.Layer = layer(packing.PalletWidth, packing.PalletDepth, p.Outside)
	perLayer := float64(p.Layer.Up())
	layers := wholes((packing.PalletHeight - packing.PalletDeck) / p.Outside.Height)
	byWeight := wholes(1000 * (packing.PalletMost - packing.PalletWeight) / p.CartonGrams)
	p.PerPallet = min(perLayer*layers, byWeight)
	if p.PerPallet == 0 {
		return
	}
	p.Pallets = math.Ceil(p.Cartons / p.PerPallet)
	fullest := min(p.Cartons, p.PerPallet)
	p.PalletHeight = packing.PalletDeck + math.Ceil(fullest/perLayer)*p.Outside.Height
	p.PalletKilograms = packing.PalletWeight + min(fullest*p.CartonGrams/1000, p.Kilograms)
}

// layer lays cartons on a pallet, as the pallet loading problem.
func layer(width, depth float64, carton Box) sheet.Plan {
	pallet := bag.Sheet{Width: width, Height: depth, GripperEdge: bag.GripperLong}
	return sheet.Lay(pallet, sheet.Piece{
		Width: carton.Width, Height: carton.Length, PerBag: 1, Area: carton.Width * carton.Length, Grain: sheet.GrainFree,
	})
}
