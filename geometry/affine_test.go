package geometry_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gussetwright/geometry"
)

// What a motion does is undone by its inverse, and doing two after one another is
// doing their product (linear algebra).
func TestAffineInverseAndProduct(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 2))
	vector := func() geometry.Vec2 {
		return geometry.Vec2{X: random.Float64()*200 - 100, Y: random.Float64()*200 - 100}
	}
	for range 1000 {
		a, b := geometry.Affine{U: vector(), V: vector(), Origin: vector()}, geometry.Affine{U: vector(), V: vector(), Origin: vector()}
		if math.Abs(a.Area()) < 1 {
			continue
		}
		p := vector()
		back, possible := a.Inverse()
		if got := back.At(a.At(p)); !possible || got.Sub(p).Length() > 1e-9 {
			t.Fatalf("%v undone moves %v to %v", a, p, got)
		}
		if got, want := a.After(b).At(p), a.At(b.At(p)); got.Sub(want).Length() > 1e-7 {
			t.Fatalf("product moves %v to %v, want %v", p, got, want)
		}
		if got, want := a.After(b).Area(), a.Area()*b.Area(); math.Abs(got-want) > 1e-9*math.Abs(want)+1e-5 {
			t.Fatalf("area of the product %v, want %v", got, want)
		}
	}
	if _, possible := (geometry.Affine{}).Inverse(); possible {
		t.Error("what is flattened cannot be undone")
	}
}

func TestRotationByQuartersIsExact(t *testing.T) {
	for quarter, want := range []geometry.Vec2{{X: 1}, {Y: 1}, {X: -1}, {Y: -1}, {X: 1}} {
		if got := geometry.Rotation(float64(quarter) * math.Pi / 2).U; got != want {
			t.Errorf("%d quarters: %v, want %v", quarter, got, want)
		}
	}
}

func ExampleAffine() {
	turned := geometry.Shift(geometry.Vec2{X: 10}).After(geometry.Rotation(math.Pi / 2)).After(geometry.Stretch(3, 2))
	fmt.Println(turned.At(geometry.Vec2{X: 1, Y: 1}), turned.Area(), turned.Bounds(geometry.RectAt(0, 0, 1, 1)))
	// Output: {8 3} 6 {{8 0} {10 3}}
}
