package sheet_test

import (
	"fmt"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
)

func ExampleLay() {
	piece := sheet.Piece{Width: 700, Height: 480, PerBag: 1, Area: 700 * 480}
	for _, edge := range []bag.GripperEdge{bag.GripperLong, bag.GripperShort} {
		plan := sheet.Lay(bag.Sheet{Width: 1000, Height: 700, Gripper: 20, GripperEdge: edge}, piece)
		fmt.Printf("gripper on the %s edge: %d-up, %.0f %% waste\n", edge, plan.Up(), plan.WastePercent())
	}
	// Output:
	// gripper on the long edge: 1-up, 52 % waste
	// gripper on the short edge: 2-up, 4 % waste
}

func ExampleRank() {
	piece := sheet.Piece{Width: 700, Height: 480, PerBag: 1, Area: 700 * 480}
	best := sheet.Rank(bag.Sheet{Gripper: 20}, piece)[0]
	fmt.Printf("%s, gripper on the %s edge: %d-up\n", best.Name, best.Plan.Sheet.GripperEdge, best.Plan.Up())
	// Output: 70 × 50 cm, gripper on the long edge: 1-up
}
