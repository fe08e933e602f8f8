package batch

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"gussetwright/app/describe"
	"gussetwright/app/document"
	"gussetwright/geometry"
	"gussetwright/geometry/sheet"
	"gussetwright/geometry/sheet/advice"
)

const sheetsHelp = `gwbatch sheets lays the blank on every usual press sheet and on the project's own
list of sheets, with the gripper, margins and gap of the project, and ranks them.

Usage: gwbatch sheets [--by waste|paper|cost] [--json] FILE

  --by     what comes first: the least waste (usual), the least paper for 1000 bags,
           or the least cost of paper, where the project has prices
  --json   for programs: the project's own sheet with its layout, and the ranked list

A sheet is gripped at the edge that gives more pieces. Below each sheet stands the
least change to the bag that would put one more piece on it; where nothing fits, the
list says by how much the blank is too long. A number with a ~ is the most that was
found; without it, no layout holds more.
`

// criteria are the values of --by.
var criteria = []struct {
	word string
	by   sheet.Criterion
}{{"waste", sheet.ByWaste}, {"paper", sheet.ByPaper}, {"cost", sheet.ByCost}}

func criterionOf(word string) (sheet.Criterion, error) {
	for _, c := range criteria {
		if c.word == word {
			return c.by, nil
		}
	}
	return 0, fmt.Errorf("--by is %q; choose waste, paper or cost", word)
}

// rankedSheet is one row of the ranking.
type rankedSheet struct {
	Name             string   `json:"name"`
	Width            float64  `json:"width_mm"`
	Height           float64  `json:"height_mm"`
	GripperEdge      string   `json:"gripper_edge"`
	Up               int      `json:"up"`
	Bound            int      `json:"at_most"`
	Proven           bool     `json:"proven"`
	BagsPerSheet     float64  `json:"bags_per_sheet"`
	WastePercent     float64  `json:"waste_percent"`
	PaperPerThousand *float64 `json:"paper_kg_per_1000_bags,omitempty"` // nil where no bag can be made
	CostPerThousand  *float64 `json:"cost_per_1000_bags,omitempty"`     // nil where no price is known
	TooLongX         float64  `json:"too_long_x_mm"`
	TooLongY         float64  `json:"too_long_y_mm"`
	Reason           string   `json:"reason,omitempty"`
	Near             []string `json:"near,omitempty"`
}

func runSheets(s Streams, args []string) (int, error) {
	flags := newFlags("sheets")
	by := flags.String("by", "waste", "")
	snapshot, asJSON, err := openToLook(s, flags, args)
	if err != nil {
		return 0, err
	}
	criterion, err := criterionOf(*by)
	if err != nil {
		return 0, err
	}
	rows := rank(snapshot, criterion)
	own := describe.SheetOf(&snapshot.Plan, snapshot.Spec.Paper.Grain)
	if asJSON {
		return verdict(snapshot), writeJSON(s.Out, struct {
			Name   string         `json:"name"`
			Sheet  describe.Sheet `json:"sheet"`
			Near   []string       `json:"near,omitempty"`
			Ranked []rankedSheet  `json:"ranked"`
		}{snapshot.Spec.Name, own, sentences(advice.Near(&snapshot.Blank, &snapshot.Plan)), rows})
	}
	return verdict(snapshot), sheetsText(s.Out, snapshot, own, rows)
}

func rank(snapshot *document.Snapshot, by sheet.Criterion) []rankedSheet {
	var rows []rankedSheet
	for _, r := range advice.Rank(&snapshot.Blank, snapshot.Blank.SheetPiece(), sheet.StockOf(&snapshot.Spec), by) {
		rows = append(rows, rankedSheet{
			r.Name, r.Width, r.Height, string(r.Plan.Sheet.GripperEdge), r.Plan.Up(), r.Plan.Bound, r.Plan.Proven,
			r.Plan.BagsPerSheet(), r.Plan.WastePercent(),
			finite(r.PaperPerThousand() * snapshot.Spec.Paper.Grammage / 1000), finite(r.CostPerThousand()),
			r.Plan.TooLong.X, r.Plan.TooLong.Y, r.Reason.String(), sentences(r.Near),
		})
	}
	return rows
}

// finite returns nil for what JSON cannot hold.
func finite(value float64) *float64 {
	if math.IsInf(value, 0) {
		return nil
	}
	return &value
}

func sentences(near []advice.NearMiss) []string {
	var list []string
	for i := range near {
		list = append(list, near[i].Phrase().String())
	}
	return list
}

func sheetsText(w io.Writer, snapshot *document.Snapshot, own describe.Sheet, rows []rankedSheet) error {
	piece := snapshot.Blank.SheetPiece()
	bags := "one piece a bag"
	if piece.PerBag == 2 {
		bags = "two pieces a bag"
	}
	fmt.Fprintf(w, "Blank %s × %s mm, %s\n", short(piece.Width), short(piece.Height), bags)
	fmt.Fprintf(w, "The project's sheet, %s × %s mm with the gripper on the %s edge: %d-up, waste %.0f %%\n",
		short(own.Width), short(own.Height), own.GripperEdge, own.Up, own.WastePercent)
	for _, near := range sentences(advice.Near(&snapshot.Blank, &snapshot.Plan)) {
		fmt.Fprintf(w, "Nearly: %s\n", near)
	}
	fmt.Fprintln(w)
	priced := slices.ContainsFunc(rows, func(r rankedSheet) bool { return r.CostPerThousand != nil })
	cost := ""
	if priced {
		cost = fmt.Sprintf(" %11s", strings.TrimSpace("cost/1000 "+snapshot.Spec.Currency))
	}
	fmt.Fprintf(w, "%-12s %17s  %-7s %5s %6s %6s %8s%s\n", "Sheet", "mm", "Gripper", "Up", "Bags", "Waste", "kg/1000", cost)
	for _, r := range rows {
		r.text(w, priced)
	}
	return nil
}

// text writes the row, and below it what would gain one more up.
func (r *rankedSheet) text(w io.Writer, priced bool) {
	fmt.Fprintf(w, "%-12s %17s  %-7s", r.Name, short(r.Width)+" × "+short(r.Height), r.GripperEdge)
	if r.Up == 0 {
		fmt.Fprintf(w, "  does not fit: %s\n", r.Reason)
	} else {
		up := fmt.Sprint(r.Up)
		if !r.Proven {
			up = "~" + up
		}
		fmt.Fprintf(w, " %5s %6s %5.0f%% %8s", up, short(r.BagsPerSheet), r.WastePercent, orDash(r.PaperPerThousand, 1))
		if priced {
			fmt.Fprintf(w, " %11s", orDash(r.CostPerThousand, 2))
		}
		fmt.Fprintln(w)
	}
	if len(r.Near) > 0 {
		fmt.Fprintf(w, "%14s%s\n", "", r.Near[0])
	}
}

func short(value float64) string { return geometry.FormatNumber(value, 1) }

func orDash(value *float64, decimals int) string {
	if value == nil {
		return "–"
	}
	return fmt.Sprintf("%.*f", decimals, *value)
}
