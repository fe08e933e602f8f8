package foldedpane

import (
	"bytes"
	"image"
	"math"
	"testing"

	"fyne.io/fyne/v2"

	"gussetwright/geometry/bag"
	"gussetwright/render/solid"
)

// For another part of the window a bag looks as in the pane, but bare paper has no names.
func TestPainterLeavesNamesOut(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 640, 520)
	v := b.view(400, 400)
	v.Camera, v.Samples, v.Look = solid.Front, fine, Look()
	painter := NewPainter()
	plain, named := painter.Paint(b.state.Snapshot, v), b.artist.draw(order{snapshot: b.state.Snapshot, view: v}).pixels
	differing, body := 0, image.Rect(160, 150, 240, 300) // the middle of the front
	for y := range 400 {
		for x := range 400 {
			if plain.RGBAAt(x, y) == named.RGBAAt(x, y) {
				continue
			}
			if differing++; !(image.Point{X: x, Y: y}).In(body) {
				t.Fatalf("the pictures differ at %d, %d, away from the name", x, y)
			}
		}
	}
	if differing == 0 {
		t.Error("the name of the front is painted")
	}
	painter.GiveBack(plain)
}

// Without a bag there is only what stands for scale.
func TestPainterPaintsAReferenceAlone(t *testing.T) {
	newBench(t, bag.Default(), 640, 520)
	v := solid.View{
		Width: 100, Height: 100, Samples: draft, Camera: solid.Front, Model: &solid.Model{}, Look: solid.LightLook(),
		Reference: solid.Can33, Frame: solid.Can33.Frame(0),
	}
	empty := v
	empty.Reference = solid.NoReference
	painter := NewPainter()
	can, none := painter.Paint(nil, v), painter.Paint(nil, empty)
	if can.RGBAAt(50, 50) == none.RGBAAt(50, 50) {
		t.Error("the can does not stand in the middle of its frame")
	}
}

func TestTurning(t *testing.T) {
	from := solid.Camera{Azimuth: 1, Elevation: 0.5, Zoom: 2}
	for key, want := range map[fyne.KeyName][2]float64{
		fyne.KeyLeft: {keyTurn, 0}, fyne.KeyRight: {-keyTurn, 0}, fyne.KeyUp: {0, -keyTurn}, fyne.KeyDown: {0, keyTurn},
	} {
		got, isArrow := TurnedByKey(from, key)
		if !isArrow || math.Abs(got.Azimuth-from.Azimuth-want[0]) > 1e-12 || math.Abs(got.Elevation-from.Elevation-want[1]) > 1e-12 || got.Zoom != 2 {
			t.Errorf("%s turned %+v to %+v", key, from, got)
		}
	}
	if got, isArrow := TurnedByKey(from, fyne.KeyF); isArrow || got != from {
		t.Error("a letter is taken for an arrow")
	}
	if got := Turned(from, fyne.Delta{DX: 10, DY: 5}); got.Azimuth >= from.Azimuth || got.Elevation <= from.Elevation {
		t.Errorf("a drag to the right and down turned %+v to %+v", from, got)
	}
}

// What is let go of is made anew for the next picture, which is the same.
func TestPainterLetsGo(t *testing.T) {
	b := newBench(t, demo(t), 300, 300)
	painter, snapshot := NewPainter(), b.doc.State().Snapshot
	v := b.view(300, 300)
	first := painter.Paint(snapshot, v)
	painter.LetGo()
	if kept := painter.artist.papered; kept.textures != nil || kept.snapshot != nil {
		t.Error("textures are kept")
	}
	if again := painter.Paint(snapshot, v); !bytes.Equal(again.Pix, first.Pix) {
		t.Error("the picture is another than before")
	}
}
