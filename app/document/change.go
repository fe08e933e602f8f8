package document

import (
	"slices"

	"gussetwright/geometry/bag"
)

// Change says in which entry two states differ, for the names of undo and redo.
// Label is in English and is translated where it is shown.
type Change struct {
	Path     string // of the entry, or empty when several changed
	Label    string // of the entry, or words for the whole change
	From, To string // the values with their units; empty when several changed
}

// several is the label of a change to more than one entry.
const several = "several entries"

// Difference returns what changes from one spec to another. The Label is empty
// when nothing does.
func Difference(from, to *bag.Spec) Change {
	var change Change
	fields := bag.Fields()
	for i := range fields {
		field := &fields[i]
		before, after := field.Text(from), field.Text(to)
		if before == after {
			continue
		}
		if change.Label != "" {
			return Change{Label: several}
		}
		change = Change{field.Path, field.Label, before, after}
	}
	if from.Name != to.Name {
		if change.Label != "" {
			return Change{Label: several}
		}
		return Change{"name", "Name", from.Name, to.Name}
	}
	if change.Label == "" && !same(from, to) {
		return Change{Label: "artwork"}
	}
	return change
}

// same tells whether two specs are equal.
func same(a, b *bag.Spec) bool {
	x, y := *a, *b
	x.Artwork, y.Artwork = nil, nil
	return slices.Equal(a.Artwork, b.Artwork) && equalPlain(x, y)
}

// equalPlain compares specs without artwork. NaN, which a spec never holds once
// it was validated, differs from itself and so counts as a change.
func equalPlain(a, b bag.Spec) bool {
	return a.Name == b.Name && a.Date == b.Date && a.Body == b.Body && a.Handle == b.Handle && a.Cards == b.Cards &&
		a.Paper == b.Paper && a.Sheet == b.Sheet && a.Print == b.Print && a.Run == b.Run
}
