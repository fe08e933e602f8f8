// Package phrase holds sentences that are written once, in English, and can be said
// in another language without being taken apart again.
package phrase

import "fmt"

// Phrase is a sentence with values in it. Format is in English and is what a
// translation is found by.
type Phrase struct {
	Format string
	Args   []any
}

// Word is a value in a phrase that is itself translated.
type Word string

// New returns a phrase; format is as for fmt.Sprintf. Values that are words, phrases
// or errors are translated with it.
func New(format string, args ...any) Phrase { return Phrase{format, args} }

// Empty tells whether the phrase says nothing.
func (p Phrase) Empty() bool { return p.Format == "" }

// String returns the phrase in English.
func (p Phrase) String() string {
	if len(p.Args) == 0 {
		return p.Format
	}
	return fmt.Sprintf(p.Format, p.Args...)
}

// With returns the phrase with each of its values, and of the phrases among these,
// as put returns it.
func (p Phrase) With(put func(value any) any) Phrase {
	args := make([]any, len(p.Args))
	for i, arg := range p.Args {
		if inner, is := arg.(Phrase); is {
			args[i] = inner.With(put)
			continue
		}
		args[i] = put(arg)
	}
	return Phrase{p.Format, args}
}

// sayable is what can be said in another language.
type sayable interface {
	In(translate func(string) string) string
}

// In returns the phrase with format and words put through translate, which is never asked
// for nothing.
func (p Phrase) In(translate func(string) string) string {
	if p.Empty() {
		return ""
	}
	format := translate(p.Format)
	if len(p.Args) == 0 {
		return format
	}
	args := make([]any, len(p.Args))
	for i, arg := range p.Args {
		switch arg := arg.(type) {
		case Word:
			if args[i] = ""; arg != "" {
				args[i] = translate(string(arg))
			}
		case sayable:
			args[i] = arg.In(translate)
		case error:
			args[i] = ErrorIn(arg, translate)
		default:
			args[i] = arg
		}
	}
	return fmt.Sprintf(format, args...)
}
