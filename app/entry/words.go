package entry

import (
	"fyne.io/fyne/v2/lang"

	"gussetwright/geometry/bag"
)

// OptionsOf returns the options of a choice field in the words of the trade. An
// option without words here is shown as it stands in the project file.
func OptionsOf(field *bag.Field) []Option {
	words := optionWords()[field.Path]
	options := make([]Option, len(field.Options))
	for i, value := range field.Options {
		options[i] = Option{Value: value, Word: value}
		if w, found := words[value]; found {
			options[i].Word, options[i].Line = w[0], w[1]
		}
	}
	return options
}

// optionWords returns, by field and value, the word for an option and a line that
// explains it.
func optionWords() map[string]map[string][2]string {
	return map[string]map[string][2]string{
		"product.kind": {
			string(bag.ProductBox):     {lang.L("A box"), lang.L("It keeps its shape and slides in upright.")},
			string(bag.ProductBottle):  {lang.L("A bottle"), lang.L("Round: as deep as it is wide.")},
			string(bag.ProductGarment): {lang.L("A folded garment"), lang.L("Soft: it settles and needs more ease.")},
			string(bag.ProductFree):    {lang.L("Loose goods"), lang.L("They take the shape of the bag; what counts is their volume.")},
		},
		"bag.seams": {
			string(bag.SeamsOne):  {lang.L("One seam"), lang.L("One blank goes all round the bag.")},
			string(bag.SeamsTwo):  {lang.L("Two seams"), lang.L("Two equal pieces, each a face and a gusset. Takes smaller sheets and one more gluing.")},
			string(bag.SeamsAuto): {lang.L("As the sheet allows"), lang.L("One seam where the blank fits the sheet, two where only the pieces do.")},
		},
		"bag.base": {
			string(bag.BaseBlock):   {lang.L("Block, envelope corners"), lang.L("Stands by itself; the corners are folded in like those of an envelope and stay closed.")},
			string(bag.BaseSlotted): {lang.L("Block, slotted corners"), lang.L("Stands by itself; the base flaps are cut apart, which allows a narrow face.")},
			string(bag.BasePinch):   {lang.L("Pinch base"), lang.L("The tube is creased flat, folded over once and glued; it does not stand.")},
		},
		"bag.top": {
			string(bag.TopTurnIn):   {lang.L("Turned in"), lang.L("A strip is folded to the inside: a clean edge and double paper at the holes.")},
			string(bag.TopStraight): {lang.L("Raw, straight"), lang.L("Cut straight and left as it is.")},
			string(bag.TopZigzag):   {lang.L("Raw, zigzag"), lang.L("Cut in teeth, as on bags that come off a tube machine.")},
		},
		"handle.kind": {
			string(bag.HandleNone):     {lang.L("Nothing"), lang.L("The bag is held by its top edge.")},
			string(bag.HandleRope):     {lang.L("Rope"), lang.L("A rope through two holes in each face, knotted inside.")},
			string(bag.HandleRibbon):   {lang.L("Ribbon"), lang.L("A ribbon through two holes in each face, knotted or glued inside.")},
			string(bag.HandleTape):     {lang.L("Tape through slits"), lang.L("A flat cotton tape through two upright slits in each face, stitched or knotted inside.")},
			string(bag.HandleHandHole): {lang.L("Hand hole"), lang.L("A slot with round ends through both faces.")},
			string(bag.HandleTwisted):  {lang.L("Twisted paper cord"), lang.L("A loop of paper cord under a glued patch inside each face.")},
			string(bag.HandleStrip):    {lang.L("Flat paper strip"), lang.L("A folded strip of paper under a glued patch inside each face.")},
		},
		"paper.kind": {
			string(bag.PaperGloss):    {lang.L("Coated, gloss"), lang.L("Thin for its mass, prints brilliantly, cracks without creasing.")},
			string(bag.PaperMatt):     {lang.L("Coated, matt"), lang.L("A little thicker than gloss; scuffs without varnish or film.")},
			string(bag.PaperUncoated): {lang.L("Uncoated"), lang.L("Thick for its mass, folds gently, prints softer.")},
			string(bag.PaperKraft):    {lang.L("Kraft"), lang.L("Long fibres: strong at a low mass; brown kraft tints every colour.")},
			string(bag.PaperBoard):    {lang.L("Board"), lang.L("Stiff and thick; every fold must be creased.")},
		},
		"paper.colour": {
			string(bag.ColourWhite):   {lang.L("White"), lang.L("Bleached; colours look as they were meant.")},
			string(bag.ColourNatural): {lang.L("Natural brown"), lang.L("Unbleached; it shines through every ink.")},
		},
		"paper.lamination": {
			string(bag.LaminationNone):  {lang.L("No film"), lang.L("Paper and ink, varnished or not.")},
			string(bag.LaminationGloss): {lang.L("Gloss film"), lang.L("Shines, makes colours deeper and keeps the ink from cracking.")},
			string(bag.LaminationMatt):  {lang.L("Matt film"), lang.L("Dull and soft to the hand; keeps the ink from cracking, but shows scratches.")},
		},
		"paper.grain": {
			string(bag.GrainHeight): {lang.L("Along the height"), lang.L("Usual: the long panel edges fold with the grain and stay smooth.")},
			string(bag.GrainWidth):  {lang.L("Across the height"), lang.L("The long panel edges fold against the grain and may crack or wave.")},
		},
		"sheet.gripper_edge": {
			string(bag.GripperLong):  {lang.L("Long edge"), lang.L("Usual on sheet presses: the long edge goes in first.")},
			string(bag.GripperShort): {lang.L("Short edge"), lang.L("The short edge goes in first; ask the printer whether the press takes it.")},
		},
		"sheet.grain": {
			string(bag.GrainEither):      {lang.L("As needed"), lang.L("The sheet is ordered with its fibres as the bags want them.")},
			string(bag.GrainAlongWidth):  {lang.L("Along the sheet width"), lang.L("The fibres run along the first side of the sheet.")},
			string(bag.GrainAlongHeight): {lang.L("Along the sheet height"), lang.L("The fibres run along the other side of the sheet.")},
		},
		"sheet.grain_rule": {
			string(bag.GrainRequired):  {lang.L("Must be right"), lang.L("Blanks lie only so that every bag has its grain as chosen.")},
			string(bag.GrainPreferred): {lang.L("Right where possible"), lang.L("Blanks lie across the grain only where more of them fit so.")},
			string(bag.GrainFree):      {lang.L("Does not matter"), lang.L("Blanks lie either way.")},
		},
	}
}
