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

	// File and Place are of changes to a piece of artwork, whose Label has a %s for
	// either of them that is given. Place is as in bag.Artwork.On. Of a variant that is
	// taken, File is the letter.
	File, Place string
}

// The labels of changes that are not to an entry of the field table.
const (
	nameLabel     = "Name"
	dateLabel     = "Date"
	profileLabel  = "Output profile"
	currencyLabel = "Currency"
	breaksLabel   = "quantities to quote for"
	familyLabel   = "sizes of the family"
	stockLabel    = "list of own sheets"
	severalLabel  = "several entries"
)

// Labels returns the labels of changes that stand in no field table, in English,
// for whoever translates them.
func Labels() []string {
	return append(append([]string{
		nameLabel, dateLabel, profileLabel, currencyLabel, breaksLabel, familyLabel, stockLabel, severalLabel,
	}, artworkLabels()...), variantLabel)
}

// Difference returns what changes from one spec to another. The Label is empty
// when nothing does.
func Difference(from, to *bag.Spec) Change {
	var found []Change
	add := func(differs bool, change Change) {
		if differs {
			found = append(found, change)
		}
	}
	add(from.Name != to.Name, entered("name", nameLabel, from.Name, to.Name))
	add(from.Date != to.Date, entered("date", dateLabel, from.Date, to.Date))
	if !slices.Equal(from.Artwork, to.Artwork) {
		found = append(found, artworkChange(from.Artwork, to.Artwork))
	}
	add(from.Profile != to.Profile, entered("profile", profileLabel, from.Profile, to.Profile))
	add(from.Currency != to.Currency, entered("currency", currencyLabel, from.Currency, to.Currency))
	add(!slices.Equal(from.Breaks, to.Breaks), Change{Path: "price_breaks", Label: breaksLabel})
	add(!slices.Equal(from.Family, to.Family), Change{Path: "family", Label: familyLabel})
	add(!slices.Equal(from.Stock, to.Stock), Change{Path: "stock", Label: stockLabel})
	for _, entry := range entries {
		if len(found) > 1 {
			break
		}
		if entry.differs(from, to) {
			found = append(found, entry.change(from, to))
		}
	}
	switch len(found) {
	case 0:
		return Change{}
	case 1:
		return found[0]
	}
	return Change{Label: severalLabel}
}

// entry is a field with its kind, which takes long to find out anew.
type entry struct {
	*bag.Field
	kind bag.Kind
}

var entries = func() []entry {
	fields := bag.Fields()
	list := make([]entry, len(fields))
	for i := range fields {
		list[i] = entry{&fields[i], fields[i].Kind()}
	}
	return list
}()

func (e entry) differs(from, to *bag.Spec) bool {
	switch e.kind {
	case bag.Number:
		return e.Number(from) != e.Number(to)
	case bag.Switch:
		return e.Switch(from) != e.Switch(to)
	}
	return e.Choice(from) != e.Choice(to)
}

func (e entry) change(from, to *bag.Spec) Change {
	return entered(e.Path, e.Label, e.Text(from), e.Text(to))
}

// entered is a change to one entry.
func entered(path, label, from, to string) Change {
	return Change{Path: path, Label: label, From: from, To: to}
}

// same tells whether two specs are equal. NaN, which a spec never holds once it
// was validated, differs from itself and so counts as a change.
func same(a, b *bag.Spec) bool {
	return a.Name == b.Name && a.Date == b.Date && a.Product == b.Product && a.Body == b.Body && a.Handle == b.Handle && a.Cards == b.Cards &&
		a.Paper == b.Paper && a.Sheet == b.Sheet && a.Print == b.Print && a.Run == b.Run &&
		a.Packing == b.Packing && a.Prices == b.Prices && a.Currency == b.Currency && slices.Equal(a.Breaks, b.Breaks) &&
		slices.Equal(a.Family, b.Family) && slices.Equal(a.Stock, b.Stock) &&
		a.Profile == b.Profile && slices.Equal(a.Artwork, b.Artwork)
}
