package sheetstep

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/entry"
	"gussetwright/app/settings"
	"gussetwright/app/steppage"
	"gussetwright/app/steppage/pagetest"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/sheet"
)

// desk is the page of a bag in a window.
type desk struct {
	*page
	window fyne.Window
}

func newDesk(t testing.TB, spec bag.Spec) *desk {
	t.Helper()
	p := newPage(pagetest.NewBench(t, spec, settings.Light))
	return &desk{p, pagetest.Show(t, p.Page)}
}

// offer returns what can be pressed, by what it says it does; nil where it is not shown.
func (d *desk) offer(act string) *steppage.Offer {
	return pagetest.Explained[*steppage.Offer](d, act)
}

// press presses keys in the ranking.
func (d *desk) press(keys ...fyne.KeyName) {
	d.window.Canvas().Focus(d.ranking)
	for _, key := range keys {
		d.ranking.TypedKey(&fyne.KeyEvent{Name: key})
	}
}

// shown returns the row of the ranking with a name, nil when it is not shown.
func (d *desk) shown(name string) *rankRow {
	for _, row := range d.ranking.rows {
		if row.row.name == name {
			return row
		}
	}
	return nil
}

func names(rows []*rankRow) (list []string) {
	for _, row := range rows {
		list = append(list, row.row.name)
	}
	return list
}

// The worked example (common practice, no published source): its blank of 700 × 480
// fills the usable part of half a sheet of 1000 × 700 exactly, and fits nothing
// smaller.
func TestSheetIsTaken(t *testing.T) {
	d := newDesk(t, geomtest.WorkedExample())
	doc := d.Doc
	if half := d.shown("70 × 50 cm"); half.row.cells[0] != "1" || !half.row.inUse {
		t.Errorf("half a sheet: %+v", half.row)
	}
	whole := d.shown("100 × 70 cm")
	if whole.row.cells[0] != "2" || !strings.Contains(whole.row.note, "short edge") || !strings.Contains(whole.row.note, "most that fit") {
		t.Errorf("a whole sheet: %+v", whole.row)
	}
	if d.shown("A2") != nil || !strings.Contains(d.ranking.tiny.Text(), "A2") {
		t.Error("a sheet that is far too small has a row of its own")
	}
	count := len(sheet.UsualSheets())
	test.Tap(d.offer(fmt.Sprintf("Show all %d sheets", count)))
	if small := d.shown("A2"); small == nil || !strings.Contains(small.row.note, "too wide and") || len(d.ranking.rows) != count {
		t.Errorf("all sheets: %q", names(d.ranking.rows))
	}
	test.Tap(d.offer("Show the best only"))
	if d.shown("A2") != nil {
		t.Error("the small sheets stay")
	}

	for !d.shown("100 × 70 cm").open {
		d.press(fyne.KeyDown)
	}
	if pagetest.UndoSteps(doc) != 0 {
		t.Error("looking at a sheet takes it")
	}
	d.press(fyne.KeyReturn)
	got := doc.State().Spec.Sheet
	if got.Width != 1000 || got.Height != 700 || got.GripperEdge != bag.GripperShort || got.Gripper != 20 || pagetest.UndoSteps(doc) != 1 {
		t.Errorf("sheet %+v after %d steps", got, pagetest.UndoSteps(doc))
	}
	if up := doc.State().Snapshot.Plan.Up(); up != 2 {
		t.Errorf("%d-up, want 2", up)
	}
	if row := d.shown("100 × 70 cm"); !row.row.inUse || !row.open || row.take.Visible() {
		t.Error("the sheet that was taken is not shown as in use, or offered again")
	}
}

// By hand: two blanks of the default bag on their sides take 2 · 480 + 6 = 966 of
// 1000 − 2 · 5 = 990 mm, and 699.5 of 700 − 12 − 5 = 683 mm. A face narrower by 8.25
// takes 2 · 8.25 = 16.5 mm from that; it is set in tenths, so 231.7 in place of 240.
func TestChangeIsMade(t *testing.T) {
	spec := bag.Default()
	d := newDesk(t, spec)
	doc := d.Doc
	offered := pagetest.First[*steppage.Offer](d)
	if want := "2-up if the face width were 231.7 mm instead of 240 mm"; offered == nil || !pagetest.Says(offered, want) {
		t.Fatalf("nothing offers %q", want)
	}
	d.Settings.SetUnit(geometry.Centimetre)
	if !pagetest.Says(offered, "2-up if the face width were 23.17 cm instead of 24 cm") {
		t.Errorf("in cm it says %q", pagetest.Texts(offered))
	}
	d.Settings.SetUnit(geometry.Millimetre)
	test.Tap(offered)
	state := doc.State()
	if state.Spec.Body.Width != 231.7 || state.Snapshot.Plan.Up() != 2 || pagetest.UndoSteps(doc) != 1 {
		t.Errorf("face %g, %d-up, %d steps", state.Spec.Body.Width, state.Snapshot.Plan.Up(), pagetest.UndoSteps(doc))
	}
	doc.Undo()
	if doc.State().Spec.Body.Width != 240 {
		t.Error("one undo does not bring the bag back")
	}

	// By keys, on a sheet that does not fit: it is taken together with the change.
	for !d.shown("B2").open {
		d.press(fyne.KeyDown)
	}
	d.Settings.SetUnit(geometry.Inch)
	if note := d.shown("B2").row.note; !strings.Contains(note, "0.098 in too long") {
		t.Errorf("in inches the ranking says %q", note)
	}
	d.Settings.SetUnit(geometry.Millimetre)
	row := d.shown("B2")
	if !strings.Contains(row.row.note, "2.5 mm too long") || row.row.cells != nil {
		t.Errorf("B2: %+v", row.row)
	}
	first := row.offers.list[0]
	first.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	state = doc.State()
	if s := state.Spec.Sheet; s.Width != 707 || s.Height != 500 || state.Snapshot.Plan.Up() != 1 || state.Spec.Body.SeamFlap != 17.5 || pagetest.UndoSteps(doc) != 1 {
		t.Errorf("sheet %+v, %d-up, seam flap %g, %d steps", s, state.Snapshot.Plan.Up(), state.Spec.Body.SeamFlap, pagetest.UndoSteps(doc))
	}
}

// The arrow keys, Space and Escape open and close; a click does both.
func TestRankingOpens(t *testing.T) {
	d := newDesk(t, bag.Default())
	r := d.ranking
	open := func() (list []int) {
		for i, row := range r.rows {
			if row.open {
				list = append(list, i)
			}
		}
		return list
	}
	last := len(r.rows) - 1
	for _, c := range []struct {
		key  fyne.KeyName
		want []int
	}{
		{fyne.KeyDown, []int{1}},
		{fyne.KeyDown, []int{2}},
		{fyne.KeySpace, nil},
		{fyne.KeySpace, []int{2}},
		{fyne.KeyUp, []int{1}},
		{fyne.KeyEnd, []int{last}},
		{fyne.KeyDown, []int{last}},
		{fyne.KeyHome, []int{0}},
		{fyne.KeyEscape, nil},
	} {
		if d.press(c.key); !slices.Equal(open(), c.want) {
			t.Errorf("after %s rows %v are open, want %v", c.key, open(), c.want)
		}
	}
	test.Tap(r.rows[3])
	if !slices.Equal(open(), []int{3}) {
		t.Errorf("a click opens %v", open())
	}
	test.Tap(r.rows[3])
	if open() != nil {
		t.Errorf("a second click leaves %v open", open())
	}
}

// The next stop after the table is what its open row offers.
func TestOffersHaveTheFocus(t *testing.T) {
	d := newDesk(t, bag.Default())
	for !d.shown("B2").open {
		d.press(fyne.KeyDown)
	}
	first := d.shown("B2").offers.list[0]
	test.FocusNext(d.window.Canvas())
	if focused := d.window.Canvas().Focused(); focused != fyne.Focusable(first) {
		t.Fatalf("the focus is at %T", focused)
	}
}

// While a drag lasts the rows stay, dim, and the picture and its sentence follow.
func TestDragLeavesTheRanking(t *testing.T) {
	d := newDesk(t, bag.Default())
	doc, r := d.Doc, d.ranking
	before := names(r.rows)
	spec := doc.State().Spec
	spec.Body.Width, spec.Body.Gusset, spec.Body.Height = 110, 60, 150
	doc.Drag(spec)
	if r.veil.Hidden || !slices.Equal(names(r.rows), before) {
		t.Errorf("in a drag the rows are %q", names(r.rows))
	}
	if up := doc.State().Snapshot.Plan.Up(); up < 2 || !strings.Contains(pagetest.Markup(d.window), fmt.Sprintf("%d-up on 100 × 70 cm", up)) {
		t.Error("in a drag the sentence about the sheet stays")
	}
	doc.Drop()
	if !r.veil.Hidden || slices.Equal(names(r.rows), before) {
		t.Errorf("after a drag the rows are %q, dim: %v", names(r.rows), !r.veil.Hidden)
	}
}

// A ranking that was overtaken leaves the rows dim until the newer one is there.
func TestLateRanking(t *testing.T) {
	p := newPage(pagetest.NewBench(t, bag.Default(), settings.Light))
	doc := p.Doc
	var orders []rankOrder
	p.request = func(o rankOrder) { orders = append(orders, o) }
	p.Follow(doc.State())
	spec := doc.State().Spec
	spec.Body.Height = 340
	doc.Set(spec)
	p.Follow(doc.State())
	p.Follow(doc.State())
	spec.Name = "Only the name"
	doc.Set(spec)
	p.Follow(doc.State())
	if len(orders) != 2 {
		t.Fatalf("%d rankings were ordered, want 2", len(orders))
	}
	p.deliver(rank(orders[0]))
	if p.ranking.veil.Hidden || p.nearBox.Visible() {
		t.Error("rows that are out of date look as if they were not")
	}
	p.deliver(rank(orders[1]))
	if !p.ranking.veil.Hidden || len(orders) != 2 {
		t.Errorf("the newest rows are dim, or ranked again: %d orders", len(orders))
	}
}

// What sheets are ranked by is remembered. By hand: 1000 × 700 mm of 170 g/m² weigh
// 0.119 kg; at 2 for a kilogram, 1000 sheets for 1000 bags cost 238.
func TestRankedByCost(t *testing.T) {
	spec := bag.Default()
	spec.Paper.Grammage = 170
	d := newDesk(t, spec)
	choice := pagetest.First[*entry.Choice](d)
	choice.Pick(string(settings.LeastCost))
	if d.Settings.Ranking() != settings.LeastCost {
		t.Error("the choice is not remembered")
	}
	if !strings.Contains(pagetest.Markup(d.window), "No price is known yet.") {
		t.Error("nothing says that no price is known")
	}
	if cells := d.shown("100 × 70 cm").row.cells; cells[2] != "–" {
		t.Errorf("without a price the sheet costs %q", cells[2])
	}
	pagetest.Enter(pagetest.First[*entry.Number](pagetest.First[*entry.Column](d.Objects()[1].(*entry.Column))), "2")
	if got := d.Doc.State().Spec.Prices.Paper; got != 2 {
		t.Fatalf("paper costs %g", got)
	}
	if cells := d.shown("100 × 70 cm").row.cells; cells[2] != "238" {
		t.Errorf("the sheets cost %q, want 238", cells[2])
	}
	last := 0.0
	for _, row := range d.ranking.rows {
		if row.row.cells == nil {
			continue
		}
		cost := number(t, row.row.cells[2])
		if cost < last {
			t.Errorf("%s for %g comes after %g", row.row.name, cost, last)
		}
		last = cost
	}
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	value := 0.0
	for _, digit := range text {
		if digit < '0' || digit > '9' {
			t.Fatalf("%q is no number", text)
		}
		value = 10*value + float64(digit-'0')
	}
	return value
}

// A layout that is not known to be the best says so, and up to what none goes.
func TestProofIsSaid(t *testing.T) {
	spec := bag.Default()
	spec.Body.Width, spec.Body.Gusset, spec.Body.Height = 110, 60, 150
	spec.Sheet.GrainRule = bag.GrainPreferred
	d := newDesk(t, spec)
	open := 0
	for i := range d.ranking.rows {
		row := &d.ranking.rows[i].row
		if row.cells == nil {
			continue
		}
		proven := strings.Contains(row.note, "most that fit")
		if proven == strings.Contains(row.note, "best found, at most") || proven != strings.Contains(row.proof, "Proven: no layout") {
			t.Errorf("%s: %q, %q", row.name, row.note, row.proof)
		}
		if !proven {
			open++
		}
	}
	if open == 0 {
		t.Error("no layout of the test is undecided")
	}
}

// The work is done beside the window and brought back to it.
func TestRankingBesideTheWindow(t *testing.T) {
	p := newPage(pagetest.NewBench(t, bag.Default(), settings.Light))
	p.Later = fyne.Do
	done := make(chan struct{})
	p.request = steppage.Beside(p.Page, rank, func(made rankResult) {
		p.deliver(made)
		close(done)
	})
	defer p.Close()
	p.rankAnew(p.Doc.State())
	<-done
	if len(p.ranking.rows) < mostShown || !p.ranking.veil.Hidden {
		t.Errorf("%d rows, dim: %v", len(p.ranking.rows), !p.ranking.veil.Hidden)
	}
}
