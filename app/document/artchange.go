package document

import (
	"slices"

	"gussetwright/geometry/bag"
)

// The labels of changes to artwork, each with the file, some with its place.
const (
	placeLabel   = "place %s on %s"
	takeOutLabel = "take out %s"
	replaceLabel = "replace %s"
	moveLabel    = "move %s"
	scaleLabel   = "scale %s"
	turnLabel    = "turn %s"
	mirrorLabel  = "mirror %s"
	fitLabel     = "fit of %s"
	repeatLabel  = "repeat of %s"
	pageLabel    = "page of %s"
	opacityLabel = "opacity of %s"
	holdsLabel   = "content of %s"
	changeLabel  = "change %s"
	orderLabel   = "order of the artwork"
	artworkLabel = "artwork"
)

func artworkLabels() []string {
	return []string{
		placeLabel, takeOutLabel, replaceLabel, moveLabel, scaleLabel, turnLabel, mirrorLabel, fitLabel, repeatLabel,
		pageLabel, opacityLabel, holdsLabel, changeLabel, orderLabel, artworkLabel,
	}
}

// artworkChange names what makes one list of artwork another.
func artworkChange(from, to []bag.Artwork) Change {
	// What both ends have in common is left aside.
	first := 0
	for first < min(len(from), len(to)) && from[first] == to[first] {
		first++
	}
	last := 0
	for last < min(len(from), len(to))-first && from[len(from)-1-last] == to[len(to)-1-last] {
		last++
	}
	before, after := from[first:len(from)-last], to[first:len(to)-last]
	switch {
	case len(before) == 0 && len(after) == 1:
		return Change{Label: placeLabel, File: after[0].File, Place: after[0].On}
	case len(before) == 1 && len(after) == 0:
		return Change{Label: takeOutLabel, File: before[0].File}
	case len(before) == 1 && len(after) == 1:
		return pieceChange(&before[0], &after[0])
	case sameInOtherOrder(before, after):
		return Change{Label: orderLabel}
	}
	return Change{Label: artworkLabel}
}

// pieceChange names what changes about one piece.
func pieceChange(from, to *bag.Artwork) Change {
	var labels []string
	add := func(differs bool, label string) {
		if differs {
			labels = append(labels, label)
		}
	}
	// A piece that is scaled by a corner moves as well.
	scaled := from.Scale != to.Scale
	add(!scaled && (from.X != to.X || from.Y != to.Y), moveLabel)
	add(scaled, scaleLabel)
	add(from.Turn != to.Turn, turnLabel)
	add(from.Mirror != to.Mirror, mirrorLabel)
	add(from.Fit != to.Fit, fitLabel)
	add(from.Repeat != to.Repeat, repeatLabel)
	add(from.Page != to.Page, pageLabel)
	add(from.Opacity != to.Opacity, opacityLabel)
	add(from.Holds != to.Holds, holdsLabel)
	switch {
	case from.File != to.File && from.On == to.On:
		return Change{Label: replaceLabel, File: from.File} // whatever else changes with it
	case from.File == to.File && from.On != to.On:
		return Change{Label: placeLabel, File: to.File, Place: to.On}
	case len(labels) == 1:
		return Change{Label: labels[0], File: to.File}
	}
	return Change{Label: changeLabel, File: to.File}
}

func sameInOtherOrder(a, b []bag.Artwork) bool {
	left := slices.Clone(b)
	for _, piece := range a {
		at := slices.Index(left, piece)
		if at < 0 {
			return false
		}
		left = slices.Delete(left, at, at+1)
	}
	return len(left) == 0
}
