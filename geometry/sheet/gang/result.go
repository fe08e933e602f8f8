package gang

import (
	"cmp"
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
)

// Placed is a piece on a form.
type Placed struct {
	Item int // its index in the job
	sheet.Placement
}

// Form is one laid sheet and how many sheets are printed of it.
type Form struct {
	Placements []Placed
	Run        int // sheets, at least 1
	// Fibres is the side of the sheet along which its fibres must lie, so that the
	// grain rules of all pieces are kept; empty where none asks for it.
	Fibres bag.Grain
}

// Counts returns how many pieces of each of so many items lie on one sheet.
func (f Form) Counts(items int) []int {
	counts := make([]int, items)
	for _, p := range f.Placements {
		counts[p.Item]++
	}
	return counts
}

// Result is how a job is ganged.
type Result struct {
	Sheet bag.Sheet
	Items []Item
	// Usable is what bounding boxes of pieces may cover; pieces with more bleed than
	// others may keep farther from its edges.
	Usable geometry.Rect
	Forms  []Form // longest run first
	Sheets int    // of all forms together
	// Bound is a number of sheets below which no forms come: of MostForms 1 no one
	// form, else no number of forms. It takes pieces for their bounding boxes, but for
	// what sheet.Lay nests of one bag alone.
	Bound int
	// Proven tells that Sheets meets Bound, so that no result takes less.
	Proven bool
	Over   []int // whole bags of each item that come out above what is wanted
}

// Waste returns the share of the area of all sheets, gripper and margins included,
// that ends up in none of the wanted bags, in percent; 0 when there are no sheets.
func (r *Result) Waste() float64 {
	if r.Sheets == 0 {
		return 0
	}
	used := 0.0
	for i := range r.Items {
		item := &r.Items[i]
		used += float64(float64(item.Bags*item.perBag()) * item.Piece.Area)
	}
	return 100 * (1 - used/(float64(r.Sheets)*r.Sheet.Width*r.Sheet.Height))
}

// take puts runs of patterns into the result.
func (r *Result) take(runs []run) {
	r.Forms, r.Sheets = nil, 0
	made := make([]int, len(r.Items))
	for _, run := range runs {
		if run.sheets == 0 {
			continue
		}
		r.Forms = append(r.Forms, Form{Placements: slices.Clone(run.of.placed), Run: run.sheets, Fibres: run.of.fibres})
		r.Sheets += run.sheets
		for i, n := range run.of.counts {
			made[i] += n * run.sheets
		}
	}
	slices.SortStableFunc(r.Forms, func(a, b Form) int { return cmp.Compare(b.Run, a.Run) })
	r.Over = make([]int, len(r.Items))
	for i := range r.Items {
		r.Over[i] = made[i]/r.Items[i].perBag() - r.Items[i].Bags
	}
}
