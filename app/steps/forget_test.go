package steps

import (
	"testing"

	"fyne.io/fyne/v2/test"

	"gussetwright/app/project"
	"gussetwright/app/steppage/pagetest"
	"gussetwright/geometry/bag"
)

// What was typed for one project and never taken over is not left in the next, even
// where both have the same value and the page is out of sight.
func TestAnotherProjectHasNothingTyped(t *testing.T) {
	panel, _ := newDesk(t)
	doc := panel.bench.Doc
	panel.Select(bagStep)
	width := panel.number("bag.width_mm")
	before := width.Text()
	pagetest.Enter(width, "a hand and a half")
	if width.Message() == "" {
		t.Fatal("text that cannot be read is not complained about, so this test shows nothing")
	}
	panel.Select(carryStep)
	spacing := panel.number("handle.spacing_mm")
	usual := spacing.Text()
	test.Type(spacing.Focusable(), "7")

	doc.Load(project.Project{Spec: bag.Default()})
	if width.Text() != before || width.Message() != "" {
		t.Errorf("width shows %q and says %q, want %q and nothing", width.Text(), width.Message(), before)
	}
	if spacing.Text() != usual {
		t.Errorf("spacing shows %q, want %q", spacing.Text(), usual)
	}
	spacing.Focusable().FocusLost()
	if doc.State().Dirty {
		t.Error("what was typed for one project went into the next")
	}
}
