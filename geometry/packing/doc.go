// Package packing reckons how a bag with a block base goes from standing to packed
// flat: the base swings up against the front, the gussets close, and the faces bend.
//
// With the creases of the blank alone there is no such motion: a bag of plane facets
// is stuck standing or flat (Balkcom, Demaine, Demaine, Ochsendorf and You, "Folding
// paper shopping bags", 2006). Paper bends, and here it bends along lines that travel
// over it. The sheet is a net of triangles whose corners not only move in space but
// also wander over the blank, so that at every moment the net is folded rather than
// stretched. Creases stay where they are: corners on a crease wander along it.
//
// Lengths are in units of the gusset depth D until a bag is asked for, and half a bag
// is reckoned, since the other half is its mirror image. The half face of the net is
// D/2 wide and the net 2 D high. At that height it moves as a parallel linkage does,
// so one motion serves every bag that packs: what stands higher is carried along, of
// a lower bag the upper part is left out, and a wider face is bent alike over its
// whole middle.
//
// # How it goes
//
// With a the angle by which the gusset halves have turned and b that by which the
// base has swung, the gusset triangle beside the base stays plane as long as
//
//	tan(b/2) = tan²(a/2)
//
// and only the strip of the front below the flat-fold crease, with the small triangles
// beside it, has to bend. That can be had in closed form: a bend runs across the strip
// half way up and ends in a dent of the panel edge, the strip bulging outward. No
// length changes at any b, but from b = 20° on the lower edge of the front would pass
// through the gusset. There the front has to arch and let the gusset triangle by. So
// the closed form is taken up to 3°; from there the net is relaxed, its base driven,
// against the distances of its corners and edges from each other (relax.go, find.go),
// to within a few hundredths of D of the packed state, and blended into that. Both
// ends are exact. What is found, in less than two minutes on one core, is kept in the
// package; the tests measure it and, with -find, find it anew.
//
// Near its end what is found buckles out at both lower corners, beyond where it was before,
// and snaps back. So it is taken only up to where the straight way to the packed state
// stretches next to nothing, and pressed flat from there (kept.go).
//
// # How good it is
//
// On bags from 120 × 60 × 200 to 540 × 250 × 600 mm (W × D × H) edges of the net change
// by 0.9 % at most, lengths across its triangles in any direction by 5.6 %. Edges reach
// through triangles by 0.001 D at most, a tenth of a mm to a quarter. The greatest step
// is 1.1 times the mean.
//
// # What did not do
//
// A strip that folds flat onto the base as it goes has a closed form without strain
// and without depth of crossing, D·sin b / (1 + sin b) being how much of it lies on
// the base; but strip and gusset triangle end in the wrong order. With back and back
// halves of the gussets held plane the net was not led past a swing of 52°. Triangles
// kept from getting narrow on the blank got stuck at 60°. Driving the base alone, not
// the upper edge, turns the bag over as a whole.
//
// Space is that of package fold: x to the right seen from the front, y away from the
// viewer, z up; the back stays where it stands.
package packing
