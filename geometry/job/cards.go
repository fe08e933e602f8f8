package job

import (
	"math"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/sheet"
)

// Cutting is how one kind of card is cut from its sheets. The cards lie all alike in
// straight rows without a gap, so that a guillotine cuts them; their grain is not kept.
type Cutting struct {
	Card  blank.Card
	Cards float64 // for all bags that are printed
	// Sheet is the usual sheet with the least waste, of two the larger one; a patch is cut
	// from the press sheet of the bag, under the name "".
	Sheet     sheet.Usual
	Up        int     // cards on a sheet; 0 when none fits
	Sheets    float64 // whole sheets for the run
	Kilograms float64 // of all sheets
	Waste     float64 // of a sheet, in percent
}

// CutCards returns how the cards and patches of the run are cut, one entry for each kind
// that has an area.
func CutCards(laid *blank.Blank, run *Job) []Cutting {
	var list []Cutting
	for _, card := range laid.Cards {
		if card.Width <= 0 || card.Height <= 0 {
			continue
		}
		sheets := sheet.UsualSheets()
		if isPatch(&card) {
			sheets = []sheet.Usual{{Width: laid.Spec.Sheet.Width, Height: laid.Spec.Sheet.Height}}
		}
		list = append(list, cut(card, sheets, run.BagsPrinted))
	}
	return list
}

func isPatch(card *blank.Card) bool { return card.Role == "patch" }

// Board tells whether the card is cut from board, and not from the paper of the bag.
func (c *Cutting) Board() bool { return !isPatch(&c.Card) }

// cut chooses the sheet for a card and counts sheets for so many bags.
func cut(card blank.Card, sheets []sheet.Usual, bags float64) Cutting {
	cutting := Cutting{Card: card, Cards: float64(card.Count) * bags}
	for _, s := range sheets {
		plan := rowsOn(s, &card)
		if plan.Up() == 0 {
			continue
		}
		waste := plan.WastePercent()
		less := waste < cutting.Waste-evenWaste
		larger := waste < cutting.Waste+evenWaste && s.Width*s.Height > cutting.Sheet.Width*cutting.Sheet.Height
		if cutting.Up == 0 || less || larger {
			cutting.Sheet, cutting.Up, cutting.Waste = s, plan.Up(), waste
		}
	}
	if cutting.Up > 0 {
		cutting.Sheets = math.Ceil(cutting.Cards / float64(cutting.Up))
		cutting.Kilograms = cutting.Sheets * cutting.Sheet.Width * cutting.Sheet.Height * card.Grammage / 1e9
	}
	return cutting
}

// evenWaste is a difference in waste, in percent, that comes of rounding alone.
const evenWaste = 1e-9

// rowsOn lays cards on a sheet that no press holds. Asked for one grain that is not
// known, sheet.Lay tries both turns and lays all alike.
func rowsOn(s sheet.Usual, card *blank.Card) sheet.Plan {
	bare := bag.Sheet{Width: s.Width, Height: s.Height, GripperEdge: bag.GripperLong}
	return sheet.Lay(bare, sheet.Piece{
		Width: card.Width, Height: card.Height, PerBag: 1, Area: card.Width * card.Height, Grain: sheet.GrainRequired,
	})
}
