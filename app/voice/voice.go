// Package voice says texts and numbers in the language of a reader.
package voice

import (
	"strconv"
	"strings"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
)

// Voice says texts and numbers in a document: in the language that Say translates to, with
// lengths in a unit.
type Voice struct {
	Say  func(english string) string
	Unit geometry.Unit
}

// noBreak is a space at which no line ends, as before a unit.
const noBreak = "\u00a0"

// Word says a word, or a sentence that is one.
func (v Voice) Word(text phrase.Word) string { return v.Say(string(text)) }

// Tell says a phrase.
func (v Voice) Tell(said phrase.Phrase) string {
	return said.With(v.Unit.Spell).With(WriterIn(v.Say).Value).In(v.Say)
}

// Number writes a number with at most so many decimals.
func (v Voice) Number(value float64, decimals int) string {
	return WriterIn(v.Say).Number(geometry.FormatNumber(value, decimals))
}

// Fixed writes a number with as many decimals.
func (v Voice) Fixed(value float64, decimals int) string {
	return WriterIn(v.Say).Number(strconv.FormatFloat(value, 'f', decimals, 64))
}

// Length writes a length in mm in the unit, as finely as the unit is shown.
func (v Voice) Length(mm float64) string { return v.Size(mm) }

// Size writes lengths in mm in the unit, with a cross between them.
func (v Voice) Size(sides ...float64) string {
	texts := make([]string, len(sides))
	for i, side := range sides {
		texts[i] = v.Number(side/v.Unit.Length(), v.Unit.Decimals())
	}
	return strings.Join(texts, noBreak+"×"+noBreak) + noBreak + string(v.Unit)
}

// Area writes an area in mm² in square centimetres or, where lengths are in inches, in
// square inches.
func (v Voice) Area(mm2 float64, decimals int) string {
	unit := geometry.Centimetre
	if v.Unit == geometry.Inch {
		unit = geometry.Inch
	}
	return v.Number(mm2/(unit.Length()*unit.Length()), decimals) + noBreak + string(unit) + "²"
}
