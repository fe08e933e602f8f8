package filestep

import (
	"context"
	"slices"
	"testing"

	"fyne.io/fyne/v2"

	"gussetwright/app/export"
	"gussetwright/app/jobs"
	"gussetwright/app/practice"
	"gussetwright/geometry"
)

// The paper of practice blanks is A4 and with inches Letter, until one is chosen; that one
// is written on, whatever is ticked, and remembered.
func TestPaperOfPracticeBlanks(t *testing.T) {
	var ordered practice.Paper
	write := func(_ context.Context, job export.Job, _ func(float64, string)) ([]string, error) {
		ordered = job.PracticePaper
		return nil, nil
	}
	r := newRig(t, t.TempDir(), write, long)
	shown := func(want practice.Paper, line string) {
		t.Helper()
		r.delivered("practice")
		if r.paper.chosen() != want || ordered != want {
			t.Errorf("chosen is %q and written on %q, want %q", r.paper.chosen(), ordered, want)
		}
		if !slices.Contains(texts(r.paper), line) {
			t.Errorf("the choice says %q, want %q", texts(r.paper), line)
		}
	}
	shown(practice.A4, "210 × 297 mm")
	r.set.SetUnit(geometry.Inch)
	shown(practice.Letter, "8.5 × 11 in")
	r.paper.Pick("A3")
	shown(practice.A3, "11.693 × 16.535 in")
	r.set.SetUnit(geometry.Centimetre)
	shown(practice.A3, "29.7 × 42 cm")
	again := newStep(r.doc, func() string { return "x" }, r.set, r.window, jobs.New(export.Write), r.surroundings)
	defer again.Close()
	if got := again.paper.chosen(); got != practice.A3 {
		t.Errorf("remembered is %q", got)
	}
	r.app.Preferences().SetString(paperKey, "Foolscap")
	r.Hide()
	r.Show()
	shown(practice.A4, "21 × 29.7 cm")
}

// texts returns what a choice says, but for its label and its list.
func texts(p *paper) (texts []string) {
	for _, object := range p.Objects() {
		if text, is := object.(interface{ Text() string }); is {
			texts = append(texts, text.Text())
		}
	}
	return texts
}

// The choice is seen and reached with the keyboard while practice blanks are ticked, and
// takes no room while they are not.
func TestPaperIsAskedForWhatIsTicked(t *testing.T) {
	r := newRig(t, t.TempDir(), export.Write, long)
	number := slices.IndexFunc(r.kinds.all, func(kind export.Kind) bool { return kind.Name == "practice" })
	line, check := r.kinds.lines[number], r.kinds.checks[number]
	next := func() fyne.Focusable {
		r.window.Canvas().Focus(check)
		r.window.Canvas().FocusNext()
		return r.window.Canvas().Focused()
	}
	if !r.paper.Visible() || next() != r.paper.Focusable() {
		t.Errorf("ticked: visible %v, the next in the order is %v", r.paper.Visible(), next())
	}
	high, below := line.Size().Height, r.kinds.lines[number+1].Position().Y
	check.SetChecked(false)
	if r.paper.Visible() || next() == r.paper.Focusable() {
		t.Error("not ticked the paper is asked for")
	}
	if gone := high - line.Size().Height; gone < 40 || below-r.kinds.lines[number+1].Position().Y < 40 {
		t.Errorf("without it the line is lower by %g, what follows moves by %g", gone, below-r.kinds.lines[number+1].Position().Y)
	}
	check.SetChecked(true)
	if line.Size().Height != high {
		t.Errorf("ticked again the line is %g high, was %g", line.Size().Height, high)
	}
}
