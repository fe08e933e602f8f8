package blankpane

import (
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

func TestDraggingAnEdgeIsOneStep(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	from := b.pixel(0, 240, 250)
	b.hoverAt(from)
	if b.surface.Cursor() != desktop.HResizeCursor {
		t.Errorf("pointer %v over an edge", b.surface.Cursor())
	}
	to := b.pixel(0, 262.3, 250)
	b.down(from, desktop.MouseButtonPrimary)
	b.dragTo(from, to)
	if state := b.doc.State(); state.Spec.Body.Width != 262 || !state.Dragging {
		t.Errorf("while dragging: %g wide, dragging %v", state.Spec.Body.Width, state.Dragging)
	}
	if got := b.surface.overlay.gripTag.Text(); got != "Face width 262 mm" || !b.surface.overlay.gripTag.Visible() {
		t.Errorf("the label says %q", got)
	}
	if got := b.pixel(0, 262, 250); math.Abs(float64(got.X-to.X)) > 0.5 {
		t.Errorf("the edge is at %v and the pointer at %v", got, to)
	}
	b.up(to, desktop.MouseButtonPrimary)
	state := b.doc.State()
	if state.Dragging || state.Spec.Body.Width != 262 || state.Undo.Path != widthPath {
		t.Errorf("after the drag: %g wide, undo %+v", state.Spec.Body.Width, state.Undo)
	}
	b.doc.Undo()
	if state := b.doc.State(); state.Spec.Body.Width != 240 || state.Undo.Label != "" {
		t.Errorf("one undo gives %g wide and leaves %+v", state.Spec.Body.Width, state.Undo)
	}
}

func TestEscapeEndsADragAsIfItHadNotBeen(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	from := b.pixel(0, 300, 430)
	b.down(from, desktop.MouseButtonPrimary)
	b.dragTo(from, from.AddXY(0, 30))
	if b.doc.State().Spec.Body.Height == 360 {
		t.Fatal("the top fold did not move")
	}
	b.key(fyne.KeyEscape)
	b.dragTo(from.AddXY(0, 30), from.AddXY(0, 60)) // the button is still down
	b.up(from.AddXY(0, 60), desktop.MouseButtonPrimary)
	if state := b.doc.State(); state.Spec.Body.Height != 360 || state.Undo.Label != "" || state.Dragging {
		t.Errorf("height %g, undo %+v", state.Spec.Body.Height, state.Undo)
	}
}

func TestUndoWhileDraggingGivesTheDragUp(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	from := b.pixel(0, 240, 250)
	b.down(from, desktop.MouseButtonPrimary)
	b.dragTo(from, from.AddXY(30, 0))
	b.doc.Undo()
	b.dragTo(from.AddXY(30, 0), from.AddXY(60, 0))
	b.up(from.AddXY(60, 0), desktop.MouseButtonPrimary)
	if state := b.doc.State(); state.Spec.Body.Width != 240 || state.Undo.Label != "" {
		t.Errorf("width %g, undo %+v", state.Spec.Body.Width, state.Undo)
	}
}

func TestDraggingAHole(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	from, to := b.pixel(0, 180, 405), b.pixel(0, 190, 395)
	b.down(from, desktop.MouseButtonPrimary)
	b.dragTo(from, to)
	b.up(to, desktop.MouseButtonPrimary)
	state := b.doc.State()
	if h := state.Spec.Handle; h.Spacing != 140 || h.Drop != 35 {
		t.Errorf("spacing %g and drop %g, want 140 and 35", h.Spacing, h.Drop)
	}
	if hole := state.Snapshot.Blank.Pieces[0].Holes[1].Center; !hole.Near(geometry.Vec2{X: 190, Y: 395}) {
		t.Errorf("the hole is at %v", hole)
	}
}

func TestFinerStepsWithAModifier(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	b.surface.KeyDown(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
	from, to := b.pixel(0, 240, 250), b.pixel(0, 248.44, 250)
	b.down(from, desktop.MouseButtonPrimary)
	b.dragTo(from, to)
	b.up(to, desktop.MouseButtonPrimary)
	if got := b.doc.State().Spec.Body.Width; got != 248.4 {
		t.Errorf("width %g, want 248.4", got)
	}
}

func TestLabelInTheUnitOfTheUser(t *testing.T) {
	b := newBench(t, bag.Default(), 900, 700)
	b.set.SetUnit(geometry.Inch)
	b.hoverAt(b.pixel(0, 240, 250))
	// 240 mm are 240/25.4 = 9.4488 inches.
	if got := b.surface.overlay.gripTag.Text(); got != "Face width 9.449 in" {
		t.Errorf("the label says %q", got)
	}
}
