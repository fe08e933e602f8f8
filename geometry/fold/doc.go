// Package fold puts the panels of a blank where they are on the folded bag, and at
// every moment on the way there.
//
// Space is measured in millimetres: x to the right seen from the front, y away
// from the viewer, z up. The front face of the standing bag is at y = 0, the back at
// y = D and the bag on z = 0. Paper is a set of facets, each a plane part of a panel
// with the motion that carries it from the blank to its place. No edge is stretched;
// layers that lie on each other are moved a caliper or so apart.
//
// Standing is the open bag and Packed the flat one. A Lesson leads from the blank to
// both, stage by stage. Every fold on the way to the standing bag is one that plane
// paper makes: the panel edges turn together, the corners of a block base are
// spherical linkages with one degree of freedom, and a pinch base opens like a wedge.
package fold
