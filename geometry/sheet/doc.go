// Package sheet lays rectangles on press sheets: what the gripper and the
// margins leave free, how many pieces go on a sheet in straight rows, and how
// much is wasted. It knows pieces only by width and height.
//
// A sheet is seen from its print side, its lower left corner at the origin. The
// press grips the lower edge when that is the gripped one, else the left edge.
package sheet
