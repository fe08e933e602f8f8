package sheetstep

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/steppage"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
	"gussetwright/geometry/sheet/advice"
)

// summaryText says in one sentence what the sheet comes to.
func (p *page) summaryText(state document.State) string {
	s := state.Snapshot
	name := p.sheetName(&s.Spec)
	if s.Plan.Up() == 0 {
		piece := &s.Plan.Piece
		return fmt.Sprintf(lang.L("The blank of %s does not fit on %s: %s."), p.Area(piece.Width, piece.Height), name, p.missText(s.Plan.TooLong))
	}
	number := func(value float64) string { return words.Number(value, 0) }
	edge, sheets, weight := gripperWord(s.Plan.Sheet.GripperEdge), number(s.Job.Sheets), number(s.Job.PaperKilograms)
	if s.Plan.Proven {
		return fmt.Sprintf(lang.L("%d-up on %s, %s; %s sheets, %s kg; no layout holds more."), s.Plan.Up(), name, edge, sheets, weight)
	}
	return fmt.Sprintf(lang.L("%d-up on %s, %s; %s sheets, %s kg; the best layout found, at most %d could fit."), s.Plan.Up(), name, edge, sheets, weight, s.Plan.Bound)
}

// sheetName names the sheet as it is bought, or gives its size.
func (p *page) sheetName(spec *bag.Spec) string {
	for _, stock := range sheet.StockOf(spec) {
		row := advice.Row{Ranked: sheet.Ranked{Usual: stock.Usual}}
		row.Plan.Piece.SheetFibres = stock.Grain
		if stock.Name != "" && inUse(&row, spec.Sheet) {
			return stock.Name
		}
	}
	return p.Area(spec.Sheet.Width, spec.Sheet.Height)
}

// missText says by how much the blank passes the usable part of a sheet.
func (p *page) missText(miss geometry.Vec2) string {
	if miss.X > 0 && miss.Y > 0 {
		return fmt.Sprintf(lang.L("too small by %s"), p.Area(miss.X, miss.Y))
	}
	return fmt.Sprintf(lang.L("too short by %s"), p.Length(max(miss.X, miss.Y)))
}

// moreText says what else follows: the run, the waste, how blanks lie and the grain.
func (p *page) moreText(s *document.Snapshot) string {
	plan := &s.Plan
	if plan.Up() == 0 {
		return ""
	}
	number := func(value float64) string { return words.Number(value, 0) }
	list := []string{
		fmt.Sprintf(lang.L("Waste %.0f %%."), plan.WastePercent()),
		fmt.Sprintf(lang.L("For %s bags (step Quote) print %s."), number(s.Job.Quantity), number(s.Job.BagsPrinted)),
	}
	if plan.Nested {
		list = append(list, lang.L("The blanks reach into each other."))
	}
	if across := plan.Across(); across > 0 && plan.Piece.Grain != sheet.GrainFree {
		list = append(list, fmt.Sprintf(lang.L("%d of %d lie across the grain."), across, plan.Up()))
	}
	if plan.Piece.SheetFibres != "" {
		list = append(list, p.sentenceOfGrain(plan.Piece.SheetFibres, plan.Sheet))
	} else if plan.Piece.Grain != sheet.GrainFree {
		list = append(list, p.orderText(plan.GrainAlong(s.Spec.Paper.Grain), plan.Sheet))
	}
	return strings.Join(list, " ")
}

func (p *page) sentenceOfGrain(along bag.Grain, s bag.Sheet) string {
	return steppage.Sentence(p.grainWords(along, s.Width, s.Height))
}

// grainWords says along which side of a sheet its fibres lie.
func (p *page) grainWords(along bag.Grain, width, height float64) string {
	return fmt.Sprintf(lang.L("grain along the side of %s"), p.Length(sideOf(along, width, height)))
}

func (p *page) orderText(along bag.Grain, s bag.Sheet) string {
	return fmt.Sprintf(lang.L("Order the sheet with its grain along the side of %s."), p.Length(sideOf(along, s.Width, s.Height)))
}

func sideOf(along bag.Grain, width, height float64) float64 {
	if along == bag.GrainWidth {
		return width
	}
	return height
}

func gripperWord(edge bag.GripperEdge) string {
	if edge == bag.GripperShort {
		return lang.L("short edge gripped")
	}
	return lang.L("long edge gripped")
}
