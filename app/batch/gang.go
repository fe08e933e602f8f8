package batch

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/job"
	"gussetwright/geometry/sheet/gang"
)

const gangHelp = `gwbatch gang puts the bags of a family on shared press sheets, so that their
quantities take the least sheets.

Usage: gwbatch gang [--forms N] [--json] FILE

  --forms  how many different sheets there may be; each takes plates and a cutting die
           of its own. 0 is as many as help; without it the project decides
  --json   for programs: each form with its run and where every piece lies

The sheet, its gripper, margins and gap are those of the project, the bags its own and
the further sizes in "family". Below the sheets stands the least number that any way of
ganging could take.
`

// gangedForm is one ganged sheet.
type gangedForm struct {
	Run        int           `json:"sheets"`
	Counts     []int         `json:"pieces"`
	Grain      string        `json:"grain_along,omitempty"`
	Placements []gangedPiece `json:"placements"`
}

type gangedPiece struct {
	Bag  int     `json:"bag"`
	X    float64 `json:"x_mm"`
	Y    float64 `json:"y_mm"`
	Turn int     `json:"turn_deg"`
}

// gangedBag is one bag of the family.
type gangedBag struct {
	Name     string `json:"name"`
	Quantity int    `json:"quantity"`
	Printed  int    `json:"printed"` // with spoilage
	Over     int    `json:"over"`    // whole bags above that
}

type ganged struct {
	Name   string       `json:"name"`
	Bags   []gangedBag  `json:"bags"`
	Forms  []gangedForm `json:"forms"`
	Sheets int          `json:"sheets"` // of all forms, with make-ready
	Print  int          `json:"print"`  // of all forms, without make-ready
	Bound  int          `json:"at_least"`
	Proven bool         `json:"proven"`
	Waste  float64      `json:"waste_percent"`
}

func runGang(s Streams, args []string) (int, error) {
	flags := newFlags("gang")
	forms := flags.Int("forms", 0, "")
	snapshot, asJSON, err := openToLook(s, flags, args)
	if err != nil {
		return 0, err
	}
	spec := &snapshot.Spec
	if len(spec.Family) == 0 {
		return 0, errors.New(`the project has one bag only; give it further sizes under "family", or ask gwbatch sheets`)
	}
	given := false
	flags.Visit(func(f *flag.Flag) { given = given || f.Name == "forms" })
	if !given {
		*forms = int(spec.Run.MostForms)
	}
	items := itemsOf(spec)
	result, err := gang.Solve(context.Background(), spec.Sheet, items, gang.Options{MostForms: *forms})
	if err != nil {
		return 0, err
	}
	report := reportOf(spec, items, &result)
	if asJSON {
		return verdict(snapshot), writeJSON(s.Out, report)
	}
	report.text(s.Out, spec.Sheet)
	return verdict(snapshot), nil
}

// itemsOf returns the bags of a family as they are to be printed.
func itemsOf(spec *bag.Spec) []gang.Item {
	var items []gang.Item
	for _, member := range spec.Members() {
		laid := blank.Lay(member)
		items = append(items, job.GangItem(member.Name, &laid))
	}
	return items
}

func reportOf(spec *bag.Spec, items []gang.Item, result *gang.Result) ganged {
	report := ganged{
		Name: spec.Name, Print: result.Sheets, Sheets: result.Sheets + len(result.Forms)*int(spec.Run.MakeReady),
		Bound: result.Bound, Proven: result.Proven, Waste: result.Waste(),
	}
	for i, member := range spec.Members() {
		report.Bags = append(report.Bags, gangedBag{member.Name, int(member.Run.Quantity), items[i].Bags, result.Over[i]})
	}
	for _, form := range result.Forms {
		laid := gangedForm{Run: form.Run, Counts: form.Counts(len(items)), Grain: string(form.Fibres)}
		for _, p := range form.Placements {
			laid.Placements = append(laid.Placements, gangedPiece{p.Item, p.X, p.Y, p.Turn})
		}
		report.Forms = append(report.Forms, laid)
	}
	return report
}

func (g *ganged) text(w io.Writer, on bag.Sheet) {
	fmt.Fprintf(w, "%d bags on %s × %s mm\n\n", len(g.Bags), short(on.Width), short(on.Height))
	fmt.Fprintf(w, "%-24s %9s %9s %6s\n", "Bag", "Quantity", "Printed", "Over")
	for _, b := range g.Bags {
		fmt.Fprintf(w, "%-24s %9d %9d %6d\n", b.Name, b.Quantity, b.Printed, b.Over)
	}
	fmt.Fprintln(w)
	for i, form := range g.Forms {
		var parts []string
		for k, count := range form.Counts {
			if count > 0 {
				parts = append(parts, fmt.Sprintf("%d × %s", count, g.Bags[k].Name))
			}
		}
		fmt.Fprintf(w, "Form %d, %d sheets: %s\n", i+1, form.Run, strings.Join(parts, ", "))
	}
	least := fmt.Sprintf("no way of ganging takes less than %d", g.Bound)
	if g.Proven {
		least = "no way of ganging takes less"
	}
	fmt.Fprintf(w, "\n%d sheets in %d forms, waste %.0f %%; %s\n", g.Print, len(g.Forms), g.Waste, least)
	if more := g.Sheets - g.Print; more > 0 {
		fmt.Fprintf(w, "%d more for make-ready\n", more)
	}
}
