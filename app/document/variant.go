package document

import "gussetwright/geometry/bag"

// variantLabel is the label of taking a variant over, with its letter.
const variantLabel = "take variant %s"

// Taking names the step of taking a variant over as the bag. The variant has a letter.
func Taking(letter string) Change { return Change{Label: variantLabel, File: letter} }

// Derive derives another bag with the artwork of this one, without showing it. The
// error is that of Validate.
func (d *Document) Derive(spec bag.Spec) (*Snapshot, error) {
	snapshot, err := Derive(spec)
	if err != nil {
		return nil, err
	}
	snapshot.hang(d.files, d.gallery)
	return snapshot, nil
}
