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

// New returns a phrase; format is as for fmt.Sprintf.
func New(format string, args ...any) Phrase { return Phrase{format, args} }

// String returns the phrase in English.
func (p Phrase) String() string { return p.In(func(text string) string { return text }) }

// In returns the phrase with format and words put through translate.
func (p Phrase) In(translate func(string) string) string {
	format := translate(p.Format)
	if len(p.Args) == 0 {
		return format
	}
	args := make([]any, len(p.Args))
	for i, arg := range p.Args {
		switch arg := arg.(type) {
		case Word:
			args[i] = translate(string(arg))
		case Phrase:
			args[i] = arg.In(translate)
		default:
			args[i] = arg
		}
	}
	return fmt.Sprintf(format, args...)
}
