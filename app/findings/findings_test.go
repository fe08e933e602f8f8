package findings

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/document"
	"gussetwright/app/focus"
	"gussetwright/app/settings"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
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
	var led []string
	strip.OnChosen(func(f check.Finding) { led = append(led, f.Code) })
	look.Show(nil)
	strip.rows[0].TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if look.Place() == nil {
		t.Error("Enter shows no place")
	}
	test.Tap(strip.rows[1])
	if want := []string{found[0].Code, found[1].Code}; !slices.Equal(led, want) {
		t.Errorf("led to the entries of %q, want %q", led, want)
	}
	strip.Next(1)
	if len(led) != 2 {
		t.Error("going through the findings leads away from them")
	}
}

// What is graver than a note comes into sight when it arrives, but does not pull at the
// list while its numbers change, or when nothing has come.
func TestGraveFindingsComeIntoSight(t *testing.T) {
	app := test.NewTempApp(t)
	doc := document.New()
	strip := New(doc, focus.New(), settings.New(app.Preferences()))
	window := test.NewTempWindow(t, strip)
	window.Resize(fyne.NewSize(700, 90))
	change := func(do func(*bag.Spec)) {
		spec := doc.State().Spec
		do(&spec)
		doc.Set(spec)
	}
	change(func(spec *bag.Spec) {
		spec.Sheet.Gripper = 2
		spec.Paper.Grammage = 40
	})
	strip.scroll.ScrollToBottom()
	low := strip.scroll.Offset.Y
	if low == 0 {
		t.Fatalf("%d findings all fit; the test needs more", len(strip.rows))
	}
	change(func(spec *bag.Spec) { spec.Sheet.Gripper = 3 })
	if strip.scroll.Offset.Y != low {
		t.Error("the list moved though nothing new was found")
	}
	change(func(spec *bag.Spec) { spec.Sheet.Width = 300 })
	if first := strip.rows[0].finding; first.Code != "no-sheet-fits" || first.Severity != check.Error {
		t.Fatalf("the first finding is %q", strip.rows[0].finding.Code)
	}
	if strip.scroll.Offset.Y != 0 {
		t.Errorf("the list stands at %g though an error arrived at its head", strip.scroll.Offset.Y)
	}
	strip.scroll.ScrollToBottom()
	low = strip.scroll.Offset.Y
	change(func(spec *bag.Spec) { spec.Sheet.Width = 301 })
	if strip.scroll.Offset.Y != low {
		t.Error("the list moved though the error only changed its number")
	}
}

// The messages begin below each other, and so do the remedies, whatever the severity.
func TestColumnsLineUp(t *testing.T) {
	app := test.NewTempApp(t)
	doc := document.New()
	strip := New(doc, focus.New(), settings.New(app.Preferences()))
	window := test.NewTempWindow(t, strip)
	window.Resize(fyne.NewSize(900, 200))
	spec := doc.State().Spec
	spec.Sheet.Width, spec.Body.SeamFlap = 300, 10
	doc.Set(spec)
	x := func(object fyne.CanvasObject) float32 { return app.Driver().AbsolutePositionForObject(object).X }
	severities := map[check.Severity]bool{}
	for _, r := range strip.rows {
		severities[r.finding.Severity] = true
		if x(r.message) != x(strip.rows[0].message) || x(r.remedy) != x(strip.rows[0].remedy) {
			t.Errorf("%s: message at %g and remedy at %g, in the first row at %g and %g",
				r.finding.Severity, x(r.message), x(r.remedy), x(strip.rows[0].message), x(strip.rows[0].remedy))
		}
		if least := r.kind.MinSize().Width; r.kind.Size().Width < least {
			t.Errorf("%s: the word has %g of the %g it needs", r.finding.Severity, r.kind.Size().Width, least)
		}
	}
	if len(severities) != 3 {
		t.Errorf("only the severities %v are shown", severities)
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

// Numbers of findings stand as the language writes them.
func TestNumbersInGerman(t *testing.T) {
	speak := func(language string) {
		if err := words.Load(language); err != nil {
			t.Fatal(err)
		}
	}
	speak("de")
	t.Cleanup(func() { speak("en") })
	set := settings.New(test.NewTempApp(t).Preferences())
	doc := document.New()
	strip := New(doc, focus.New(), set)
	defer strip.Close()
	spec := doc.State().Spec
	spec.Sheet.Gripper, spec.Paper.Grammage = 2.5, 40.5
	doc.Set(spec)
	var said []string
	for _, r := range strip.rows {
		said = append(said, r.message.Text)
	}
	for _, want := range []string{"2,5 mm", "40,5 g/m²"} {
		if !slices.ContainsFunc(said, func(text string) bool { return strings.Contains(text, want) }) {
			t.Errorf("no row of %q says %q", said, want)
		}
	}
	set.SetUnit(geometry.Inch)
	said = nil
	for _, r := range strip.rows {
		said = append(said, r.message.Text+"; "+r.remedy.Text)
	}
	for _, want := range []string{"0,098 in", "0,315 bis 0,787 in"} {
		if got := strings.Join(said, "; "); !strings.Contains(got, want) {
			t.Errorf("in inches no row of %q says %q", said, want)
		}
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
