package blankpane

import (
	"image"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/document"
	"gussetwright/app/focus"
	"gussetwright/app/project"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/placement"
	"gussetwright/render/artwork"
)

// frames is a gallery of empty artwork, by name.
type frames map[string]geometry.Vec2

func (f frames) Art(name string, _ []byte, _ int) (*artwork.Art, error) {
	art := &artwork.Art{Name: name, Format: "SVG", Pages: 1, Source: placement.Source{Size: f[name]}}
	art.Levels = []*image.RGBA{image.NewRGBA(image.Rect(0, 0, 4, 4))}
	return art, nil
}

// artBench returns a pane on the default bag with artwork: a mark of 100 × 50 mm in the
// middle of the front, 120, 250, and a picture that covers the back.
func artBench(t *testing.T, change func(mark *bag.Artwork)) *bench {
	mark, back := bag.NewArtwork("mark.svg", "front"), bag.NewArtwork("back.svg", "back")
	mark.Fit = bag.FitExact
	change(&mark)
	b := newBench(t, bag.Default(), 900, 700)
	spec := bag.Default()
	spec.Artwork = []bag.Artwork{mark, back}
	b.doc.Load(project.Project{Spec: spec, Files: map[string][]byte{"mark.svg": nil, "back.svg": nil}})
	b.doc.ShowArt(frames{"mark.svg": {X: 100, Y: 50}, "back.svg": {X: 200, Y: 300}})
	b.look.ChooseArtwork(0)
	return b
}

func asItIs(*bag.Artwork) {}

func (b *bench) mark() bag.Artwork { return b.doc.State().Spec.Artwork[0] }

// pull drags the artwork from one point of the piece to another.
func (b *bench) pull(from, to geometry.Vec2) {
	start, end := b.pixel(0, from.X, from.Y), b.pixel(0, to.X, to.Y)
	b.down(start, desktop.MouseButtonPrimary)
	b.dragTo(start, end)
	b.up(end, desktop.MouseButtonPrimary)
}

func TestPanelAt(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	top := b.surface.Position()
	for _, test := range []struct {
		x, y float64
		want string
	}{
		{120, 250, "front"},
		{300, 250, "gusset-right"},
		{120, 440, "front-turn-in"},
		{120, 20, "front-base"},
		{460, 250, "back"},
		{690, 250, ""},
		{-30, 250, ""},
	} {
		at := b.pixel(0, test.x, test.y).Add(top)
		if got, found := b.PanelAt(at); got != test.want || found != (test.want != "") {
			t.Errorf("at %g, %g: %q, %v", test.x, test.y, got, found)
		}
	}
	if panel, found := b.PanelAt(fyne.NewPos(100, 2)); found {
		t.Errorf("the toolbar is %q", panel)
	}
}

func TestFrameOfTheChosenArtwork(t *testing.T) {
	b := artBench(t, func(a *bag.Artwork) { a.Turn = 30 })
	b.pull(geometry.Vec2{X: 125, Y: 250}, geometry.Vec2{X: 125, Y: 252.3}) // leaves the pointer on it
	b.doc.Undo()
	geomtest.Golden(t, "blankpane/artwork-frame.xml", []byte(test.RenderToMarkup(b.window.Canvas())))
	b.look.ChooseArtwork(focus.NoArtwork)
	if b.surface.overlay.art.frames[0].Visible() {
		t.Error("the frame stays when nothing is chosen")
	}
	b.look.ChooseArtwork(7)
	if len(b.artFrames()) != 0 {
		t.Error("artwork that is not there has a frame")
	}
}

// The same artwork on both faces has two frames that move together.
func TestFramesOfLinkedArtwork(t *testing.T) {
	b := artBench(t, func(a *bag.Artwork) { a.On = bag.OnFaces })
	if all := b.artFrames(); len(all) != 2 || !b.surface.overlay.art.frames[1].Visible() {
		t.Fatalf("%d frames", len(all))
	}
	b.pull(geometry.Vec2{X: 460, Y: 250}, geometry.Vec2{X: 483, Y: 250}) // on the back
	if got := b.mark(); got.X != 23 || got.Y != 0 {
		t.Errorf("moved to %g, %g", got.X, got.Y)
	}
}

func TestMoving(t *testing.T) {
	for _, test := range []struct {
		name   string
		to     geometry.Vec2 // of the middle, which begins at 120, 250
		shift  bool
		x, y   float64
		guides int
	}{
		{"whole millimetres", geometry.Vec2{X: 137.4, Y: 293.8}, false, 17, 44, 0},
		{"freely", geometry.Vec2{X: 137.44, Y: 293.81}, true, 17.4, 43.8, 0},
		{"to the left edge", geometry.Vec2{X: 52, Y: 293}, false, -70, 43, 1},         // 50 from the edge at 0
		{"to the left of the bleed", geometry.Vec2{X: 46, Y: 293}, false, -73, 43, 1}, // 3 further
		{"to top and middle", geometry.Vec2{X: 122, Y: 406}, false, 0, 155, 2},        // 25 below the fold at 430
		{"not to an edge, freely", geometry.Vec2{X: 52, Y: 293}, true, -68, 43, 0},
	} {
		t.Run(test.name, func(t *testing.T) {
			b := artBench(t, asItIs)
			if test.shift {
				b.surface.KeyDown(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
			}
			start, end := b.pixel(0, 130, 260), b.pixel(0, test.to.X+10, test.to.Y+10)
			b.down(start, desktop.MouseButtonPrimary)
			b.dragTo(start, end)
			d := b.surface.drag.(*placing)
			shown := 0
			for _, guide := range b.surface.overlay.art.guides {
				if guide.Visible() {
					shown++
				}
			}
			if len(d.guides) != test.guides || shown != test.guides || !b.surface.overlay.art.tag.Visible() {
				t.Errorf("%d guides, %d shown, want %d", len(d.guides), shown, test.guides)
			}
			b.up(end, desktop.MouseButtonPrimary)
			got, undo := b.mark(), b.doc.State().Undo
			if math.Abs(got.X-test.x) > 1e-6 || math.Abs(got.Y-test.y) > 1e-6 {
				t.Errorf("moved to %g, %g, want %g, %g", got.X, got.Y, test.x, test.y)
			}
			if undo != (document.Change{Label: "move %s", File: "mark.svg"}) {
				t.Errorf("undo %+v", undo)
			}
			b.doc.Undo()
			if b.mark().X != 0 || b.doc.State().Undo.Label != "" {
				t.Error("a drag is more than one step")
			}
		})
	}
}

// The corner opposite to the one that is pulled stays, or with the control key the middle.
func TestScaling(t *testing.T) {
	// The corners lie at 70, 225 and 170, 275, the middle at 120, 250. The edge of the front
	// is at 240: 170 from the left corner, and 120 from the middle.
	for _, test := range []struct {
		name        string
		to          geometry.Vec2
		key         fyne.KeyName
		scale, x, y float64
	}{
		{"whole percent", geometry.Vec2{X: 214.1, Y: 297.05}, "", 1.44, 22, 11},
		{"freely", geometry.Vec2{X: 214.2, Y: 297.1}, desktop.KeyShiftLeft, 1.442, 22.1, 11.05},
		{"beside the diagonal", geometry.Vec2{X: 214 - 10, Y: 297 + 20}, "", 1.44, 22, 11},
		{"to the edge", geometry.Vec2{X: 238.5, Y: 309.2}, "", 1.7, 35, 17.5},
		{"through the corner", geometry.Vec2{X: -30, Y: 150}, "", 0.001, -49.95, -24.975},
		{"about the middle", geometry.Vec2{X: 192.1, Y: 286.05}, desktop.KeyControlLeft, 1.44, 0, 0},
		{"about the middle to the edge", geometry.Vec2{X: 238.5, Y: 309.2}, desktop.KeyControlRight, 2.4, 0, 0},
	} {
		t.Run(test.name, func(t *testing.T) {
			b := artBench(t, asItIs)
			if test.key != "" {
				b.surface.KeyDown(&fyne.KeyEvent{Name: test.key})
			}
			b.pull(geometry.Vec2{X: 170, Y: 275}, test.to)
			got := b.mark()
			if math.Abs(got.Scale-test.scale) > 1e-6 || math.Abs(got.X-test.x) > 1e-4 || math.Abs(got.Y-test.y) > 1e-4 {
				t.Errorf("scale %g at %g, %g, want %g at %g, %g", got.Scale, got.X, got.Y, test.scale, test.x, test.y)
			}
			if test.key != desktop.KeyControlLeft && test.key != desktop.KeyControlRight {
				if at := b.artFrames()[0].corners[0]; at.Sub(geometry.Vec2{X: 70, Y: 225}).Length() > 1e-3 {
					t.Errorf("the opposite corner lies at %v", at)
				}
			}
			if undo := b.doc.State().Undo; undo.File != "mark.svg" {
				t.Errorf("undo %+v", undo)
			}
			b.doc.Undo()
			if b.mark().Scale != 1 || b.doc.State().Undo.Label != "" {
				t.Error("a drag is more than one step")
			}
		})
	}
}

// A turned piece too keeps its opposite corner.
func TestScalingTurned(t *testing.T) {
	b := artBench(t, func(a *bag.Artwork) { a.Turn = 30 })
	before := b.artFrames()[0].corners
	b.pull(before[1], before[1].Add(before[1].Sub(before[3]).Scale(0.2)))
	after := b.artFrames()[0].corners
	if after[3].Sub(before[3]).Length() > 1e-3 || b.mark().Scale != 1.2 {
		t.Errorf("scale %g, the opposite corner moved from %v to %v", b.mark().Scale, before[3], after[3])
	}
}

func TestDeleteTakesArtworkOut(t *testing.T) {
	for _, key := range []fyne.KeyName{fyne.KeyDelete, fyne.KeyBackspace} {
		b := artBench(t, asItIs)
		b.key(key)
		list := b.doc.State().Spec.Artwork
		if len(list) != 1 || list[0].File != "back.svg" {
			t.Fatalf("%s leaves %+v", key, list)
		}
		if undo := b.doc.State().Undo; undo.File != "mark.svg" {
			t.Errorf("undo %+v", undo)
		}
		b.doc.Undo()
		if b.mark().File != "mark.svg" || b.doc.State().Undo.Label != "" {
			t.Error("taking out is not one step")
		}
		b.look.ChooseArtwork(focus.NoArtwork)
		b.key(key)
		if len(b.doc.State().Spec.Artwork) != 2 {
			t.Errorf("%s takes artwork out that is not being placed", key)
		}
	}
}

func TestMenuOfArtwork(t *testing.T) {
	b := artBench(t, asItIs)
	isOpen := func() bool { return b.window.Canvas().Overlays().Top() != nil }
	closeMenu := func() { b.window.Canvas().Overlays().Remove(b.window.Canvas().Overlays().Top()) }
	b.surface.TappedSecondary(&fyne.PointEvent{Position: b.pixel(0, 20, 80)})
	if isOpen() {
		t.Fatal("a menu opens beside all artwork")
	}
	b.surface.TappedSecondary(&fyne.PointEvent{Position: b.pixel(0, 460, 250)})
	if !isOpen() || b.look.Artwork() != 1 {
		t.Fatalf("open %v, artwork %d is chosen, want that under the pointer", isOpen(), b.look.Artwork())
	}
	closeMenu()
	actions := b.surface.artActions().Items
	if !actions[0].Disabled || actions[1].Disabled {
		t.Error("the topmost can be brought forward, or not be sent back")
	}
	actions[1].Action() // send back
	if list := b.doc.State().Spec.Artwork; list[0].File != "back.svg" || b.look.Artwork() != 0 {
		t.Errorf("after sending back %+v, chosen %d", list, b.look.Artwork())
	}
	b.key(desktop.KeyMenu)
	if !isOpen() {
		t.Fatal("the menu key opens nothing")
	}
	closeMenu()
	b.surface.artActions().Items[3].Action() // remove
	if list := b.doc.State().Spec.Artwork; len(list) != 1 || list[0].File != "mark.svg" {
		t.Errorf("after removing %+v", list)
	}
}

func TestTurning(t *testing.T) {
	for _, test := range []struct {
		name  string
		to    float64 // degrees of the hand
		shift bool
		want  float64
	}{
		{"to a step", 33, false, 30},
		{"to a quarter from further away", 81, false, 90},
		{"not to a quarter", 79, false, 75},
		{"freely", 33.04, true, 33},
		{"over the half", -172, false, 180},
		{"clockwise", -28, false, -30},
	} {
		t.Run(test.name, func(t *testing.T) {
			b := artBench(t, asItIs)
			if test.shift {
				b.surface.KeyDown(&fyne.KeyEvent{Name: desktop.KeyShiftRight})
			}
			frame := b.artFrames()[0]
			_, knob := turner(b.onScreen(&frame))
			middle := b.pixel(0, 120, 250)
			radius := float64(middle.Y) - knob.Y
			angle := (90 + test.to) * math.Pi / 180
			end := fyne.NewPos(middle.X+float32(radius*math.Cos(angle)), middle.Y-float32(radius*math.Sin(angle)))
			b.down(position(knob), desktop.MouseButtonPrimary)
			b.dragTo(position(knob), end)
			b.up(end, desktop.MouseButtonPrimary)
			if got := b.mark().Turn; math.Abs(got-test.want) > 1e-6 {
				t.Errorf("turned by %g, want %g", got, test.want)
			}
			if undo := b.doc.State().Undo; undo != (document.Change{Label: "turn %s", File: "mark.svg"}) {
				t.Errorf("undo %+v", undo)
			}
		})
	}
}

// A key that is held down is one step, and each press of it.
func TestNudging(t *testing.T) {
	b := artBench(t, asItIs)
	press := func(times int, names ...fyne.KeyName) {
		for _, name := range names {
			b.surface.KeyDown(&fyne.KeyEvent{Name: name})
		}
		last := names[len(names)-1]
		for range times {
			b.key(last)
		}
		for _, name := range names {
			b.surface.KeyUp(&fyne.KeyEvent{Name: name})
		}
	}
	before := b.view
	press(1, fyne.KeyRight)
	press(3, fyne.KeyUp)
	press(1, desktop.KeyShiftLeft, fyne.KeyLeft)
	if got := b.mark(); got.X != -9 || got.Y != 3 || b.view != before {
		t.Errorf("moved to %g, %g; the view moved: %v", got.X, got.Y, b.view != before)
	}
	steps := 0
	for ; b.doc.State().Undo.Label != ""; b.doc.Undo() {
		steps++
	}
	if steps != 3 || b.doc.State().Dragging {
		t.Errorf("%d steps", steps)
	}
	b.look.ChooseArtwork(focus.NoArtwork)
	b.key(fyne.KeyRight)
	if b.view == before || b.mark().X != 0 {
		t.Error("without artwork the arrows do not pan")
	}
}
