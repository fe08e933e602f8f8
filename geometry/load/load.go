package load

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
)

// Safety is the factor between the force that breaks the paper and the load that a bag
// should be given (common practice, no published source). It stands for jerks, for load
// that is carried often, for moisture, and for a load that does not hang evenly.
const Safety = 5

// gravity is the standard acceleration of free fall in m/s², as the third General
// Conference on Weights and Measures laid it down in 1901.
const gravity = 9.80665

// faces of a bag that carry, and holes or slits in each of them.
const (
	faces        = 2
	holesPerFace = 2
)

// tensileIndex is the strength of each kind of paper by its mass, along the weaker
// direction, in N·m/g: mid-range values from memory, to be replaced by the strength on
// the mill's data sheet. That of kraft fits sack kraft of 70 to 120 g/m² with 3 to
// 5.5 kN/m across the machine direction (values from memory).
var tensileIndex = map[bag.PaperKind]float64{
	bag.PaperGloss:    25,
	bag.PaperMatt:     25,
	bag.PaperUncoated: 28,
	bag.PaperKraft:    43,
	bag.PaperBoard:    30,
}

// Estimate is what a bag might carry.
type Estimate struct {
	Kilograms float64 // of contents, evenly spread; the force of the weakest place ÷ Safety
	Weakest   Place   // the place that decides
	Places    []Place // every place that was looked at, from the handle down
	Strength  float64 // of the paper in kN/m
	Measured  bool    // Strength was entered; otherwise it is an estimate of the kind
}

// Place is a place of the bag that may tear.
type Place struct {
	Name   phrase.Word
	Layers int     // of paper and board that carry there
	Width  float64 // mm of paper that carry, on all faces together
	Force  float64 // N that break it
}

// The places.
const (
	Holes      phrase.Word = "the paper on which the rope bears"
	SlitEnds   phrase.Word = "the paper at the upper ends of the slits"
	AboveHole  phrase.Word = "the paper above the hand hole"
	BesideHole phrase.Word = "the paper beside the openings"
	UnderPatch phrase.Word = "the paper under the patch"
	Faces      phrase.Word = "the faces below the top edge"
)

// Of estimates the load of a bag. It is false for a bag without handle, which is carried
// in no way that could be reckoned.
func Of(laid *blank.Blank) (Estimate, bool) {
	spec := &laid.Spec
	e := Estimate{Strength: Strength(spec.Paper), Measured: spec.Paper.Strength > 0}
	h := spec.Handle
	switch {
	case h.Kind.HasHoles():
		at := layersAt(spec, h.HoleDiameter, e.Strength)
		e.look(Holes, at, faces*holesPerFace*h.HoleDiameter)
		e.look(BesideHole, at, faces*(spec.Body.Width-holesPerFace*h.HoleDiameter))
	case h.Kind.HasSlits():
		at := layersAt(spec, h.SlitHeight, e.Strength)
		// Pulled upward, a tape gathers at the end of its slit, which is as wide as the slit.
		e.look(SlitEnds, at, faces*holesPerFace*blank.SlitWidth)
		e.look(BesideHole, at, faces*(spec.Body.Width-holesPerFace*blank.SlitWidth))
	case h.Kind == bag.HandleHandHole:
		at := layersAt(spec, h.HandHoleHeight, e.Strength)
		// Torn out, the strip above the hole tears at both ends.
		e.look(AboveHole, at, faces*2*aboveHole(spec))
		e.look(BesideHole, at, faces*(spec.Body.Width-h.HandHoleWidth))
	case h.Kind.HasPatch():
		e.look(UnderPatch, layers{1, e.Strength}, faces*underPatch(spec))
	default:
		return Estimate{}, false
	}
	e.look(Faces, layers{1, e.Strength}, faces*spec.Body.Width)
	e.Kilograms = e.Weakest.Force / (gravity * Safety)
	return e, true
}

// Strength returns the tensile strength of a paper along its weaker direction in kN/m: as
// entered, or grammage × tensile index of the kind ÷ 1000.
func Strength(p bag.Paper) float64 {
	if p.Strength > 0 {
		return p.Strength
	}
	return p.Grammage * tensileIndex[p.Kind] / 1000
}

// layers is what lies on each other at a place: how many, and their strength together in
// N/mm.
type layers struct {
	count    int
	strength float64
}

// layersAt returns what lies at an opening of the given height: the face, the turn-in and
// the top card, pierced like these, where they reach past it.
func layersAt(spec *bag.Spec, height, strength float64) layers {
	at := layers{1, strength}
	low := spec.Handle.Drop + height/2
	depth := spec.Body.TurnInDepth()
	if depth >= low-geometry.Tolerance {
		at.count++
		at.strength += strength
	}
	if spec.Cards.Top && depth > 0 && depth-spec.Cards.TopEdgeMargin >= low-geometry.Tolerance {
		at.count++
		at.strength += Strength(bag.Paper{Kind: bag.PaperBoard, Grammage: spec.Cards.TopGrammage})
	}
	return at
}

// aboveHole returns the height of the strip above the hand hole, at its lowest.
func aboveHole(spec *bag.Spec) float64 {
	strip := spec.Handle.Drop - spec.Handle.HandHoleHeight/2
	if spec.Body.Top == bag.TopZigzag {
		strip -= spec.Body.ZigzagDepth
	}
	return strip
}

// spread is how far a pull spreads to each side on its way through a patch, for each mm of
// it: the tangent of 30°, as builders in steel reckon with the gusset plate behind a row
// of bolts (R. E. Whitmore, 1952; value from memory). No figure for paper is known.
var spread = math.Tan(math.Pi / 6)

// underPatch returns the width of a face that the two legs of a glued handle pull at, at
// the lower edge of the patch.
func underPatch(spec *bag.Spec) float64 {
	h := spec.Handle
	ofLeg := 2 * h.PatchHeight * spread
	return min(ofLeg+min(ofLeg, h.Spacing), h.PatchWidth, spec.Body.Width)
}

// look adds a place where so much paper carries.
func (e *Estimate) look(name phrase.Word, at layers, width float64) {
	width = max(width, 0)
	place := Place{name, at.count, width, width * at.strength}
	if len(e.Places) == 0 || place.Force < e.Weakest.Force {
		e.Weakest = place
	}
	e.Places = append(e.Places, place)
}
