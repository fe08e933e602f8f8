package bag

import (
	"strconv"
	"strings"
)

// FieldError says what is wrong with one entry and what to do about it.
type FieldError struct {
	Path   string // the entry in bag.json
	Label  string // the entry in words
	Value  string // what was given, with its unit
	Limit  string // which limit it breaks
	Reason string // why there is that limit; may be empty
	Remedy string // what to do
}

// Error returns the whole complaint in one line.
func (e *FieldError) Error() string {
	var text strings.Builder
	text.WriteString(e.Path)
	if e.Label != "" {
		text.WriteString(" (" + e.Label + ")")
	}
	if e.Value != "" {
		text.WriteString(" is " + e.Value)
	}
	text.WriteString(": " + e.Limit)
	if e.Reason != "" {
		text.WriteString(" (" + e.Reason + ")")
	}
	if e.Remedy != "" {
		text.WriteString("; " + e.Remedy)
	}
	return text.String()
}

func quote(text string) string {
	const longest = 60
	if runes := []rune(text); len(runes) > longest {
		text = string(runes[:longest]) + "…"
	}
	return strconv.Quote(text)
}

func orList(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}
