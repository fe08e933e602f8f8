package jobsheet

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"gussetwright/app/voice"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
)

// space is one at which no line ends.
const space = "\u00a0"

// voice says texts and numbers as the reader is used to.
func (m *maker) voice() voice.Voice { return voice.Voice{Say: m.Say, Unit: m.Unit} }

func (m *maker) length(mm float64) string { return m.voice().Length(mm) }

// size writes lengths with a cross between them.
func (m *maker) size(sides ...float64) string { return m.voice().Size(sides...) }

// area writes an area in mm² in square centimetres or inches.
func (m *maker) area(mm2 float64) string { return m.voice().Area(mm2, 1) }

// measure writes a number with up to two decimals and its unit.
func (m *maker) measure(value float64, unit string) string {
	return m.voice().Number(value, 2) + space + unit
}

func count(value float64) string { return geometry.FormatNumber(value, 0) }

// money writes an amount with two decimals.
func (m *maker) money(amount float64) string { return m.voice().Fixed(amount, 2) }

// each writes the price of one thing, which may be less than a hundredth: with two
// decimals, and with four where the last two are not 0.
func (m *maker) each(price float64) string {
	return strings.TrimSuffix(m.voice().Fixed(price, 4), "00")
}

// label returns what an entry of the bag is called.
func (m *maker) label(path string) string {
	field, _ := bag.FieldAt(path)
	return m.Say(field.Label)
}

// chosen returns a choice of the bag in words.
func (m *maker) chosen(path string) string {
	field, _ := bag.FieldAt(path)
	return m.Say(field.Choice(&m.Snapshot.Spec))
}

// glueName names what a glue area holds.
func glueName(role blank.GlueRole) phrase.Word {
	switch role {
	case blank.GlueSeam:
		return "Seam"
	case blank.GlueBase:
		return "Base flaps"
	case blank.GlueGussetFront, blank.GlueGussetBack:
		return "Base gussets"
	case blank.GlueCornerFront, blank.GlueCornerBack:
		return "Base corners"
	case blank.GluePinch:
		return "Pinch base"
	case blank.GlueTurnIn:
		return "Turn-in"
	case blank.GlueTopCard:
		return "Top card"
	}
	return "Handle patch"
}

func sideName(side blank.Side) phrase.Word {
	if side == blank.PrintSide {
		return "print side"
	}
	return "reverse"
}

// glueTitle names glue areas of one kind with the side they are on.
func (m *maker) glueTitle(g glued) string {
	return m.say(g.name) + ", " + m.say(sideName(g.side))
}

// weighed says what the weight of a bag contains.
func (m *maker) weighed() string {
	if m.Snapshot.Job.FilmGrams > 0 {
		return m.say("with film and cards, without handle and glue")
	}
	return m.say("with cards, without handle and glue")
}

// unitName names the unit of a quantity, which is one thing or several.
func unitName(unit phrase.Word, quantity float64) phrase.Word {
	if quantity != 1 {
		return unit
	}
	switch unit {
	case "sheets":
		return "sheet"
	case "forms":
		return "form"
	case "bags":
		return "bag"
	case "cartons":
		return "carton"
	case "pallets":
		return "pallet"
	}
	return unit
}

// cautions are what every job needs (common practice, no published source).
func cautions() []phrase.Word {
	return []phrase.Word{
		"Cutting dies are sharp: wear gloves that resist cuts, and carry a die with its rule away from you.",
		"Have the die-maker check the drawing, and make a white sample, before a die is cut.",
		"Have samples tested with their load: no estimate tells what a bag carries.",
	}
}

// capitalised returns a sentence with a capital at its beginning.
func capitalised(sentence string) string {
	first, size := utf8.DecodeRuneInString(sentence)
	if size == 0 {
		return ""
	}
	return string(unicode.ToUpper(first)) + sentence[size:]
}
