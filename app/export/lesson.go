package export

import (
	"io"

	"gussetwright/app/flipbook"
	"gussetwright/app/handout"
	"gussetwright/app/practice"
)

// writeLesson writes the lesson that is printed.
func writeLesson(w io.Writer, o *order, _ int) error {
	return handout.Write(o.ctx, w, handout.Order{Snapshot: o.snapshot, Date: o.Date, Say: o.Say, Unit: o.Unit})
}

// writePractice writes the blanks to print, cut out and fold.
func writePractice(w io.Writer, o *order, _ int) error {
	return practice.Write(o.ctx, w, practice.Order{Snapshot: o.snapshot, Date: o.Date, Say: o.Say, Unit: o.Unit, Paper: o.PracticePaper})
}

// writeAnimation writes the folding: the moving picture, then the strip.
func writeAnimation(w io.Writer, o *order, number int) error {
	order := flipbook.Order{Snapshot: o.snapshot, Say: o.Say}
	if number == 0 {
		return flipbook.GIF(o.ctx, w, order)
	}
	return flipbook.Strip(o.ctx, w, order)
}
