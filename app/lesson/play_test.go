package lesson

import (
	"fmt"
	"math"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"gussetwright/app/project"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/solid"
)

// A key for the next stage shows its motion once; a second one does not wait for that.
func TestArrowsShowOneStage(t *testing.T) {
	b := newBench(t, furnished(), 1024, 700)
	b.press(fyne.KeyRight)
	if b.player.at != (place{stage: 1}) || b.beat == nil {
		t.Fatalf("at %v, the clock goes: %v", b.player.at, b.beat != nil)
	}
	b.wait(motionTime / 2)
	if at := b.player.at; at.stage != 1 || math.Abs(at.share-0.5) > 0.01 {
		t.Errorf("half way it is at %v", at)
	}
	b.press(fyne.KeyRight, fyne.KeyRight)
	if b.player.at != (place{stage: 3}) {
		t.Errorf("two more stages on it is at %v", b.player.at)
	}
	b.wait(10 * motionTime)
	if b.player.at != (place{3, 1}) || b.beat != nil {
		t.Errorf("long after it is at %v, the clock goes: %v", b.player.at, b.beat != nil)
	}
	b.press(fyne.KeyLeft)
	if b.player.at != (place{stage: 2}) || b.beat == nil {
		t.Errorf("back it is at %v", b.player.at)
	}
	b.press(fyne.KeyHome, fyne.KeyLeft)
	if b.player.at != (place{}) || b.beat != nil {
		t.Errorf("before the first stage it is at %v", b.player.at)
	}
	b.press(fyne.KeyEnd, fyne.KeyRight)
	if last := len(b.course.Stages) - 1; b.player.at != (place{last, 1}) || b.beat != nil {
		t.Errorf("after the last stage it is at %v", b.player.at)
	}
}

func TestKeysGoToPlaces(t *testing.T) {
	b := newBench(t, furnished(), 1024, 700)
	b.typed("4")
	if b.player.at != (place{stage: 3}) || b.page.title.Text() != "Fold the tube" || b.page.step.Text() != "Step 4 of 13" {
		t.Errorf("key 4: at %v, %q, %q", b.player.at, b.page.step.Text(), b.page.title.Text())
	}
	b.press(fyne.KeyUp, fyne.KeyUp, fyne.KeyUp)
	if at := b.player.at; at.stage != 3 || math.Abs(at.share-0.3) > 1e-9 || b.beat != nil {
		t.Errorf("three steps on it is at %v", at)
	}
	for range 4 {
		b.press(fyne.KeyDown)
	}
	if at := b.player.at; math.Abs(at.whole()-2.9) > 1e-9 {
		t.Errorf("four steps back it is at %v", at)
	}
	b.press(fyne.KeyEscape)
	b.typed("fF")
	if b.left != 1 || b.full != 2 {
		t.Errorf("left %d times, the whole screen %d times", b.left, b.full)
	}
	b.typed("++++")
	if b.player.speed != 2 {
		t.Errorf("as fast as can be: %g", b.player.speed)
	}
	b.typed("---")
	if b.player.speed != 0.5 {
		t.Errorf("as slow as can be: %g", b.player.speed)
	}
	b.bag.turn(b.bag.camera)
	b.bag.camera.Zoom = 3
	if b.typed("0"); b.bag.camera.Zoom != 1 {
		t.Errorf("the whole bag is seen at zoom %g", b.bag.camera.Zoom)
	}
}

// Played through, the lesson takes the time of its stages and of the pauses between.
func TestPlayedThrough(t *testing.T) {
	for speed, keys := range map[float64]string{0.5: "-", 1: "", 2: "+"} {
		b := newBench(t, furnished(), 1024, 700).blind()
		b.typed(keys)
		stages := time.Duration(len(b.course.Stages))
		whole := stillTime + (stages-1)*(motionTime+holdTime)
		whole = time.Duration(float64(whole) / speed)
		b.press(fyne.KeySpace)
		b.wait(whole - time.Second)
		if b.beat == nil {
			t.Errorf("at %g× it is over too soon, at %v", speed, b.player.at)
		}
		b.wait(2 * time.Second)
		if at := b.player.at; at != (place{int(stages) - 1, 1}) || b.beat != nil {
			t.Errorf("at %g× it is at %v after its time", speed, at)
		}
		b.press(fyne.KeySpace)
		if b.player.at.stage != 0 || b.beat == nil {
			t.Errorf("played again it begins at %v", b.player.at)
		}
		b.wait(time.Second)
		b.press(fyne.KeySpace)
		if at := b.player.at; b.beat != nil || at == (place{}) {
			t.Errorf("paused at %v, the clock goes: %v", at, b.beat != nil)
		}
	}
}

// While the lesson moves pictures are drafts, at most one for a beat; at rest and in the
// pauses between two stages a fine one follows.
func TestDraftsWhileItMoves(t *testing.T) {
	b := newBench(t, furnished(), 600, 500)
	var samples []int
	inner := b.bag.figure.request
	b.bag.figure.request = func(o order) {
		samples = append(samples, o.samples)
		inner(o)
	}
	count := func(of int) (n int) {
		for _, s := range samples {
			if s == of {
				n++
			}
		}
		return n
	}
	b.typed("4")
	b.press(fyne.KeySpace, fyne.KeySpace) // stops and plays on
	samples = nil
	b.wait(time.Second)
	if count(fine) != 0 || count(draft) < 55 || count(draft) > 61 {
		t.Errorf("in a second of motion %d drafts and %d fine pictures", count(draft), count(fine))
	}
	samples = nil
	b.wait(motionTime + holdTime/2 - time.Second)
	if b.player.at != (place{3, 1}) || count(fine) != 1 {
		t.Errorf("in the pause at %v %d fine pictures", b.player.at, count(fine))
	}
	samples = nil
	b.press(fyne.KeySpace)
	if b.moving() || samples[len(samples)-1] != fine {
		t.Errorf("stopped, the pictures are %v", samples)
	}
}

// When the page is left nothing goes on: neither clock nor drawing nor goroutine.
func TestLeavingEndsEverything(t *testing.T) {
	b := newBench(t, furnished(), 600, 500)
	for _, f := range []*figure{b.bag.figure, b.flat.figure} {
		f.request = f.worker.Order // as in the window
		f.later = func(func()) {}  // the toolkit for tests would show pictures on the goroutine that drew them
	}
	before := runtime.NumGoroutine()
	b.press(fyne.KeySpace)
	b.wait(time.Second / 4)
	last := b.beat
	b.Shut()
	if b.beat != nil || b.player.pace != resting {
		t.Error("the clock goes on")
	}
	last() // a beat that was under way
	ordered, _ := b.Pictures()
	spec := b.doc.State().Spec
	spec.Body.Width += 10
	b.doc.Set(spec)
	b.set.SetTextScale(1.1)
	if now, _ := b.Pictures(); now != ordered {
		t.Errorf("%d pictures were ordered after leaving", now-ordered)
	}
	for deadline := time.Now().Add(10 * time.Second); runtime.NumGoroutine() > before; runtime.Gosched() {
		if time.Now().After(deadline) {
			t.Fatalf("%d goroutines, before %d", runtime.NumGoroutine(), before)
		}
	}
	b.Open()
	if b.course.snapshot != b.doc.State().Snapshot {
		t.Error("opened again it teaches another bag")
	}
}

// Left and opened again the lesson of a bag goes on where it was, seen from where it was,
// also when an entry was changed meanwhile. That of another project begins.
func TestOpenedAgain(t *testing.T) {
	b := newBench(t, furnished(), 600, 500).blind()
	b.at(b.stageOf(t, "base-front"), 0.4)
	b.bag.turn(solid.Below)
	camera := b.bag.seen()
	b.Shut()
	spec := b.doc.State().Spec
	spec.Body.Gusset += 10
	b.doc.Set(spec)
	b.Open()
	if at := (place{b.stageOf(t, "base-front"), 0.4}); b.player.at != at || b.bag.seen() != camera || b.course.snapshot != b.doc.State().Snapshot {
		t.Errorf("opened again it is at %v, seen from %+v; was at %v, %+v", b.player.at, b.bag.seen(), at, camera)
	}
	b.Shut()
	b.doc.Load(project.Project{Spec: spec})
	if b.Open(); b.player.at != (place{}) || b.bag.turned {
		t.Errorf("of another project it begins at %v, turned %v", b.player.at, b.bag.turned)
	}
}

// A step is shown once more, back from amid a step is its beginning, and two digits make
// one number as long as there is such a step.
func TestOnceMore(t *testing.T) {
	b := newBench(t, furnished(), 1024, 700).blind()
	for name, again := range map[string]func(){
		"r": func() { b.typed("r") }, "R": func() { b.typed("R") }, "backspace": func() { b.press(fyne.KeyBackspace) },
		"button": func() { b.page.left.Objects[3].(*button).Tapped(nil) },
	} {
		b.at(4, 0.7)
		again()
		if b.player.at != (place{stage: 4}) || b.beat == nil {
			t.Errorf("%s: at %v, the clock goes: %v", name, b.player.at, b.beat != nil)
		}
	}
	b.at(4, 0.7)
	if b.press(fyne.KeyLeft); b.player.at != (place{stage: 4}) || b.beat != nil {
		t.Errorf("back from amid a step: at %v", b.player.at)
	}
	if b.press(fyne.KeyLeft); b.player.at != (place{stage: 3}) {
		t.Errorf("back from its beginning: at %v", b.player.at)
	}
	for _, c := range []struct {
		typed string
		stage int
	}{{"12", 12}, {"10", 10}, {"13", 13}, {"19", 9}, {"45", 5}} {
		b.time = b.time.Add(5 * time.Second)
		if b.typed(c.typed); b.player.at.stage != c.stage-1 {
			t.Errorf("typed %s it shows step %d, want %d", c.typed, b.player.at.stage+1, c.stage)
		}
	}
	for pause, stage := range map[time.Duration]int{1900 * time.Millisecond: 12, 2100 * time.Millisecond: 2} {
		b.time = b.time.Add(5 * time.Second)
		if b.typed("1"); b.player.at.stage != 0 {
			t.Errorf("the first digit shows step %d", b.player.at.stage+1)
		}
		b.time = b.time.Add(pause)
		if b.typed("2"); b.player.at.stage != stage-1 {
			t.Errorf("a second digit after %v shows step %d, want %d", pause, b.player.at.stage+1, stage)
		}
	}
}

// The lesson follows the bag: it stays in its stage as far as there is one.
func TestTheBagChangesMeanwhile(t *testing.T) {
	b := newBench(t, furnished(), 1024, 700)
	b.at(b.stageOf(t, "seam"), 0.5)
	spec := b.doc.State().Spec
	spec.Cards.Top = false
	b.doc.Set(spec)
	if got := b.course.Stages[b.player.at.stage].Name; got != "seam" || b.player.at.share != 0.5 || len(b.line.stretch) != len(b.course.Stages) {
		t.Errorf("without cards it is in stage %s, the slider has %d", got, len(b.line.stretch))
	}
	b.at(b.stageOf(t, "handle"), 0.5)
	b.press(fyne.KeySpace)
	spec.Body.Base, spec.Body.Seams, spec.Cards.Base, spec.Handle.Kind = bag.BasePinch, bag.SeamsTwo, false, bag.HandleNone
	b.doc.Set(spec)
	b.wait(5 * time.Minute)
	if last := len(b.course.Stages) - 1; b.player.at != (place{last, 1}) {
		t.Errorf("played on, the lesson of another bag is at %v", b.player.at)
	}
	spec.Body.Width = -1
	b.doc.Set(spec)
	if got := b.bag.notice.text.Text(); !strings.HasPrefix(got, "This cannot be drawn. You see the last bag that could. Face width W is -1 mm") {
		t.Errorf("of a bag that cannot be drawn it says %q", got)
	}
}

// stuckBag is a bag whose base cannot be closed.
func stuckBag(t *testing.T) bag.Spec {
	spec := geomtest.WorkedExample()
	spec.Body.Width, spec.Body.Gusset, spec.Body.Height = 150, 190, 400
	if c := newCourse(derived(t, spec)); c.Foldable == len(c.Stages) {
		t.Fatal("this bag can be folded")
	}
	return spec
}

// Where a bag cannot be folded any further the lesson stops and says why.
func TestItStopsAtAnObstacle(t *testing.T) {
	b := newBench(t, stuckBag(t), 1024, 700).blind()
	b.press(fyne.KeySpace)
	b.wait(5 * time.Minute)
	if b.player.at != (place{stage: b.course.Foldable}) || b.beat != nil {
		t.Errorf("it stopped at %v, of %d stages %d can be folded", b.player.at, len(b.course.Stages), b.course.Foldable)
	}
	want := "This bag cannot be folded any further: " + b.course.Obstacle.String() + "."
	if got := b.text.sets[b.text.size].notes[obstacle].Text(); got != want || !b.text.sets[b.text.size].notes[obstacle].Visible() {
		t.Errorf("it says %q, want %q", got, want)
	}
	if b.bag.notice.text.Text() != "It ends here" || !b.bag.notice.Visible() {
		t.Errorf("over the picture stands %q", b.bag.notice.text.Text())
	}
	b.press(fyne.KeySpace, fyne.KeyUp, fyne.KeyRight)
	if b.beat != nil || b.player.at.share != 0 {
		t.Errorf("it goes on to %v", b.player.at)
	}
	b.press(fyne.KeyHome)
	if b.text.sets[b.text.size].notes[obstacle].Visible() || b.bag.notice.Visible() {
		t.Error("it still says so at the beginning")
	}
	for i, s := range b.line.stretch {
		if s.cross[0].Hidden == b.course.stuck(i) {
			t.Errorf("stage %d is crossed out: %v", i+1, !s.cross[0].Hidden)
		}
	}
}

// What is drawn and not reckoned is called so, in words, over the picture and on the
// slider.
func TestDrawnIsSaid(t *testing.T) {
	b := newBench(t, furnished(), 1024, 700)
	for i := range b.course.Stages {
		b.at(i, 0.5)
		schematic := b.course.Stages[i].Schematic
		if b.text.sets[b.text.size].notes[drawn].Visible() != schematic || b.bag.notice.Visible() != schematic || b.line.stretch[i].gaps[0].Hidden == schematic {
			t.Errorf("stage %s, schematic %v: note %v, notice %v, gaps hidden %v", b.course.Stages[i].Name, schematic,
				b.text.sets[b.text.size].notes[drawn].Visible(), b.bag.notice.Visible(), b.line.stretch[i].gaps[0].Hidden)
		}
	}
	if !b.course.Stages[b.stageOf(t, "handle")].Schematic || b.course.Stages[b.stageOf(t, "packed")].Schematic {
		t.Error("threading the rope is reckoned, or the packing is drawn")
	}
}

// Files are written, and what is said of them moves nothing and leads to them.
func TestWriting(t *testing.T) {
	b := newBench(t, furnished(), 1024, 700)
	b.press(fyne.KeySpace)
	for _, object := range b.page.right.Objects {
		object.(*button).Tapped(nil)
	}
	if len(b.written) != 2 || b.written[0] != "lesson" || b.written[1] != "practice" || b.beat != nil {
		t.Errorf("asked for %q, the clock goes: %v", b.written, b.beat != nil)
	}
	stands := func() string {
		return fmt.Sprint(b.flat.Position(), b.bag.Size(), b.page.words.scroll.Size(), b.line.Position())
	}
	before := stands()
	b.Say("The lesson was written to /tmp/lessons/lesson.pdf", "/tmp/lessons/lesson.pdf")
	m := b.page.message
	if !m.Visible() || m.text.Text() != b.Said() || stands() != before {
		t.Errorf("it says %q, visible %v; things stood at %s, now at %s", m.text.Text(), m.Visible(), before, stands())
	}
	m.open.Tapped(nil)
	m.folder.Tapped(nil)
	if !slices.Equal(b.opened, []string{"/tmp/lessons/lesson.pdf", filepath.FromSlash("/tmp/lessons")}) {
		t.Errorf("opened %q", b.opened)
	}
	if b.press(fyne.KeyRight); m.Visible() || b.Said() != "" {
		t.Errorf("it still says %q", b.Said())
	}
	b.Say("The lesson is being written…", "")
	if m.open.Visible() || m.folder.Visible() {
		t.Error("what is not written yet can be opened")
	}
	if m.close.Tapped(nil); m.Visible() {
		t.Error("it cannot be closed")
	}
}
