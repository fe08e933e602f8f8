// Package load estimates what a bag carries, from the tensile strength of its paper.
//
// The estimate follows the load from the handle down: the paper on which the rope or the
// hand bears, the paper beside the openings, and the two faces beneath, which alone are
// taken to carry. The weakest of these places decides, and what breaks it is divided by a
// factor of safety. Seam, base, glue, rope and the gussets are not reckoned. It is no
// more than a way to compare papers and constructions: the Caution goes with every
// figure.
//
// Forces are newtons, strengths kN/m, which is N/mm, and lengths mm.
package load
