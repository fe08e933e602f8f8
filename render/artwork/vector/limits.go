package vector

import (
	"gussetwright/geometry/phrase"
	"gussetwright/render/limits"
)

// The limits of a drawing; their reasons are in package limits. A file beyond them gives
// an error and does not keep the program from its work: artwork comes from anywhere.
const (
	mostBytes      = limits.DrawingBytes
	mostElements   = limits.DrawingElements
	mostAttributes = limits.DrawingAttributes
	mostDepth      = limits.DrawingDepth
	mostUses       = limits.DrawingUses
	mostGroups     = limits.DrawingGroups
	mostClips      = limits.DrawingClips
	mostShapes     = limits.DrawingShapes
	mostSegments   = limits.DrawingSegments
	mostInPath     = limits.DrawingPathSegments
	mostPixels     = limits.DrawingImagePixels
	mostEffort     = limits.DrawingEffort
	mostPicture    = limits.DrawingRenderedPixels
	farthest       = limits.DrawingFarthest

	// largest and smallest are the sides that a drawing may have, in mm.
	largest, smallest = limits.DrawingLongest, 0.01
	// perElement is what it takes to look at an element, besides its attributes.
	perElement = 256
)

// ErrTooMuch is what errors wrap that a file beyond a limit causes.
var ErrTooMuch = phrase.Errorf("more than this program takes on")

// tooMany says of what there is too much, and what to do about it.
func tooMany(what phrase.Word, limit int, remedy phrase.Word) error {
	return phrase.Errorf("%s: over %d, %s; %s", what, limit, ErrTooMuch, remedy)
}
