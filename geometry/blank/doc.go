// Package blank lays out the flat pieces of a bag: panels, cuts, creases with
// their fold direction, holes, glue areas, cards and the zones for artwork.
//
// A piece is drawn from its print side in millimetres, x to the right and y up.
// The free edge of the base flaps is y = 0 and the left raw edge is x = 0.
// Mountain folds turn away from the viewer, valley folds toward the viewer.
package blank
