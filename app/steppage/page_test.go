package steppage_test

import (
	"testing"

	"fyne.io/fyne/v2"

	"gussetwright/app/entry"
	"gussetwright/app/settings"
	"gussetwright/app/steppage"
	"gussetwright/app/steppage/pagetest"
	"gussetwright/geometry/bag"
)

// paths returns those of the entries in a column.
func paths(column *entry.Column) (list []string) {
	for _, object := range column.Objects() {
		if s, ok := object.(*steppage.Slot); ok {
			list = append(list, s.Path)
		}
	}
	return list
}

// A heading takes what is named or begins as named, once, and is left out where nothing
// is left for it.
func TestNamed(t *testing.T) {
	p := steppage.New(pagetest.NewBench(t, bag.Default(), settings.Light))
	first := p.Named("First", "print.safe_mm")
	rest := p.Named("Rest", "print.")
	none := p.Named("None", "print.", "print.bleed_mm")
	if got := paths(first); len(got) != 1 || got[0] != "print.safe_mm" {
		t.Errorf("the first heading has %q", got)
	}
	if got := paths(rest); len(got) < 2 || got[0] != "print.bleed_mm" {
		t.Errorf("the rest is %q", got)
	}
	if len(paths(none)) != 0 || len(p.Objects()) != 2 {
		t.Errorf("a heading without entries stands on the page: %q, %d headings", paths(none), len(p.Objects()))
	}
}

// A heading goes with the last of its entries and comes back with the first.
func TestHeadingHidesWithItsEntries(t *testing.T) {
	b := pagetest.NewBench(t, bag.Default(), settings.Light)
	p := steppage.New(b)
	heading := p.Named("Hand hole", "handle.hand_hole_")
	pagetest.Show(t, p)
	if heading.Visible() {
		t.Error("a heading without shown entries is shown")
	}
	spec := b.Doc.State().Spec
	spec.Handle.Kind = bag.HandleHandHole
	b.Doc.Set(spec)
	if !heading.Visible() {
		t.Error("a heading with shown entries is hidden")
	}
}

// A page that is closed ends what it was told to end, and Forget drops what was typed.
func TestForgetAndClose(t *testing.T) {
	b := pagetest.NewBench(t, bag.Default(), settings.Light)
	p := steppage.New(b)
	p.Named("Sheet", "sheet.gap_mm")
	p.Follow(b.Doc.State())
	gap := pagetest.First[*entry.Number](p)
	before := gap.Text()
	gap.Focusable().FocusGained()
	gap.Focusable().TypedRune('7')
	p.Forget()
	if gap.Text() != before {
		t.Errorf("after Forget the entry shows %q, want %q", gap.Text(), before)
	}
	ended := 0
	p.OnClose(func() { ended++ })
	p.OnClose(func() { ended++ })
	p.Close()
	if ended != 2 {
		t.Errorf("%d of 2 things are ended", ended)
	}
}

// Slow work is done beside the window and its result handed to the window; without a
// window to hand it to, it is done at once.
func TestBeside(t *testing.T) {
	b := pagetest.NewBench(t, bag.Default(), settings.Light)
	p := steppage.New(b)
	double := func(n int) int { return 2 * n }
	got := 0
	steppage.Beside(p, double, func(n int) { got = n })(21)
	if got != 42 {
		t.Errorf("done at once it is %d", got)
	}
	queue := make(chan func(), 1)
	b.Later = func(do func()) { queue <- do }
	steppage.Beside(p, double, func(n int) { got = n })(4)
	next := <-queue
	if got != 42 {
		t.Error("a result is shown beside the window")
	}
	next()
	if got != 8 {
		t.Errorf("done beside the window it is %d", got)
	}
	p.Close()
}

// The arrow keys go through a table, which says what it is; Enter and a click choose.
func TestTable(t *testing.T) {
	b := pagetest.NewBench(t, bag.Default(), settings.Light)
	explained, brought := "", 0
	b.Explain = func(e entry.Explained) { explained, _ = e.Explanation() }
	b.Bring = func(fyne.CanvasObject) { brought++ }
	var chosen []int
	table := steppage.NewTable(func(i int) { chosen = append(chosen, i) }).WithHelp("Sizes", "All of them.", b)
	table.Set([]steppage.Row{{Name: "A"}, {Name: "B", Note: "below"}, {Name: "C", Chosen: true}})
	p := steppage.New(b)
	p.Add(table)
	window := pagetest.Show(t, p)
	window.Canvas().Focus(table)
	for _, key := range []fyne.KeyName{fyne.KeyDown, fyne.KeyReturn, fyne.KeyEnd, fyne.KeySpace, fyne.KeyHome} {
		table.TypedKey(&fyne.KeyEvent{Name: key})
	}
	table.Tapped(&fyne.PointEvent{Position: fyne.NewPos(5, table.Size().Height-2)})
	if len(chosen) != 3 || chosen[0] != 1 || chosen[1] != 2 || chosen[2] != 2 || explained != "Sizes" || brought != 5 {
		t.Errorf("chosen %v, explained %q, %d times brought into view", chosen, explained, brought)
	}
	var heard fyne.KeyName
	window.Canvas().SetOnTypedKey(func(key *fyne.KeyEvent) { heard = key.Name })
	table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyF11})
	if heard != fyne.KeyF11 {
		t.Error("the window does not hear its key while a table has the focus")
	}
	table.Set(nil)
	table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if len(chosen) != 3 {
		t.Error("a table without rows chooses one")
	}
}
