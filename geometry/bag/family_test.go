package bag_test

import (
	"testing"

	"gussetwright/geometry/bag"
)

func TestMembers(t *testing.T) {
	spec := bag.Default()
	spec.Name, spec.Breaks = "Tea", []float64{500}
	spec.Family = []bag.Size{{Name: "Small", Width: 180, Gusset: 80, Height: 240, Quantity: 300}}
	members := spec.Members()
	if len(members) != 2 || members[0].Name != "Tea" || members[1].Name != "Small" {
		t.Fatalf("members %v", members)
	}
	small := members[1]
	if small.Body.Width != 180 || small.Body.Gusset != 80 || small.Body.Height != 240 || small.Run.Quantity != 300 {
		t.Errorf("the small bag is %v, %g of them", small.Body, small.Run.Quantity)
	}
	// Holes half a face apart stay half a face apart.
	if small.Handle.Spacing != 90 {
		t.Errorf("holes %g mm apart, want 90", small.Handle.Spacing)
	}
	if small.Family != nil || small.Breaks != nil || members[0].Family != nil {
		t.Error("a member has a family or quantities of its own")
	}
}

func TestScaledKeepsProportions(t *testing.T) {
	spec := bag.Default() // 240 × 100 × 360
	if got, want := spec.Scaled("large", 360), (bag.Size{Name: "large", Width: 360, Gusset: 150, Height: 540, Quantity: 1000}); got != want {
		t.Errorf("scaled to %v, want %v", got, want)
	}
}
