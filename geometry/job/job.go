// Package job reckons what a run of bags takes: sheets, paper, rope, cards and the
// weight of a bag. Weights are grams or kilograms as their names say, lengths mm
// unless named metres.
package job

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/sheet"
)

// Job is what one run takes.
type Job struct {
	Quantity    float64 // good bags
	BagsPrinted float64 // with spoilage
	Sheets      float64 // whole sheets; 0 when nothing fits the sheet

	CaliperMicrons float64
	PaperArea      float64 // mm² of paper in one bag
	PaperGrams     float64 // of the paper in one bag
	FilmGrams      float64 // of the lamination of one bag, without what is left free for glue
	CardGrams      float64 // of cards and patches in one bag
	BagGrams       float64 // paper, film, cards and patches; rope, eyelets and glue are not weighed
	PaperKilograms float64 // of all sheets

	RopePerHandle float64 // mm
	RopeMetres    float64 // for the quantity, two handles a bag
	Eyelets       float64 // for the quantity
	CutMetres     float64 // of cutting rule for the pieces of one bag
	CreaseMetres  float64 // of creasing rule for the pieces of one bag
	GlueArea      float64 // mm² in one bag
	Volume        float64 // litres
	Cards         []blank.Card

	// One bag packed flat, in mm: its paper where most layers lie, without handle and
	// cards. 0 for a bag that cannot be folded or packed.
	PackedWidth, PackedHeight, PackedThickness float64
}

// filmGrammage is the mass of the film of a lamination with its adhesive in g/m²:
// some 15 µm of polypropylene (common practice, no published source).
const filmGrammage = 16

// handlesPerBag is the number of handles with ends: one for each face.
const handlesPerBag = 2

// Reckon returns what the run of the bag takes on the sheets of the plan.
func Reckon(laid *blank.Blank, plan *sheet.Plan) Job {
	spec := &laid.Spec
	job := Job{
		Quantity:       spec.Run.Quantity,
		BagsPrinted:    math.Ceil(spec.Run.Quantity*(1+spec.Run.Spoilage/100) - 1e-9),
		CaliperMicrons: spec.Paper.CaliperMicrons(),
		Volume:         spec.Body.Volume(),
		Cards:          laid.Cards,
		RopePerHandle:  ropeLength(spec.Handle),
	}
	job.PackedWidth, job.PackedHeight, job.PackedThickness = fold.PackedSize(laid)
	job.measurePieces(laid)
	job.weigh(spec.Paper.Grammage)
	if spec.Paper.Lamination != bag.LaminationNone {
		job.FilmGrams = (job.PaperArea - printSideGlue(laid)) * filmGrammage / 1e6
		job.BagGrams += job.FilmGrams
	}
	job.RopeMetres = job.RopePerHandle * handlesPerBag * job.Quantity / 1000
	if spec.Handle.Kind.HasHoles() && spec.Handle.Eyelets {
		job.Eyelets = 2 * handlesPerBag * job.Quantity
	}
	if up := plan.Up(); up > 0 {
		job.Sheets = math.Ceil(job.BagsPrinted * float64(laid.PiecesPerBag()) / float64(up))
		job.PaperKilograms = job.Sheets * plan.Sheet.Width * plan.Sheet.Height * spec.Paper.Grammage / 1e9
	}
	return job
}

// ropeLength returns the rope of one handle: spacing + 2 × rise + 2 × knot
// allowance; 0 for a bag without rope, ribbon or cord.
func ropeLength(h bag.Handle) float64 {
	if h.Kind == bag.HandleNone || h.Kind == bag.HandleHandHole {
		return 0
	}
	return h.Spacing + 2*h.Rise + 2*h.Knot
}

// measurePieces adds up areas and lengths. Holes and hand holes are paper that
// falls out of the bag.
func (j *Job) measurePieces(laid *blank.Blank) {
	for i := range laid.Pieces {
		piece := &laid.Pieces[i]
		count := float64(piece.Count)
		j.PaperArea += count * (piece.Outline.Area() - openings(piece))
		for _, line := range piece.Lines {
			metres := count * line.Length() / 1000
			if line.Kind == blank.Cut {
				j.CutMetres += metres
			} else {
				j.CreaseMetres += metres
			}
		}
		for _, area := range piece.Glue {
			j.GlueArea += count * area.Shape.Area()
		}
	}
}

// printSideGlue returns the area on which no film may lie, as no glue holds on it.
func printSideGlue(laid *blank.Blank) float64 {
	sum := 0.0
	for i := range laid.Pieces {
		for _, area := range laid.Pieces[i].Glue {
			if area.Side == blank.PrintSide {
				sum += float64(laid.Pieces[i].Count) * area.Shape.Area()
			}
		}
	}
	return sum
}

func openings(piece *blank.Piece) float64 {
	sum := 0.0
	for _, hole := range piece.Holes {
		sum += math.Pi * hole.Diameter * hole.Diameter / 4
	}
	for _, line := range piece.Lines {
		if line.Role == blank.RoleHandHole {
			sum += line.AreaFrom(geometry.Vec2{})
		}
	}
	return sum
}

// weigh turns areas into weights: mm² × g/m² / 10⁶ (ISO 536 defines grammage as
// mass per area).
func (j *Job) weigh(grammage float64) {
	j.PaperGrams = j.PaperArea * grammage / 1e6
	for _, card := range j.Cards {
		j.CardGrams += float64(card.Count) * card.Width * card.Height * card.Grammage / 1e6
	}
	j.BagGrams = j.PaperGrams + j.CardGrams
}
