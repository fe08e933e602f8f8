package flat_test

import (
	"bytes"
	"image/png"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/render/dieline"
	"gussetwright/render/flat"
	"gussetwright/render/scene"
)

// A square, cut, creased across the middle, with a filled patch, at 10 pixels a
// millimetre: each pixel that is looked at follows from the coordinates.
func TestPixelsStandWhereGeometrySays(t *testing.T) {
	drawing := scene.Drawing{
		Title: "square", Media: geometry.RectAt(-10, -10, 60, 50), Trim: geometry.RectAt(0, 0, 40, 30),
		Items: []scene.Item{
			scene.Stroke{Role: scene.Cutting, Path: geometry.RectAt(0, 0, 40, 30).Path(), Width: 0.5},
			scene.Fill{Role: scene.Gluing, Path: geometry.RectAt(10, 10, 5, 5).Path()},
			scene.Stroke{Role: scene.Punching, Path: geometry.Circle(geometry.Vec2{X: 30, Y: 20}, 4), Width: 0.5},
		},
	}
	picture, err := flat.Draw(drawing, 10)
	if err != nil {
		t.Fatal(err)
	}
	if size := picture.Bounds().Size(); size.X != 600 || size.Y != 500 {
		t.Fatalf("%v pixels, want 600 × 500", size)
	}
	for _, c := range []struct {
		name string
		at   geometry.Vec2
		want scene.RGB
	}{
		{"left cut", geometry.Vec2{X: 0, Y: 15}, scene.Cutting.Style().Screen},
		{"top cut", geometry.Vec2{X: 20, Y: 30}, scene.Cutting.Style().Screen},
		{"patch", geometry.Vec2{X: 12, Y: 12}, scene.Gluing.Style().Screen},
		{"hole, right", geometry.Vec2{X: 34, Y: 20}, scene.Punching.Style().Screen},
		{"hole, below", geometry.Vec2{X: 30, Y: 16}, scene.Punching.Style().Screen},
		{"middle of the hole", geometry.Vec2{X: 30, Y: 20}, scene.RGB{R: 255, G: 255, B: 255}},
		{"beside the paper", geometry.Vec2{X: -5, Y: 15}, scene.RGB{R: 255, G: 255, B: 255}},
	} {
		x, y := int((c.at.X+10)*10), int((40-c.at.Y)*10)
		r, g, b, _ := picture.At(x, y).RGBA()
		if got := (scene.RGB{R: uint8(r >> 8), G: uint8(g >> 8), B: uint8(b >> 8)}); !alike(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// alike allows for antialiasing on a curved line.
func alike(a, b scene.RGB) bool {
	near := func(x, y uint8) bool { return max(x, y)-min(x, y) <= 8 }
	return near(a.R, b.R) && near(a.G, b.G) && near(a.B, b.B)
}

func TestTooManyPixelsAreRefused(t *testing.T) {
	laid := blank.Lay(bag.Default())
	drawing := dieline.Sheets(&laid, "")[0]
	for _, scale := range []float64{1000, 0, -1} {
		if _, err := flat.Draw(drawing, scale); err == nil || !strings.Contains(err.Error(), "resolution") {
			t.Errorf("at %g pixels a millimetre: %v", scale, err)
		}
	}
}

func TestPNGCanBeRead(t *testing.T) {
	laid := blank.Lay(bag.Default())
	var out bytes.Buffer
	if err := flat.WritePNG(&out, dieline.Sheets(&laid, "")[0], 1); err != nil {
		t.Fatal(err)
	}
	picture, err := png.Decode(&out)
	if err != nil {
		t.Fatal(err)
	}
	if size := picture.Bounds().Size(); size.X < 700 || size.Y < 480 {
		t.Errorf("%v pixels for a blank of 699.5 × 480 mm at one a millimetre", size)
	}
}

func BenchmarkDraw(b *testing.B) {
	laid := blank.Lay(bag.Default())
	drawing := dieline.Sheets(&laid, "")[0]
	for b.Loop() {
		if _, err := flat.Draw(drawing, 1); err != nil {
			b.Fatal(err)
		}
	}
}
