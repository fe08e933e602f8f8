package meeting

import (
	"fmt"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/app/settings"
	"gussetwright/geometry/bag"
	"gussetwright/render/solid"
)

func keptBefore() []project.KeptSize {
	return []project.KeptSize{{Letter: "C", Width: 320, Gusset: 120, Height: 260}, {Letter: "A", Width: 190, Gusset: 95, Height: 250}}
}

// recalled returns an open view on a project that keeps sizes.
func recalled(t *testing.T, spec bag.Spec, kept []project.KeptSize) *bench {
	t.Helper()
	b := newBench(t, bag.Default(), 1024, 700)
	b.doc.Load(project.Project{Spec: spec, Kept: kept})
	return b
}

// The project knows what is kept after everything that changes it, and the bag has no step
// of it.
func TestTheProjectKeepsWhatIsKept(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	kept := func(what, want string) {
		t.Helper()
		letters := ""
		for _, size := range b.doc.Kept() {
			letters += fmt.Sprintf("%s%g ", size.Letter, size.Width)
		}
		if letters != want {
			t.Errorf("%s: the project keeps %q, want %q", what, letters, want)
		}
	}
	b.typed("k")
	kept("kept", "A240 ")
	if state := b.doc.State(); !state.Dirty || state.Undo.Label != "" || state.Redo.Label != "" {
		t.Errorf("keeping makes the step %+v; dirty %t", state.Undo, state.Dirty)
	}
	b.resize(300, 100, 360)
	b.typed("k1")
	b.press(fyne.KeyDelete)
	kept("removed", "B300 ")
	b.Undo()
	kept("put back", "A240 B300 ")
	b.typed("0")
	b.resize(310, 100, 360)
	b.typed("1")
	b.press(fyne.KeyRight)
	b.dials[width].slider.FocusLost()
	kept("kept before a drag", "A240 B300 C310 ")
	for range 3 {
		b.doc.Undo()
	}
	kept("undone", "A240 B300 C310 ")
	if b.now()[width] != 240 {
		t.Errorf("undone to %v", b.now())
	}
}

// What a meeting before kept is compared, shown and taken as what this one keeps, whether
// the project was open before there was a view or is opened in its midst.
func TestSizesOfAMeetingBefore(t *testing.T) {
	b := recalled(t, bag.OfSize(240, 100, 360), keptBefore())
	if b.doc.State().Dirty || b.letters() != "AC" {
		t.Errorf("recalled %s, dirty %t", b.letters(), b.doc.State().Dirty)
	}
	for i, want := range []string{"A", "C"} {
		if button := b.page.variants[i]; !button.Visible() || button.Text != want {
			t.Errorf("button %d is %q, visible %t", i, button.Text, button.Visible())
		}
	}
	if b.typed("c"); len(b.stage.bags()) != 3 || b.stage.bags()[0].snapshot.Spec.Body.Width != 190 {
		t.Errorf("%d bags are compared", len(b.stage.bags()))
	}
	if b.typed("3"); b.seenSize() != (size{320, 120, 260}) {
		t.Errorf("C shows %v", b.seenSize())
	}
	if b.typed("3"); b.now() != (size{320, 120, 260}) {
		t.Errorf("C makes the bag %v", b.now())
	}
	if got, want := b.doc.Kept()[len(b.doc.Kept())-1], (project.KeptSize{Letter: "D", Width: 240, Gusset: 100, Height: 360}); got != want {
		t.Errorf("the size before is kept as %v, want %v", got, want)
	}

	doc := document.New()
	doc.Load(project.Project{Spec: bag.OfSize(240, 100, 360), Kept: keptBefore()})
	app := test.NewTempApp(t)
	v := New(doc, settings.New(app.Preferences()), Around{})
	t.Cleanup(v.Close)
	if v.Open(solid.NoReference); !slices.Equal(v.kept.order(), []int{1, 0}) {
		t.Errorf("a new view recalls %v", v.kept.order())
	}
}

// A size in which the bag cannot be drawn any more is kept all the same, and said to be so.
func TestASizeOfBeforeThatCannotBeDrawn(t *testing.T) {
	spec := bag.OfSize(240, 100, 360)
	spec.Body.Top, spec.Body.ZigzagPitch = bag.TopZigzag, 60
	kept := []project.KeptSize{{Letter: "A", Width: 40, Gusset: 100, Height: 360}, {Letter: "B", Width: 260, Gusset: 100, Height: 360}}
	b := recalled(t, spec, kept)
	if b.typed("1"); b.page.trouble.Text() != cannotBeMade() || b.stage.kept[0].snapshot != nil {
		t.Errorf("it says %q", b.page.trouble.Text())
	}
	b.capture()
	if b.typed("c"); len(b.stage.bags()) != 3 || b.stage.kept[0].caption.trouble.text != cannotBeMade() {
		t.Errorf("%d bags are compared; the first says %q", len(b.stage.bags()), b.stage.kept[0].caption.trouble.text)
	}
	b.capture()
	b.press(fyne.KeyDelete)
	if b.Undo(); b.letters() != "AB" || !slices.Equal(b.doc.Kept(), kept) {
		t.Errorf("put back: %s, %v", b.letters(), b.doc.Kept())
	}
}

// A letter that a meeting before gave is not given to another size; should a project have
// come to the last letter, those are given that are free, which the file can hold.
func TestLettersGoOnAtTheNextMeeting(t *testing.T) {
	b := recalled(t, bag.OfSize(240, 100, 360), keptBefore())
	if b.typed("k"); b.letters() != "ACD" {
		t.Errorf("kept are %s", b.letters())
	}
	last := project.KeptSize{Letter: project.Letter(project.MostLetters - 1), Width: 200, Gusset: 100, Height: 360}
	b = recalled(t, bag.OfSize(240, 100, 360), []project.KeptSize{last})
	if b.typed("k1"); b.letters() != "AZZ" {
		t.Fatalf("kept are %s", b.letters())
	}
	b.press(fyne.KeyDelete)
	b.resize(250, 100, 360)
	b.typed("k")
	b.putBack()
	if got := b.letters(); got != "ABZZ" {
		t.Errorf("kept are %s", got)
	}
}
