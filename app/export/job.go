package export

import (
	"io"

	"gussetwright/app/jobsheet"
)

// jobOrder returns the order for the job sheet. It states the version that the proof
// does, so that both are known to be of one state of the bag.
func (o *order) jobOrder() jobsheet.Order {
	return jobsheet.Order{Snapshot: o.snapshot, Date: o.Date, Version: o.proof().Version, Say: o.Say, Unit: o.Unit}
}

// writeJobSheet writes the page for the file of the job.
func writeJobSheet(w io.Writer, o *order, _ int) error { return jobsheet.PDF(o.ctx, w, o.jobOrder()) }

// writeJobTable writes the numbers of the job for other programs.
func writeJobTable(w io.Writer, o *order, _ int) error { return jobsheet.CSV(o.ctx, w, o.jobOrder()) }
