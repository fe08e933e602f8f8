package help

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"gussetwright/render/scene"
)

// reading explains the lines of the drawing by samples of them.
func reading() fyne.CanvasObject {
	var rows []pair
	for _, role := range []scene.Role{
		scene.Cutting, scene.Creasing, scene.ReverseCreasing, scene.Punching,
		scene.Gluing, scene.Bleed, scene.ContentArea, scene.Dimensions,
	} {
		rows = append(rows, pair{newSample(role), lang.L(role.Style().Help)})
	}
	return container.NewVBox(
		words(lang.L("The blank is seen from the print side, as it lies on the press. Every kind of line has a colour and a pattern of its own, so it can be told without colour too.")),
		table(rows),
		words(lang.L("Below the blank stand W for a face, D/2 for half a gusset and G for the seam flap. At its left stand B for the base flap, D/2 up to the flat-fold crease, and T for the turn-in.")),
		words(lang.L("The half gusset beside the seam flap is a little narrower, by the relief r, so that the raw edge does not show.")),
		words(lang.L("Printed drawings carry a bar of 100 mm. Measure it before you trust a print.")),
	)
}

// folds tells mountain from valley.
func folds() fyne.CanvasObject {
	return table([]pair{
		{newSample(scene.Creasing), lang.L("Mountain: look at the print side and fold the paper away from you, so that the crease rises like a ridge. The long edges of the panels are mountains.")},
		{newSample(scene.ReverseCreasing), lang.L("Valley: look at the print side and fold the paper toward you, so that the crease sinks like a furrow. The middle of a gusset is a valley.")},
	})
}
