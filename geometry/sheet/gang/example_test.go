package gang_test

import (
	"context"
	"fmt"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
	"gussetwright/geometry/sheet/gang"
)

func ExampleSolve() {
	press := bag.Sheet{Width: 1000, Height: 700, Gripper: 12, Gap: 4, GripperEdge: bag.GripperLong}
	bags := []gang.Item{
		{Name: "large", Bags: 1000, Piece: sheet.Piece{Width: 640, Height: 450, PerBag: 1}},
		{Name: "bottle", Bags: 2000, Piece: sheet.Piece{Width: 340, Height: 450, PerBag: 1}},
		{Name: "small", Bags: 4000, Piece: sheet.Piece{Width: 320, Height: 220, PerBag: 1, Grain: sheet.GrainFree}},
	}
	for most := range 3 {
		r, err := gang.Solve(context.Background(), press, bags, gang.Options{MostForms: most})
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("at most %d forms: %d sheets, at least %d\n", most, r.Sheets, r.Bound)
		for _, form := range r.Forms {
			fmt.Printf("  %d sheets of %d\n", form.Run, form.Counts(len(bags)))
		}
	}
	// Output:
	// at most 0 forms: 1350 sheets, at least 1350
	//   1000 sheets of [1 1 3]
	//   200 sheets of [0 2 5]
	//   150 sheets of [0 4 0]
	// at most 1 forms: 2000 sheets, at least 2000
	//   2000 sheets of [1 1 2]
	// at most 2 forms: 1445 sheets, at least 1350
	//   1000 sheets of [1 2 0]
	//   445 sheets of [0 0 9]
}
