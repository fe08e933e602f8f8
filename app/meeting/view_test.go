package meeting

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/app/settings"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/render/solid"
)

// slide drags a slider to a share of its length, in a few moves, and holds it.
func (b *bench) slide(a axis, shares ...float32) {
	s := b.dials[a].slider
	for _, share := range shares {
		x := s.radius() + share*(s.Size().Width-2*s.radius())
		s.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(x, 5)}})
	}
}

func (b *bench) now() size {
	spec := b.doc.State().Spec
	return sizeOf(&spec)
}

// undone returns what undo would take back, as the menu writes it.
func (b *bench) undone() string {
	change := b.doc.State().Undo
	if change.File != "" {
		return fmt.Sprintf(change.Label, change.File)
	}
	return strings.TrimSpace(change.Label + " " + change.From + " " + change.To)
}

func TestADragIsOneStep(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	clear(b.orders)
	b.slide(width, 0.4, 0.5, 0.6)
	if state := b.doc.State(); !state.Dragging || state.Undo.Label != "" || state.Spec.Body.Width == 240 {
		t.Errorf("while the slider moves: dragging %v, undo %q, %g mm", state.Dragging, b.undone(), state.Spec.Body.Width)
	}
	if got := b.orders[b.stage.present]; got != 3 {
		t.Errorf("three moves made %d pictures, want a draft each", got)
	}
	if spec := b.doc.State().Spec; b.dials[width].number.Text != fmt.Sprint(spec.Body.Width) || spec.Handle.Spacing != spec.Body.Width/2 {
		t.Errorf("the dial shows %s for %g mm, the holes are %g mm apart", b.dials[width].number.Text, spec.Body.Width, spec.Handle.Spacing)
	}
	b.dials[width].slider.DragEnd()
	// 120 to 480 mm: the middle of the last move is at 336.
	if got, want := b.undone(), "Face width 240 mm 335 mm"; got != want || b.doc.State().Dragging {
		t.Errorf("after the drag undo takes back %q, want %q", got, want)
	}
	b.doc.Undo()
	if b.now() != (size{240, 100, 360}) || b.doc.State().Spec.Handle.Spacing != 120 || b.dials[width].number.Text != "240" {
		t.Errorf("undone: %v, holes %g mm apart, the dial shows %s", b.now(), b.doc.State().Spec.Handle.Spacing, b.dials[width].number.Text)
	}
}

// The frame holds still in a drag: a wider bag is no smaller in its height.
func TestAWiderBagIsNoLower(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	scale := func() float64 {
		v, _ := b.stage.viewOf(b.stage.present)
		return v.Scale()
	}
	before := scale()
	b.slide(width, 0.3, 0.36)
	if now := scale(); now != before {
		t.Errorf("a bag of %v is drawn at %g pixels per mm, before %g", b.now(), now, before)
	}
	b.slide(width, 1)
	b.slide(height, 1)
	if now := scale(); now >= before {
		t.Errorf("a bag of %v is drawn at %g pixels per mm and does not fit", b.now(), now)
	}
}

func TestKeysStep(t *testing.T) {
	b := newBench(t, bag.OfSize(242, 100, 360), 1024, 700)
	up := func() { b.window.Canvas().Focused().(desktop.Keyable).KeyUp(&fyne.KeyEvent{Name: fyne.KeyRight}) }
	b.press(fyne.KeyRight, fyne.KeyUp, fyne.KeyRight)
	up()
	if b.now()[width] != 255 || b.undone() != "Face width 242 mm 255 mm" {
		t.Errorf("three steps of a key that was held: %v, undo %q", b.now(), b.undone())
	}
	keys := b.window.Canvas().Focused().(desktop.Keyable)
	keys.KeyDown(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
	b.press(fyne.KeyLeft)
	up()
	keys.KeyUp(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
	b.press(fyne.KeyLeft)
	if b.now()[width] != 250 {
		t.Errorf("a fine step and another back: %v", b.now())
	}
	b.window.Canvas().FocusNext() // ends the row of steps and goes to the next slider
	if b.doc.State().Dragging {
		t.Error("a step is left open")
	}
	b.press(fyne.KeyRight)
	up()
	if b.now() != (size{250, 105, 360}) {
		t.Errorf("the second slider made it %v", b.now())
	}
	b.set.SetUnit(geometry.Inch)
	b.press(fyne.KeyRight)
	up()
	if want := 4.25 * 25.4; math.Abs(b.now()[depth]-want) > 1e-9 || b.dials[depth].number.Text != "4.25" || b.dials[depth].unit.Text != "in" {
		t.Errorf("a step in inches: %v, the dial shows %s %s", b.now(), b.dials[depth].number.Text, b.dials[depth].unit.Text)
	}
	b.press(fyne.KeyEscape, fyne.KeyF11)
	if b.left != 2 {
		t.Errorf("left %d times, want once by each key", b.left)
	}
}

func TestKeepingAndTaking(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	b.typed("K")
	if b.said != "Kept as A in the project: 240 mm wide, 100 mm deep, 360 mm high." {
		t.Errorf("it says %q", b.said)
	}
	b.typed("k")
	if b.kept[1] != nil || !strings.Contains(b.said, "A already") {
		t.Errorf("the same size is kept twice; it says %q", b.said)
	}
	for _, wide := range []float64{250, 260, 270, 280} {
		b.resize(wide, 100, 360)
		b.typed("k")
	}
	if b.kept.free() != none || !strings.Contains(b.said, "Remove one first") || b.kept.find(size{280, 100, 360}) != none {
		t.Errorf("a fifth size: it says %q", b.said)
	}
	steps := b.undone()
	b.typed("2")
	if b.chosen != 1 || b.now()[width] != 280 || b.undone() != steps || b.dials[width].number.Text != "250" || b.stage.bags()[0] != b.stage.kept[1] {
		t.Errorf("showing B: chosen %d, the bag %v, the dial %s", b.chosen, b.now(), b.dials[width].number.Text)
	}
	b.typed("2")
	if b.now() != (size{250, 100, 360}) || b.undone() != "take variant B" || b.chosen != none {
		t.Errorf("taking B: %v, undo %q", b.now(), b.undone())
	}
	b.doc.Undo()
	if b.now()[width] != 280 || b.doc.State().Spec.Handle.Spacing != 140 {
		t.Errorf("taken back: %v", b.now())
	}
	b.typed("3")
	b.press(fyne.KeyReturn)
	if b.now()[width] != 260 || b.undone() != "take variant C" {
		t.Errorf("Enter: %v, undo %q", b.now(), b.undone())
	}
	b.typed("1")
	b.press(fyne.KeyDelete)
	if b.kept[0] != nil || b.chosen != none || b.now()[width] != 260 {
		t.Errorf("after removing A: %v, the bag %v", b.kept, b.now())
	}
	if b.typed("1"); b.chosen != none || !strings.Contains(b.said, "Nothing is kept as A") {
		t.Errorf("A is gone and it says %q", b.said)
	}
	b.resize(300, 100, 360)
	if b.typed("k"); b.kept.numbered(4) == none || b.kept[b.kept.numbered(4)].size[width] != 300 {
		t.Errorf("the next size has a letter that was given before: %q", b.said)
	}
}

// A slider that moves while a variant is shown begins at the variant.
func TestAVariantIsWhereADragBegins(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	b.typed("k")
	b.resize(300, 120, 200)
	b.typed("1")
	b.press(fyne.KeyRight)
	b.dials[width].slider.FocusLost()
	if b.now() != (size{245, 100, 360}) || b.chosen != none || b.undone() != "several entries" {
		t.Errorf("the bag is %v, chosen %d, undo %q", b.now(), b.chosen, b.undone())
	}
}

// Variants are sizes: all else is that of the document, whenever they are taken.
func TestVariantsFollowTheDocument(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	b.typed("k")
	spec := b.doc.State().Spec
	spec.Body.Width, spec.Paper.Kind, spec.Paper.Grammage, spec.Name = 300, bag.PaperKraft, 110, "Later"
	b.doc.Set(spec)
	if got := b.kept[0].snapshot.Spec; got.Paper != spec.Paper || got.Body.Width != 240 {
		t.Errorf("the variant is shown on %+v", got.Paper)
	}
	b.typed("11")
	if got := b.doc.State().Spec; got.Paper != spec.Paper || got.Name != "Later" || got.Body.Width != 240 || got.Handle.Spacing != spec.Handle.Spacing {
		t.Errorf("taken: %+v", got)
	}
}

func TestVariantsBelongToTheProject(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	b.keepThree()
	b.typed("c")
	b.Shut()
	b.Open(solid.Hand)
	if b.kept.empty() || b.comparing || b.stage.reference != solid.Hand {
		t.Error("the variants are gone when the view is shown again")
	}
	b.typed("2c")
	b.doc.Load(project.Project{Spec: bag.OfSize(150, 80, 200)})
	if !b.kept.empty() || b.chosen != none || b.comparing || b.dials[width].number.Text != "150" {
		t.Errorf("after another project was opened: %v, chosen %d, the dial %s", b.kept, b.chosen, b.dials[width].number.Text)
	}
	b.typed("k")
	b.Shut()
	b.doc.Load(project.Project{Spec: bag.Default()})
	if b.Open(solid.NoReference); !b.kept.empty() {
		t.Error("a project that was opened behind the view leaves the variants")
	}
}

func TestTheProofIsOfWhatIsShown(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	b.typed("kp")
	b.resize(300, 100, 360)
	b.typed("p1p")
	want := []size{{240, 100, 360}, {300, 100, 360}, {240, 100, 360}}
	if fmt.Sprint(b.proofs) != fmt.Sprint(want) || b.undone() != "take variant A" {
		t.Errorf("proofs of %v, want %v; undo %q", b.proofs, want, b.undone())
	}
	spec := b.doc.State().Spec
	spec.Body.Width = -1
	b.doc.Set(spec)
	if b.typed("p"); len(b.proofs) != len(want) || b.said != cannotBeMade() {
		t.Errorf("a bag that cannot be drawn: %d proofs, it says %q", len(b.proofs), b.said)
	}
	if b.Say("The proof is in /tmp"); b.page.said.Text() != "The proof is in /tmp" {
		t.Errorf("the page says %q", b.page.said.Text())
	}
}

// The client sees no findings but why a bag cannot be made.
func TestTroubleIsSaidQuietly(t *testing.T) {
	b := newBench(t, bag.OfSize(400, 100, 360), 1024, 700)
	if len(b.doc.State().Snapshot.Findings) == 0 || b.page.trouble.Text() != "" {
		t.Errorf("of %d findings the client sees %q", len(b.doc.State().Snapshot.Findings), b.page.trouble.Text())
	}
	b.slide(width, 1)
	b.slide(height, 1)
	if got := b.page.trouble.Text(); got != "This size needs a larger sheet of paper." {
		t.Errorf("it says %q", got)
	}
	b.dials[height].slider.DragEnd()
	b.typed("k")
	if b.doc.Undo(); b.page.trouble.Text() != "" {
		t.Errorf("it still says %q", b.page.trouble.Text())
	}
	if b.typed("c"); b.stage.kept[0].caption.trouble.text != "This size needs a larger sheet of paper." || b.stage.present.caption.trouble.text != "" {
		t.Errorf("the card says %q", b.stage.kept[0].caption.trouble.text)
	}
}

// With buttons in focus all keys but those that press them do what they always do.
func TestButtonsLeaveTheKeysAlone(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	b.window.Canvas().Focus(b.page.keep)
	b.press(fyne.KeySpace)
	if b.kept[0] == nil {
		t.Error("the space bar does not press the button")
	}
	b.press(fyne.KeyRight)
	if b.now()[width] != 245 {
		t.Errorf("an arrow made the bag %v", b.now())
	}
	b.press(fyne.KeyReturn)
	if b.kept[1] == nil || b.doc.State().Dragging {
		t.Error("Enter does not press the button")
	}
	b.typed("c")
	test.Tap(b.page.variants[1])
	test.Tap(b.page.take)
	if b.undone() != "Face width 240 mm 245 mm" || !b.comparing {
		t.Errorf("taking what the bag is: undo %q", b.undone())
	}
	test.Tap(b.page.variants[0])
	test.Tap(b.page.remove)
	test.Tap(b.page.aside.compare)
	test.Tap(b.page.leave)
	if b.kept[0] != nil || b.comparing || b.left != 1 {
		t.Errorf("kept %v, comparing %v, left %d times", b.kept, b.comparing, b.left)
	}
}

// Appearance, units and text follow the settings while the view is open.
func TestSettingsAreFollowed(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	before := b.dials[width].number.Color
	b.set.SetAppearance(settings.Dark)
	b.set.SetUnit(geometry.Centimetre)
	if b.dials[width].number.Color == before || b.dials[width].number.Text != "24" {
		t.Errorf("the dial shows %s in %v", b.dials[width].number.Text, b.dials[width].number.Color)
	}
	size := b.page.tools.MinSize()
	if b.set.SetTextScale(1.3); b.page.tools.MinSize().Height <= size.Height {
		t.Error("larger text leaves the buttons as they are")
	}
}

// Artwork that is opened while the view is shown comes onto the variants too.
func TestLateArtworkComesOntoVariants(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	spec := b.doc.State().Spec
	spec.Artwork = []bag.Artwork{bag.NewArtwork(b.doc.PutFile("leaf.svg", []byte(leaf)), "front")}
	b.doc.Set(spec)
	gallery := &late{}
	b.doc.ShowArt(gallery)
	b.typed("k")
	if !b.kept[0].snapshot.Opening() {
		t.Fatal("the artwork is there already")
	}
	gallery.open = true
	b.doc.Renew()
	if b.kept[0].snapshot.Opening() || b.stage.kept[0].snapshot != b.kept[0].snapshot {
		t.Error("the variant waits for artwork that is there")
	}
	kept := b.kept[0].snapshot
	if b.resize(300, 100, 360); b.kept[0].snapshot != kept {
		t.Error("a variant is derived anew where nothing about it changed")
	}
}

// A bag that cannot be drawn any more with what else was changed is said to be so.
func TestAVariantThatCannotBeDrawn(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	b.resize(40, 100, 360)
	b.typed("k")
	spec := b.doc.State().Spec
	spec.Body.Width, spec.Body.Top, spec.Body.ZigzagPitch = 240, bag.TopZigzag, 60
	b.doc.Set(spec)
	if b.typed("1"); b.page.trouble.Text() != cannotBeMade() || b.doc.State().Err != nil {
		t.Errorf("it says %q", b.page.trouble.Text())
	}
	b.typed("c")
	if b.typed("1"); b.doc.State().Err == nil || b.undone() != fmt.Sprintf(document.Taking("A").Label, "A") {
		t.Errorf("taken all the same: undo %q", b.undone())
	}
}
