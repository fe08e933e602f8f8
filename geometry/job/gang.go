package job

import (
	"math"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/sheet/gang"
)

// GangItem returns what of a bag is ganged with others under a name: its blank, for as
// many bags as are printed.
func GangItem(name string, laid *blank.Blank) gang.Item {
	return gang.Item{Name: name, Piece: laid.SheetPiece(), Bags: int(printed(laid.Spec.Run))}
}

// printed returns the bags that are printed to get those wanted.
func printed(run bag.Run) float64 {
	return math.Ceil(run.Quantity*(1+run.Spoilage/100) - 1e-9)
}
