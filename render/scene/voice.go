package scene

import (
	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
)

// Voice says the texts and numbers of a drawing in the language of who reads it.
type Voice interface {
	Word(text phrase.Word) string
	Tell(text phrase.Phrase) string
	// Number writes a number with at most so many decimals.
	Number(value float64, decimals int) string
}

// English is the voice of drawings that are read in English.
func English() Voice { return Spoken(nil) }

// OrEnglish returns a voice, or that of English for none.
func OrEnglish(voice Voice) Voice {
	if voice == nil {
		return English()
	}
	return voice
}

// Spoken is the voice of a translation alone: its numbers have a decimal point. Without
// translation it speaks English.
type Spoken func(english string) string

// Word is part of Voice.
func (s Spoken) Word(text phrase.Word) string { return s.say(string(text)) }

// Tell is part of Voice.
func (s Spoken) Tell(text phrase.Phrase) string { return text.In(s.say) }

// Number is part of Voice.
func (s Spoken) Number(value float64, decimals int) string {
	return geometry.FormatNumber(value, decimals)
}

func (s Spoken) say(english string) string {
	if s == nil {
		return english
	}
	return s(english)
}
