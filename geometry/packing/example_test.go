package packing_test

import (
	"context"
	"fmt"

	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/packing"
)

func ExampleSolve() {
	laid := blank.Lay(geomtest.WorkedExample())
	motion, err := packing.Solve(context.Background(), &laid, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, moment := range []float64{0, 1} {
		body := motion.Body(moment)
		body.Cords = nil
		least, greatest := body.Bounds()
		fmt.Printf("%.0f mm deep\n", greatest.Y-least.Y)
	}
	fmt.Println("only drawn:", motion.Schematic)
	// Output:
	// 100 mm deep
	// 3 mm deep
	// only drawn: false
}
