// Package geometry holds the small value types that everything else is built
// from: points, paths of straight and circular edges, rectangles and lengths.
//
// Lengths are millimetres, angles are radians, x runs to the right and y runs
// up. A blank is always seen from its print side. The package knows nothing of
// pixels, files or bags.
package geometry

// Tolerance is the largest distance in millimetres at which two points of one
// drawing count as the same point. It is a thousandth of what a cutting rule
// can hold, and a thousand times the rounding error of a metre in a float64.
const Tolerance = 1e-6
