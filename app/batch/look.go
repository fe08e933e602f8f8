package batch

import (
	"encoding/json"
	"flag"
	"fmt"
	"io"

	"gussetwright/app/describe"
	"gussetwright/app/document"
	"gussetwright/geometry"
	"gussetwright/geometry/sheet"
	"gussetwright/geometry/sheet/advice"
)

// openToLook reads the options of a command that only looks at a bag, and opens it.
// flags may have further options.
func openToLook(s Streams, flags *flag.FlagSet, args []string) (snapshot *document.Snapshot, asJSON bool, err error) {
	flags.BoolVar(&asJSON, "json", false, "")
	path, err := parseOne(flags, args)
	if err != nil {
		return nil, false, err
	}
	_, snapshot, err = load(s, path)
	return snapshot, asJSON, err
}

const describeHelp = `gwbatch describe states a bag in numbers: size, blank with panels and lines, the
layout on its press sheet, what the run takes, and all findings.

Usage: gwbatch describe [--json] [--fold] FILE

  --json   for programs: every panel, line, hole and glue area with coordinates in
           mm, x to the right and y up from the lower left corner of the blank,
           seen from the print side
  --fold   also fold the bag and measure each stage, which takes a moment: how much
           the paper would be stretched, how deep layers would pass through each
           other, and how far a corner goes from one of 100 steps to the next
`

func runDescribe(s Streams, args []string) (int, error) {
	flags := newFlags("describe")
	withFold := flags.Bool("fold", false, "")
	snapshot, asJSON, err := openToLook(s, flags, args)
	if err != nil {
		return 0, err
	}
	description := describe.Describe(snapshot)
	if *withFold {
		description.Fold = describe.FoldOf(snapshot)
	}
	if asJSON {
		return verdict(snapshot), writeJSON(s.Out, description)
	}
	return verdict(snapshot), description.Text(s.Out)
}

const checkHelp = `gwbatch check says what about a bag cannot be made (error), is likely to go wrong
(warning) or is to be kept in mind (note), each with a remedy.

Usage: gwbatch check [--json] FILE

  --json   for programs: code, message, remedy and the place on the blank in mm

Exits with 1 when there is an error finding. The checks are common practice; they
replace neither the die-maker's look at the drawing nor a white sample. Loads are
confirmed by a sample test only.
`

func runCheck(s Streams, args []string) (int, error) {
	snapshot, asJSON, err := openToLook(s, newFlags("check"), args)
	if err != nil {
		return 0, err
	}
	findings := describe.FindingsOf(snapshot.Findings)
	if asJSON {
		return verdict(snapshot), writeJSON(s.Out, struct {
			Name     string             `json:"name"`
			Findings []describe.Finding `json:"findings"`
		}{snapshot.Spec.Name, findings})
	}
	describe.FindingsText(s.Out, findings)
	return verdict(snapshot), nil
}

const sheetsHelp = `gwbatch sheets lays the blank on every usual press sheet, with the gripper, margins
and gap of the project, and ranks them by waste.

Usage: gwbatch sheets [--json] FILE

  --json   for programs: the project's own sheet with its layout, and the ranked list

A sheet is gripped at the edge that gives more pieces. Where nothing fits, the list
says by how much the blank is too long.
`

// rankedSheet is one row of the ranking.
type rankedSheet struct {
	Name         string  `json:"name"`
	Width        float64 `json:"width_mm"`
	Height       float64 `json:"height_mm"`
	GripperEdge  string  `json:"gripper_edge"`
	Up           int     `json:"up"`
	BagsPerSheet float64 `json:"bags_per_sheet"`
	WastePercent float64 `json:"waste_percent"`
	TooLongX     float64 `json:"too_long_x_mm"`
	TooLongY     float64 `json:"too_long_y_mm"`
}

func runSheets(s Streams, args []string) (int, error) {
	snapshot, asJSON, err := openToLook(s, newFlags("sheets"), args)
	if err != nil {
		return 0, err
	}
	rows := make([]rankedSheet, 0, 32)
	for _, r := range sheet.Rank(snapshot.Spec.Sheet, snapshot.Blank.SheetPiece()) {
		rows = append(rows, rankedSheet{
			r.Name, r.Width, r.Height, string(r.Plan.Sheet.GripperEdge), r.Plan.Up(),
			r.Plan.BagsPerSheet(), r.Plan.WastePercent(), r.Plan.TooLong.X, r.Plan.TooLong.Y,
		})
	}
	own := describe.SheetOf(&snapshot.Plan, snapshot.Spec.Paper.Grain)
	if asJSON {
		return verdict(snapshot), writeJSON(s.Out, struct {
			Name   string         `json:"name"`
			Sheet  describe.Sheet `json:"sheet"`
			Ranked []rankedSheet  `json:"ranked"`
		}{snapshot.Spec.Name, own, rows})
	}
	return verdict(snapshot), sheetsText(s.Out, snapshot, own, rows)
}

func sheetsText(w io.Writer, snapshot *document.Snapshot, own describe.Sheet, rows []rankedSheet) error {
	piece := snapshot.Blank.SheetPiece()
	mm := func(v float64) string { return geometry.FormatNumber(v, 1) }
	bags := "one piece a bag"
	if piece.PerBag == 2 {
		bags = "two pieces a bag"
	}
	fmt.Fprintf(w, "Blank %s × %s mm, %s\n", mm(piece.Width), mm(piece.Height), bags)
	fmt.Fprintf(w, "The project's sheet, %s × %s mm with the gripper on the %s edge: %d-up, waste %.0f %%\n",
		mm(own.Width), mm(own.Height), own.GripperEdge, own.Up, own.WastePercent)
	for _, near := range advice.Near(&snapshot.Blank, &snapshot.Plan) {
		fmt.Fprintf(w, "Nearly: %s\n", near.Phrase())
	}
	fmt.Fprintln(w)
	fmt.Fprintf(w, "%-12s %17s  %-7s %4s %6s %6s\n", "Sheet", "mm", "Gripper", "Up", "Bags", "Waste")
	for _, r := range rows {
		size := mm(r.Width) + " × " + mm(r.Height)
		if r.Up == 0 {
			fmt.Fprintf(w, "%-12s %17s  %-7s    does not fit%s\n", r.Name, size, r.GripperEdge, excess(r))
			continue
		}
		fmt.Fprintf(w, "%-12s %17s  %-7s %4d %6s %5.0f%%\n", r.Name, size, r.GripperEdge, r.Up, mm(r.BagsPerSheet), r.WastePercent)
	}
	return nil
}

func excess(r rankedSheet) string {
	mm := func(v float64) string { return geometry.FormatNumber(v, 1) + " mm" }
	switch {
	case r.TooLongX > 0 && r.TooLongY > 0:
		return ": " + mm(r.TooLongX) + " too long and " + mm(r.TooLongY) + " too high"
	case r.TooLongX > 0:
		return ": " + mm(r.TooLongX) + " too long"
	}
	return ": " + mm(r.TooLongY) + " too high"
}

func writeJSON(w io.Writer, value any) error {
	encoder := json.NewEncoder(w)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	return encoder.Encode(value)
}
