package findings

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/document"
	"gussetwright/app/focus"
	"gussetwright/app/settings"
	"gussetwright/geometry"
)

func TestClickShowsThePlace(t *testing.T) {
	app := test.NewTempApp(t)
	doc, look := document.New(), focus.New()
	strip := New(doc, look, settings.New(app.Preferences()))
	defer strip.Close()
	window := test.NewTempWindow(t, strip)
	window.Resize(fyne.NewSize(900, 200))

	spec := doc.State().Spec
	spec.Body.SeamFlap = 10
	doc.Set(spec)
	found := doc.State().Snapshot.Findings
	if len(strip.rows) != len(found) || strip.rows[0].finding.Code != "seam-flap-narrow" {
		t.Fatalf("%d rows for %d findings, the first about %q", len(strip.rows), len(found), strip.rows[0].finding.Code)
	}
	test.Tap(strip.rows[0])
	place := look.Place()
	if place == nil || place.At != found[0].At {
		t.Errorf("shown %v, want %v", place, found[0].At)
	}
	look.Show(nil)
	strip.rows[0].TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if look.Place() == nil {
		t.Error("Enter shows no place")
	}
}

// Rows follow the document and say message and remedy.
func TestRowsFollowTheDocument(t *testing.T) {
	set := settings.New(test.NewTempApp(t).Preferences())
	doc := document.New()
	strip := New(doc, focus.New(), set)
	before := len(strip.rows)
	spec := doc.State().Spec
	spec.Sheet.Gripper = 2
	doc.Set(spec)
	if len(strip.rows) != before+1 {
		t.Fatalf("%d rows, want %d", len(strip.rows), before+1)
	}
	if got := strip.rows[0].message.Text; got != "2 mm for the gripper is less than presses need" {
		t.Errorf("the row says %q", got)
	}
	set.SetUnit(geometry.Inch)
	message, remedy := strip.rows[0].message.Text, strip.rows[0].remedy.Text
	if message != "0.079 in for the gripper is less than presses need" || remedy != "ask the printer; 0.315 to 0.787 in is usual" {
		t.Errorf("in inches the row says %q and %q", message, remedy)
	}
	set.SetUnit(geometry.Millimetre)
	if got, want := strip.title.Text, "Findings: 1 warning, 2 notes"; got != want {
		t.Errorf("the title says %q, want %q", got, want)
	}
	doc.Undo()
	if len(strip.rows) != before {
		t.Errorf("%d rows after undo, want %d", len(strip.rows), before)
	}
	strip.Close()
	doc.Redo()
	if len(strip.rows) != before {
		t.Error("a closed strip still listens")
	}
}

func TestNextGoesRound(t *testing.T) {
	app := test.NewTempApp(t)
	doc, look := document.New(), focus.New()
	strip := New(doc, look, settings.New(app.Preferences()))
	test.NewTempWindow(t, strip)
	found := doc.State().Snapshot.Findings
	for i := range 2 * len(found) {
		strip.Next(1)
		if want := found[i%len(found)].At; look.Place() == nil || look.Place().At != want {
			t.Fatalf("after %d steps %v is shown, want %v", i+1, look.Place(), want)
		}
	}
	strip.Next(-1)
	if want := found[len(found)-2].At; look.Place().At != want {
		t.Errorf("a step back shows %v, want %v", look.Place(), want)
	}
}
