package voice

import (
	"errors"
	"fmt"
	"regexp"
	"strings"

	"gussetwright/geometry"
	"gussetwright/geometry/arithmetic"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// Writer writes numbers with a decimal mark.
type Writer struct{ Mark arithmetic.DecimalMark }

// half is said as any text is; its translation shows the decimal mark of the language.
const half phrase.Word = "0.5"

// WriterIn returns the writer of the language that say translates to.
func WriterIn(say func(english string) string) Writer {
	if strings.Contains(say(string(half)), ",") {
		return Writer{arithmetic.Comma}
	}
	return Writer{arithmetic.Point}
}

// Number puts the decimal mark in the place of the point in a number.
func (w Writer) Number(number string) string {
	return strings.Replace(number, string(arithmetic.Point), string(w.Mark), 1)
}

// Value returns how a value of a phrase is written. It is made for phrase.Phrase.With.
func (w Writer) Value(value any) any {
	switch value := value.(type) {
	case float64:
		return decimal{value, w}
	case string:
		return spelled{value, w}
	case error:
		return w.Error(value)
	case interface{ In(geometry.Unit) string }:
		return spelled{value.In(geometry.Millimetre), w}
	}
	return value
}

// decimal is a number in a phrase.
type decimal struct {
	value float64
	Writer
}

// Format is part of fmt.Formatter.
func (d decimal) Format(state fmt.State, verb rune) {
	fmt.Fprint(state, d.Number(fmt.Sprintf(fmt.FormatString(state, verb), d.value)))
}

// spelled is a text in a phrase. It may be a number with its unit.
type spelled struct {
	text string
	Writer
}

// Format is part of fmt.Formatter. What is quoted stays as it stands elsewhere.
func (s spelled) Format(state fmt.State, verb rune) {
	text := s.text
	if verb != 'q' {
		text = s.local(text)
	}
	fmt.Fprintf(state, fmt.FormatString(state, verb), text)
}

// measured is a number with decimals, or several with signs of multiplication between, and a
// unit that stands behind numbers in phrases.
var measured = regexp.MustCompile(`^-?\d+(\.\d+)?( × -?\d+(\.\d+)?)*[ \x{a0}]?(mm|cm|m|in|g|kg|g/m²|µm|pt|kN/m|N|[KM]iB|°|%|)$`)

// local writes a number with its unit with the decimal mark, and leaves any other text as
// it is.
func (w Writer) local(text string) string {
	if !strings.Contains(text, ".") || !measured.MatchString(text) {
		return text
	}
	return w.Text(text)
}

// points are decimal points.
var points = regexp.MustCompile(`(\d)\.(\d)`)

// Text puts the decimal mark in the place of every decimal point of a text.
func (w Writer) Text(text string) string {
	return points.ReplaceAllString(text, "${1}"+string(w.Mark)+"${2}")
}

// Error returns an error with the decimal mark in the numbers of its phrases, as far as
// they are its own.
func (w Writer) Error(err error) error {
	switch err := err.(type) {
	case *phrase.Error:
		return &phrase.Error{Phrase: err.With(w.Value)}
	case *arithmetic.Error:
		told := *err
		told.Problem, told.Remedy = err.Problem.With(w.Value), err.Remedy.With(w.Value)
		return &told
	case *bag.FieldError:
		told := err.With(w.Value)
		told.Value = w.local(told.Value)
		return told
	case interface{ Unwrap() []error }:
		return w.joined(err)
	}
	return err
}

// joined returns what errors.Join returned with the decimal mark in its numbers, and any
// other error as it is.
func (w Writer) joined(err interface{ Unwrap() []error }) error {
	list := err.Unwrap()
	if whole := err.(error); errors.Join(list...).Error() != whole.Error() {
		return whole
	}
	told := make([]error, len(list))
	for i, one := range list {
		told[i] = w.Error(one)
	}
	return errors.Join(told...)
}
