package vector

import (
	"gussetwright/geometry/phrase"
)

// The limits of a drawing. A file beyond them gives an error and does not keep the
// program from its work: artwork comes from anywhere.
const (
	// mostBytes is four times what the largest illustrations have that are drawn by
	// hand; larger ones hold traced or embedded pictures.
	mostBytes = 32 << 20
	// mostElements is what takes some 100 MB in memory.
	mostElements = 200_000
	// mostAttributes is ten of each element, and what takes some 100 MB in memory.
	mostAttributes = 10 * mostElements
	// mostDepth is several times as deep as drawing programs nest their groups.
	mostDepth = 256
	// mostUses is how deep symbols may stand within symbols.
	mostUses = 32
	// mostGroups is how deep groups with an opacity may stand within each other:
	// each of them takes a picture of its own while it is drawn.
	mostGroups = 32
	// mostClips is how deep groups and drawings with a clip may stand within each
	// other: each of them takes a quarter as much.
	mostClips = 64
	// mostShapes is what a drawing may hold once every use is written out.
	mostShapes = 500_000
	// mostSegments is how many lines and curves all paths may hold together, with
	// every use written out: some 250 MB.
	mostSegments = 5_000_000
	// mostInPath is how many lines and curves a single path may hold.
	mostInPath = 1_000_000
	// mostPixels is for all embedded images together: a picture of 700 × 480 mm at
	// 300 ppi has 47 million.
	mostPixels = 64 << 20
	// mostEffort is the work that all uses may cause, in about the bytes of what they
	// repeat. It ends files whose symbols double what they show at each level.
	mostEffort = 1 << 29
	// perElement is what it takes to look at an element, besides its attributes.
	perElement = 256
	// mostPicture is how many pixels a drawing may be rendered to: 1 GB.
	mostPicture = 256 << 20
	// farthest is how far from the origin anything may stand, in mm. Readers of PDF
	// files keep numbers with seven digits, so nothing is exact out there.
	farthest = 1e7
	// largest and smallest are the sides that a drawing may have, in mm.
	largest, smallest = 100_000, 0.01
)

// ErrTooMuch is what errors wrap that a file beyond a limit causes.
var ErrTooMuch = phrase.Errorf("more than this program takes on")

// tooMany says of what there is too much, and what to do about it.
func tooMany(what phrase.Word, limit int, remedy phrase.Word) error {
	return phrase.Errorf("%s: over %d, %s; %s", what, limit, ErrTooMuch, remedy)
}
