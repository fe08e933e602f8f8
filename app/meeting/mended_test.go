package meeting

import (
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/render/solid"
)

// tooLarge makes the bag one for which there is no sheet.
func (b *bench) tooLarge() { b.resize(900, 100, 1400) }

// Why a bag cannot be made is written as plainly as all else, behind a sign.
func TestTroubleIsReadable(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	if b.page.trouble.sign.Visible() {
		t.Error("a bag that can be made has a sign")
	}
	b.tooLarge()
	b.typed("kc")
	b.resize(250, 100, 360)
	card := b.stage.kept[0].trouble
	if card.Text() == "" || card.of.severity != check.Error || !card.sign.Visible() || card.sign.Size().Height < 16 {
		t.Errorf("the card says %q with a sign of %v", card.Text(), card.sign.Size())
	}
	b.typed("c1")
	said := b.page.trouble
	if said.Text() == "" || !said.sign.Visible() {
		t.Fatalf("the page says %q, a sign: %v", said.Text(), said.sign.Visible())
	}
	th, variant := said.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	for _, line := range test.WidgetRenderer(said.text).Objects() {
		text := line.(*canvas.Text)
		if text.Color != th.Color(theme.ColorNameForeground, variant) || text.TextSize != th.Size(theme.SizeNameText) {
			t.Errorf("%q is written in %v, %g high", text.Text, text.Color, text.TextSize)
		}
	}
}

// On narrow cards a sign alone says that a bag cannot be made.
func TestNarrowCardsKeepTheSign(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 700, 500)
	b.tooLarge()
	b.typed("k")
	b.resize(250, 100, 360)
	b.typed("kc")
	large, small := b.stage.kept[0].trouble, b.stage.kept[1].trouble
	if !b.stage.brief || !large.sign.Visible() || !strings.Contains(large.Text(), "900 × 100") || small.sign.Visible() {
		t.Errorf("brief %v: %q, a sign: %v; the other has one: %v", b.stage.brief, large.Text(), large.sign.Visible(), small.sign.Visible())
	}
}

// A key that was hit by chance writes no proof of a bag that cannot be made.
func TestAProofOfWhatCannotBeMadeIsAskedFor(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	b.typed("k")
	b.tooLarge()
	b.typed("pp")
	if len(b.proofs) != 0 || !b.page.answer.Visible() || !strings.Contains(b.said, "larger sheet") {
		t.Fatalf("%d proofs; it says %q, an answer: %v", len(b.proofs), b.said, b.page.answer.Visible())
	}
	test.Tap(b.page.answer)
	if len(b.proofs) != 1 || b.proofs[0][width] != 900 {
		t.Errorf("proofs of %v", b.proofs)
	}
	b.typed("p")
	b.resize(400, 100, 360) // has findings, but none that keeps it from being made
	if b.page.answer.Visible() {
		t.Error("the question outlives the bag that it is about")
	}
	if b.typed("p"); len(b.proofs) != 2 {
		t.Errorf("%d proofs of a bag that can be made; it says %q", len(b.proofs)-1, b.said)
	}
}

func TestRemovedSizesComeBack(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	b.keepThree()
	b.typed("1")
	b.press(fyne.KeyDelete)
	if b.page.answer.Text != "Put A back" || !b.page.answer.Visible() || b.page.remove.Visible() {
		t.Fatalf("it says %q and offers %q", b.said, b.page.answer.Text)
	}
	test.Tap(b.page.answer)
	if b.kept.numbered(0) == none || b.kept[b.kept.numbered(0)].size[width] != 190 || b.chosen != b.kept.numbered(0) || b.page.answer.Visible() {
		t.Errorf("A is not back: %v, chosen %d", b.kept, b.chosen)
	}
	b.press(fyne.KeyDelete)
	b.typed("2")
	b.press(fyne.KeyDelete)
	b.typed("0")
	b.press(fyne.KeyRight)
	b.dials[width].slider.FocusLost()
	for _, want := range []struct {
		width   float64
		letters string
	}{{260, "C"}, {260, "BC"}, {260, "ABC"}, {320, "ABC"}} {
		b.Undo()
		if got := b.letters(); b.now()[width] != want.width || got != want.letters {
			t.Errorf("undone to %v and %s, want %v", b.now(), got, want)
		}
	}
}

// letters returns the letters of what is kept, in their order.
func (b *bench) letters() (all string) {
	for _, place := range b.kept.order() {
		all += b.kept[place].letter()
	}
	return all
}

// Notes that people took stay true: a letter is given once, and the sizes stay in order.
func TestLettersAreGivenOnce(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	b.keepThree()
	b.typed("1")
	b.press(fyne.KeyDelete)
	b.typed("k")
	if got := b.letters(); got != "BCD" || b.page.variants[2].Text != "D" || b.page.variants[3].Visible() {
		t.Errorf("kept are %s, the third button is %q", got, b.page.variants[2].Text)
	}
	test.Tap(b.page.variants[2])
	if b.kept[b.chosen].letter() != "D" || b.seenSize()[width] != 260 {
		t.Errorf("the button D shows %v", b.seenSize())
	}
	b.typed("c")
	if bags := b.stage.bags(); bags[0] != b.stage.kept[b.kept.numbered(1)] || bags[2] != b.stage.kept[b.kept.numbered(3)] {
		t.Error("the cards are not in the order of their letters")
	}
}

// A place that was another variant's shows no picture of that where its own bag cannot be
// drawn any more.
func TestAPlaceForgetsWhoHadIt(t *testing.T) {
	b := newBench(t, bag.OfSize(40, 100, 360), 1024, 700)
	b.typed("k1")
	b.press(fyne.KeyDelete)
	b.resize(240, 100, 360)
	b.typed("k")
	spec := b.doc.State().Spec
	spec.Body.Top, spec.Body.ZigzagPitch = bag.TopZigzag, 60
	b.doc.Set(spec)
	b.typed("2")
	b.press(fyne.KeyDelete)
	b.removed = b.removed[:1] // the narrow one
	b.putBack()
	if b.letters() != "A" || b.kept[0].snapshot != nil || b.stage.kept[0].snapshot != nil {
		t.Errorf("kept are %s; the place shows a bag: %v", b.letters(), b.stage.kept[0].snapshot != nil)
	}
}

func TestUndoIsInSight(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	if !b.page.undo.Disabled() {
		t.Error("there is nothing to undo, but the button says so")
	}
	b.press(fyne.KeyRight)
	b.dials[width].slider.FocusLost()
	if b.page.undo.Disabled() || !b.page.undo.Visible() {
		t.Fatal("a step cannot be undone by the button")
	}
	if test.Tap(b.page.undo); b.now()[width] != 240 || !b.page.undo.Disabled() {
		t.Errorf("undone to %v; the button is off: %v", b.now(), b.page.undo.Disabled())
	}
}

// A click beside the thumb goes one step towards it; a drag follows the pointer, wherever
// it began.
func TestClicksOnTheTrackAreSteps(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	s := b.dials[width].slider
	at := func(share float32) fyne.PointEvent {
		return fyne.PointEvent{Position: fyne.NewPos(s.radius()+share*(s.Size().Width-2*s.radius()), 5)}
	}
	click := func(share float32) {
		down := at(share)
		s.MouseDown(&desktop.MouseEvent{PointEvent: down})
		s.Tapped(&down)
	}
	for _, c := range []struct {
		share float32
		want  float64
	}{{0.9, 245}, {1, 250}, {0.1, 245}, {s.share(), 245}} {
		if click(c.share); b.now()[width] != c.want || b.doc.State().Dragging {
			t.Errorf("a click at %g of the track makes it %v, want %g", c.share, b.now(), c.want)
		}
	}
	if b.undone() != "Face width 250 mm 245 mm" {
		t.Errorf("undo takes back %q", b.undone())
	}
	trembling := at(0.9)
	s.MouseDown(&desktop.MouseEvent{PointEvent: trembling})
	trembling.Position.X += 3
	s.Dragged(&fyne.DragEvent{PointEvent: trembling})
	if s.DragEnd(); b.now()[width] != 250 {
		t.Errorf("a hand that trembles makes it %v", b.now())
	}
	s.MouseDown(&desktop.MouseEvent{PointEvent: at(0.9)})
	s.Dragged(&fyne.DragEvent{PointEvent: at(0.5)})
	if s.DragEnd(); b.now()[width] != 300 { // the middle of 120 to 480
		t.Errorf("dragged to the middle it is %v", b.now())
	}
}

// What was not kept is kept before a kept size takes its place.
func TestNothingIsLostByNudging(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	b.typed("k")
	b.resize(285, 100, 360)
	b.typed("1")
	b.press(fyne.KeyRight, fyne.KeyRight)
	if b.letters() != "AB" || b.kept[b.kept.numbered(1)].size[width] != 285 || b.said != "The size before is kept as B." {
		t.Errorf("kept are %s; it says %q", b.letters(), b.said)
	}
	b.dials[width].slider.FocusLost()
	if b.said != "The size before is kept as B." || b.now()[width] != 250 {
		t.Errorf("when the key is up it says %q of %v", b.said, b.now())
	}
	b.resize(300, 100, 360)
	b.typed("11")
	if b.letters() != "ABC" || !strings.Contains(b.said, "The bag is A now") || !strings.Contains(b.said, "kept as C") {
		t.Errorf("kept are %s; it says %q", b.letters(), b.said)
	}
	b.resize(310, 100, 360)
	b.typed("k")
	b.resize(320, 100, 360)
	b.typed("2")
	b.press(fyne.KeyRight)
	if b.letters() != "ABCD" || b.said != "Undo brings the size before back." {
		t.Errorf("without a free place it says %q", b.said)
	}
	b.dials[width].slider.FocusLost()
	if b.Undo(); b.now()[width] != 320 {
		t.Errorf("undo brings back %v", b.now())
	}
}

// letters of the same size are not kept twice, and B need not be made what it is.
func TestWhatIsTheBagCannotBeTaken(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	b.typed("k")
	if b.typed("1"); !b.page.take.Visible() || !b.page.take.Disabled() {
		t.Error("the bag is A already, and can be made A")
	}
	b.typed("0")
	b.resize(250, 100, 360)
	if b.typed("1"); b.page.take.Disabled() || b.page.take.Text != "Make A the bag" {
		t.Errorf("%q is off", b.page.take.Text)
	}
}

// Leaving counts as a proof does: what is chosen becomes the bag.
func TestLeavingTakesWhatIsChosen(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	b.typed("k")
	b.resize(300, 100, 360)
	b.typed("1")
	if told := b.Shut(); b.now()[width] != 240 || !strings.Contains(told, "The bag is A now") || b.undone() != "take variant A" {
		t.Errorf("left with %v; it tells %q", b.now(), told)
	}
	b.Open(solid.NoReference)
	b.typed("1")
	if told := b.Shut(); told != "" || b.undone() != "take variant A" {
		t.Errorf("A is the bag; it tells %q", told)
	}
	b.Open(solid.NoReference)
	if told := b.Shut(); told != "" {
		t.Errorf("nothing is chosen; it tells %q", told)
	}
}

// After undo the same bag stands as large as at first, and the sliders have room again.
func TestTheSameBagIsAsLargeAgain(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	scale := func() float64 {
		v, _ := b.stage.viewOf(b.stage.present)
		return v.Scale()
	}
	before := scale()
	for _, share := range []float32{0.5, 1, 1} {
		b.slide(height, share)
		b.dials[height].slider.DragEnd()
		if share == 1 && scale() >= before {
			t.Errorf("a bag of %v is as large", b.now())
		}
	}
	for range 3 {
		b.Undo()
	}
	if now := scale(); math.Abs(now/before-1) > 1e-9 {
		t.Errorf("the same bag is drawn at %g pixels per mm, before %g", now, before)
	}
	if share := b.dials[height].slider.share(); share < 0.05 || share > 0.95 {
		t.Errorf("the thumb stands at %g of the track", share)
	}
}
