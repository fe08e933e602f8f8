package blankpane

import (
	"fyne.io/fyne/v2/lang"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
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

// drawingWords returns the names that stand on the drawing, by their English.
func drawingWords() map[string]string {
	return map[string]string{
		"Front": lang.L("Front"), "Front base flap": lang.L("Front base flap"), "Front turn-in": lang.L("Front turn-in"),
		"Back": lang.L("Back"), "Back base flap": lang.L("Back base flap"), "Back turn-in": lang.L("Back turn-in"),
		"Right gusset": lang.L("Right gusset"), "Right gusset base flap": lang.L("Right gusset base flap"),
		"Right gusset turn-in": lang.L("Right gusset turn-in"),
		"Left gusset":          lang.L("Left gusset"), "Left gusset base flap": lang.L("Left gusset base flap"),
		"Left gusset turn-in": lang.L("Left gusset turn-in"),
		"Seam flap":           lang.L("Seam flap"), "grain": lang.L("grain"),
		"W": lang.L("W"), "G": lang.L("G"), "D/2": lang.L("D/2"), "D/2 − r": lang.L("D/2 − r"), "T": lang.L("T"),
		"B": lang.L("B"), "V": lang.L("V"), "s": lang.L("s"), "drop": lang.L("drop"), "eyelets": lang.L("eyelets"),
		"blank width": lang.L("blank width"), "blank height": lang.L("blank height"),
		"standing height H": lang.L("standing height H"), "flat-fold crease to top": lang.L("flat-fold crease to top"),
		"top card": lang.L("top card"), "patch": lang.L("patch"), "on the reverse": lang.L("on the reverse"),
		"Name": lang.L("Name"),
	}
}

// translator returns what the names on the drawing are said by.
func translator() func(string) string {
	words := drawingWords()
	return func(text string) string {
		if word, known := words[text]; known {
			return word
		}
		return text
	}
}

// decimals is how finely lengths are shown: to hundredths of a millimetre.
var decimals = map[geometry.Unit]int{geometry.Millimetre: 2, geometry.Centimetre: 3, geometry.Inch: 3}

// length writes a length in the unit of the user.
func length(mm float64, unit geometry.Unit) string {
	return geometry.FormatNumber(mm/unit.Length(), decimals[unit]) + " " + string(unit)
}

// entry writes the value of a number entry with its name.
func entry(field *bag.Field, spec *bag.Spec, unit geometry.Unit) string {
	return lang.L(field.Label) + " " + length(field.Number(spec), unit)
}
