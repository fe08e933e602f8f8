package bag

import (
	"fmt"
	"math"
	"reflect"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
)

// Field describes one entry of a Spec. The table of them is the only place that
// knows labels, units, limits and reasons.
type Field struct {
	Path   string // where the entry stands in bag.json, such as "bag.width_mm"
	Label  string // in the words of the trade
	Symbol string // the letter on drawings, such as "W", or empty
	Unit   string // "mm", "°", "g/m²", "µm", "%" or empty
	// Least and Most bound a number; both ends are allowed.
	Least, Most float64
	Whole       bool     // only whole numbers make sense
	Options     []string // the values of a choice; empty for numbers and switches
	Help        string   // what the entry is
	WhyLeast    string   // why not less; empty where the least is plainly 0
	WhyMost     string   // why not more
	at          func(*Spec) any
}

// Kind tells what an entry holds.
type Kind int

// The kinds of entry.
const (
	Number Kind = iota
	Choice
	Switch
)

// Kind tells what the entry holds.
func (f *Field) Kind() Kind {
	var none Spec
	switch f.at(&none).(type) {
	case *float64:
		return Number
	case *bool:
		return Switch
	}
	return Choice
}

// Number returns the value of a number entry.
func (f *Field) Number(s *Spec) float64 { return *f.at(s).(*float64) }

// SetNumber sets a number entry.
func (f *Field) SetNumber(s *Spec, value float64) { *f.at(s).(*float64) = value }

// Switch returns the value of a switch.
func (f *Field) Switch(s *Spec) bool { return *f.at(s).(*bool) }

// SetSwitch sets a switch.
func (f *Field) SetSwitch(s *Spec, on bool) { *f.at(s).(*bool) = on }

// Choice returns the value of a choice.
func (f *Field) Choice(s *Spec) string { return reflect.ValueOf(f.at(s)).Elem().String() }

// SetChoice sets a choice.
func (f *Field) SetChoice(s *Spec, value string) { reflect.ValueOf(f.at(s)).Elem().SetString(value) }

// Text returns the value as it is shown: a number with its unit, a choice, yes or no.
func (f *Field) Text(s *Spec) string {
	switch f.Kind() {
	case Number:
		return f.format(f.Number(s))
	case Switch:
		if f.Switch(s) {
			return "yes"
		}
		return "no"
	}
	return f.Choice(s)
}

func (f *Field) copy(to, from *Spec) {
	reflect.ValueOf(f.at(to)).Elem().Set(reflect.ValueOf(f.at(from)).Elem())
}

// Fields returns the table of entries in the order of the job.
func Fields() []Field { return fields }

// FieldAt returns the field with the given path.
func FieldAt(path string) (*Field, bool) {
	i, found := fieldIndex[path]
	if !found {
		return nil, false
	}
	return &fields[i], true
}

var fieldIndex = func() map[string]int {
	index := make(map[string]int, len(fields))
	for i := range fields {
		index[fields[i].Path] = i
	}
	return index
}()

// check returns the complaint about the entry, or nil.
func (f *Field) check(s *Spec) *FieldError {
	switch target := f.at(s).(type) {
	case *bool:
		return nil
	case *float64:
		return f.CheckNumber(*target)
	}
	return f.CheckChoice(f.Choice(s))
}

// CheckNumber returns the complaint about a value of a number entry, or nil.
func (f *Field) CheckNumber(value float64) *FieldError {
	given := givenIn(value, f.Unit)
	complain := func(limit phrase.Phrase, reason string) *FieldError {
		return &FieldError{
			Path: f.Path, Label: f.Name(), Value: fmt.Sprint(given), Limit: limit, Reason: phrase.Phrase{Format: reason},
			Remedy: phrase.New("enter a value from %s", f.Range()), given: given,
		}
	}
	switch {
	case math.IsNaN(value) || math.IsInf(value, 0):
		return complain(phrase.New("not a finite number"), "")
	case value < f.Least:
		return complain(phrase.New("less than the least, %s", f.limit(f.Least, false)), f.WhyLeast)
	case value > f.Most:
		return complain(phrase.New("more than the most, %s", f.limit(f.Most, true)), f.WhyMost)
	case f.Whole && value != math.Trunc(value):
		return complain(phrase.New("not a whole number"), "")
	}
	return nil
}

// CheckChoice returns the complaint about a value of a choice, or nil.
func (f *Field) CheckChoice(value string) *FieldError {
	for _, option := range f.Options {
		if option == value {
			return nil
		}
	}
	return &FieldError{
		Path: f.Path, Label: f.Name(), Value: quote(value), Limit: phrase.New("not one of the choices"),
		Remedy: chooseFrom(f.Options),
	}
}

// Name returns the label with the letter used on drawings.
func (f *Field) Name() string { return f.NameIn(func(label string) string { return label }) }

// NameIn is Name in another language.
func (f *Field) NameIn(translate func(string) string) string {
	if f.Symbol == "" {
		return translate(f.Label)
	}
	return translate(f.Label) + " " + f.Symbol
}

// Range returns the limits in words, such as "30 to 1000 mm". Those of a length can be told
// in another unit, see geometry.Unit.Spell.
func (f *Field) Range() phrase.Phrase { return rangeOf(f.Least, f.Most, f.Unit) }

func rangeOf(least, most float64, unit string) phrase.Phrase {
	if unit == string(geometry.Millimetre) {
		return phrase.New("%s to %s", lengthLimit{mm: least, bare: true}, lengthLimit{mm: most, most: true})
	}
	return phrase.New("%s to %s", geometry.FormatNumber(least, 3), geometry.WithUnit(geometry.FormatNumber(most, 6), unit))
}

// limit returns the least or the most as a value of a sentence.
func (f *Field) limit(value float64, most bool) any {
	if f.Unit == string(geometry.Millimetre) {
		return lengthLimit{mm: value, most: most}
	}
	return f.format(value)
}

func (f *Field) format(value float64) string {
	return geometry.WithUnit(geometry.FormatNumber(value, 6), f.Unit)
}
