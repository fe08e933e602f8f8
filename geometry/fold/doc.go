// Package fold puts the panels of a blank where they are on the folded bag.
//
// Space is measured in millimetres: x to the right seen from the front, y away
// from the viewer, z up. The front face stands at y = 0, the back at y = D and the
// bag on z = 0. Paper is a set of facets, each a plane part of a panel with the
// motion that carries it from the blank to its place. No edge is stretched;
// layers that lie on each other are moved a caliper or so apart.
package fold
