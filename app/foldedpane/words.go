package foldedpane

import (
	"fyne.io/fyne/v2/lang"

	"gussetwright/render/solid"
)

// panelNames returns what the panels are called, in the language of the user.
func panelNames() map[string]string {
	return map[string]string{
		"front": lang.L("Front"), "front-base": lang.L("Front base flap"), "front-turn-in": lang.L("Front turn-in"),
		"back": lang.L("Back"), "back-base": lang.L("Back base flap"), "back-turn-in": lang.L("Back turn-in"),
		"gusset-right": lang.L("Right gusset"), "gusset-right-base": lang.L("Right gusset base flap"),
		"gusset-right-turn-in": lang.L("Right gusset turn-in"),
		"gusset-left":          lang.L("Left gusset"), "gusset-left-base": lang.L("Left gusset base flap"),
		"gusset-left-turn-in": lang.L("Left gusset turn-in"),
		"seam-flap":           lang.L("Seam flap"), "seam-flap-base": lang.L("Seam flap"), "seam-flap-turn-in": lang.L("Seam flap"),
	}
}

// panelName returns what a panel is called, "" for none.
func panelName(panel string) string {
	if panel == "" {
		return ""
	}
	return panelNames()[panel]
}

// besideName returns what may stand beside the bag.
func besideName(r solid.Reference) string {
	switch r {
	case solid.SheetA4:
		return lang.L("A4 sheet")
	case solid.Can33:
		return lang.L("33 cl can")
	case solid.Hand:
		return lang.L("Hand")
	}
	return lang.L("Nothing beside it")
}
