package intake

import (
	"slices"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/placement"
)

// faces are the panels that a file may go on by itself, in the order in which they are
// filled.
var faces = [...]string{"front", "back", "gusset-left", "gusset-right"}

// freeFace returns the first face without artwork, and the front where all have some.
func freeFace(b *blank.Blank, there []bag.Artwork) string {
	for _, face := range faces {
		if placement.Has(b, face) && !covered(b, face, there) {
			return face
		}
	}
	return faces[0]
}

// hidesArtwork tells whether what is put on a place comes to lie over other artwork.
func hidesArtwork(b *blank.Blank, on string, there []bag.Artwork) bool {
	return slices.ContainsFunc(faces[:], func(face string) bool { return reaches(b, on, face) && covered(b, face, there) })
}

// covered tells whether there is artwork on a face.
func covered(b *blank.Blank, face string, there []bag.Artwork) bool {
	return slices.ContainsFunc(there, func(piece bag.Artwork) bool { return reaches(b, piece.On, face) })
}

// reaches tells whether a place that artwork is put on takes in a face.
func reaches(b *blank.Blank, on, face string) bool {
	switch on {
	case face, bag.OnBlank:
		return true
	case bag.OnFaces:
		return face == "front" || face == "back"
	case bag.OnGussets:
		return face == "gusset-left" || face == "gusset-right"
	case bag.OnFrontPiece, bag.OnBackPiece:
		return wholeOf(b, face) == on
	}
	return false
}
