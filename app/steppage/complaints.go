package steppage

import (
	"errors"
	"strings"

	"gussetwright/app/words"
	"gussetwright/geometry/bag"
)

// ComplaintsIn takes the complaints about single entries out of the error of Validate,
// which may be nil.
func ComplaintsIn(err error) []*bag.FieldError {
	if joined, ok := err.(interface{ Unwrap() []error }); ok {
		var all []*bag.FieldError
		for _, one := range joined.Unwrap() {
			all = append(all, ComplaintsIn(one)...)
		}
		return all
	}
	var complaint *bag.FieldError
	if errors.As(err, &complaint) {
		return []*bag.FieldError{complaint}
	}
	return nil
}

// Complaints takes the complaints about single entries out of the error of Validate, which
// may be nil, with lengths in the unit of the user.
func (b *Bench) Complaints(err error) []*bag.FieldError {
	all := ComplaintsIn(err)
	for i, c := range all {
		all[i] = c.With(b.Settings.Unit().Spell)
	}
	return all
}

// ComplaintAbout says in the language of the user what is wrong with the entry at a path,
// or nothing.
func ComplaintAbout(path string, complaints []*bag.FieldError) string {
	for _, c := range complaints {
		if c.Path == path {
			return Complaint(c)
		}
	}
	return ""
}

// Complaint says in the language of the user what is wrong with an entry, and what to do.
func Complaint(c *bag.FieldError) string {
	return Sentence(words.Of(c.Limit)) + " " + Sentence(words.Of(c.Remedy))
}

// Sentence gives a phrase a capital letter and a full stop.
func Sentence(text string) string {
	runes := []rune(text)
	if len(runes) == 0 {
		return ""
	}
	return strings.ToUpper(string(runes[0])) + strings.TrimSuffix(string(runes[1:]), ".") + "."
}
