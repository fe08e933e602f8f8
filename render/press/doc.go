// Package press draws press sheets: blanks of one or several bags where they are
// printed, with gripper, room for the colour bar, marks, and the die over them.
//
// A sheet is seen from its print side, as in package sheet: its lower left corner is
// the origin and lengths are in mm. Artwork and die of a piece are parts that are
// repeated in each of its places, so that files hold them once.
package press
