package steps

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/artstep"
	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/focus"
	"gussetwright/app/settings"
	"gussetwright/app/steppage"
	"gussetwright/app/steppage/pagetest"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/geometry/geomtest"
)

const deskWidth, deskHeight = 330, 800

// newDesk returns a panel on the default bag in a window.
func newDesk(t testing.TB) (*Panel, fyne.Window) {
	t.Helper()
	app := test.NewTempApp(t)
	set := settings.New(app.Preferences())
	panel := newPanel(document.New(), set, widget.NewLabel("What to write"))
	window := test.NewTempWindow(t, panel)
	window.SetPadded(false)
	window.Resize(fyne.NewSize(deskWidth, deskHeight))
	return panel, window
}

// newPanel returns the steps of a document for which nobody fetches artwork. Nothing is
// done beside the window.
func newPanel(doc *document.Document, set *settings.Settings, files fyne.CanvasObject) *Panel {
	look := focus.New()
	return New(doc, look, set, artstep.New(doc, look, set, nil, nil), files, nil)
}

// slots returns the entries of a step, hidden or not.
func (p *Panel) slots(step int) []*steppage.Slot { return pagetest.Slots(p.page(step)) }

func (p *Panel) slot(path string) *steppage.Slot {
	for _, s := range p.slots(stepOf(path)) {
		if s.Path == path {
			return s
		}
	}
	return nil
}

// remarks returns the findings below an entry that are shown.
func (p *Panel) remarks(path string) (list []*entry.Message) {
	for _, object := range p.slot(path).Objects()[1:] {
		if message := object.(*entry.Message); message.Text() != "" {
			list = append(list, message)
		}
	}
	return list
}

// number returns the entry of a number field.
func (p *Panel) number(path string) *entry.Number {
	return p.slot(path).Objects()[0].(*entry.Number)
}

func TestGolden(t *testing.T) {
	panel, window := newDesk(t)
	for step, name := range []string{"product", "bag", "carry", "paper", "sheet", "artwork", "quote", "files"} {
		panel.Select(step)
		if panel.Selected() != step {
			t.Fatalf("step %d is shown, want %d", panel.Selected(), step)
		}
		geomtest.Golden(t, "steps/"+name+".xml", []byte(pagetest.Markup(window)))
	}
}

func TestSelectKeepsToTheSteps(t *testing.T) {
	panel, _ := newDesk(t)
	panel.Select(3)
	for _, outside := range []int{-1, stepCount, 100} {
		panel.Select(outside)
		if panel.Selected() != 3 {
			t.Errorf("Select(%d) shows step %d", outside, panel.Selected())
		}
	}
}

// The list of steps goes by keys and by clicks.
func TestList(t *testing.T) {
	panel, window := newDesk(t)
	window.Canvas().Focus(panel.list)
	for _, press := range []struct {
		key  fyne.KeyName
		want int
	}{{fyne.KeyDown, 1}, {fyne.KeyDown, 2}, {fyne.KeyUp, 1}, {fyne.KeyEnd, 7}, {fyne.KeyDown, 7}, {fyne.KeyHome, 0}, {fyne.KeyUp, 0}} {
		panel.list.TypedKey(&fyne.KeyEvent{Name: press.key})
		if panel.Selected() != press.want {
			t.Errorf("%s shows step %d, want %d", press.key, panel.Selected(), press.want)
		}
	}
	test.TapAt(panel.list, fyne.NewPos(10, panel.list.rowHeight()*4.5))
	if panel.Selected() != sheetStep {
		t.Errorf("a click on the fifth shows step %d", panel.Selected())
	}
	if window.Canvas().Focused() != panel.list {
		t.Error("the list loses the focus when it shows another step")
	}
}

// A change anywhere reaches the entries, and an entry reaches the document.
func TestEntriesAndDocument(t *testing.T) {
	panel, _ := newDesk(t)
	doc := panel.bench.Doc
	panel.Select(bagStep)
	pagetest.Enter(panel.number("bag.width_mm"), "2*150")
	if doc.State().Spec.Body.Width != 300 || pagetest.UndoSteps(doc) != 1 {
		t.Errorf("width %g after %d steps", doc.State().Spec.Body.Width, pagetest.UndoSteps(doc))
	}
	doc.Undo()
	if text := panel.number("bag.width_mm").Text(); text != "240" {
		t.Errorf("after undo the entry shows %q", text)
	}
	panel.bench.Settings.SetUnit(geometry.Centimetre)
	if text := panel.number("bag.width_mm").Text(); text != "24" {
		t.Errorf("in cm the entry shows %q", text)
	}
	// A step that was out of sight is brought up to date when it is shown.
	panel.Select(carryStep)
	spec := doc.State().Spec
	spec.Body.Width = 280
	doc.Set(spec)
	panel.Select(bagStep)
	if text := panel.number("bag.width_mm").Text(); text != "28" {
		t.Errorf("shown again the entry shows %q", text)
	}
}

// Leaving a step takes over what is being typed there.
func TestSelectTakesOverTyping(t *testing.T) {
	panel, window := newDesk(t)
	panel.Select(bagStep)
	pagetest.Markup(window) // what was never drawn takes no focus
	line := panel.number("bag.width_mm").Focusable()
	window.Canvas().Focus(line)
	for _, letter := range "31 cm" {
		line.TypedRune(letter)
	}
	panel.Select(paperStep)
	if width := panel.bench.Doc.State().Spec.Body.Width; width != 310 {
		t.Errorf("width %g, want 310", width)
	}
	if window.Canvas().Focused() == line {
		t.Error("the focus stays with an entry that is not shown")
	}
}

// The height may be entered to the flat-fold crease, half a gusset above the base.
func TestHeightToTheFlatFold(t *testing.T) {
	panel, _ := newDesk(t)
	panel.Select(bagStep)
	var flatFold *entry.Number
	for _, object := range panel.page(bagStep).Objects()[1].(*entry.Column).Objects() {
		if column, ok := object.(*entry.Column); ok {
			flatFold, _ = column.Objects()[0].(*entry.Number)
		}
	}
	if flatFold.Text() != "310" {
		t.Fatalf("a bag of 360 with a gusset of 100 shows %q", flatFold.Text())
	}
	pagetest.Enter(flatFold, "250")
	if height := panel.bench.Doc.State().Spec.Body.Height; height != 300 {
		t.Errorf("standing height %g, want 250 + 100/2", height)
	}
	if text := panel.number("bag.height_mm").Text(); text != "300" {
		t.Errorf("the standing height shows %q", text)
	}
	pagetest.Enter(panel.number("bag.gusset_mm"), "80")
	if flatFold.Text() != "260" {
		t.Errorf("with a gusset of 80 it shows %q, want 260", flatFold.Text())
	}
	pagetest.Enter(flatFold, "1480")
	if !strings.Contains(flatFold.Message(), "1480 mm is more than the most, 1460 mm") {
		t.Errorf("message %q", flatFold.Message())
	}
}

// Entries that have no bearing are not shown.
func TestEntriesThatDoNotApplyAreHidden(t *testing.T) {
	panel, window := newDesk(t)
	doc := panel.bench.Doc
	tests := []struct {
		path   string
		change func(*bag.Spec)
	}{
		{"bag.zigzag_pitch_mm", func(s *bag.Spec) { s.Body.Top = bag.TopZigzag }},
		{"bag.slot_width_mm", func(s *bag.Spec) { s.Body.Base = bag.BaseSlotted }},
		{"handle.hand_hole_width_mm", func(s *bag.Spec) { s.Handle.Kind = bag.HandleHandHole }},
		{"handle.slit_height_mm", func(s *bag.Spec) { s.Handle.Kind = bag.HandleTape }},
		{"handle.patch_width_mm", func(s *bag.Spec) { s.Handle.Kind = bag.HandleTwisted }},
	}
	for _, test := range tests {
		panel.Select(stepOf(test.path))
		field, _ := bag.FieldAt(test.path)
		if panel.slot(test.path).Visible() || strings.Contains(pagetest.Markup(window), ">"+field.Label+"<") {
			t.Errorf("%s is shown", test.path)
		}
		spec := doc.State().Spec
		test.change(&spec)
		doc.Set(spec)
		if !panel.slot(test.path).Visible() || !strings.Contains(pagetest.Markup(window), ">"+field.Label+"<") {
			t.Errorf("%s is not shown", test.path)
		}
		doc.Undo()
		if panel.slot(test.path).Visible() {
			t.Errorf("%s is shown after undo", test.path)
		}
	}
}

// The text of a finding stands below its entry, and a click on it shows the place.
func TestFindingBelowItsEntry(t *testing.T) {
	panel, window := newDesk(t)
	doc := panel.bench.Doc
	panel.Select(bagStep)
	if panel.list.marks[bagStep] != "" {
		t.Errorf("the step is marked %q", panel.list.marks[bagStep])
	}
	pagetest.Enter(panel.number("bag.seam_flap_mm"), "8")
	remarks := panel.remarks("bag.seam_flap_mm")
	if len(remarks) != 1 || !strings.Contains(remarks[0].Text(), "8 mm is narrower than 12 mm") || remarks[0].Severity() != check.Warning {
		t.Fatalf("remarks %v", remarks)
	}
	if panel.list.marks[bagStep] != check.Warning || !strings.Contains(pagetest.Markup(window), "warningIcon") {
		t.Error("the step has no mark")
	}
	test.Tap(remarks[0])
	want := doc.State().Snapshot.Findings[0].At
	if place := panel.bench.Look.Place(); place == nil || place.At != want {
		t.Errorf("shown %v, want %v", place, want)
	}
	doc.Undo()
	if remarks[0].Text() != "" || panel.list.marks[bagStep] != "" {
		t.Error("the finding stays after it was mended")
	}
}

// What cannot be drawn is said at the entry, and the step is marked.
func TestBagThatCannotBeDrawn(t *testing.T) {
	panel, _ := newDesk(t)
	panel.Select(bagStep)
	pagetest.Enter(panel.number("bag.gusset_mm"), "5")
	if message := panel.number("bag.gusset_mm").Message(); !strings.Contains(message, "creased down its middle") || !strings.Contains(message, "at least 10 mm") {
		t.Errorf("message %q", message)
	}
	if panel.list.marks[bagStep] != check.Error {
		t.Errorf("the step is marked %q", panel.list.marks[bagStep])
	}
	pagetest.Enter(panel.number("bag.gusset_mm"), "60")
	if message := panel.number("bag.gusset_mm").Message(); message != "" {
		t.Errorf("message %q after mending", message)
	}
}

// The tab key goes through the entries in the order in which they stand.
func TestTabOrder(t *testing.T) {
	panel, window := newDesk(t)
	panel.Select(bagStep)
	visible := 0
	for _, s := range panel.slots(bagStep) {
		if s.Visible() {
			visible++
		}
	}
	if stops := tabStops(t, panel, window); stops != visible+1 { // and the height to the flat-fold crease
		t.Errorf("%d stops for %d entries", stops, visible+1)
	}
}

// tabStops counts the stops of the tab key on a page. Each must stand below the one
// before, come into view and be explained.
func tabStops(t *testing.T, panel *Panel, window fyne.Window) int {
	t.Helper()
	canvas := window.Canvas()
	pagetest.Markup(window) // what was never drawn takes no focus
	canvas.Focus(panel.list)
	last, stops := float32(-1), 0
	for {
		canvas.FocusNext()
		focused, ok := canvas.Focused().(fyne.CanvasObject)
		if !ok || focused == fyne.CanvasObject(panel.list) {
			return stops
		}
		stops++
		driver := fyne.CurrentApp().Driver()
		top := driver.AbsolutePositionForObject(focused).Y
		inPage := top - driver.AbsolutePositionForObject(panel.scroll.Content).Y
		if inPage <= last {
			t.Errorf("stop %d, %T, stands at %g, above the one before at %g", stops, focused, inPage, last)
		}
		last = inPage
		if bottom := top + focused.Size().Height; top < 0 || bottom > panel.scroll.Size().Height {
			t.Errorf("stop %d, %T, is out of sight: %g to %g of %g", stops, focused, top, bottom, panel.scroll.Size().Height)
		}
		if panel.explain.shown == nil || panel.explain.title.Text() == "" {
			t.Errorf("stop %d, %T, is not explained", stops, focused)
		}
	}
}

// The entry with the focus is explained, with the reasons for its limits.
func TestExplanation(t *testing.T) {
	panel, window := newDesk(t)
	panel.Select(bagStep)
	pagetest.Markup(window) // what was never drawn takes no focus
	window.Canvas().Focus(panel.number("bag.width_mm").Focusable())
	for _, says := range []string{"Width of the front", "Not less than 30 mm: narrower faces leave no room", "Not more than 1000 mm"} {
		if !strings.Contains(panel.explain.text.Text(), says) {
			t.Errorf("%q does not say %q", panel.explain.text.Text(), says)
		}
	}
	geomtest.Golden(t, "steps/bag-explained.xml", []byte(pagetest.Markup(window)))
}

// A closed panel hears nothing any more.
func TestClose(t *testing.T) {
	panel, _ := newDesk(t)
	panel.Select(bagStep)
	panel.Close()
	spec := panel.bench.Doc.State().Spec
	spec.Body.Width = 333
	panel.bench.Doc.Set(spec)
	if text := panel.number("bag.width_mm").Text(); text != "240" {
		t.Errorf("the entry shows %q", text)
	}
}
