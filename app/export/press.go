package export

import (
	"io"
	"time"

	"gussetwright/app/document"
	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
	"gussetwright/render/dxf"
	"gussetwright/render/pdf"
	"gussetwright/render/press"
	"gussetwright/render/scene"
	"gussetwright/render/svg"
)

// formsOf returns the press sheets of a bag; none where no bag fits on its sheet.
func formsOf(snapshot *document.Snapshot) []press.Form {
	return press.Forms(&snapshot.Blank, &snapshot.Plan)
}

// noSheet says why a bag has no press sheet.
func noSheet(snapshot *document.Snapshot) error {
	if len(formsOf(snapshot)) > 0 {
		return nil
	}
	plan, length := &snapshot.Plan, func(v float64) string { return geometry.FormatNumber(max(0, v), 1) + " mm" }
	size := length(plan.Piece.Width) + " × " + length(plan.Piece.Height)
	room := length(plan.Usable.Width()) + " × " + length(plan.Usable.Height())
	if plan.Piece.PerBag > 1 {
		return phrase.Errorf("a piece of the bag, %s, does not fit in the %s that gripper and margins leave of the sheet; take a larger sheet or a smaller bag", size, room)
	}
	return phrase.Errorf("the blank, %s, does not fit in the %s that gripper and margins leave of the sheet; take a larger sheet, a bag with two seams or a smaller bag", size, room)
}

// writePress writes the press sheets with artwork and die, a page for each.
func writePress(w io.Writer, o *order, _ int) error {
	prints := make([][]scene.Item, len(o.snapshot.Blank.Pieces))
	for i := range prints {
		var err error
		if prints[i], err = o.printOf(i); err != nil {
			return err
		}
	}
	pages := o.sheets(func(_ *blank.Blank, piece int) []scene.Item { return prints[piece] })
	return pdf.Write(w, pages, o.forPrinting(o.title()+", "+o.voice.Word("press sheet")))
}

func (o *order) sheets(print press.Print) []scene.Drawing {
	return press.Draw(formsOf(o.snapshot), o.Date.Format(time.DateOnly), print, o.voice)
}

// writePressSVG and writePressDXF write the dies of one press sheet.
func writePressSVG(w io.Writer, o *order, number int) error {
	return svg.WriteIn(w, o.sheets(nil)[number:number+1], o.voice)
}

func writePressDXF(w io.Writer, o *order, number int) error {
	return dxf.Write(w, o.sheets(nil)[number:number+1])
}
