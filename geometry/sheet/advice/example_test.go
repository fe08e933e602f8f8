package advice_test

import (
	"fmt"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/sheet"
	"gussetwright/geometry/sheet/advice"
)

func ExampleRank() {
	laid := blank.Lay(bag.Default())
	for _, row := range advice.Rank(&laid, laid.SheetPiece(), sheet.UsualStock(), sheet.ByWaste) {
		if row.Name != "B2" {
			continue
		}
		fmt.Printf("%s: %s\n", row.Name, row.Reason)
		for _, near := range row.Near {
			fmt.Println("  " + near.Phrase().String())
		}
	}
	// Output:
	// B2: 2.5 mm too long with the gripper on the long edge
	//   1-up if the seam flap were 17.5 mm instead of 20 mm
	//   1-up if the face width were 238.7 mm instead of 240 mm
	//   1-up if the side margin were 3.7 mm instead of 5 mm
	//   1-up if the gusset were 98.7 mm instead of 100 mm
}
