package product_test

import (
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/check"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/product"
	"gussetwright/geometry/sheet"
)

func mm(length float64) string { return geometry.FormatNumber(length, 1) + " mm" }

func usual(t *testing.T) []product.Usual {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(geomtest.Root(t), "assets", "sizes", "usual-sizes.json"))
	if err != nil {
		t.Fatal(err)
	}
	list, err := product.ReadUsual(data)
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// troubles returns the errors and warnings about a bag.
func troubles(spec bag.Spec) []check.Finding {
	laid := blank.Lay(spec)
	plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
	var list []check.Finding
	for _, f := range check.Inspect(&laid, &plan) {
		if f.Severity != check.Note {
			list = append(list, f)
		}
	}
	return list
}

// Reckoned by hand; ease, headroom and the limits of a block base are common
// practice, no published source.
func TestPropose(t *testing.T) {
	body := bag.Default().Body // block base, V = 20, T = 50
	pinch, slotted := body, body
	pinch.Base, slotted.Base = bag.BasePinch, bag.BaseSlotted
	tests := []struct {
		name    string
		product product.Product
		body    bag.Body
		want    product.Size
		says    string
	}{
		{
			"box",
			product.Product{Kind: bag.ProductBox, Width: 200, Depth: 90, Height: 250, Ease: 10, Headroom: 60},
			body,
			product.Size{Width: 210, Gusset: 100, Height: 310},
			"200 mm of product and 10 mm of ease",
		},
		{
			"rounded up",
			product.Product{Kind: bag.ProductBox, Width: 201, Depth: 91, Height: 251, Ease: 10, Headroom: 60},
			body,
			product.Size{Width: 215, Gusset: 105, Height: 315},
			"251 mm of product",
		},
		{
			"deeper than wide",
			product.Product{Kind: bag.ProductBox, Width: 90, Depth: 200, Height: 250, Ease: 10, Headroom: 60},
			body,
			product.Size{Width: 210, Gusset: 100, Height: 310},
			"longer side lies along the face",
		},
		{
			"bottle",
			product.Product{Kind: bag.ProductBottle, Width: 75, Depth: 300, Height: 320, Ease: 10, Headroom: 40},
			body,
			product.Size{Width: 125, Gusset: 85, Height: 360},
			"corner creases of the base cross",
		},
		{
			"bottle, slotted",
			product.Product{Kind: bag.ProductBottle, Width: 75, Height: 320, Ease: 10, Headroom: 40},
			slotted,
			product.Size{Width: 85, Gusset: 85, Height: 360},
			"75 mm of product",
		},
		{
			"thin",
			product.Product{Kind: bag.ProductGarment, Width: 250, Depth: 10, Height: 300, Ease: 5, Headroom: 50},
			body,
			product.Size{Width: 255, Gusset: 40, Height: 350},
			"hard to fold",
		},
		{
			"thin, pinch",
			product.Product{Kind: bag.ProductGarment, Width: 250, Depth: 10, Height: 300, Ease: 5, Headroom: 50},
			pinch,
			product.Size{Width: 255, Gusset: 15, Height: 350},
			"10 mm of product",
		},
		{
			"low",
			product.Product{Kind: bag.ProductBox, Width: 300, Depth: 200, Height: 60, Ease: 10, Headroom: 20},
			body,
			product.Size{Width: 310, Gusset: 210, Height: 210},
			"as high as the base is deep",
		},
		{
			"low, deep turn-in",
			product.Product{Kind: bag.ProductBox, Width: 300, Depth: 80, Height: 20, Ease: 10, Headroom: 10},
			body,
			product.Size{Width: 310, Gusset: 90, Height: 95},
			"down to the flat-fold crease",
		},
	}
	for _, test := range tests {
		got := test.product.Propose(test.body, mm)
		if got.Size != test.want {
			t.Errorf("%s: proposed %+v, want %+v", test.name, got.Size, test.want)
		}
		said := ""
		for _, reason := range got.Reasons {
			said += reason.String() + "\n"
		}
		if !strings.Contains(said, test.says) {
			t.Errorf("%s: reasons %q do not say %q", test.name, said, test.says)
		}
	}
}

var kinds = []bag.ProductKind{bag.ProductBox, bag.ProductBottle, bag.ProductGarment, bag.ProductFree}

// randomProduct returns a product within the limits of its entries.
func randomProduct(random *rand.Rand) product.Product {
	spec := bag.Spec{Product: bag.Product{Kind: kinds[random.IntN(len(kinds))]}}
	for _, field := range bag.Fields() {
		if !strings.HasPrefix(field.Path, "product.") || field.Kind() != bag.Number {
			continue
		}
		most := field.Most
		if field.Path == "product.width_mm" {
			most = product.Product(spec.Product).Widest()
		}
		share := random.Float64()
		field.SetNumber(&spec, field.Least+(most-field.Least)*share*share)
	}
	return product.Product(spec.Product)
}

// Whatever is entered, the product slides into the proposed bag with its ease, the
// bag can be drawn, and nothing is wrong with its body.
func TestEveryProposalHolds(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 1))
	for range 3000 {
		p := randomProduct(random)
		body := geomtest.RandomBag(random).Body
		body.ZigzagPitch = 3 // teeth are no part of the proposal, and must be fine enough for any face
		proposal := p.Propose(body, mm)
		longer, shorter := max(p.Width, p.Depth), min(p.Width, p.Depth)
		if p.Kind == bag.ProductBottle {
			longer, shorter = p.Width, p.Width
		}
		const rounding = 1e-6
		if proposal.Width-longer < p.Ease-rounding || proposal.Gusset-shorter < p.Ease-rounding || proposal.Height-p.Height < p.Headroom-rounding {
			t.Fatalf("%+v does not slide into %+v", p, proposal.Size)
		}
		if proposal.Volume() < p.Volume()-rounding {
			t.Fatalf("%+v takes %g l, the bag %+v holds %g l", p, p.Volume(), proposal.Size, proposal.Volume())
		}
		spec := bag.Default()
		spec.Body = body
		spec = proposal.Apply(spec)
		if err := spec.Validate(); err != nil {
			t.Fatalf("%+v: proposal %+v cannot be drawn: %v", p, proposal.Size, err)
		}
	}
}

// A proposal for the default construction has none of the findings that a size can
// cause.
func TestProposalsCanBeMade(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 2))
	bad := []string{"base-flap-short", "base-flap-long", "base-corners-cross", "base-shallow", "gussets-meet", "too-low-to-pack", "turn-in-long", "turn-in-on-crease"}
	for range 500 {
		p := product.Product{
			Kind: bag.ProductBox, Width: 5 + random.Float64()*400, Depth: 5 + random.Float64()*200,
			Height: 5 + random.Float64()*500, Ease: random.Float64() * 30, Headroom: random.Float64() * 80,
		}
		proposal := p.Propose(bag.Default().Body, mm)
		for _, f := range troubles(proposal.Apply(bag.Default())) {
			for _, code := range bad {
				if f.Code == code {
					t.Fatalf("%+v: proposal %+v: %s", p, proposal.Size, f.Message)
				}
			}
		}
	}
}

// Every usual size makes a bag of the default paper without an error or a warning.
func TestUsualSizesCanBeMade(t *testing.T) {
	list := usual(t)
	if len(list) < 20 {
		t.Errorf("only %d usual sizes", len(list))
	}
	names := map[string]bool{}
	for _, u := range list {
		if names[u.Name] {
			t.Errorf("two sizes are called %q", u.Name)
		}
		names[u.Name] = true
		spec := u.Apply(bag.Default())
		if err := spec.Validate(); err != nil {
			t.Errorf("%s: %v", u.Name, err)
			continue
		}
		if half := u.Width / 2; spec.Body.BaseFlap() > half {
			t.Errorf("%s: base flap %g is longer than half the face, %g", u.Name, spec.Body.BaseFlap(), half)
		}
		for _, f := range troubles(spec) {
			t.Errorf("%s: %s: %s", u.Name, f.Code, f.Message)
		}
	}
}

// What was entered by hand stays; what had its usual value follows the size.
func TestApplyKeepsOwnEntries(t *testing.T) {
	spec := bag.Default()
	size := product.Size{Width: 200, Gusset: 80, Height: 290}
	if got := size.Apply(spec); got.Handle.Spacing != 100 || got.Body.Width != 200 || got.Body.Gusset != 80 || got.Body.Height != 290 {
		t.Errorf("spacing %g on a face of %g, want 100 on 200", got.Handle.Spacing, got.Body.Width)
	}
	spec.Handle.Spacing, spec.Cards.Top = 90, false
	if got := size.Apply(spec); got.Handle.Spacing != 90 || got.Cards.Top {
		t.Errorf("spacing %g, top cards %v; want 90 and none, as entered", got.Handle.Spacing, got.Cards.Top)
	}
}

func TestRank(t *testing.T) {
	sizes := usual(t)
	random := rand.New(rand.NewPCG(5, 3))
	for range 300 {
		p := product.Product{Width: 20 + random.Float64()*300, Depth: 20 + random.Float64()*150, Height: 50 + random.Float64()*350}.
			As(kinds[random.IntN(len(kinds))])
		ranked := p.Rank(sizes)
		if len(ranked) != len(sizes) {
			t.Fatalf("%d of %d sizes ranked", len(ranked), len(sizes))
		}
		for i := 1; i < len(ranked); i++ {
			a, b := ranked[i-1], ranked[i]
			if !a.Fits() && b.Fits() || a.Fits() && b.Fits() && a.Spare > b.Spare {
				t.Fatalf("%+v stands before %+v", a, b)
			}
		}
		for _, m := range ranked {
			if m.Fits() && m.Spare < -1e-9 {
				t.Fatalf("%+v is said to hold %+v, which takes more space", m, p)
			}
		}
	}
	bottle := product.Product{Width: 75, Height: 320}.As(bag.ProductBottle)
	if best := bottle.Rank(sizes)[0]; best.Name != "one bottle" || !best.Fits() {
		t.Errorf("a bottle goes into %q", best.Name)
	}
	tall := product.Product{Width: 75, Height: 440}.As(bag.ProductBottle)
	for _, m := range tall.Rank(sizes) {
		if m.Name == "one bottle" && (m.Lacks != product.Size{Height: 110}) {
			t.Errorf("a bottle of 440 lacks %+v in a bag of 370, want 110 of height", m.Lacks)
		}
	}
}

// 2 l of loose goods stand 100 mm high on a base of 200 × 100.
func TestLooseGoodsCountByVolume(t *testing.T) {
	p := product.Product{Kind: bag.ProductFree, Width: 400, Depth: 50, Height: 100, Headroom: 30}
	if p.Volume() != 2 {
		t.Fatalf("volume %g l", p.Volume())
	}
	fits := product.Usual{Name: "fits", Size: product.Size{Width: 200, Gusset: 100, Height: 130}}
	low := product.Usual{Name: "low", Size: product.Size{Width: 200, Gusset: 100, Height: 120}}
	ranked := p.Rank([]product.Usual{low, fits})
	if ranked[0].Name != "fits" || !ranked[0].Fits() || math.Abs(ranked[1].Lacks.Height-10) > 1e-9 {
		t.Errorf("ranked %+v", ranked)
	}
}

// The ease and the headroom of each kind are common practice, no published source.
func TestKindBringsItsRoom(t *testing.T) {
	wide := product.Product{Kind: bag.ProductBox, Width: 700, Depth: 90, Height: 250, Weight: 300, Ease: 1, Headroom: 2}
	for kind, room := range map[bag.ProductKind][2]float64{
		bag.ProductBox: {10, 60}, bag.ProductBottle: {10, 40}, bag.ProductGarment: {20, 60}, bag.ProductFree: {0, 50},
	} {
		want := wide
		want.Kind, want.Ease, want.Headroom = kind, room[0], room[1]
		if kind == bag.ProductBottle {
			want.Width = 400 // a bottle is as deep as it is wide, and no gusset takes more
		}
		if got := wide.As(kind); got != want {
			t.Errorf("as %s: %+v, want %+v", kind, got, want)
		}
	}
}

func TestReadUsualRefuses(t *testing.T) {
	for _, text := range []string{
		``, `{`, `[{"name":"a","width_mm":1,"gusset_mm":1}]`, `[{"width_mm":1,"gusset_mm":1,"height_mm":1}]`,
		`[{"name":"a","wide":1}]`, `[{"name":"a","width_mm":-1,"gusset_mm":1,"height_mm":1}]`,
	} {
		if list, err := product.ReadUsual([]byte(text)); err == nil || !strings.HasPrefix(err.Error(), "read usual sizes: ") {
			t.Errorf("%s: got %v, %v", text, list, err)
		}
	}
}

func TestLoadWarning(t *testing.T) {
	if warning, heavy := product.Product(bag.Default().Product).LoadWarning(); heavy {
		t.Errorf("a product without a weight is warned about: %s", warning)
	}
	for grams, says := range map[float64]string{750: "750 g", 2500: "2.5 kg"} {
		warning, heavy := product.Product{Weight: grams}.LoadWarning()
		if !heavy || !strings.Contains(warning.String(), says) || !strings.Contains(warning.String(), "sample") {
			t.Errorf("%g g: %q", grams, warning)
		}
	}
}
