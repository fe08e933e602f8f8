package arithmetic

import (
	"fmt"

	"gussetwright/geometry/phrase"
)

// Error says where a text cannot be read, why, and what to type instead.
type Error struct {
	Text    string // the whole text
	At      int    // the character at which reading stopped, counted from 1; one past the last at the end
	Problem phrase.Phrase
	Remedy  phrase.Phrase
}

// Error returns the complaint in English.
func (e *Error) Error() string {
	return fmt.Sprintf("entry %q, character %d: %s; %s", e.Text, e.At, e.Problem, e.Remedy)
}

// In returns the complaint in another language, with the place if the text has
// more than one.
func (e *Error) In(translate func(string) string) string {
	sentence := phrase.New("%s; %s", e.Problem, e.Remedy)
	if len([]rune(e.Text)) > 1 {
		sentence = phrase.New("Character %d: %s; %s", e.At, e.Problem, e.Remedy)
	}
	return sentence.In(translate)
}

// The complaints that name no part of the text.
var (
	problemEmpty    = phrase.New("there is no number")
	problemArea     = phrase.New("a length times a length is an area, not a length")
	problemByLength = phrase.New("a length cannot divide")
	problemTwice    = phrase.New("both have a unit")
	problemBelow    = phrase.New("what has a unit cannot divide")
	problemByNought = phrase.New("nothing can be divided by 0")
	problemHuge     = phrase.New("that comes to more than a computer can count")
	problemOpen     = phrase.New("a bracket is opened and not closed")
	problemClose    = phrase.New("a bracket is closed that was not opened")
	problemNested   = phrase.New("more than %d brackets stand inside each other", deepest)
	problemLong     = phrase.New("the text is longer than %d characters", longest)

	problemBasisWeight = phrase.New("a basis weight in pounds means another grammage for every kind of paper")

	remedyNumber   = phrase.New("write a number, such as 240 or 24.5")
	remedyFactor   = phrase.New("take the unit off one of the two")
	remedyFraction = phrase.New("take the unit off the number behind the stroke, or write a fraction without spaces, such as 1/2 in")
	remedyByNought = phrase.New("divide by another number")
	remedySmaller  = phrase.New("write smaller numbers")
	remedyClose    = phrase.New("close it with )")
	remedyOpen     = phrase.New("take it out, or open it with (")
	remedyShorter  = phrase.New("write a shorter sum")
	remedySign     = phrase.New("put +, -, * or / between the two")
	remedyUnit     = phrase.New("write mm, cm, m or in, for example 24 cm or 9 1/2 in")
	remedyAlone    = phrase.New("write the number alone")
	remedyComma    = phrase.New("write it without the comma")
	remedyPoint    = phrase.New("write it without the point")

	remedyWeight      = phrase.New("write g, kg, oz or lb, for example 1.4 kg or 3 lb")
	remedyThickness   = phrase.New("write µm, mm or in, for example 150 µm or 0.15 mm")
	remedyGrammage    = phrase.New("write g/m², for example 170 g/m²")
	remedyBasisWeight = phrase.New("write the grammage in g/m², which the data sheet of the paper names")
)
