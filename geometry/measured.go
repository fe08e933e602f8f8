package geometry

// Length is a length in mm as a value of a sentence: "15 mm", or in the unit that the
// reader has chosen (see Unit.Spell).
type Length float64

// BareLength is a Length whose unit stands with another one, as the first in
// "15 to 25 mm".
type BareLength float64

// String returns the length in millimetres with its unit.
func (l Length) String() string { return l.In(Millimetre) }

// In returns the length in a unit, with it.
func (l Length) In(unit Unit) string { return WithUnit(BareLength(l).In(unit), string(unit)) }

// String returns the length in millimetres, without unit.
func (l BareLength) String() string { return l.In(Millimetre) }

// In returns the length in a unit, without it.
func (l BareLength) In(unit Unit) string {
	return FormatNumber(float64(l)/unit.Length(), unit.Decimals())
}

// Spell returns how a value of a sentence is written in this unit if it is a length, and
// the value itself if it is anything else. It is made for phrase.Phrase.With.
func (u Unit) Spell(value any) any {
	if length, is := value.(interface{ In(Unit) string }); is {
		return length.In(u)
	}
	return value
}
