package steps

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/entry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
)

// Product: a proposal follows what is entered, and is used as one step.
func TestProductIsUsedAsOneStep(t *testing.T) {
	panel, window := newDesk(t)
	doc := panel.bench.doc
	var numbers []*entry.Number
	var use *button
	for _, object := range panel.page(productStep).Objects() {
		column, ok := object.(*entry.Column)
		if !ok {
			continue
		}
		for _, inner := range column.Objects() {
			switch inner := inner.(type) {
			case *entry.Number:
				numbers = append(numbers, inner)
			case *button:
				use = inner
			}
		}
	}
	if len(numbers) != 6 || use == nil {
		t.Fatalf("%d numbers, button %v", len(numbers), use)
	}
	for i, text := range []string{"30 cm", "100", "32 cm", "1200", "10", "60"} {
		enter(numbers[i], text)
	}
	if undoSteps(doc) != 0 {
		t.Error("entering a product changes the bag")
	}
	shown := markup(window)
	for _, says := range []string{"1.2 kg", "sample bag"} {
		if !strings.Contains(shown, says) {
			t.Errorf("the weight is entered, and nothing says %q", says)
		}
	}
	test.Tap(use)
	body := doc.State().Spec.Body
	if body.Width != 310 || body.Gusset != 110 || body.Height != 380 || doc.State().Spec.Handle.Spacing != 155 || undoSteps(doc) != 1 {
		t.Errorf("bag %+v after %d steps", body, undoSteps(doc))
	}
	if !use.Disabled() {
		t.Error("the size is in use and can be used again")
	}
	doc.Undo()
	if doc.State().Spec.Body.Width != 240 || use.Disabled() {
		t.Error("one undo does not bring the bag back")
	}
}

// A usual size is taken with a click or by keys.
func TestUsualSizeIsTaken(t *testing.T) {
	panel, window := newDesk(t)
	doc := panel.bench.doc
	table := tableOf(panel.page(productStep).Column)
	test.TapAt(table, fyne.NewPos(20, table.lineHeight(table.lines[0], table.Size().Width)*1.5))
	first := doc.State().Spec.Body
	window.Canvas().Focus(table)
	table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if second := doc.State().Spec.Body; second == first || undoSteps(doc) != 2 {
		t.Errorf("%v then %v, %d steps", sizeOf(&first), sizeOf(&second), undoSteps(doc))
	}
	chosen := 0
	for _, line := range table.lines {
		if line.row.chosen {
			chosen++
		}
	}
	if chosen != 1 {
		t.Errorf("%d sizes are marked as in use", chosen)
	}
}

func tableOf(column *entry.Column) *table {
	for _, object := range column.Objects() {
		if found, ok := object.(*table); ok {
			return found
		}
		if inner, ok := object.(*entry.Column); ok {
			if found := tableOf(inner); found != nil {
				return found
			}
		}
	}
	return nil
}

// The worked example (common practice, no published source): its blank of 700 × 480
// fills the usable part of half a sheet of 1000 × 700 exactly, and fits nothing
// smaller.
func TestSheetIsTaken(t *testing.T) {
	panel, _ := newDesk(t)
	doc := panel.bench.doc
	doc.Set(geomtest.WorkedExample())
	panel.Select(sheetStep)
	table := tableOf(panel.page(sheetStep).Column)
	row := -1
	for i, line := range table.lines {
		switch line.row.cells[0] {
		case "70 × 50 cm":
			if line.row.cells[1] != "1" || !line.row.chosen {
				t.Errorf("half a sheet: %v, chosen %v", line.row.cells, line.row.chosen)
			}
		case "100 × 70 cm":
			row = i
			if line.row.cells[1] != "2" || !strings.Contains(line.row.note, "short edge") {
				t.Errorf("a whole sheet: %v, %q", line.row.cells, line.row.note)
			}
		case "A2":
			if !line.row.dim || !strings.Contains(line.row.note, "too s") {
				t.Errorf("A2: %v, %q", line.row.cells, line.row.note)
			}
		}
	}
	table.at = row
	table.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	got := doc.State().Spec.Sheet
	if got.Width != 1000 || got.Height != 700 || got.GripperEdge != bag.GripperShort || got.Gripper != 20 {
		t.Errorf("sheet %+v", got)
	}
	if up := doc.State().Snapshot.Plan.Up(); up != 2 {
		t.Errorf("%d-up, want 2", up)
	}
}
