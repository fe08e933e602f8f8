package proof

import (
	"fmt"
	"math"
	"strings"

	"gussetwright/app/voice"
	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
)

// say returns a word or a sentence in the language of the client.
func (p *Proof) say(text phrase.Word) string { return p.Say(string(text)) }

// tell returns a phrase in the language and the unit of the client.
func (p *Proof) tell(said phrase.Phrase) string { return p.voice().Tell(said) }

// language returns the language of the texts as in HTML. It is said like any text:
// the translation of "en" is the code of the language that it is in.
func (p *Proof) language() string { return p.say("en") }

// voice says texts and numbers as the client is used to.
func (p *Proof) voice() voice.Voice { return voice.Voice{Say: p.Say, Unit: p.Unit} }

// number writes a number with at most the given decimals.
func (p *Proof) number(value float64, decimals int) string { return p.voice().Number(value, decimals) }

// space is one at which no line may end, as before a unit.
const space = "\u00a0"

// length writes a length in mm in the unit of the client, no finer than a ruler shows
// it.
func (p *Proof) length(mm float64) string {
	decimals := map[geometry.Unit]int{geometry.Millimetre: 0, geometry.Centimetre: 1, geometry.Inch: 2}[p.Unit]
	return p.number(mm/p.Unit.Length(), decimals) + space + string(p.Unit)
}

// about writes a length in mm as one that may differ: to 5 mm or a quarter of an inch.
func (p *Proof) about(mm float64) string {
	step := 5.0
	if p.Unit == geometry.Inch {
		step = geometry.Inch.Length() / 4
	}
	return p.length(math.Round(mm/step) * step)
}

// day returns the date of the proof as people write it.
func (p *Proof) day() string {
	said := fmt.Sprintf(p.say(months()[p.Date.Month()-1]), p.Date.Day(), p.Date.Year())
	return strings.ReplaceAll(said, " ", space)
}

// months are dates with a place for the day of the month and one for the year: other
// languages bend the names of months or write a point behind the day.
func months() [12]phrase.Word {
	return [12]phrase.Word{
		"%d January %d", "%d February %d", "%d March %d", "%d April %d", "%d May %d", "%d June %d",
		"%d July %d", "%d August %d", "%d September %d", "%d October %d", "%d November %d", "%d December %d",
	}
}
