package blankpane

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"gussetwright/app/focus"
	"gussetwright/geometry"
)

func TestEscapeAndUndoEndADragOfArtwork(t *testing.T) {
	for name, end := range map[string]func(*bench){
		"escape": func(b *bench) { b.key(fyne.KeyEscape) },
		"undo":   func(b *bench) { b.doc.Undo() },
	} {
		b := artBench(t, asItIs)
		start, on := b.pixel(0, 120, 250), b.pixel(0, 160, 280)
		b.down(start, desktop.MouseButtonPrimary)
		b.dragTo(start, on)
		end(b)
		b.dragTo(on, b.pixel(0, 180, 290))
		b.up(on, desktop.MouseButtonPrimary)
		if b.mark().X != 0 || b.doc.State().Undo.Label != "" {
			t.Errorf("%s: %+v, undo %+v", name, b.mark(), b.doc.State().Undo)
		}
	}
}

func TestClickChoosesArtwork(t *testing.T) {
	b := artBench(t, asItIs)
	b.click(b.pixel(0, 460, 250))
	if got := b.look.Artwork(); got != 1 {
		t.Errorf("a click on the back chooses %d", got)
	}
	b.click(b.pixel(0, 120, 250))
	if got := b.look.Artwork(); got != 0 {
		t.Errorf("a click on the mark chooses %d", got)
	}
	b.click(b.pixel(0, 20, 80)) // beside the mark
	if got := b.look.Artwork(); got != 0 {
		t.Errorf("a click beside all artwork chooses %d", got)
	}
	b.look.ChooseArtwork(focus.NoArtwork)
	b.click(b.pixel(0, 460, 250))
	if got := b.look.Artwork(); got != focus.NoArtwork {
		t.Errorf("a click chooses %d while no artwork is being placed", got)
	}
}

// The space bar pushes the paper even over artwork, and so does another button.
func TestPanningOverArtwork(t *testing.T) {
	b := artBench(t, asItIs)
	before := b.view
	b.surface.KeyDown(&fyne.KeyEvent{Name: fyne.KeySpace})
	b.pull(geometry.Vec2{X: 120, Y: 250}, geometry.Vec2{X: 150, Y: 250})
	b.surface.KeyUp(&fyne.KeyEvent{Name: fyne.KeySpace})
	if b.view == before || b.mark().X != 0 {
		t.Errorf("artwork at %g", b.mark().X)
	}
	before = b.view
	at := b.pixel(0, 120, 250)
	b.down(at, desktop.MouseButtonSecondary)
	b.dragTo(at, at.AddXY(30, 0))
	b.up(at, desktop.MouseButtonSecondary)
	if b.view == before || b.mark().X != 0 {
		t.Errorf("artwork at %g", b.mark().X)
	}
}

func TestTurns(t *testing.T) {
	for degrees, want := range map[float64]float64{0: 0, 180: 180, -180: 180, 190: -170, 360: 0, -350: 10, 540: 180} {
		if got := halfTurns(degrees); got != want {
			t.Errorf("%g° is %g°, want %g°", degrees, got, want)
		}
	}
}
