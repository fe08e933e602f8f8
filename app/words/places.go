package words

import (
	"fyne.io/fyne/v2/lang"

	"gussetwright/geometry/bag"
)

// Place returns the name of a place that artwork is put on, as of bag.ArtworkPlaces.
func Place(on string) string {
	names := map[string]string{
		bag.OnBlank: lang.L("Whole blank"), bag.OnFrontPiece: lang.L("Whole piece with the front"),
		bag.OnBackPiece: lang.L("Whole piece with the back"),
		bag.OnFaces:     lang.L("Both faces alike"), bag.OnGussets: lang.L("Both gussets alike"),
		"front": lang.L("Front"), "front-turn-in": lang.L("Front turn-in"), "front-base": lang.L("Front base flap"),
		"back": lang.L("Back"), "back-turn-in": lang.L("Back turn-in"), "back-base": lang.L("Back base flap"),
		"gusset-left": lang.L("Left gusset"), "gusset-left-turn-in": lang.L("Left gusset turn-in"),
		"gusset-left-base": lang.L("Left gusset base flap"),
		"gusset-right":     lang.L("Right gusset"), "gusset-right-turn-in": lang.L("Right gusset turn-in"),
		"gusset-right-base": lang.L("Right gusset base flap"),
	}
	if name, known := names[on]; known {
		return name
	}
	return on
}
