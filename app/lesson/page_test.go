package lesson

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/entry"
	"gussetwright/app/settings"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/solid"
)

func TestGoldenPictures(t *testing.T) {
	const tolerance = 0.01
	light := newBench(t, furnished(), 1024, 700)
	light.at(light.stageOf(t, "turn-in"), 0.55)
	geomtest.GoldenPicture(t, "lesson/turn-in.png", light.capture(), tolerance)
	light.at(light.stageOf(t, "base-front"), 0.1)
	geomtest.GoldenPicture(t, "lesson/glue.png", light.capture(), tolerance)
	night := newBench(t, demo(t), 1920, 1080, dark)
	night.at(night.stageOf(t, "base-gussets"), 0.5)
	geomtest.GoldenPicture(t, "lesson/base-dark.png", night.capture(), tolerance)
	large := newBench(t, furnished(), 1024, 700, func(s *settings.Settings) { s.SetTextScale(2) })
	large.at(large.stageOf(t, "packed"), 0.5)
	geomtest.GoldenPicture(t, "lesson/large.png", large.capture(), tolerance)
	stuck := newBench(t, stuckBag(t), 1024, 700, dark)
	stuck.at(stuck.course.Foldable, 0)
	geomtest.GoldenPicture(t, "lesson/stuck-dark.png", stuck.capture(), tolerance)
	two := newBench(t, lessons(t)["two-seams"], 1440, 900)
	two.at(two.stageOf(t, "pieces"), 0.5)
	geomtest.GoldenPicture(t, "lesson/two-seams.png", two.capture(), tolerance)
}

func TestGoldenMarkup(t *testing.T) {
	b := newBench(t, furnished(), 1024, 700)
	b.at(b.stageOf(t, "packed"), 0.5)
	geomtest.Golden(t, "lesson/packed.xml", []byte(test.RenderToMarkup(b.window.Canvas())))
}

// Everything stands within the page, has the room that it asks for and overlaps nothing
// else; and nothing moves from stage to stage.
func TestNothingIsClipped(t *testing.T) {
	for _, size := range []fyne.Size{{Width: 1024, Height: 700}, {Width: 1366, Height: 740}, {Width: 1920, Height: 1080}} {
		for _, scale := range []float64{0.8, 1, 1.5, 2} {
			for name, spec := range map[string]bag.Spec{"furnished": furnished(), "demo": demo(t)} {
				b := newBench(t, spec, size.Width, size.Height, func(s *settings.Settings) { s.SetTextScale(scale) }).blind()
				where := fmt.Sprintf("%s, %g × %g, text %g", name, size.Width, size.Height, scale)
				stand := ""
				for stage := range b.course.Stages {
					b.at(stage, 0.5)
					inPlace(t, where, b)
					now := ""
					for _, object := range []fyne.CanvasObject{b.flat, b.bag, b.page.words.override, b.line} {
						now += fmt.Sprint(object.Position(), object.Size())
					}
					if stand == "" {
						stand = now
					}
					if now != stand {
						t.Errorf("%s, stage %d: things have moved", where, stage+1)
					}
				}
			}
		}
	}
}

func inPlace(t *testing.T, where string, b *bench) {
	t.Helper()
	size := b.page.content.Size()
	var seen []fyne.CanvasObject
	for _, object := range b.page.content.Objects {
		if object.Size().Height > 0 && object != fyne.CanvasObject(b.page.message) {
			seen = append(seen, object)
		}
	}
	for i, object := range seen {
		at, own := object.Position(), object.Size()
		if at.X < 0 || at.Y < 0 || at.X+own.Width > size.Width+0.5 || at.Y+own.Height > size.Height+0.5 {
			t.Errorf("%s: %T stands at %v, %v in %v", where, object, at, own, size)
		}
		for _, other := range seen[:i] {
			low, high := other.Position(), other.Position().AddXY(other.Size().Width, other.Size().Height)
			if at.X+own.Width > low.X+0.5 && at.X < high.X-0.5 && at.Y+own.Height > low.Y+0.5 && at.Y < high.Y-0.5 {
				t.Errorf("%s: %T and %T overlap", where, object, other)
			}
		}
	}
	needed, room := b.text.HeightFor(b.text.Size().Width), b.page.words.scroll.Size().Height
	if mayScroll := b.set.TextScale() > 1.2 && b.text.size == b.text.smallest(); needed > room && !mayScroll {
		t.Errorf("%s: the words need %.0f of %.0f", where, needed, room)
	}
	if least := size.Height * 0.3; b.bag.Size().Height < least {
		t.Errorf("%s: the bag has %.0f of %.0f", where, b.bag.Size().Height, size.Height)
	}
}

// The slider: the numbers show a stage, the track goes to a place.
func TestSlider(t *testing.T) {
	b := newBench(t, furnished(), 1024, 700)
	each := b.line.room() / float32(len(b.line.stretch))
	x := b.line.margin() + 6.5*each
	b.line.Tapped(&fyne.PointEvent{Position: fyne.NewPos(x, b.line.Size().Height-2)})
	if b.player.at != (place{stage: 6}) || b.beat == nil {
		t.Errorf("the number 7 leads to %v", b.player.at)
	}
	b.line.Tapped(&fyne.PointEvent{Position: fyne.NewPos(x, 3)})
	if at := b.player.at; at.stage != 6 || at.share < 0.49 || at.share > 0.51 || b.beat != nil {
		t.Errorf("the middle of stretch 7 leads to %v", at)
	}
	b.line.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(5000, 3)}})
	if last := len(b.course.Stages) - 1; b.player.at != (place{last, 1}) || !b.moving() {
		t.Errorf("dragged beyond its end: %v", b.player.at)
	}
	if b.line.DragEnd(); b.moving() {
		t.Error("let go, it still waits for more")
	}
}

// With buttons in focus all keys but those that press them do what they always do, and
// after the bag was turned by hand too.
func TestKeysReachTheLesson(t *testing.T) {
	b := newBench(t, furnished(), 1024, 700)
	b.window.Canvas().Focus(b.page.full)
	b.press(fyne.KeySpace, fyne.KeyRight)
	if b.full != 1 || b.player.at.stage != 1 {
		t.Errorf("the whole screen %d times, stage %d", b.full, b.player.at.stage)
	}
	b.window.Canvas().Focus(b.line)
	before := b.bag.camera
	test.Drag(b.window.Canvas(), fyne.CurrentApp().Driver().AbsolutePositionForObject(b.bag).AddXY(200, 200), 30, 10)
	if b.bag.camera == before || b.bag.turning {
		t.Errorf("the drag leaves the camera at %+v, turning %v", b.bag.camera, b.bag.turning)
	}
	if b.press(fyne.KeyRight); b.player.at.stage != 2 {
		t.Error("after a drag the arrows do not lead on")
	}
	b.window.Canvas().Focus(b.bag)
	before = b.bag.camera
	if b.press(fyne.KeyRight); b.player.at.stage != 2 || b.bag.camera == before {
		t.Error("with the bag in focus the arrows do not turn it")
	}
	b.press(fyne.KeyEscape)
	if b.left != 1 {
		t.Error("Escape does not lead out")
	}
}

// The bag is turned to named places, moved and brought closer.
func TestLookingAtTheBag(t *testing.T) {
	b := newBench(t, furnished(), 1024, 700)
	b.bag.turn(solid.Below)
	if b.bag.views.Text != "From below" {
		t.Errorf("from below the button says %q", b.bag.views.Text)
	}
	b.bag.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(10, 10)}, Scrolled: fyne.Delta{DY: 50}})
	if b.bag.camera.Zoom <= 1 || b.bag.camera.Shift.X <= 0 {
		t.Errorf("the wheel in the upper left corner: %+v", b.bag.camera)
	}
	b.bag.DoubleTapped(nil)
	if b.bag.camera.Zoom != 1 || b.bag.camera.Shift.X != 0 || b.bag.views.Text != "From below" {
		t.Errorf("brought back: %+v", b.bag.camera)
	}
}

// Appearance, language of sizes and text follow the settings while the page is shown.
func TestSettingsAreFollowed(t *testing.T) {
	b := newBench(t, furnished(), 1024, 700)
	before, title := b.capture().At(520, 100), b.page.title.MinSize().Height
	b.set.SetAppearance(settings.Dark)
	if b.capture().At(520, 100) == before {
		t.Error("the picture stays light")
	}
	if b.set.SetTextScale(1.3); b.page.title.MinSize().Height <= title {
		t.Error("larger text leaves the title as it is")
	}
}

// The three dimensions stand beside the title, in the unit of the user.
func TestTheSizeIsSaid(t *testing.T) {
	b := newBench(t, demo(t), 1280, 800)
	if got := b.page.size.Text(); got != "W 190 × D 95 × H 265 mm" {
		t.Errorf("the size is %q", got)
	}
	if b.set.SetUnit(geometry.Centimetre); b.page.size.Text() != "W 19 × D 9.5 × H 26.5 cm" {
		t.Errorf("in cm the size is %q", b.page.size.Text())
	}
}

// All lengths that are said are in the unit of the user, and change with it while the
// lesson is shown. An inch is 25.4 mm (international yard and pound agreement, value from
// memory).
func TestLengthsAreSaidInTheUnit(t *testing.T) {
	long := furnished()
	long.Handle.Kind, long.Handle.Spacing, long.Handle.Rise = bag.HandleRope, 120, 180
	loop := long.Handle.Loop()
	for _, unit := range geometry.Units() {
		in := func(mm float64) string { return geometry.Length(mm).In(unit) }
		b := newBench(t, long, 1280, 800).blind()
		b.at(b.stageOf(t, "handle"), 0.5)
		b.set.SetUnit(unit)
		said := func(k kind) string { return b.text.sets[b.text.size].notes[k].Text() }
		if got := said(caution); !strings.Contains(got, " "+in(loop)+",") {
			t.Errorf("in %s: of a loop of %g mm it says %q", unit, loop, got)
		}
		if unit == geometry.Inch && in(loop) != fmt.Sprintf("%.3f in", loop/25.4) {
			t.Errorf("%g mm are %s", loop, in(loop))
		}
		spec := long
		spec.Body.Width = -254
		b.doc.Set(spec)
		if got := b.bag.notice.text.Text(); !strings.Contains(got, "Face width W is "+in(-254)) {
			t.Errorf("in %s: of a width of -254 mm it says %q", unit, got)
		}
	}
}

// Where a stage says little it is written large; no stage is written smaller than it has
// to be, and the room for words is no higher for that.
func TestShortStagesAreWrittenLarge(t *testing.T) {
	b := newBench(t, demo(t), 1280, 800).blind()
	large := 0
	for stage := range b.course.Stages {
		b.at(stage, 0.5)
		size, room := b.text.size, b.page.words.scroll.Size().Height
		if size == 0 {
			large++
		} else if b.text.heightOf(stage, size-1, b.text.width) <= b.text.tall {
			t.Errorf("stage %d is written in size %d though there is room for larger letters", stage+1, size)
		}
		if needed := b.text.HeightFor(b.text.width); needed > room {
			t.Errorf("stage %d needs %.0f of %.0f", stage+1, needed, room)
		}
	}
	if large < len(b.course.Stages)/2 {
		t.Errorf("%d of %d stages are written large", large, len(b.course.Stages))
	}
}

// What is said over the picture stays beside the button of views or goes below it.
func TestNoticeKeepsOffTheButton(t *testing.T) {
	for _, width := range []float32{1024, 1400} {
		b := newBench(t, furnished(), width, 700).blind()
		spec := b.doc.State().Spec
		spec.Body.Width = -1
		b.doc.Set(spec)
		notice, views := b.bag.notice, b.bag.views
		end := notice.Position().AddXY(notice.Size().Width, notice.Size().Height)
		beside := end.X <= views.Position().X
		below := notice.Position().Y >= views.Position().Y+views.Size().Height
		if !beside && !below || end.X > b.bag.Size().Width || end.Y > b.bag.Size().Height {
			t.Errorf("%g wide: the notice stands from %v to %v, the button at %v", width, notice.Position(), end, views.Position())
		}
	}
}

// The legend has room in every stage, also where its marks take two rows.
func TestTheLegendHasRoom(t *testing.T) {
	for _, scale := range []float64{1, 2} {
		b := newBench(t, furnished(), 1024, 700, func(s *settings.Settings) { s.SetTextScale(scale) }).blind()
		for stage := range b.course.Stages {
			b.at(stage, 0.5)
			for m := range marks {
				name := b.flat.legend.names[m]
				if end := name.Position().Y + name.Size().Height; !name.Hidden && end > b.flat.legend.Size().Height+0.5 {
					t.Errorf("text %g, stage %d: %q ends at %.0f of %.0f", scale, stage+1, name.Text, end, b.flat.legend.Size().Height)
				}
			}
			if end := b.flat.legend.Position().Y + b.flat.legend.Size().Height; end > b.flat.Size().Height+0.5 {
				t.Errorf("text %g, stage %d: the legend ends at %.0f of %.0f", scale, stage+1, end, b.flat.Size().Height)
			}
		}
	}
}

// Words are never written smaller than the text that the user chose, which is 13 units at a
// scale of 1 as in the rest of the window, in no stage and no window.
func TestWordsAreAsLargeAsTheUserChose(t *testing.T) {
	for _, size := range []fyne.Size{{Width: 900, Height: 600}, {Width: 1024, Height: 700}, {Width: 1280, Height: 800}, {Width: 1920, Height: 1080}} {
		for _, scale := range []float64{1, 1.3, 1.5, 2} {
			b := newBench(t, demo(t), size.Width, size.Height, func(s *settings.Settings) { s.SetTextScale(scale) }).blind()
			chosen := float32(math.Floor(13 * scale)) // sizes are whole
			for stage := range b.course.Stages {
				b.at(stage, 0.5)
				shown := &b.text.sets[b.text.size]
				for _, text := range []*entry.Text{shown.caption, shown.notes[caution], shown.notes[tip], shown.notes[check]} {
					if line := lineHeight(b, text); text.Visible() && line < fyne.MeasureText("Mg", chosen, fyne.TextStyle{}).Height {
						t.Errorf("%v, text %g, stage %d: a line of %q is %.0f high", size, scale, stage+1, text.Text(), line)
					}
				}
			}
		}
	}
}

// lineHeight is the height of one line of a text as it is written.
func lineHeight(b *bench, text *entry.Text) float32 {
	words := text.Text()
	text.SetText("Mg")
	defer text.SetText(words)
	return text.HeightFor(1000)
}

// What has no room is read on by a key, to its end and then from the beginning; another
// stage begins at its beginning.
func TestWordsAreReadOn(t *testing.T) {
	b := newBench(t, demo(t), 1024, 700, func(s *settings.Settings) { s.SetTextScale(2) }).blind()
	scroll := b.page.words.scroll
	stage := b.stageOf(t, "handle")
	b.at(stage, 0.5)
	end := b.text.HeightFor(b.text.width) - scroll.Size().Height
	if end <= 0 || scroll.Offset.Y != 0 {
		t.Fatalf("%.0f of the words have no room, they begin at %.0f", end, scroll.Offset.Y)
	}
	last := float32(0)
	for range 10 {
		b.typed("w")
		if scroll.Offset.Y <= last {
			break
		}
		last = scroll.Offset.Y
	}
	if math.Abs(float64(last-end)) > 1.5 || scroll.Offset.Y != 0 {
		t.Errorf("read on to %.0f of %.0f, then from %.0f", last, end, scroll.Offset.Y)
	}
	b.typed("W")
	b.at(stage, 0.7)
	if scroll.Offset.Y == 0 {
		t.Error("within the stage the words jump back")
	}
	if b.at(stage-1, 0.5); scroll.Offset.Y != 0 {
		t.Errorf("the stage before begins at %.0f", scroll.Offset.Y)
	}
	whole := newBench(t, demo(t), 1280, 800).blind()
	if whole.typed("w"); whole.page.words.scroll.Offset.Y != 0 {
		t.Error("words that have room move")
	}
}
