package fold_test

import (
	"fmt"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
)

func ExampleFold() {
	laid := blank.Lay(bag.OfSize(180, 0, 240))
	lesson := fold.Fold(&laid)
	for _, stage := range lesson.Stages[:lesson.Foldable] {
		fmt.Println(stage.Title)
	}
	width, height, thickness := fold.PackedSize(&laid)
	fmt.Printf("packed %g × %g × %.2f mm\n", width, height, thickness)
	// Output:
	// The flat blank
	// Lay on the top cards
	// Fold the turn-in
	// Fold the tube
	// Glue the seam
	// Fold over the bottom
	// Raise the bag
	// Thread the rope
	// Pack it flat
	// packed 180 × 240 × 0.78 mm
}
