package export

import (
	"context"
	"io"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/proof"
	"gussetwright/app/voice"
	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/render/artwork"
	"gussetwright/render/creasefile"
	"gussetwright/render/dieline"
	"gussetwright/render/dxf"
	"gussetwright/render/pdf"
	"gussetwright/render/pdf/object"
	"gussetwright/render/scene"
	"gussetwright/render/svg"
)

// order is what the files of a job are made from.
type order struct {
	Job
	ctx      context.Context
	snapshot *document.Snapshot
	voice    voice.Voice     // of the drawings
	drawings []scene.Drawing // without artwork
	made     *proof.Proof    // nil until it is asked for
	ganged   *ganged         // likewise
	forms    map[*artwork.Art]*object.Form
}

func newOrder(ctx context.Context, job Job) *order {
	if job.Say == nil {
		job.Say = func(english string) string { return english }
	}
	// Whatever the unit of the user, production speaks of millimetres.
	said := voice.Voice{Say: job.Say, Unit: geometry.Millimetre}
	return &order{
		Job: job, ctx: ctx, snapshot: job.Snapshot, voice: said, forms: map[*artwork.Art]*object.Form{},
		drawings: dieline.SheetsIn(&job.Snapshot.Blank, job.Date.Format(time.DateOnly), said),
	}
}

func (o *order) title() string {
	if o.snapshot.Spec.Name == "" {
		return o.voice.Word("Paper carrier bag")
	}
	return o.snapshot.Spec.Name
}

// writePDF writes the production file: the artwork, and the drawing over it.
func writePDF(w io.Writer, o *order, _ int) error {
	pages, err := o.printed()
	if err != nil {
		return err
	}
	return pdf.Write(w, pages, o.forPrinting(o.title()))
}

// forPrinting returns what a file for the printer says about itself.
func (o *order) forPrinting(title string) pdf.Info {
	info := pdf.Info{Title: title, Date: o.Date}
	if profile := o.snapshot.Profile; profile != nil {
		info.Output = &pdf.OutputIntent{Profile: profile}
	}
	return info
}

func writeSVG(w io.Writer, o *order, _ int) error { return svg.WriteIn(w, o.drawings, o.voice) }

func writeDXF(w io.Writer, o *order, _ int) error { return dxf.Write(w, o.drawings) }

func writeFOLD(w io.Writer, o *order, _ int) error {
	return creasefile.Write(w, o.snapshot.Spec.Name, blank.Patterns(o.snapshot.Spec))
}
