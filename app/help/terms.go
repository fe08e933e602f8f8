package help

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"gussetwright/geometry/blank"
)

// terms explains the words of the trade, in the order in which a bag is made.
func terms() fyne.CanvasObject {
	var rows []pair
	for _, term := range []struct {
		name, text string
		roles      []blank.Role // of the creases that it is about
	}{
		{lang.L("Blank"), lang.L("The flat sheet from which the bag is folded and glued."), nil},
		{lang.L("Face"), lang.L("The front or the back of the standing bag."), nil},
		{lang.L("Gusset"), lang.L("The side between the faces, with a crease down its middle by which it folds in."), []blank.Role{blank.RoleGusset}},
		{lang.L("Panel edge, upright edge"), lang.L("The crease between two panels, such as front and gusset. On the standing bag it is an upright edge."), []blank.Role{blank.RolePanelEdge}},
		{lang.L("Gusset crease"), lang.L("The crease down the middle of a gusset. It is a valley: the gusset folds to the inside by it."), []blank.Role{blank.RoleGusset}},
		{lang.L("Top fold"), lang.L("The crease along which the turn-in is folded over. On the finished bag it is the upper edge."), []blank.Role{blank.RoleTopFold}},
		{lang.L("Turn-in"), lang.L("The strip above the top fold that is folded to the inside. It hides the raw edge and backs the holes."), nil},
		{lang.L("Slit"), lang.L("A narrow upright cut with round ends in the face and its turn-in, through which a flat tape is threaded."), nil},
		{lang.L("Seam flap"), lang.L("The strip that is glued under the other end of the blank and closes the tube."), nil},
		{lang.L("Base crease"), lang.L("The crease across all panels at which the body ends and the base flaps begin. The bag stands on it."), []blank.Role{blank.RoleBase}},
		{lang.L("Base flaps"), lang.L("The flaps below the base crease that make the base. Front and back pass the middle by the overlap V, where they are glued."), nil},
		{lang.L("Base corner crease"), lang.L("The slanted crease in the front and the back base flap, at 45° from a base corner. By it the corner folds in like an envelope."), []blank.Role{blank.RoleBaseCorner}},
		{lang.L("Block base"), lang.L("A base that stands on a rectangle, with envelope corners or with slotted ones."), nil},
		{lang.L("Pinch base"), lang.L("A tube that is folded over once and glued flat."), nil},
		{lang.L("Flat-fold crease"), lang.L("The crease half a gusset above the base, by which the glued bag is packed flat."), []blank.Role{blank.RoleFlatFold}},
		{lang.L("Pack crease"), lang.L("The slanted crease in a gusset, from the flat-fold crease down to a base corner, by which the gusset lies flat when the bag is packed."), []blank.Role{blank.RolePack}},
		{lang.L("Standing height"), lang.L("From the base crease to the top fold. A height to the flat-fold crease is half a gusset less."), nil},
		{lang.L("Top card, base card"), lang.L("Board that stiffens the top edge under the turn-in, and board that is laid into the base."), nil},
		{lang.L("Bone folder"), lang.L("A flat blade of bone or plastic with a blunt point, with which creases are pressed in and folds are rubbed sharp."), nil},
		{lang.L("Grain"), lang.L("The direction of the fibres. Paper folds well along it and cracks across it."), nil},
		{lang.L("Caliper"), lang.L("The thickness of the paper. Grammage times bulk, or measured."), nil},
		{lang.L("Bleed"), lang.L("The artwork that runs past the cut edge, so that no white shows when the cut is off a little."), nil},
		{lang.L("Gripper"), lang.L("The strip along one edge by which the press holds the sheet; nothing can be printed there."), nil},
		{lang.L("Cutting die"), lang.L("The board with knives and creasing rules that cuts and creases the blank."), nil},
		{lang.L("Spoilage"), lang.L("Bags printed beyond the quantity to make up for waste."), nil},
		{lang.L("Form"), lang.L("One laid sheet with plates and a die of its own. Bags of several sizes can share one."), nil},
		{lang.L("Make-ready"), lang.L("Setting up the press and the die for a form, and the sheets that this takes."), nil},
	} {
		left := fyne.CanvasObject(heading(term.name))
		if term.roles != nil {
			left = container.NewVBox(left, newPlace(term.roles))
		}
		rows = append(rows, pair{left, term.text})
	}
	return table(rows)
}

// cautions says what to mind when a bag is made and used.
func cautions() fyne.CanvasObject {
	box := container.NewVBox()
	for _, caution := range []string{
		lang.L("Have the die-maker check every drawing, and make a white sample before a die is cut."),
		lang.L("Knives and cutting rules are sharp. Cut away from the hand, on a mat, along a steel ruler."),
		lang.L("Hot glue and glue guns burn. Let glued parts cool before you touch them."),
		lang.L("Long cords and handles can strangle small children. For bags with toys or children's goods follow the local rules."),
		lang.L("No drawing says what a bag carries. A load is confirmed by a sample test only, with the paper, the glue and the handles that are really used."),
		lang.L("Paper, ink and glue touch food only where their suppliers declare it."),
		lang.L("The caliper comes from a typical bulk unless you enter a measured one; ask the mill."),
		lang.L("The checks are common practice. They do not replace local codes, nor the judgement of the people who print, cut and glue."),
	} {
		box.Add(words("•  " + caution))
	}
	return box
}
