package entry_test

import (
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/settings"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
)

// desk is a document with an entry for one of its numbers in a window.
type desk struct {
	doc    *document.Document
	set    *settings.Settings
	field  *bag.Field
	number *entry.Number
	line   fyne.Focusable
	window fyne.Window
}

// at returns a desk with the entry of a field.
func at(t *testing.T, path string) *desk {
	t.Helper()
	app := test.NewTempApp(t)
	field, known := bag.FieldAt(path)
	if !known {
		t.Fatalf("no field %q", path)
	}
	d := &desk{doc: document.New(), set: settings.New(app.Preferences()), field: field}
	d.number = entry.NewNumber(entry.OfField(d.doc, field), d.set)
	put := func() {
		spec := d.doc.State().Spec
		d.number.Put(field.Number(&spec))
	}
	put()
	d.doc.Listen(func(document.State) { put() })
	d.set.Listen(put)
	d.line = d.number.Focusable()
	d.window = test.NewTempWindow(t, d.number)
	d.window.Resize(fyne.NewSize(240, 140))
	return d
}

func (d *desk) value() float64 {
	spec := d.doc.State().Spec
	return d.field.Number(&spec)
}

// typeIn puts a text in the place of what stands there.
func (d *desk) typeIn(text string) {
	d.window.Canvas().Unfocus()
	d.window.Canvas().Focus(d.line)
	for _, letter := range text {
		d.line.TypedRune(letter)
	}
}

func (d *desk) press(name fyne.KeyName) { d.line.TypedKey(&fyne.KeyEvent{Name: name}) }

// tap presses a key and lets it go.
func (d *desk) tap(name fyne.KeyName) {
	d.press(name)
	d.line.(desktop.Keyable).KeyUp(&fyne.KeyEvent{Name: name})
}

func (d *desk) steps() int {
	steps := 0
	for d.doc.State().Undo.Label != "" {
		d.doc.Undo()
		steps++
	}
	for range steps {
		d.doc.Redo()
	}
	return steps
}

// An inch is 25.4 mm and a pound 453.59237 g exactly (international yard and pound
// agreement of 1959; NIST SP 811, appendix B). The tests run in an English locale.
func TestTyping(t *testing.T) {
	tests := []struct {
		path, text string
		unit       geometry.Unit
		want       float64
		shown      string
	}{
		{"bag.width_mm", "300", geometry.Millimetre, 300, "300"},
		{"bag.width_mm", "30 cm", geometry.Millimetre, 300, "300"},
		{"bag.width_mm", "30", geometry.Centimetre, 300, "30"},
		{"bag.width_mm", "30,5", geometry.Centimetre, 305, "30.5"},
		{"bag.width_mm", "9 1/2", geometry.Inch, 241.3, "9.5"},
		{"bag.width_mm", "9 1/2 in", geometry.Millimetre, 241.3, "241.3"},
		{"bag.width_mm", "2*120+10", geometry.Millimetre, 250, "250"},
		{"bag.width_mm", "(240+100)*2", geometry.Millimetre, 680, "680"},
		{"bag.width_mm", "24 cm + 3", geometry.Millimetre, 243, "243"},
		{"bag.seam_relief_mm", "0.1+0.2", geometry.Millimetre, 0.3, "0.3"},
		{"bag.chamfer_deg", "3*10", geometry.Inch, 30, "30"},
		{"paper.grammage_gsm", "200 g/m²", geometry.Inch, 200, "200"},
		{"run.quantity", "4 * 500", geometry.Centimetre, 2000, "2000"},
		{"run.spoilage_percent", "7,5 %", geometry.Millimetre, 7.5, "7.5"},
		{"bag.width_mm", "240,5", geometry.Millimetre, 240.5, "240.5"},
		{"product.weight_g", "1.4 kg", geometry.Inch, 1400, "1400"},
		{"product.weight_g", "1,4 kg", geometry.Millimetre, 1400, "1400"},
		{"product.weight_g", "1400", geometry.Millimetre, 1400, "1400"},
		{"product.weight_g", "3 lb", geometry.Millimetre, 1360.77711, "1360.78"},
		{"product.weight_g", "2 lb + 8 oz", geometry.Millimetre, 1133.980925, "1133.98"},
		{"product.weight_g", "2*(1 kg + 200)", geometry.Millimetre, 2400, "2400"},
		{"packing.carton_most_kg", "22 lb", geometry.Millimetre, 9.979032, "9.98"},
		{"packing.carton_most_kg", "12000 g", geometry.Millimetre, 12, "12"},
		{"paper.grammage_gsm", "200gsm", geometry.Inch, 200, "200"},
		{"paper.caliper_um", "0.18 mm", geometry.Inch, 180, "180"},
		{"run.quantity", "3,000", geometry.Millimetre, 3000, "3000"},
		{"run.quantity", "3 000", geometry.Millimetre, 3000, "3000"},
		{"run.quantity", "3'000", geometry.Millimetre, 3000, "3000"},
		{"run.quantity", "1,234,567", geometry.Millimetre, 1_234_567, "1234567"},
	}
	for _, test := range tests {
		d := at(t, test.path)
		d.set.SetUnit(test.unit)
		d.typeIn(test.text)
		d.press(fyne.KeyReturn)
		if got := d.value(); got != test.want || d.number.Text() != test.shown || d.number.Message() != "" {
			t.Errorf("%s, %q in %s: value %v shown as %q (%s), want %v as %q",
				test.path, test.text, test.unit, got, d.number.Text(), d.number.Message(), test.want, test.shown)
		}
		if steps := d.steps(); steps != 1 {
			t.Errorf("%s, %q: %d steps to undo, want 1", test.path, test.text, steps)
		}
	}
}

func TestWrongInputIsKeptAndExplained(t *testing.T) {
	tests := []struct {
		path, text string
		unit       geometry.Unit
		says       []string
	}{
		{"bag.width_mm", "20", geometry.Millimetre, []string{"20 mm is less than the least, 30 mm", "no room for a hand", "Enter 30 to 1000 mm."}},
		{"bag.width_mm", "2000", geometry.Millimetre, []string{"2000 mm is more than the most, 1000 mm", "fit no press sheet", "Enter 30 to 1000 mm."}},
		// 30 mm are 1.1811 in: the limit that is shown can be entered.
		{"bag.width_mm", "1", geometry.Inch, []string{"1 in is less than the least, 1.181 in", "Enter 1.182 to 39.37 in."}},
		{"bag.width_mm", "29.999999", geometry.Millimetre, []string{"29.999999 mm is less than the least, 30 mm"}},
		{"bag.width_mm", "24 kg", geometry.Millimetre, []string{`Character 4: "kg" is not a unit of length`, "write mm, cm, m or in"}},
		{"bag.width_mm", "240+", geometry.Millimetre, []string{"Character 5: there is no number"}},
		{"bag.width_mm", " ", geometry.Millimetre, []string{"There is no number; write a number"}},
		{"bag.width_mm", "1,240", geometry.Millimetre, []string{`"1,240" may be 1.24 or 1240`, "without the comma"}},
		{"paper.grammage_gsm", "20", geometry.Millimetre, []string{"20 g/m² is less than the least, 30 g/m²", "lighter than that is tissue"}},
		{"paper.grammage_gsm", "17 cm", geometry.Millimetre, []string{`"cm" is not a unit of grammage; write g/m²`}},
		{"paper.grammage_gsm", "80 lb", geometry.Inch, []string{"a basis weight in pounds means another grammage", "write the grammage in g/m²"}},
		{"product.weight_g", "18 cm", geometry.Millimetre, []string{`Character 4: "cm" is not a unit of weight; write g, kg, oz or lb`}},
		{"product.weight_g", "1,400", geometry.Millimetre, []string{`"1,400" may be 1.4 or 1400`}},
		{"run.quantity", "3.000", geometry.Millimetre, []string{`"3.000" may be 3 or 3000; write it without the point`}},
		{"run.quantity", "3000 bags", geometry.Millimetre, []string{`"bags" does not belong to this number; write the number alone`}},
		{"run.spoilage_percent", "7 kg", geometry.Millimetre, []string{`"kg" does not belong to this number; write the value in %`}},
		{"run.quantity", "0.5", geometry.Millimetre, []string{"0.5 is less than the least, 1"}},
		{"run.quantity", "10.5", geometry.Millimetre, []string{"10.5 is not a whole number"}},
		{"run.spoilage_percent", "120", geometry.Millimetre, []string{"120% is more than the most, 100%", "Enter 0 to 100%."}},
	}
	for _, test := range tests {
		for _, leave := range []func(*desk){func(d *desk) { d.press(fyne.KeyReturn) }, func(d *desk) { d.window.Canvas().Unfocus() }} {
			d := at(t, test.path)
			d.set.SetUnit(test.unit)
			before := d.value()
			d.typeIn(test.text)
			leave(d)
			for _, says := range test.says {
				if !strings.Contains(d.number.Message(), says) {
					t.Errorf("%s, %q: the message %q does not say %q", test.path, test.text, d.number.Message(), says)
				}
			}
			if d.value() != before || d.number.Text() != test.text || d.steps() != 0 {
				t.Errorf("%s, %q: value %v, text %q, %d steps; want %v, the text and none", test.path, test.text, d.value(), d.number.Text(), d.steps(), before)
			}
			// Another entry changes: what was typed stays.
			spec := d.doc.State().Spec
			spec.Body.SeamFlap = 21
			d.doc.Set(spec)
			if d.number.Text() != test.text || d.number.Message() == "" {
				t.Errorf("%s, %q: a change elsewhere left %q, %q", test.path, test.text, d.number.Text(), d.number.Message())
			}
			d.press(fyne.KeyEscape)
			if d.number.Message() != "" || d.number.Text() == test.text {
				t.Errorf("%s, %q: escape leaves %q, %q", test.path, test.text, d.number.Text(), d.number.Message())
			}
		}
	}
}

// The complaint goes as soon as what is typed can be read again.
func TestComplaintGoesWhenMended(t *testing.T) {
	d := at(t, "bag.width_mm")
	d.typeIn("20")
	d.press(fyne.KeyReturn)
	if d.number.Message() == "" {
		t.Fatal("no complaint")
	}
	d.press(fyne.KeyEnd)
	d.line.TypedRune('0')
	if d.number.Message() != "" || d.number.Text() != "200" {
		t.Errorf("%q is complained about: %q", d.number.Text(), d.number.Message())
	}
}

func TestEscapeRestores(t *testing.T) {
	d := at(t, "bag.width_mm")
	d.typeIn("999")
	d.press(fyne.KeyEscape)
	d.press(fyne.KeyReturn)
	if d.number.Text() != "240" || d.value() != 240 || d.steps() != 0 {
		t.Errorf("text %q, value %v, %d steps", d.number.Text(), d.value(), d.steps())
	}
}

// Losing the focus takes over what was typed, as the tab key does.
func TestFocusLossCommits(t *testing.T) {
	d := at(t, "bag.width_mm")
	d.typeIn("300")
	d.window.Canvas().FocusNext()
	d.window.Canvas().Unfocus()
	if d.value() != 300 || d.steps() != 1 {
		t.Errorf("value %v after %d steps, want 300 after 1", d.value(), d.steps())
	}
	d.window.Canvas().Focus(d.line)
	d.window.Canvas().Unfocus()
	if d.steps() != 1 {
		t.Errorf("passing through makes a step")
	}
}

// What is shown rounded stays exact while nobody types.
func TestPassingThroughKeepsTheExactValue(t *testing.T) {
	d := at(t, "bag.width_mm")
	d.set.SetUnit(geometry.Inch)
	if d.number.Text() != "9.449" {
		t.Fatalf("240 mm are shown as %q in", d.number.Text())
	}
	d.window.Canvas().Focus(d.line)
	d.press(fyne.KeyReturn)
	d.window.Canvas().Unfocus()
	if d.value() != 240 {
		t.Errorf("value %v, want 240", d.value())
	}
}

func TestArrows(t *testing.T) {
	shift := func(d *desk, name fyne.KeyName) {
		d.line.(desktop.Keyable).KeyDown(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
		d.tap(name)
		d.line.(desktop.Keyable).KeyUp(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
	}
	alt := func(d *desk, name fyne.KeyName) {
		d.line.(fyne.Shortcutable).TypedShortcut(&desktop.CustomShortcut{KeyName: name, Modifier: fyne.KeyModifierAlt})
		d.line.(desktop.Keyable).KeyUp(&fyne.KeyEvent{Name: name})
	}
	tests := []struct {
		name string
		unit geometry.Unit
		do   func(*desk)
		by   float64
	}{
		{"up", geometry.Millimetre, func(d *desk) { d.tap(fyne.KeyUp) }, 1},
		{"down", geometry.Millimetre, func(d *desk) { d.tap(fyne.KeyDown) }, -1},
		{"shift up", geometry.Millimetre, func(d *desk) { shift(d, fyne.KeyUp) }, 10},
		{"shift down", geometry.Millimetre, func(d *desk) { shift(d, fyne.KeyDown) }, -10},
		{"alt up", geometry.Millimetre, func(d *desk) { alt(d, fyne.KeyUp) }, 0.1},
		{"alt down", geometry.Millimetre, func(d *desk) { alt(d, fyne.KeyDown) }, -0.1},
		{"page up", geometry.Millimetre, func(d *desk) { d.tap(fyne.KeyPageUp) }, 10},
		{"page down", geometry.Millimetre, func(d *desk) { d.tap(fyne.KeyPageDown) }, -10},
		{"up in cm", geometry.Centimetre, func(d *desk) { d.tap(fyne.KeyUp) }, 1},
		{"up in inches", geometry.Inch, func(d *desk) { d.tap(fyne.KeyUp) }, 25.4 / 16},
		{"alt down in inches", geometry.Inch, func(d *desk) { alt(d, fyne.KeyDown) }, -25.4 / 64},
		{"shift up in inches", geometry.Inch, func(d *desk) { shift(d, fyne.KeyUp) }, 12.7},
		{"after shift", geometry.Millimetre, func(d *desk) { shift(d, fyne.KeyUp); d.tap(fyne.KeyUp) }, 11},
	}
	for _, test := range tests {
		d := at(t, "bag.width_mm")
		d.set.SetUnit(test.unit)
		d.window.Canvas().Focus(d.line)
		test.do(d)
		if got := d.value(); math.Abs(got-240-test.by) > 1e-6 {
			t.Errorf("%s: %v, want %v", test.name, got, 240+test.by)
		}
		if d.doc.State().Dragging {
			t.Errorf("%s: the step is not ended", test.name)
		}
	}
}

// A key that is held down makes one step to undo, and stops at the limit.
func TestHeldArrowIsOneStep(t *testing.T) {
	d := at(t, "bag.width_mm")
	d.window.Canvas().Focus(d.line)
	for range 80 {
		d.press(fyne.KeyPageUp)
	}
	d.line.(desktop.Keyable).KeyUp(&fyne.KeyEvent{Name: fyne.KeyPageUp})
	if d.value() != 1000 || d.steps() != 1 {
		t.Errorf("value %v after %d steps, want 1000 after 1", d.value(), d.steps())
	}
	d.tap(fyne.KeyDown)
	d.press(fyne.KeyDown)
	d.window.Canvas().Unfocus() // before the key is let go
	if d.value() != 998 || d.steps() != 3 || d.doc.State().Dragging {
		t.Errorf("value %v after %d steps, want 998 after 3", d.value(), d.steps())
	}
}

func TestArrowGoesOnFromWhatIsTyped(t *testing.T) {
	d := at(t, "bag.width_mm")
	d.typeIn("30 cm")
	d.tap(fyne.KeyUp)
	if d.value() != 301 || d.number.Text() != "301" {
		t.Errorf("value %v, text %q; want 301", d.value(), d.number.Text())
	}
	d.typeIn("5 kg")
	d.tap(fyne.KeyUp)
	if d.value() != 301 || d.number.Text() != "5 kg" || d.number.Message() == "" {
		t.Errorf("value %v, text %q, message %q", d.value(), d.number.Text(), d.number.Message())
	}
}

func TestUnitChange(t *testing.T) {
	d := at(t, "bag.width_mm")
	for unit, want := range map[geometry.Unit]string{geometry.Centimetre: "24", geometry.Inch: "9.449", geometry.Millimetre: "240"} {
		d.set.SetUnit(unit)
		if d.number.Text() != want {
			t.Errorf("in %s: %q, want %q", unit, d.number.Text(), want)
		}
	}
	if d.steps() != 0 {
		t.Error("a change of unit changes the bag")
	}
}

// Ctrl+Z takes back what was typed first, then leaves the document to be undone.
func TestUndoWhileTyping(t *testing.T) {
	d := at(t, "bag.width_mm")
	undoer := d.line.(interface {
		UndoTyping() bool
		RedoTyping() bool
		Commit() bool
	})
	if undoer.UndoTyping() {
		t.Error("nothing was typed, and something was undone")
	}
	d.typeIn("300")
	d.press(fyne.KeyReturn)
	d.typeIn("35")
	for range 5 {
		if !undoer.UndoTyping() {
			break
		}
	}
	if d.number.Text() != "300" || d.value() != 300 {
		t.Errorf("text %q, value %v; want 300 as before typing", d.number.Text(), d.value())
	}
	if undoer.UndoTyping() {
		t.Error("the document should be undone now")
	}
	if !undoer.RedoTyping() || d.number.Text() == "300" {
		t.Errorf("typing was not done again: %q", d.number.Text())
	}
	d.press(fyne.KeyEscape)
	d.doc.Undo()
	if d.number.Text() != "240" {
		t.Errorf("text %q after undoing the document, want 240", d.number.Text())
	}
	d.typeIn("310")
	if !undoer.Commit() || d.value() != 310 {
		t.Errorf("value %v, want 310 taken over", d.value())
	}
	d.typeIn("x")
	if undoer.Commit() {
		t.Error("what cannot be read was taken over")
	}
}

func TestGolden(t *testing.T) {
	d := at(t, "bag.width_mm")
	geomtest.Golden(t, "entry/number.xml", []byte(test.RenderToMarkup(d.window.Canvas())))
	d.typeIn("20")
	d.window.Canvas().Unfocus()
	geomtest.Golden(t, "entry/number-wrong.xml", []byte(test.RenderToMarkup(d.window.Canvas())))
}
