package words

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

// written returns how a value of a phrase is written in the language of the window: its
// decimals behind the right mark. It is made for phrase.Phrase.With.
func written(value any) any {
	switch value := value.(type) {
	case float64:
		return decimal(value)
	case string:
		return spelled(value)
	case error:
		return localError(value)
	case interface{ In(geometry.Unit) string }:
		return spelled(value.In(geometry.Millimetre))
	}
	return value
}

// decimal is a number in a phrase.
type decimal float64

// Format is part of fmt.Formatter.
func (d decimal) Format(state fmt.State, verb rune) {
	fmt.Fprint(state, marked(fmt.Sprintf(fmt.FormatString(state, verb), float64(d))))
}

// spelled is a text in a phrase. It may be a number with its unit.
type spelled string

// Format is part of fmt.Formatter. What is quoted stays as it stands elsewhere.
func (s spelled) Format(state fmt.State, verb rune) {
	text := string(s)
	if verb != 'q' {
		text = local(text)
	}
	fmt.Fprintf(state, fmt.FormatString(state, verb), text)
}

// measured is a number with decimals, or several with signs of multiplication between, and a
// unit that stands behind numbers in phrases.
var measured = regexp.MustCompile(`^-?\d+(\.\d+)?( × -?\d+(\.\d+)?)*[ \x{a0}]?(mm|cm|m|in|g|kg|g/m²|µm|pt|kN/m|N|[KM]iB|°|%|)$`)

// local writes a number with its unit in the language of the window, and leaves any other
// text as it is.
func local(text string) string {
	if !strings.Contains(text, ".") || !measured.MatchString(text) {
		return text
	}
	return withMark(text, DecimalMark())
}

// points are decimal points.
var points = regexp.MustCompile(`(\d)\.(\d)`)

// withMark puts a decimal mark in the place of every decimal point.
func withMark(text string, mark arithmetic.DecimalMark) string {
	return points.ReplaceAllString(text, "${1}"+string(mark)+"${2}")
}

// localError returns an error with the numbers in its phrases in the language of the
// window, as far as they are its own.
func localError(err error) error {
	switch err := err.(type) {
	case *phrase.Error:
		return &phrase.Error{Phrase: err.With(written)}
	case *arithmetic.Error:
		told := *err
		told.Problem, told.Remedy = err.Problem.With(written), err.Remedy.With(written)
		return &told
	case *bag.FieldError:
		told := err.With(written)
		told.Value = local(told.Value)
		return told
	case interface{ Unwrap() []error }:
		return joined(err)
	}
	return err
}

// joined returns what errors.Join returned with the numbers in the language of the window,
// and any other error as it is.
func joined(err interface{ Unwrap() []error }) error {
	list := err.Unwrap()
	if whole := err.(error); errors.Join(list...).Error() != whole.Error() {
		return whole
	}
	told := make([]error, len(list))
	for i, one := range list {
		told[i] = localError(one)
	}
	return errors.Join(told...)
}
