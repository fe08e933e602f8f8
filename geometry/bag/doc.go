// Package bag says what a bag is: Spec holds all that a user can set, Fields
// describes each entry once (label, unit, limits, help) for the window, the
// command and the project file alike, and Validate tells which entries cannot be
// drawn at all. Whether a drawn bag can be made well is asked by package check.
//
// Lengths are millimetres, angles degrees, grammages g/m², calipers µm.
package bag
