package describe

import (
	"fmt"
	"io"
	"strings"

	"gussetwright/geometry"
)

// number writes a measure as people read it.
func number(v float64) string { return geometry.FormatNumber(v, 2) }

// Text writes the description for people: the bag, its blank, the sheet, the run
// and the findings.
func (d *Description) Text(w io.Writer) error {
	var text strings.Builder
	row := func(label, format string, values ...any) {
		fmt.Fprintf(&text, "%-10s "+format+"\n", append([]any{label}, values...)...)
	}
	name := d.Name
	if name == "" {
		name = "Paper carrier bag"
	}
	fmt.Fprintln(&text, name)
	row("Bag", "face width W %s × gusset depth D %s × standing height H %s mm, %s litres",
		number(d.Bag.Width), number(d.Bag.Gusset), number(d.Bag.Height), number(d.Bag.Volume))
	for _, piece := range d.Pieces {
		name := ""
		if len(d.Pieces) > 1 {
			name = piece.Name + ", "
		}
		row("Blank", "%s%s × %s mm, %d panels, %d lines, %d round holes",
			name, number(piece.Width), number(piece.Height), len(piece.Panels), len(piece.Lines), len(piece.Holes))
	}
	d.sheetText(row)
	d.Job.text(row)
	if d.Fold != nil {
		if err := d.Fold.Text(&text); err != nil {
			return err
		}
	}
	FindingsText(&text, d.Findings)
	_, err := io.WriteString(w, text.String())
	return err
}

func (d *Description) sheetText(row func(label, format string, values ...any)) {
	s := d.Sheet
	if s.Up == 0 {
		row("Sheet", "%s × %s mm: the blank does not fit", number(s.Width), number(s.Height))
		return
	}
	row("Sheet", "%s × %s mm, gripper on the %s edge: %d-up, bags a sheet: %s, waste %.0f %%, grain along its %s",
		number(s.Width), number(s.Height), s.GripperEdge, s.Up, number(s.BagsPerSheet), s.WastePercent, s.GrainAlong)
}

// FindingsText writes findings for people, each with its remedy.
func FindingsText(w io.Writer, findings []Finding) {
	if len(findings) == 0 {
		fmt.Fprintln(w, "Findings   none")
		return
	}
	for _, f := range findings {
		fmt.Fprintf(w, "%-10s %s [%s]\n%-10s → %s\n", strings.ToUpper(f.Severity[:1])+f.Severity[1:], f.Message, f.Code, "", f.Remedy)
	}
}
