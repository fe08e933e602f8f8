package words

import (
	"errors"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/voice"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// Of returns a phrase in the language of the user, with lengths in millimetres.
func Of(p phrase.Phrase) string { return p.With(writer().Value).In(translated) }

// OfWord returns a word, or a sentence that is one, in the language of the user.
func OfWord(word phrase.Word) string { return Of(phrase.Phrase{Format: string(word)}) }

// Measured returns a phrase in the language of the user, with lengths in a unit.
func Measured(p phrase.Phrase, unit geometry.Unit) string { return Of(p.With(unit.Spell)) }

// Error returns what went wrong in the language of the user, as far as it is said in
// phrases. What the system says stays as it is.
func Error(err error) string { return phrase.ErrorIn(writer().Error(err), translated) }

// MeasuredError returns what Error does, with the lengths of an entry of the bag in a unit.
func MeasuredError(err error, unit geometry.Unit) string {
	if complaint := (*bag.FieldError)(nil); errors.As(err, &complaint) {
		err = complaint.With(unit.Spell)
	}
	return Error(err)
}

// Document returns the voice of documents for the user, with lengths in a unit.
func Document(unit geometry.Unit) voice.Voice { return voice.Voice{Say: translated, Unit: unit} }

func translated(text string) string { return lang.L(text) }
