package foldedpane

import (
	"fyne.io/fyne/v2/lang"

	"gussetwright/render/solid"
)

// BesideName returns what may stand beside the bag, in the language of the user.
func BesideName(r solid.Reference) string {
	switch r {
	case solid.SheetA4:
		return lang.L("A4 sheet")
	case solid.Can33:
		return lang.L("33 cl can")
	case solid.Hand:
		return lang.L("Hand")
	case solid.Bottle75:
		return lang.L("75 cl bottle")
	case solid.Person:
		return lang.L("Person 1.70 m")
	}
	return lang.L("Nothing beside it")
}
