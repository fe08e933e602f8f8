package job

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/sheet"
)

// Job is what one run takes, as far as it can be reckoned at every step of a drag. Cards
// on board sheets, cartons, pallets and prices take longer: see CutCards, Pack and
// QuoteFor.
type Job struct {
	Quantity    float64 // good bags
	BagsPrinted float64 // with spoilage
	Sheets      float64 // whole sheets with those for make-ready; 0 when nothing fits the sheet
	// Forms is how many different sheets are printed and cut: 2 for a bag with two seams
	// whose pieces each lie on a sheet of their own. 0 when nothing fits the sheet.
	Forms           int
	MakeReadySheets float64 // of all forms, among Sheets

	CaliperMicrons float64
	PaperArea      float64 // mm² of paper in one bag
	PaperGrams     float64 // of the paper in one bag
	FilmGrams      float64 // of the lamination of one bag, without what is left free for glue
	CardGrams      float64 // of cards and patches in one bag
	BagGrams       float64 // paper, film, cards and patches; rope, eyelets and glue are not weighed
	SheetGrams     float64 // of one sheet
	PaperKilograms float64 // of all sheets

	RopePerHandle float64 // mm
	RopeMetres    float64 // for the quantity, two handles a bag
	Eyelets       float64 // for the quantity
	CutMetres     float64 // of cutting rule for the pieces of one bag
	CreaseMetres  float64 // of creasing rule for the pieces of one bag
	GlueArea      float64 // mm² in one bag
	// DieCutMetres and DieCreaseMetres are the rule in the dies of all forms together,
	// each blank with its own: neighbours share none.
	DieCutMetres, DieCreaseMetres float64
	// GlueMetres is how far a nozzle or a roller goes over the glue areas of one bag: the
	// longer side of each. Glue is weighed wet, and for all bags that are printed.
	GlueMetres    float64
	GlueGrams     float64 // in one bag
	GlueKilograms float64 // for the run
	Volume        float64 // litres
	Cards         []blank.Card
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
		BagsPrinted:    printed(spec.Run),
		CaliperMicrons: spec.Paper.CaliperMicrons(),
		Volume:         spec.Body.Volume(),
		Cards:          laid.Cards,
		RopePerHandle:  ropeLength(spec.Handle),
	}
	job.measurePieces(laid)
	job.weigh(laid)
	if spec.Paper.Lamination != bag.LaminationNone {
		job.FilmGrams = (job.PaperArea - printSideGlue(laid)) * filmGrammage / 1e6
		job.BagGrams += job.FilmGrams
	}
	job.RopeMetres = job.RopePerHandle * handlesPerBag * job.Quantity / 1000
	if spec.Handle.Kind.HasHoles() && spec.Handle.Eyelets {
		job.Eyelets = 2 * handlesPerBag * job.Quantity
	}
	job.GlueGrams = job.GlueArea * spec.Run.GlueCoat / 1e6
	job.GlueKilograms = job.GlueGrams * job.BagsPrinted / 1000
	job.print(spec, plan)
	return job
}

// print counts sheets and what belongs to their forms. Bags are counted whole: what a
// sheet holds beyond the last whole bag makes none.
func (j *Job) print(spec *bag.Spec, plan *sheet.Plan) {
	j.SheetGrams = plan.Sheet.Width * plan.Sheet.Height * spec.Paper.Grammage / 1e6
	way, some := plan.WholeBags()
	if !some {
		return
	}
	j.Forms = way.Sheets
	j.MakeReadySheets = float64(way.Sheets) * spec.Run.MakeReady
	j.Sheets = float64(way.SheetsFor(int(j.BagsPrinted))) + j.MakeReadySheets
	j.PaperKilograms = j.Sheets * j.SheetGrams / 1000
	// All forms together hold every piece of so many bags.
	j.DieCutMetres = float64(way.Bags) * j.CutMetres
	j.DieCreaseMetres = float64(way.Bags) * j.CreaseMetres
}

// ropeLength returns the rope of one handle: spacing + 2 × rise + 2 × knot
// allowance; 0 for a bag without rope, ribbon, tape or cord.
func ropeLength(h bag.Handle) float64 {
	if h.Kind == bag.HandleNone || h.Kind == bag.HandleHandHole {
		return 0
	}
	return h.Spacing + 2*h.Rise + 2*h.Knot
}

// measurePieces adds up areas and lengths. Holes, hand holes and slits are paper that
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
			box := area.Shape.Bounds()
			j.GlueArea += count * area.Area()
			j.GlueMetres += count * max(box.Width(), box.Height()) / 1000
		}
	}
}

// printSideGlue returns the area on which no film may lie, as no glue holds on it.
func printSideGlue(laid *blank.Blank) float64 {
	sum := 0.0
	for i := range laid.Pieces {
		for _, area := range laid.Pieces[i].Glue {
			if area.Side == blank.PrintSide {
				sum += float64(laid.Pieces[i].Count) * area.Area()
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
		if line.Role.IsCutOut() {
			sum += line.AreaFrom(geometry.Vec2{})
		}
	}
	return sum
}

// weigh turns areas into weights: mm² × g/m² / 10⁶ (ISO 536 defines grammage as
// mass per area).
func (j *Job) weigh(laid *blank.Blank) {
	j.PaperGrams = j.PaperArea * laid.Spec.Paper.Grammage / 1e6
	for i := range laid.Cards {
		card := &laid.Cards[i]
		j.CardGrams += float64(card.Count) * laid.CardArea(card) * card.Grammage / 1e6
	}
	j.BagGrams = j.PaperGrams + j.CardGrams
}
