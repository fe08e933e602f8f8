package job_test

import (
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/job"
	"gussetwright/geometry/sheet"
)

func pack(spec bag.Spec) job.Packing {
	laid := blank.Lay(spec)
	plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
	run := job.Reckon(&laid, &plan)
	return job.Pack(&laid, &run)
}

// Packed flat the worked example is as wide as its face and as high as it stands. Most
// layers lie beside the seam just below the front edge of the base, counted by hand:
// back, two halves of the gusset, front with seam flap, its strip below the flat-fold
// crease with seam flap, 7; and of the base the gusset flap, the front flap, its corner
// and both of the seam flap, 5. Paper of 150 g/m² with a bulk of 0.76 is 114 µm thick.
func TestPackedSize(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Paper.Grammage = 150
	got := pack(spec)
	near(t, "packed width", got.Width, 240, 1e-6)
	near(t, "packed height", got.Height, 360, 1e-6)
	near(t, "packed thickness", got.Thickness, 12*0.114, 1e-6)
	spec.Body.Height, spec.Body.TurnIn = 90, 30 // lower than the base is deep
	if got := pack(spec); !reflect.DeepEqual(got, job.Packing{}) {
		t.Errorf("a bag that does not pack is packed: %+v", got)
	}
}

// Done by hand for the worked example on paper of 150 g/m², 114 µm thick, a thousand bags
// by the hundred. Its thicker place is the top edge: 5 layers of the tube, turned in, and
// two top cards of 350 g/m², by the bulk of board, 1.3 cm³/g (ISO 534: bulk is thickness
// by grammage), 455 µm each; 2.05 mm, and 30 % of air. A layer of cartons of 378 × 258 on
// the pallet of 1200 × 800 of EN 13698-1 (value from memory) holds 3 × 3, as 10 would have
// more area than the pallet; 4 layers of 282.5 fit below 1500 above the deck of 144.
func TestPackedByHand(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Paper.Grammage = 150
	got := pack(spec)
	near(t, "a bag in the pile", got.PileThickness, (10*0.114+2*0.455)*1.3, 1e-9)
	near(t, "inside height", got.Inside.Height, 266.5, 1e-6)
	near(t, "inside width", got.Inside.Width, 250, 1e-6)
	near(t, "inside length", got.Inside.Length, 370, 1e-6)
	near(t, "outside height", got.Outside.Height, 282.5, 1e-6)
	near(t, "outside width", got.Outside.Width, 258, 1e-6)
	near(t, "outside length", got.Outside.Length, 378, 1e-6)
	const bagGrams = (700*480-1200-8*math.Pi*25/4)*150/1e6 + (2*(236*45-2*math.Pi*25/4)*350+236*96*400)/1e6
	near(t, "a full carton", got.CartonGrams, 100*bagGrams+500, 1e-6)
	near(t, "cartons", got.Cartons, 10, 0)
	near(t, "weight of all", got.Kilograms, bagGrams+10*0.5, 1e-6)
	near(t, "in a layer", float64(got.Layer.Up()), 9, 0)
	near(t, "on a pallet", got.PerPallet, 36, 0)
	near(t, "pallets", got.Pallets, 1, 0)
	near(t, "height of two layers", got.PalletHeight, 144+2*282.5, 1e-6)
	near(t, "weight of ten cartons", got.PalletKilograms, 25+bagGrams+5, 1e-6)

	// A heavy base card makes the base the thicker place: 12 layers and 1.95 mm.
	spec.Cards.BaseGrammage = 1500
	near(t, "a bag with a thick base card", pack(spec).PileThickness, (12*0.114+1.95)*1.3, 1e-6)
}

// A bag without depth has no gusset in its tube: two faces and the seam flap, turned in, on
// two top cards of 455 µm.
func TestPileOfFlatBags(t *testing.T) {
	spec := bag.OfSize(200, 0, 300)
	spec.Paper.Grammage, spec.Packing.Looseness = 150, 0
	near(t, "a flat bag in the pile", pack(spec).PileThickness, 6*0.114+2*0.455, 1e-9)
}

// A bag of the worked example weighs 66.7 g: 67 of them and a carton of 500 g stay below
// 5 kg, 68 do not. Four cartons of 7.17 kg and a pallet of 25 kg stay below 60 kg.
func TestWeightLimits(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Paper.Grammage = 150
	spec.Packing.CartonMost = 5
	got := pack(spec)
	near(t, "bags in a light carton", got.BagsPerCarton, 67, 0)
	near(t, "cartons", got.Cartons, 15, 0)
	spec.Packing.CartonMost, spec.Packing.PalletMost = 15, 60
	got = pack(spec)
	near(t, "cartons on a light pallet", got.PerPallet, 4, 0)
	near(t, "pallets", got.Pallets, 3, 0)
	near(t, "height of one layer", got.PalletHeight, 144+282.5, 1e-6)

	spec.Packing.PalletHeight = 400 // lower than the deck and one carton
	got = pack(spec)
	if got.Cartons != 10 || got.PerPallet != 0 || got.Pallets != 0 || got.PalletKilograms != 0 {
		t.Errorf("cartons too high for the pallet: %+v", got)
	}
	spec.Packing.CartonMost, spec.Packing.CartonWeight = 1, 950
	got = pack(spec)
	if got.Cartons != 0 || got.BagsPerCarton != 0 || got.Inside != (job.Box{}) || got.Pallets != 0 || got.Thickness == 0 {
		t.Errorf("no bag may be in the carton: %+v", got)
	}
}

// How many cartons lie on a layer. The sizes of ISO 3394, 600 × 400 and its parts, fill the
// pallet of 1200 × 800 (values from memory); the others are published instances of the
// pallet loading problem, 34 and 20 times as large, with their known optima, see the tests
// of package sheet.
func TestLayers(t *testing.T) {
	tests := []struct{ width, depth, long, short, want float64 }{
		{1200, 800, 600, 400, 4},
		{1200, 800, 400, 300, 8},
		{1200, 800, 300, 200, 16},
		{1200, 1000, 600, 400, 5},
		{800, 600, 600, 400, 2},
		{43 * 34, 26 * 34, 7 * 34, 3 * 34, 53},
		{57 * 20, 44 * 20, 12 * 20, 5 * 20, 41},
	}
	for _, test := range tests {
		spec := bag.OfSize(test.short-18, 40, test.long-18) // the room and two walls are 18
		spec.Packing.PalletWidth, spec.Packing.PalletDepth = test.width, test.depth
		got := pack(spec)
		near(t, "width of the carton", got.Outside.Width, test.short, 1e-6)
		near(t, "length of the carton", got.Outside.Length, test.long, 1e-6)
		near(t, "cartons on the layer", float64(got.Layer.Up()), test.want, 0)
	}
}

// Whatever is packed holds the run and keeps to its limits.
func TestPackingKeepsItsLimits(t *testing.T) {
	random := rand.New(rand.NewPCG(62, 1))
	loaded := 0
	for range 200 {
		spec := geomtest.RandomBag(random)
		spec.Run.Quantity = float64(1 + random.IntN(20000))
		spec.Packing.BagsPerCarton = float64(1 + random.IntN(300))
		spec.Packing.CartonMost, spec.Packing.PalletMost = 2+20*random.Float64(), 100+900*random.Float64()
		got := pack(spec)
		if got.Cartons == 0 {
			continue
		}
		p := &spec.Packing
		if got.Cartons*got.BagsPerCarton < spec.Run.Quantity || got.BagsPerCarton > p.BagsPerCarton || got.CartonGrams > 1000*p.CartonMost+1e-6 {
			t.Errorf("cartons: %+v", got)
		}
		if got.Pallets == 0 {
			continue
		}
		loaded++
		if got.Pallets*got.PerPallet < got.Cartons || got.PalletHeight > p.PalletHeight+1e-6 || got.PalletKilograms > p.PalletMost+1e-6 {
			t.Errorf("pallets: %+v", got)
		}
	}
	if loaded < 80 {
		t.Errorf("only %d runs lie on pallets", loaded)
	}
}

func BenchmarkPack(b *testing.B) {
	spec := bag.Default()
	laid := blank.Lay(spec)
	plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
	run := job.Reckon(&laid, &plan)
	for b.Loop() {
		job.Pack(&laid, &run)
	}
}
