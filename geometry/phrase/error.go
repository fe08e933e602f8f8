package phrase

import "strings"

// Error is an error whose message is a phrase.
type Error struct{ Phrase }

// Errorf returns an error with a message as of New. It wraps those of its values that
// are errors themselves; they are written by %s.
func Errorf(format string, args ...any) error { return &Error{New(format, args...)} }

// Error returns the message in English.
func (e *Error) Error() string { return e.String() }

// Unwrap returns the errors among the values.
func (e *Error) Unwrap() []error {
	var wrapped []error
	for _, arg := range e.Args {
		if err, is := arg.(error); is {
			wrapped = append(wrapped, err)
		}
	}
	return wrapped
}

// ErrorIn returns the message of any error with all phrases in it put through
// translate. What an error of the system or of another package says stays as it is,
// around and between the phrases.
func ErrorIn(err error, translate func(string) string) string {
	if phrased, is := err.(sayable); is {
		return phrased.In(translate)
	}
	var said strings.Builder
	rest := err.Error()
	for _, cause := range causes(err) {
		if before, after, found := strings.Cut(rest, cause.Error()); found {
			said.WriteString(before + ErrorIn(cause, translate))
			rest = after
		}
	}
	return said.String() + rest
}

// causes returns what an error wraps, in the order in which its message names them.
func causes(err error) []error {
	switch err := err.(type) {
	case interface{ Unwrap() []error }:
		return err.Unwrap()
	case interface{ Unwrap() error }:
		if cause := err.Unwrap(); cause != nil {
			return []error{cause}
		}
	}
	return nil
}
