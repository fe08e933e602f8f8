package blankpane

import (
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/render/scene"
)

// roleWord returns what the lines of a role are called in the layers and the legend.
func roleWord(role scene.Role) string {
	switch role {
	case scene.Artwork:
		return lang.L("Artwork")
	case scene.Gluing:
		return lang.L("Glue")
	case scene.ContentArea:
		return lang.L("Safe area")
	case scene.Bleed:
		return lang.L("Bleed")
	case scene.Dimensions:
		return lang.L("Dimensions")
	case scene.Legend:
		return lang.L("Names and grain")
	case scene.Creasing:
		return lang.L("Mountain crease")
	case scene.ReverseCreasing:
		return lang.L("Valley crease")
	case scene.Punching:
		return lang.L("Hole")
	}
	return lang.L("Cut edge")
}

// partWord returns what a part that is glued to the reverse is called in the legend.
func partWord(part blank.GlueRole) string {
	if part == blank.GlueTopCard {
		return lang.L("Top card")
	}
	return lang.L("Handle patch")
}

// kindWord says what a measuring point has snapped to.
func kindWord(k kind) string {
	switch k {
	case corner:
		return lang.L("corner")
	case centre:
		return lang.L("hole centre")
	case lineEnd:
		return lang.L("end of a line")
	case middlePoint:
		return lang.L("middle of a line")
	case onLine:
		return lang.L("on a line")
	}
	return ""
}

// decimals is how finely lengths are shown: to hundredths of a millimetre.
var decimals = map[geometry.Unit]int{geometry.Millimetre: 2, geometry.Centimetre: 3, geometry.Inch: 3}

// length writes a length in the unit of the user.
func length(mm float64, unit geometry.Unit) string {
	return words.Number(mm/unit.Length(), decimals[unit]) + " " + string(unit)
}

// entry writes the value of a number entry with its name.
func entry(field *bag.Field, spec *bag.Spec, unit geometry.Unit) string {
	return lang.L(field.Label) + " " + length(field.Number(spec), unit)
}
