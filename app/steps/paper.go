package steps

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/steppage"
	"gussetwright/app/words"
	"gussetwright/geometry/bag"
)

// ruleThickness is that of a creasing rule of 2 points, in mm: 2 × 25.4 / 72.
const ruleThickness = 2 * 25.4 / 72

// creaseChannel returns the width of the channel under a creasing rule in mm: twice
// the caliper and the thickness of the rule, the guidance of a paper mill.
func creaseChannel(caliper float64) float64 { return 2*caliper + ruleThickness }

func newPaperPage(b *steppage.Bench) *steppage.Page {
	p := steppage.New(b)
	p.Named(lang.L("Paper"), "paper.kind", "paper.colour", "paper.grammage_gsm", "paper.caliper_um", "paper.grain", "paper.lamination")
	p.Named(lang.L("More"), "paper.")
	result := entry.NewColumn(1.5, entry.NewText(lang.L("What follows"), entry.Heading))
	caliper, weight, crease := entry.NewText("", entry.Small), entry.NewText("", entry.Small), entry.NewText("", entry.Small)
	for _, text := range []*entry.Text{caliper, weight, crease} {
		result.Add(text)
	}
	p.Add(result)
	p.OnFollow(func(state document.State) {
		caliper.SetText(caliperText(&state))
		weight.SetText(weightText(&state))
		crease.SetText(creaseText(&state))
	})
	return p
}

func caliperText(state *document.State) string {
	paper := state.Snapshot.Spec.Paper
	micrometres := words.Number(paper.CaliperMicrons(), 0)
	if paper.Caliper > 0 {
		return fmt.Sprintf(lang.L("Caliper %s µm, as measured."), micrometres)
	}
	return fmt.Sprintf(lang.L("Caliper about %s µm, from a bulk of %s cm³/g. Enter the caliper of the mill's data sheet to have it exact."),
		micrometres, words.Number(paper.Bulk(), 2))
}

func weightText(state *document.State) string {
	job := &state.Snapshot.Job
	grams := func(value float64) string { return words.Number(value, 1) }
	parts := []string{fmt.Sprintf(lang.L("%s g of paper"), grams(job.PaperGrams))}
	if job.FilmGrams > 0 {
		parts = append(parts, fmt.Sprintf(lang.L("%s g of film"), grams(job.FilmGrams)))
	}
	if job.CardGrams > 0 {
		parts = append(parts, fmt.Sprintf(lang.L("%s g of cards and patches"), grams(job.CardGrams)))
	}
	sum := strings.Join(parts, " + ")
	if len(parts) > 1 {
		sum += " = " + grams(job.BagGrams) + " g"
	}
	return fmt.Sprintf(lang.L("One bag takes %s; handles and glue are not weighed."), sum)
}

func creaseText(state *document.State) string {
	for _, f := range state.Snapshot.Findings {
		if f.Code == "crease-before-folding" {
			channel := creaseChannel(state.Snapshot.Spec.Paper.Thickness())
			return fmt.Sprintf(lang.L("Crease every fold before folding. A rule of 2 points wants a channel some %s mm wide; ask the die maker."),
				words.Number(channel, 1))
		}
	}
	if state.Snapshot.Spec.Paper.Lamination != bag.LaminationNone {
		return lang.L("Folds without being creased first; the film keeps the ink from cracking.")
	}
	return lang.L("Folds without being creased first; heavy solids across a fold may still crack.")
}
