package jobsheet

import (
	"context"

	"gussetwright/app/document"
	"gussetwright/geometry/check"
	"gussetwright/geometry/job"
	"gussetwright/geometry/load"
)

// figures is what a job sheet states beyond what every snapshot knows.
type figures struct {
	cuttings []job.Cutting
	packing  job.Packing
	load     load.Estimate
	carried  bool // load is known
	quote    job.Quote
	breaks   []job.Break // of all quantities; none without prices
	// members are the bags of the family, that of the project first; none without one.
	members          []*document.Snapshot
	errors, warnings []check.Finding
}

// reckon returns the figures of a bag. It folds the bag for each quantity that is quoted.
func reckon(ctx context.Context, s *document.Snapshot) (figures, error) {
	f := figures{
		cuttings: job.CutCards(&s.Blank, &s.Job),
		packing:  job.Pack(&s.Blank, &s.Job),
		quote:    job.QuoteFor(&s.Blank, &s.Plan, s.Spec.Run.Quantity),
	}
	f.load, f.carried = load.Of(&s.Blank)
	if f.quote.Known() {
		f.breaks = job.Breaks(&s.Blank, &s.Plan)
	}
	for _, finding := range s.Findings {
		switch finding.Severity {
		case check.Error:
			f.errors = append(f.errors, finding)
		case check.Warning:
			f.warnings = append(f.warnings, finding)
		}
	}
	if len(s.Spec.Family) == 0 {
		return f, ctx.Err()
	}
	for _, spec := range s.Spec.Members() {
		if err := ctx.Err(); err != nil {
			return f, err
		}
		member, err := document.Derive(spec)
		if err != nil {
			return f, err
		}
		f.members = append(f.members, member)
	}
	return f, ctx.Err()
}

// boardKilograms returns the weight of all board sheets.
func (f *figures) boardKilograms() float64 {
	sum := 0.0
	for i := range f.cuttings {
		if f.cuttings[i].Board() {
			sum += f.cuttings[i].Kilograms
		}
	}
	return sum
}
