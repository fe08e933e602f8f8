// Package document holds the bag that is being worked on. Everything that is
// shown or written comes from one Snapshot of it, so what is seen is what is cut.
package document

import (
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/check"
	"gussetwright/geometry/job"
	"gussetwright/geometry/placement"
	"gussetwright/geometry/sheet"
)

// Snapshot is one state of a bag with all that follows from it. It is never
// changed after it was made.
type Snapshot struct {
	Spec     bag.Spec
	Blank    blank.Blank
	Plan     sheet.Plan
	Job      job.Job
	Findings []check.Finding

	// Hung is the artwork by the index of Spec.Artwork, and Placed where it lies.
	Hung   []Hanging
	Placed []placement.Placed
	// Profile is the ICC file of the printing condition, nil where none is chosen.
	Profile []byte
	looked  bool // the pixels of the artwork were looked at
}

// Derive lays out, plans, reckons and inspects the bag. The error is that of
// Validate and says which entries stand in the way.
func Derive(spec bag.Spec) (*Snapshot, error) {
	if err := spec.Validate(); err != nil {
		return nil, err
	}
	snapshot := Snapshot{Spec: spec, Blank: blank.Lay(spec)}
	snapshot.Plan = sheet.Lay(spec.Sheet, snapshot.Blank.SheetPiece())
	snapshot.Job = job.Reckon(&snapshot.Blank, &snapshot.Plan)
	snapshot.Findings = check.Inspect(&snapshot.Blank, &snapshot.Plan)
	return &snapshot, nil
}
