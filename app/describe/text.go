package describe

import (
	"fmt"
	"io"
	"strings"

	"gussetwright/geometry"
)

var cardNames = map[string]string{"top": "top card", "base": "base card", "patch": "handle patch"}

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
	d.jobText(row)
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

func (d *Description) jobText(row func(label, format string, values ...any)) {
	j := d.Job
	row("Run", "%s bags, %s printed, %s sheets, %s kg of paper", number(j.Quantity), number(j.BagsPrinted), number(j.Sheets), number(j.PaperKilos))
	with := "cards"
	if j.FilmGrams > 0 {
		with = "film and cards"
	}
	row("One bag", "%s g with %s; caliper %s µm; glue on %s cm²", number(j.BagGrams), with, number(j.Caliper), number(j.GlueArea/100))
	if j.RopeMetres > 0 {
		row("Handles", "%s mm each, %s m for the run", number(j.RopePerHandle), number(j.RopeMetres))
	}
	for _, card := range j.Cards {
		row("Cards", "%d × %s, %s × %s mm, %s g/m²", card.Count, cardNames[card.Role], number(card.Width), number(card.Height), number(card.Grammage))
	}
	if j.PackedThickness > 0 {
		row("Packed", "flat: %s × %s mm, %s mm thick without handle and cards", number(j.PackedWidth), number(j.PackedHeight), number(j.PackedThickness))
	}
	row("Die", "%s m of cutting rule, %s m of creasing rule for one bag", number(j.CutMetres), number(j.CreaseMetres))
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
