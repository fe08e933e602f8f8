package bag

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"gussetwright/geometry/phrase"
)

// FieldError says what is wrong with one entry and what to do about it.
type FieldError struct {
	Path   string        // the entry in bag.json
	Label  string        // the entry in words, in English
	Value  string        // what was given, with its unit
	Limit  phrase.Phrase // which limit it breaks
	Reason phrase.Phrase // why there is that limit; may be empty
	Remedy phrase.Phrase // what to do

	given any // the value as one of a sentence; nil where it is no number
}

// With returns the complaint with the lengths in it as put returns them, which is made for
// geometry.Unit.Spell.
func (e *FieldError) With(put func(value any) any) *FieldError {
	told := *e
	told.Limit, told.Reason, told.Remedy = e.Limit.With(put), e.Reason.With(put), e.Remedy.With(put)
	if e.given != nil && fmt.Sprint(e.given) == e.Value { // not where it is told as it stands in a file
		told.Value = fmt.Sprint(put(e.given))
	}
	return &told
}

// Error returns the whole complaint in one line of English, which names the entry as
// it is found in bag.json.
func (e *FieldError) Error() string {
	name := e.Path
	if e.Label != "" {
		name += " (" + e.Label + ")"
	}
	return e.sentence(name, e.Value, func(text string) string { return text })
}

// In returns the whole complaint in another language, for people who know the entry
// by its label.
func (e *FieldError) In(translate func(string) string) string {
	name, value := e.Path, e.Value
	field, inTable := FieldAt(e.Path)
	switch {
	case inTable:
		name = field.NameIn(translate)
		if slices.Contains(field.Options, value) {
			value = translate(value)
		}
	case strings.Contains(e.Path, "[") && e.Label != "": // one of several that have the label
		name = translate(e.Label) + " (" + e.Path + ")"
	case e.Label != "":
		name = translate(e.Label)
	}
	return e.sentence(name, value, translate)
}

func (e *FieldError) sentence(name, value string, translate func(string) string) string {
	text := name + ": " + e.Limit.In(translate)
	if value != "" {
		text = phrase.New("%s is %s: %s", name, value, e.Limit).In(translate)
	}
	if !e.Reason.Empty() {
		text += " (" + e.Reason.In(translate) + ")"
	}
	if !e.Remedy.Empty() {
		text += "; " + e.Remedy.In(translate)
	}
	return text
}

func quote(text string) string {
	const longest = 60
	if runes := []rune(text); len(runes) > longest {
		text = string(runes[:longest]) + "…"
	}
	return strconv.Quote(text)
}

// chooseFrom is the remedy for a choice. The options stay as they stand in bag.json.
func chooseFrom(options []string) phrase.Phrase {
	last := len(options) - 1
	return phrase.New("choose %s or %s", strings.Join(options[:last], ", "), options[last])
}
