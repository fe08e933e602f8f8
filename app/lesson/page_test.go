package lesson

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/settings"
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
					for _, object := range []fyne.CanvasObject{b.flat, b.bag, b.page.scroll, b.line} {
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
		if object.Size().Height > 0 && object != fyne.CanvasObject(b.page.said) {
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
	if needed, room := b.text.HeightFor(b.text.Size().Width), b.page.scroll.Size().Height; needed > room {
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
