package foldedpane

import (
	"bytes"
	"image/png"
	"math"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/focus"
	"gussetwright/app/latest"
	"gussetwright/app/settings"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/solid"
)

func TestGoldenPictures(t *testing.T) {
	light := newBench(t, demo(t), 640, 520)
	geomtest.GoldenPicture(t, "foldedpane/light.png", light.capture(), 0.01)
	dark := newBench(t, demo(t), 640, 520, settings.Dark)
	dark.SetReference(solid.Hand)
	dark.look.Hover("front")
	geomtest.GoldenPicture(t, "foldedpane/dark.png", dark.capture(), 0.01)
}

// Each named view shows its panel in the middle of the pane.
func TestNamedViews(t *testing.T) {
	b := newBench(t, demo(t), 640, 520)
	for _, view := range []struct {
		name   string
		choose func()
		want   []string
	}{
		{"front", b.Front, []string{"front"}},
		{"back", b.Back, []string{"back"}},
		{"left", b.Left, []string{"gusset-left"}},
		{"right", b.Right, []string{"gusset-right"}},
		{"above", b.Top, []string{"front-base", "back-base"}},
		{"below", b.Below, []string{"back-base"}},
	} {
		view.choose()
		got := b.stage.pick(b.middle())
		found := false
		for _, want := range view.want {
			found = found || got == want
		}
		if !found {
			t.Errorf("%s: %q lies in the middle, want one of %q", view.name, got, view.want)
		}
	}
	b.Isometric()
	if b.Camera() != solid.Isometric.Limited() {
		t.Errorf("isometric: seen from %+v", b.Camera())
	}
}

// From above one looks into the bag: the wall that is met beside the middle is the
// turn-in at the top, and lower down the reverse of the faces.
func TestLookingIn(t *testing.T) {
	b := newBench(t, demo(t), 640, 520)
	b.Top()
	v := b.view(640, 480)
	seen := map[string]bool{}
	for y := range 480 {
		if hit, found := v.Pick(320.5, float64(y)+0.5); found {
			seen[hit.Panel] = true
			if inside := hit.Reverse || strings.HasSuffix(hit.Panel, "-turn-in"); !inside {
				t.Fatalf("from above the outside of %s is seen at row %d", hit.Panel, y)
			}
		}
	}
	for _, want := range []string{"front-turn-in", "back-turn-in", "front", "back"} {
		if !seen[want] {
			t.Errorf("%s is not seen from above; seen are %v", want, seen)
		}
	}
}

func TestDragTurns(t *testing.T) {
	b := newBench(t, demo(t), 640, 520)
	before := b.Camera()
	test.Drag(b.window.Canvas(), b.centre(), 50, 20)
	after := b.Camera()
	if got, want := after.Azimuth, before.Azimuth-50*turnOfPixel; math.Abs(got-want) > 1e-9 {
		t.Errorf("azimuth %v after a drag to the right, want %v", got, want)
	}
	if got, want := after.Elevation, before.Elevation+20*turnOfPixel; math.Abs(got-want) > 1e-9 {
		t.Errorf("elevation %v after a drag down, want %v", got, want)
	}
	test.Drag(b.window.Canvas(), b.centre(), 0, 5000)
	if b.Camera().Elevation != math.Pi/2 {
		t.Errorf("dragged far down: elevation %v, want straight above", b.Camera().Elevation)
	}
	b.SetReference(solid.Can33)
	side := b.side
	b.stage.Dragged(&fyne.DragEvent{Dragged: fyne.Delta{DX: float32(math.Pi / turnOfPixel)}})
	if b.side != side {
		t.Error("the can jumps while the bag is turned")
	}
	if b.stage.DragEnd(); b.side == side {
		t.Error("the can stays behind the bag")
	}
	b.stage.MouseDown(&desktop.MouseEvent{Modifier: fyne.KeyModifierShift})
	turned := b.Camera()
	b.stage.Dragged(&fyne.DragEvent{Dragged: fyne.Delta{DX: 30, DY: -10}})
	b.stage.MouseUp(&desktop.MouseEvent{})
	b.stage.DragEnd()
	moved := b.Camera()
	if moved.Azimuth != turned.Azimuth || moved.Shift.X <= 0 || moved.Shift.Y <= 0 {
		t.Errorf("a drag with shift went from %+v to %+v, want a move to the right and up", turned, moved)
	}
}

// The wheel keeps what is under the pointer where it is.
func TestWheelZooms(t *testing.T) {
	b := newBench(t, demo(t), 640, 520)
	b.Front()
	at := fyne.NewPos(300, 300)
	find := func() (solid.Hit, bool) {
		v := b.view(int(b.stage.Size().Width), int(b.stage.Size().Height))
		return v.Pick(float64(at.X), float64(at.Y))
	}
	before, found := find()
	b.stage.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: at}, Scrolled: fyne.Delta{DY: 50}})
	after, still := find()
	if want := zoomStep * zoomStep; math.Abs(b.Camera().Zoom-want) > 1e-9 {
		t.Errorf("zoom %v after two steps, want %v", b.Camera().Zoom, want)
	}
	if !found || !still || before.Panel != after.Panel || before.Place.At.Sub(after.Place.At).Length() > 0.5 {
		t.Errorf("under the pointer lay %+v and now %+v", before, after)
	}
	for range 100 {
		b.ZoomIn()
	}
	if b.Camera().Zoom != solid.GreatestZoom {
		t.Errorf("zoomed in to %v, want %v at most", b.Camera().Zoom, float64(solid.GreatestZoom))
	}
	test.DoubleTap(b.stage)
	if c := b.Camera(); c.Zoom != 1 || c.Shift != (geometry.Vec2{}) || c.Azimuth != 0 {
		t.Errorf("fitted to %+v", c)
	}
}

func TestKeys(t *testing.T) {
	b := newBench(t, demo(t), 640, 520)
	b.window.Canvas().Focus(b.stage)
	if b.stage.frame.Hidden {
		t.Error("the focus is not shown")
	}
	b.Front()
	for _, key := range []fyne.KeyName{fyne.KeyRight, fyne.KeyRight, fyne.KeyDown} {
		b.stage.TypedKey(&fyne.KeyEvent{Name: key})
	}
	if c := b.Camera(); math.Abs(c.Azimuth+2*keyTurn) > 1e-9 || math.Abs(c.Elevation-keyTurn) > 1e-9 {
		t.Errorf("after two arrows to the right and one down: %+v", c)
	}
	test.Type(b.stage, "+")
	if b.Camera().Zoom != zoomStep {
		t.Errorf("+ zooms to %v", b.Camera().Zoom)
	}
	test.Type(b.stage, "--")
	if math.Abs(b.Camera().Zoom-1/zoomStep) > 1e-9 {
		t.Errorf("-- zooms to %v", b.Camera().Zoom)
	}
	test.Type(b.stage, "f")
	if b.Camera().Zoom != 1 {
		t.Errorf("f fits to %v", b.Camera().Zoom)
	}
	b.look.Show(&focus.Place{})
	b.stage.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if b.look.Place() != nil {
		t.Error("escape leaves the place marked")
	}
}

// What is under the pointer is told to the other panes, and what they point at
// lights up here.
func TestHover(t *testing.T) {
	b := newBench(t, demo(t), 640, 520)
	b.Front()
	test.MoveMouse(b.window.Canvas(), b.centre())
	if b.look.Panel() != "front" {
		t.Errorf("the pointer is over %q, want the front", b.look.Panel())
	}
	if !b.stage.name.Visible() || b.stage.name.Text() != "Front" {
		t.Errorf("the caption reads %q", b.stage.name.Text())
	}
	b.stage.MouseOut()
	if b.look.Panel() != "" || b.stage.name.Visible() {
		t.Errorf("nothing is under the pointer, but %q is lit", b.look.Panel())
	}
	b.orders = nil
	b.look.Hover("gusset-left-base")
	if last := b.orders[len(b.orders)-1]; last.view.Highlight != "gusset-left-base" || last.view.Samples != fine {
		t.Errorf("ordered %q with %d samples", last.view.Highlight, last.view.Samples)
	}
	b.look.Show(&focus.Place{Piece: 0, At: geometry.Vec2{X: 30, Y: 90}})
	if m := b.orders[len(b.orders)-1].view.Marker; m == nil || m.At != (geometry.Vec2{X: 30, Y: 90}) {
		t.Errorf("the place is marked at %v", m)
	}
}

// While a drag lasts there are drafts only, at one scale unless the bag outgrows it;
// when it ends comes the fine picture.
func TestDraftsWhileDragging(t *testing.T) {
	b := newBench(t, demo(t), 640, 520)
	frame := b.frame
	spec := demo(t)
	b.orders = nil
	for range 5 {
		spec.Body.Width++
		b.doc.Drag(spec)
	}
	for _, o := range b.orders {
		if o.view.Samples != draft || o.view.Frame != frame {
			t.Errorf("while dragging: %d samples, frame %v, want a draft in %v", o.view.Samples, o.view.Frame, frame)
		}
	}
	b.doc.Drop()
	last := b.orders[len(b.orders)-1]
	if last.view.Samples != fine || last.view.Frame == frame {
		t.Errorf("dropped: %d samples, frame %v", last.view.Samples, last.view.Frame)
	}
	// A bag that outgrows the frame widens it.
	spec.Body.Height = 1500
	b.doc.Drag(spec)
	if b.frame.Rise <= last.view.Frame.Rise {
		t.Errorf("a bag of 1500 mm is shown in a frame %v high", 2*b.frame.Rise)
	}
}

// A size that cannot be drawn leaves the last bag in sight, faded, and says so.
func TestWhatCannotBeDrawn(t *testing.T) {
	b := newBench(t, demo(t), 640, 520)
	good, spec := b.model, demo(t)
	spec.Body.Width = -1
	b.doc.Set(spec)
	last := b.orders[len(b.orders)-1]
	if !last.view.Faded || b.model == nil || !b.stage.complaint.Visible() {
		t.Errorf("faded %v, complaint %v", last.view.Faded, b.stage.complaint.Visible())
	}
	if b.model.Frame("", 0) != good.Frame("", 0) {
		t.Error("another bag is seen than the last that could be drawn")
	}
	b.doc.Undo()
	if last := b.orders[len(b.orders)-1]; last.view.Faded || b.stage.complaint.Visible() {
		t.Error("the complaint stays after the mistake is undone")
	}
}

func TestToolbar(t *testing.T) {
	b := newBench(t, demo(t), 640, 520)
	if b.bar.views.Text != "Isometric" {
		t.Errorf("the view is called %q", b.bar.views.Text)
	}
	b.bar.viewItems()[1].Action()
	if b.bar.views.Text != "Front" || b.Camera().Azimuth != 0 {
		t.Errorf("the view is called %q", b.bar.views.Text)
	}
	b.turn(1, 0)
	if b.bar.views.Text != "Turned" {
		t.Errorf("after a turn the view is called %q", b.bar.views.Text)
	}
	for i, r := range solid.References() {
		items := b.bar.besideItems()
		items[i].Action()
		if b.Reference() != r || b.bar.beside.Text != items[i].Label {
			t.Errorf("beside the bag stands %q, called %q, want %q", b.Reference(), b.bar.beside.Text, r)
		}
	}
	test.Tap(b.bar.views)
	if popup := b.window.Canvas().Overlays().Top(); popup == nil || !popup.Visible() {
		t.Error("the list of views does not open")
	}
}

// A picture for a file has the size that was asked for and shows neither focus nor
// marks.
func TestPictureForFiles(t *testing.T) {
	b := newBench(t, demo(t), 640, 520, settings.Dark)
	plain := b.Picture(300, 200)
	b.look.Hover("front")
	b.look.Show(&focus.Place{})
	var out bytes.Buffer
	if err := b.PNG(300, 200)(&out); err != nil {
		t.Fatal(err)
	}
	read, err := png.Decode(&out)
	if err != nil {
		t.Fatal(err)
	}
	if size := read.Bounds().Size(); size.X != 300 || size.Y != 200 {
		t.Errorf("the picture is %v pixels", size)
	}
	for _, at := range [][2]int{{150, 100}, {10, 10}, {150, 150}} {
		r1, g1, b1, _ := plain.At(at[0], at[1]).RGBA()
		r2, g2, b2, _ := read.At(at[0], at[1]).RGBA()
		if r1 != r2 || g1 != g2 || b1 != b2 {
			t.Errorf("pixel %v differs while something is pointed at", at)
		}
	}
}

// Through a worker, as in the program, a draft comes first and the fine picture in
// the end; after Close nothing is drawn.
func TestWorker(t *testing.T) {
	b := newBench(t, demo(t), 320, 260)
	arrived := make(chan picture, 10)
	b.Pane.worker.Close()
	b.Pane.worker = latest.New(b.Pane.artist.draw, func(made picture) { arrived <- made })
	b.Pane.request = b.Pane.worker.Order
	b.Front()
	for _, wanted := range []bool{false, true} {
		select {
		case made := <-arrived:
			if made.fine != wanted || made.number != b.ordered {
				t.Errorf("picture %d of %d arrived, fine %v, want fine %v", made.number, b.ordered, made.fine, wanted)
			}
			b.show(made)
		case <-time.After(10 * time.Second):
			t.Fatal("no picture arrives")
		}
	}
	b.Close()
	ordered := b.ordered
	b.Back()
	b.look.Hover("back")
	spec := demo(t)
	spec.Body.Width++
	b.doc.Set(spec)
	if b.ordered != ordered || len(arrived) > 0 {
		t.Error("a closed pane goes on drawing")
	}
}

// Every kind of bag can be shown from every side.
func TestEveryBag(t *testing.T) {
	b := newBench(t, demo(t), 320, 260)
	for _, base := range []bag.Base{bag.BaseBlock, bag.BaseSlotted, bag.BasePinch} {
		for _, top := range []bag.Top{bag.TopTurnIn, bag.TopStraight, bag.TopZigzag} {
			for _, kind := range []bag.HandleKind{bag.HandleNone, bag.HandleRope, bag.HandleHandHole, bag.HandleStrip} {
				spec := demo(t)
				spec.Body.Base, spec.Body.Top, spec.Handle.Kind = base, top, kind
				if base == bag.BasePinch && kind == bag.HandleStrip {
					spec.Body.Gusset = 0
				}
				b.doc.Set(spec)
				for _, view := range []func(){b.Below, b.Back, b.Isometric} {
					view()
				}
				if b.state.Err != nil {
					t.Errorf("%s, %s, %s: %v", base, top, kind, b.state.Err)
				}
			}
		}
	}
}

// BenchmarkChange is a change of the spec until its picture is there: folding,
// texture and draft, 900 × 700 pixels.
func BenchmarkChange(b *testing.B) {
	p := newBench(b, demo(b), 900, 700)
	spec := demo(b)
	for b.Loop() {
		spec.Body.Width += 0.1
		if spec.Body.Width > 300 {
			spec.Body.Width = 240
		}
		p.doc.Drag(spec)
		p.orders = p.orders[:0]
	}
}

// BenchmarkTurn is a picture while the bag is turned, 900 × 700 pixels.
func BenchmarkTurn(b *testing.B) {
	p := newBench(b, demo(b), 900, 700)
	p.stage.dragging = true
	for b.Loop() {
		p.turn(0.1, 0)
		p.orders = p.orders[:0]
	}
}
