package session

import (
	"errors"
	"strings"

	"gussetwright/geometry/bag"
)

// mend gives every entry that stands in the way of drawing the bag the value it
// has in good, and leaves all others as they are. Where that does not suffice, as
// the entries of the body do not go together, the whole body is that of good.
func mend(spec bag.Spec, good *bag.Spec) bag.Spec {
	const rounds = 3 // entries that do not go together are found once each one is fine
	for range rounds {
		complaints := complaintsOf(spec.Validate())
		if len(complaints) == 0 {
			return spec
		}
		for _, complaint := range complaints {
			mendEntry(&spec, good, complaint.Path)
		}
	}
	if spec.Validate() != nil {
		spec.Body = good.Body
	}
	return spec
}

func mendEntry(spec, good *bag.Spec, path string) {
	field, found := bag.FieldAt(path)
	switch {
	case path == "name":
		spec.Name = good.Name
	case strings.HasPrefix(path, "artwork"):
		spec.Artwork = good.Artwork
	case path == "profile":
		spec.Profile = good.Profile
	case !found:
	case field.Kind() == bag.Number:
		field.SetNumber(spec, field.Number(good))
	case field.Kind() == bag.Choice:
		field.SetChoice(spec, field.Choice(good))
	}
}

// complaintsOf returns the complaints that Validate joined.
func complaintsOf(err error) (all []*bag.FieldError) {
	joined, ok := err.(interface{ Unwrap() []error })
	if !ok {
		return nil
	}
	for _, one := range joined.Unwrap() {
		var complaint *bag.FieldError
		if errors.As(one, &complaint) {
			all = append(all, complaint)
		}
	}
	return all
}
