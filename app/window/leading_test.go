package window

import (
	"testing"

	"fyne.io/fyne/v2"

	"gussetwright/geometry/check"
)

// A finding that is chosen leads to the step and the entry that mends it.
func TestFindingLeadsToItsEntry(t *testing.T) {
	w := opened(t, demoFile(t))
	for code, step := range map[string]int{"cord-loop": 3, "crease-before-folding": 4} {
		w.goToStep(1)
		var chosen *check.Finding
		found := w.doc.State().Snapshot.Findings
		for i := range found {
			if found[i].Code == code {
				chosen = &found[i]
			}
		}
		if chosen == nil {
			t.Fatalf("the demo has no finding %q: %v", code, found)
		}
		w.leadTo(*chosen)
		if got := w.steps.Selected() + 1; got != step {
			t.Errorf("%s: step %d is shown, want %d", code, got, step)
		}
		entry, is := w.window.Canvas().Focused().(fyne.CanvasObject)
		if !is || !entry.Visible() {
			t.Errorf("%s: no entry has the focus", code)
		}
	}
	w.leadTo(check.Finding{Code: "mark-near-edge"})
	if got := w.steps.Selected() + 1; got != stepArtwork {
		t.Errorf("a finding about artwork leads to step %d", got)
	}
}
