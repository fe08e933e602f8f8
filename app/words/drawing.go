package words

import (
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/voice"
	"gussetwright/geometry"
	"gussetwright/render/scene"
)

// DrawingWords returns the names that stand on the drawing, by their English.
func DrawingWords() map[string]string {
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

// OnDrawing returns what says the names on the drawing in the language of the user.
func OnDrawing() func(string) string {
	words := DrawingWords()
	return func(text string) string {
		if word, known := words[text]; known {
			return word
		}
		return text
	}
}

// DrawingVoice returns what says the names and numbers on the drawing in the language of the
// user. It may be asked from any goroutine.
func DrawingVoice() scene.Voice { return drawing{OnDrawing(), writer()} }

type drawing struct {
	scene.Spoken
	numbers voice.Writer
}

// Number is part of scene.Voice.
func (d drawing) Number(value float64, decimals int) string {
	return d.numbers.Number(geometry.FormatNumber(value, decimals))
}
