// Package svg writes drawings as Scalable Vector Graphics at true scale: one
// user unit is one millimetre, and each role has a group of its own, which
// drawing programs show as a layer.
//
// The page grows down from its upper left corner, as SVG counts, so y is turned
// over in the coordinates themselves; no transform stands between a number in
// the file and a length on the paper. Written after SVG 1.1 (W3C Recommendation,
// 16 August 2011).
package svg
