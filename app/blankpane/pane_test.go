package blankpane

import (
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/focus"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/render/scene"
)

func TestWheelZoomsAtThePointer(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	at, before := b.pixel(0, 340, 430), b.view.scale
	b.surface.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: at}, Scrolled: fyne.NewDelta(0, wheelStep)})
	if got := b.pixel(0, 340, 430); !near(got, at) {
		t.Errorf("the corner went from %v to %v", at, got)
	}
	if got := b.view.scale / before; math.Abs(got-zoomStep) > 1e-6 {
		t.Errorf("zoomed by %g, want %g", got, zoomStep)
	}
}

func TestDragPansWhereNothingIsToBeDragged(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	before := b.pixel(0, 0, 0)
	from := b.pixel(0, 120, 300)
	b.down(from, desktop.MouseButtonPrimary)
	b.dragTo(from, from.AddXY(50, -30))
	b.up(from.AddXY(50, -30), desktop.MouseButtonPrimary)
	if got, want := b.pixel(0, 0, 0), before.AddXY(50, -30); !near(got, want) {
		t.Errorf("panned to %v, want %v", got, want)
	}
	if b.doc.State().Undo.Label != "" {
		t.Error("panning changed the bag")
	}
}

func TestMiddleButtonAndSpacePanOverAnEdge(t *testing.T) {
	for name, button := range map[string]desktop.MouseButton{"middle": desktop.MouseButtonTertiary, "space": desktop.MouseButtonPrimary} {
		b := newBench(t, bag.Default(), 900, 700)
		if name == "space" {
			b.surface.KeyDown(&fyne.KeyEvent{Name: fyne.KeySpace})
		}
		before, from := b.pixel(0, 0, 0), b.pixel(0, 240, 250)
		b.down(from, button)
		b.dragTo(from, from.AddXY(40, 0))
		b.up(from.AddXY(40, 0), button)
		if got := b.pixel(0, 0, 0); !near(got, before.AddXY(40, 0)) {
			t.Errorf("%s: panned from %v to %v", name, before, got)
		}
		if got := b.doc.State().Spec.Body.Width; got != 240 {
			t.Errorf("%s: the face is %g wide", name, got)
		}
	}
}

func TestMeasuring(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	b.surface.TypedRune('m')
	if !b.Measuring() || b.surface.Cursor() != desktop.CrosshairCursor {
		t.Fatal("M does not begin to measure")
	}
	b.click(b.pixel(0, 1.5, 68.5))
	b.click(b.pixel(0, 241.5, 71.5))
	if got := b.surface.overlay.spanTag.Text(); got != "240 mm · Δx 240 mm · Δy 0 mm" {
		t.Errorf("measured %q", got)
	}
	from, to, _ := b.surface.measure.ends()
	if way := b.desk.of(to).Sub(b.desk.of(from)); way != (geometry.Vec2{X: 240}) {
		t.Errorf("from corner to corner %v, want exactly 240", way)
	}
	b.click(b.pixel(0, 240, 430)) // a third point begins anew
	b.hoverAt(b.pixel(0, 0, 70))
	if got := b.surface.overlay.spanTag.Text(); got != "432.67 mm · Δx 240 mm · Δy 360 mm" { // √(240² + 360²) = 432.666
		t.Errorf("measured %q", got)
	}
	b.key(fyne.KeyEscape)
	if b.Measuring() || b.surface.overlay.span.Visible() {
		t.Error("escape does not end measuring")
	}
	if b.doc.State().Undo.Label != "" {
		t.Error("measuring changed the bag")
	}
}

func TestMeasuringByKeyboard(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	b.Measure(true)
	b.surface.measure.aim(mark{0, geometry.Vec2{X: 0, Y: 70}, corner})
	b.key(fyne.KeyReturn)
	b.key(fyne.KeyRight)
	b.key(fyne.KeyReturn)
	from, to, ok := b.surface.measure.ends()
	if way := b.desk.of(to).Sub(b.desk.of(from)); !ok || way.Y != 0 || way.X <= 0 || to.kind == free {
		t.Errorf("measured %v", way)
	}
}

func TestKeys(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	fitted := b.view
	b.surface.TypedRune('+')
	if math.Abs(b.view.scale/fitted.scale-zoomStep) > 1e-9 {
		t.Errorf("+ zooms by %g", b.view.scale/fitted.scale)
	}
	b.surface.TypedRune('-')
	b.surface.TypedRune('-')
	if math.Abs(b.view.scale*zoomStep/fitted.scale-1) > 1e-9 {
		t.Errorf("- zooms to %g of the fitted scale", b.view.scale/fitted.scale)
	}
	b.surface.TypedRune('0')
	if math.Abs(b.Percent()-100) > 1e-9 || b.bar.percent.Text != "100 %" {
		t.Errorf("0 zooms to %g %%, and the toolbar says %q", b.Percent(), b.bar.percent.Text)
	}
	before := b.pixel(0, 0, 0)
	b.key(fyne.KeyRight)
	b.key(fyne.KeyUp)
	if got, want := b.pixel(0, 0, 0), before.AddXY(-panStep, panStep); !near(got, want) {
		t.Errorf("arrows pan to %v, want %v", got, want)
	}
	b.surface.TypedRune('f')
	if b.view != fitted {
		t.Errorf("F shows %+v, want %+v", b.view, fitted)
	}
	b.surface.TypedRune('+')
	test.DoubleTap(b.surface)
	if b.view != fitted {
		t.Errorf("a double click shows %+v, want %+v", b.view, fitted)
	}
}

// A millimetre is 96/25.4 pixels wide on a screen of 96 dots per inch.
func TestTrueSize(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	b.TrueSize()
	if got := b.pixel(0, 254, 0).X - b.pixel(0, 0, 0).X; math.Abs(float64(got)-960) > 0.01 {
		t.Errorf("ten inches are %g pixels, want 960", got)
	}
}

func TestFittedViewStaysFitted(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	b.doc.Set(sized(500, 200, 600))
	media := b.desk.media
	if low := b.view.screen(media.Min); low.X < -0.01 || low.Y > float64(b.surface.Size().Height) {
		t.Errorf("the larger blank begins at %v", low)
	}
	b.window.Resize(fyne.NewSize(500, 400))
	if low, high := b.view.screen(b.desk.media.Min), b.view.screen(b.desk.media.Max); low.X < -0.01 || high.X > 500.01 {
		t.Errorf("in the smaller window it reaches from %v to %v", low, high)
	}
	b.ZoomIn()
	before := b.view
	b.doc.Set(sized(300, 100, 300))
	if b.view != before {
		t.Error("a view that the user chose was changed")
	}
}

func TestHoverLightsUpAPanelInBothPanes(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	at := b.pixel(0, 290, 300)
	before := b.surface.picture.Image.At(int(at.X)+8, int(at.Y)+8)
	b.hoverAt(at)
	if got := b.look.Panel(); got != "gusset-right" {
		t.Errorf("hovering %q", got)
	}
	if after := b.surface.picture.Image.At(int(at.X)+8, int(at.Y)+8); after == before {
		t.Error("the panel does not light up")
	}
	b.surface.MouseOut()
	if got := b.look.Panel(); got != "" {
		t.Errorf("still hovering %q", got)
	}
	lit := b.surface.picture.Image.At(int(at.X)+8, int(at.Y)+8)
	b.look.Hover("gusset-right") // the other pane
	if b.surface.picture.Image.At(int(at.X)+8, int(at.Y)+8) == lit {
		t.Error("what is hovered in the other pane does not light up")
	}
}

func TestPlaceIsBroughtIntoSight(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	b.TrueSize()
	b.TrueSize()
	b.look.Show(&focus.Place{Piece: 0, At: geometry.Vec2{X: 690, Y: 10}})
	at, size := b.pixel(0, 690, 10), b.surface.Size()
	if at.X < 0 || at.Y < 0 || at.X > size.Width || at.Y > size.Height {
		t.Errorf("the place is at pixel %v of %v", at, size)
	}
	marker := b.surface.overlay.marker
	if !marker.Visible() || !near(marker.Position().AddXY(markerRadius, markerRadius), at) {
		t.Errorf("the marker is at %v, the place at %v", marker.Position(), at)
	}
	b.key(fyne.KeyEscape)
	if marker.Visible() || b.look.Place() != nil {
		t.Error("escape does not take the marker away")
	}
}

func TestLayers(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	b.SetLayer(scene.ContentArea, false) // its line runs close to the crease
	at := b.pixel(0, 240, 250)
	seen := func() bool { // any ink of the crease on a length of three dashes
		paper := b.surface.picture.Image.At(int(at.X)-2, int(at.Y))
		for y := range 40 {
			if b.surface.picture.Image.At(int(at.X), int(at.Y)+y) != paper {
				return true
			}
		}
		return false
	}
	if !seen() {
		t.Fatal("there is no crease to switch off")
	}
	b.SetLayer(scene.Creasing, false)
	if seen() {
		t.Error("the crease is seen though its layer is off")
	}
	b.SetLayer(scene.ContentArea, true)
	names := map[string]bool{}
	for _, layer := range b.Layers() {
		if layer.Shown == (layer.Role == scene.Creasing) {
			t.Errorf("%s: shown %v", layer.Name, layer.Shown)
		}
		names[layer.Name] = true
	}
	if len(names) != len(scene.Roles()) {
		t.Errorf("%d names of layers: %v", len(names), names)
	}
	if strings.Contains(test.RenderObjectToMarkup(b.strip), "Mountain crease") {
		t.Error("the legend explains a layer that is off")
	}
}

func TestLayersPopUp(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	b.chooseLayers(b.bar)
	popup, isPopUp := b.window.Canvas().Overlays().Top().(*widget.PopUp)
	if !isPopUp {
		t.Fatal("no list opens")
	}
	first, isCheck := b.window.Canvas().Focused().(*widget.Check)
	if !isCheck || !first.Checked {
		t.Fatalf("the keyboard is at %v", b.window.Canvas().Focused())
	}
	test.Type(first, " ")
	if b.layers.Has(scene.Cutting) {
		t.Error("the space bar does not switch the layer off")
	}
	popup.Hide()
}

// Where the legend would leave the blank no room it takes a third of the pane, in whole
// rows, and its last entry is reached by scrolling.
func TestLegendGivesWay(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	whole := b.strip.Size().Height
	if whole < 20 {
		t.Fatalf("in a large pane the legend has a height of %g", whole)
	}
	b.window.Resize(fyne.NewSize(230, 260))
	height := b.strip.Size().Height
	last := b.strip.body.Objects[len(b.strip.body.Objects)-1]
	if height < 20 || height > 260/3 || last.Position().Y < height {
		t.Fatalf("in a small pane the legend has a height of %g, its last entry begins at %g", height, last.Position().Y)
	}
	for _, entry := range b.strip.body.Objects {
		const space = 5 // of a word above its letters and below
		if top, bottom := entry.Position().Y+space, entry.Position().Y+entry.Size().Height-space; top < height && bottom > height {
			t.Errorf("an entry from %g to %g is cut at %g", top, bottom, height)
		}
	}
	b.strip.scroll.ScrollToBottom()
	if end := last.Position().Y + last.Size().Height - b.strip.scroll.Offset.Y; end > height+1 {
		t.Errorf("after scrolling the last entry ends at %g of %g", end, height)
	}
	b.window.Resize(fyne.NewSize(900, 700))
	if got := b.strip.Size().Height; got != whole {
		t.Errorf("with room again the legend has a height of %g, want %g", got, whole)
	}
}

// Another handle has other entries in the legend, and the strip the height for them at once.
func TestLegendHasRoomForNewEntries(t *testing.T) {
	spec := bag.Default()
	heights := map[float32]bool{}
	b := newBench(t, spec, 420, 700)
	for width := float32(300); width < 600; width += 50 {
		b.window.Resize(fyne.NewSize(width, 700))
		for _, kind := range []bag.HandleKind{bag.HandleNone, bag.HandleRope, bag.HandleTwisted, bag.HandleNone} {
			spec.Handle.Kind = kind
			b.doc.Set(spec)
			got, want := b.strip.Size().Height, b.strip.heightIn(b.Size())
			if got != want {
				t.Errorf("%s at a width of %g: the legend has a height of %g, its entries need %g", kind, width, got, want)
			}
			heights[want] = true
		}
	}
	if len(heights) < 2 {
		t.Errorf("all legends have one height, so the test shows nothing: %v", heights)
	}
}

func TestLegendCanBeHidden(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	before := b.surface.Size().Height
	b.ShowLegend(false)
	if b.surface.Size().Height <= before || b.strip.heightAt(900) != 0 {
		t.Error("the legend still takes room")
	}
	b.ShowLegend(true)
	if b.surface.Size().Height != before {
		t.Error("the legend does not come back")
	}
}

func TestWhatCannotBeDrawnIsSaid(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	before := b.capture()
	spec := bag.Default()
	spec.Body.Gusset = 5
	b.doc.Set(spec)
	if !b.surface.overlay.complaint.Visible() || b.laid().Spec.Body.Gusset != 100 {
		t.Error("the last good blank is not shown with a word")
	}
	b.hoverAt(b.pixel(0, 240, 250))
	if b.surface.gripped(b.surface.grip) != nil {
		t.Error("what is out of date can be dragged")
	}
	b.surface.MouseOut()
	b.doc.Undo()
	if b.surface.overlay.complaint.Visible() {
		t.Error("the word stays")
	}
	if before.Bounds() != b.capture().Bounds() {
		t.Error("the window changed its size")
	}
}

func TestOlderPicturesDoNotReplaceNewerOnes(t *testing.T) {
	b := newBench(t, bag.Default(), 300, 300)
	first, _ := b.order()
	second, _ := b.order()
	newer, older := b.artist.paint(second), b.artist.paint(first)
	b.show(newer)
	b.show(older)
	if b.surface.picture.Image != newer.pixels {
		t.Error("an older picture is shown")
	}
}

func TestClosedPaneIsStill(t *testing.T) {
	b := newBench(t, bag.Default(), 300, 300)
	b.Close()
	ordered := b.ordered
	b.doc.Set(sized(300, 100, 300))
	b.look.Hover("back")
	b.set.SetUnit(geometry.Inch)
	if b.ordered != ordered {
		t.Error("a closed pane goes on drawing")
	}
}

// Escape ends what is under way in the pane; without that it is the window's, which may
// have a notice to close.
func TestEscapeGoesOnToTheWindow(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	handed := 0
	b.window.Canvas().SetOnTypedKey(func(key *fyne.KeyEvent) {
		if key.Name == fyne.KeyEscape {
			handed++
		}
	})
	b.Measure(true)
	b.surface.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if handed != 0 || b.surface.measure != nil {
		t.Errorf("handed on %d times, measuring %v", handed, b.surface.measure != nil)
	}
	b.surface.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if handed != 1 {
		t.Errorf("handed on %d times, want once", handed)
	}
}
