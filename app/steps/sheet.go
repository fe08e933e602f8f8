package steps

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
	"gussetwright/geometry/sheet/advice"
)

// sheetPage shows the sheet with the blanks on it, its entries, and the sheets that
// merchants stock.
type sheetPage struct {
	*page
	picture *picture
	summary *entry.Text
	grain   *entry.Text
	nearly  *entry.Text // the least change that gains one more up
	usual   *table
	ranked  []sheet.Ranked
}

func newSheetPage(b *bench) *page {
	p := &sheetPage{page: newPage(b), picture: newPicture(), summary: entry.NewText("", entry.Small), grain: entry.NewText("", entry.Small), nearly: entry.NewText("", entry.Small)}
	p.Add(entry.NewColumn(1.5, p.picture, p.summary, p.grain, p.nearly))
	p.named(lang.L("Sheet"), "sheet.width_mm", "sheet.height_mm", "sheet.gripper_")
	p.named(lang.L("Margins and gap"), "sheet.side_mm", "sheet.tail_mm", "sheet.gap_mm", "sheet.")
	p.named(lang.L("Run"), "run.")
	p.usual = newTable([]string{lang.L("Usual sheets"), lang.L("Up"), lang.L("Bags"), lang.L("Waste")}, p.take)
	p.Add(entry.NewColumn(1.5,
		entry.NewText(lang.L("Usual sheets with these margins, least waste first. A click takes the sheet and its better gripper edge."), entry.Muted),
		p.usual,
	))
	p.shows = append(p.shows, p.showAll)
	return p.page
}

// take changes to a usual sheet, as one step to undo.
func (p *sheetPage) take(i int) {
	spec, chosen := p.doc.State().Spec, p.ranked[i].Plan.Sheet
	spec.Sheet.Width, spec.Sheet.Height, spec.Sheet.GripperEdge = chosen.Width, chosen.Height, chosen.GripperEdge
	p.doc.Set(spec)
}

func (p *sheetPage) showAll(state document.State) {
	s := state.Snapshot
	p.picture.set(&s.Plan)
	p.summary.SetText(p.summaryText(state))
	p.grain.SetText(p.grainText(&s.Plan, s.Spec.Paper.Grain))
	if !state.Dragging { // a drag asks too often for it
		p.nearly.SetText(nearlyText(s))
	}
	p.ranked = sheet.Rank(s.Spec.Sheet, s.Plan.Piece)
	rows := make([]tableRow, len(p.ranked))
	for i := range p.ranked {
		rows[i] = p.row(&p.ranked[i], s.Spec.Sheet)
	}
	p.usual.set(rows)
}

func (p *sheetPage) row(r *sheet.Ranked, now bag.Sheet) tableRow {
	row := tableRow{
		cells:  []string{r.Name, "", "", ""},
		note:   p.area(r.Width, r.Height) + ", " + gripperWord(r.Plan.Sheet.GripperEdge),
		dim:    r.Plan.Up() == 0,
		chosen: max(now.Width, now.Height) == r.Width && min(now.Width, now.Height) == r.Height,
	}
	if row.dim {
		row.note = p.area(r.Width, r.Height) + ": " + p.missText(r.Plan.TooLong)
		return row
	}
	row.cells[1] = fmt.Sprintf("%d", r.Plan.Up())
	row.cells[2] = geometry.FormatNumber(r.Plan.BagsPerSheet(), 1)
	row.cells[3] = fmt.Sprintf(lang.L("%.0f %%"), r.Plan.WastePercent())
	return row
}

func gripperWord(edge bag.GripperEdge) string {
	if edge == bag.GripperShort {
		return lang.L("short edge gripped")
	}
	return lang.L("long edge gripped")
}

// missText says by how much the blank passes the usable part of a sheet.
func (p *sheetPage) missText(miss geometry.Vec2) string {
	switch {
	case miss.X > 0 && miss.Y > 0:
		return fmt.Sprintf(lang.L("too small by %s"), p.area(miss.X, miss.Y))
	default:
		return fmt.Sprintf(lang.L("too short by %s"), p.length(max(miss.X, miss.Y)))
	}
}

func (p *sheetPage) summaryText(state document.State) string {
	s := state.Snapshot
	if s.Plan.Up() == 0 {
		return fmt.Sprintf(lang.L("The blank of %s does not fit: %s."), p.area(s.Plan.Piece.Width, s.Plan.Piece.Height), p.missText(s.Plan.TooLong))
	}
	number := func(value float64) string { return geometry.FormatNumber(value, 0) }
	return strings.Join([]string{
		fmt.Sprintf(lang.L("%d-up, waste %.0f %%."), s.Plan.Up(), s.Plan.WastePercent()),
		fmt.Sprintf(lang.L("For %s bags print %s and use %s sheets, %s kg of paper."),
			number(s.Job.Quantity), number(s.Job.BagsPrinted), number(s.Job.Sheets), number(s.Job.PaperKilograms)),
	}, " ")
}

// nearlyText says which change, least felt, would gain one more up, "" where none is in
// reach.
func nearlyText(s *document.Snapshot) string {
	near := advice.Near(&s.Blank, &s.Plan)
	if len(near) == 0 {
		return ""
	}
	return fmt.Sprintf(lang.L("Nearly: %s."), words.Of(near[0].Phrase()))
}

// grainText says along which side of the sheet the fibres must lie.
func (p *sheetPage) grainText(plan *sheet.Plan, onBag bag.Grain) string {
	if plan.Up() == 0 {
		return ""
	}
	side := plan.Sheet.Height
	if plan.GrainAlong(onBag) == bag.GrainWidth {
		side = plan.Sheet.Width
	}
	return fmt.Sprintf(lang.L("Order the sheet with its grain along the side of %s."), p.length(side))
}
