// Package sheet lays blanks on press sheets: what the gripper and the margins leave
// free, how the most pieces go on a sheet, how much is wasted, and which sheets that
// can be bought take a piece best.
//
// Pieces are laid by their bounding boxes, all alike or, where the grain allows, lying
// and standing: the pallet loading problem. Three methods follow each other until one
// meets the bound: rows, blocks around blocks, and a search that is complete but for
// its limit. Where outlines are given, pieces are also turned head to tail and moved
// into each other.
//
// A sheet is seen from its print side, its lower left corner at the origin. The
// press grips the lower edge when that is the gripped one, else the left edge.
package sheet
