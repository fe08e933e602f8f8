package proof

import (
	"unicode"
	"unicode/utf8"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
)

// say returns a word or a sentence in the language of the client.
func (p *Proof) say(text phrase.Word) string { return p.Say(string(text)) }

// tell returns a phrase in the language and the unit of the client.
func (p *Proof) tell(said phrase.Phrase) string { return said.With(p.Unit.Spell).In(p.Say) }

// language returns the language of the texts as in HTML. It is said like any text:
// the translation of "en" is the code of the language that it is in.
func (p *Proof) language() string { return p.say("en") }

// length writes a length in mm in the unit of the client, no finer than a ruler shows
// it.
func (p *Proof) length(mm float64) string {
	const space = "\u00a0" // a line must not end before the unit
	decimals := map[geometry.Unit]int{geometry.Millimetre: 0, geometry.Centimetre: 1, geometry.Inch: 2}[p.Unit]
	return geometry.FormatNumber(mm/p.Unit.Length(), decimals) + space + string(p.Unit)
}

// capitalised returns a sentence with a capital at its beginning.
func capitalised(sentence string) string {
	first, size := utf8.DecodeRuneInString(sentence)
	if size == 0 {
		return ""
	}
	return string(unicode.ToUpper(first)) + sentence[size:]
}
