package scene_test

import (
	"bytes"
	"io"
	"math"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/render/dxf"
	"gussetwright/render/flat"
	"gussetwright/render/pdf/object"
	"gussetwright/render/scene"
	"gussetwright/render/svg"
)

func placed() scene.Placed {
	return scene.Placed{Form: &object.Form{Width: 4, Height: 3}, At: geometry.Stretch(40, 30), Opacity: 1}
}

func TestCheckPlaced(t *testing.T) {
	for _, c := range []struct {
		says  string
		spoil func(p *scene.Placed)
	}{
		{"", func(p *scene.Placed) {}},
		{"", func(p *scene.Placed) { p.At.U.X, p.Opacity = -40, 0 }}, // mirrored, unseen
		{"nothing is placed", func(p *scene.Placed) { p.Form = nil }},
		{"width of the form is 0", func(p *scene.Placed) { p.Form = &object.Form{Height: 3} }},
		{"x is NaN", func(p *scene.Placed) { p.At.Origin.X = math.NaN() }},
		{"height up is +Inf", func(p *scene.Placed) { p.At.V.Y = math.Inf(1) }},
		{"x is 4e+07", func(p *scene.Placed) { p.Copies = []geometry.Vec2{{X: 1e6}} }},
		{"pressed flat", func(p *scene.Placed) { p.At.V = geometry.Vec2{} }},
		{"opacity is -0.1", func(p *scene.Placed) { p.Opacity = -0.1 }},
		{"opacity is NaN", func(p *scene.Placed) { p.Opacity = math.NaN() }},
		{"vertex 0: bulge is NaN", func(p *scene.Placed) { p.Clip.Vertices = []geometry.Vertex{{Bulge: math.NaN()}} }},
	} {
		item := placed()
		c.spoil(&item)
		err := scene.Drawing{Media: geometry.RectAt(0, 0, 9, 9), Items: []scene.Item{item}}.Check()
		if c.says == "" && err != nil || c.says != "" && (err == nil || !strings.Contains(err.Error(), c.says)) {
			t.Errorf("got the error %v, want one that says %q", err, c.says)
		}
	}
}

// A copy one step to the right of artwork 40 mm wide that is turned to the left by a
// quarter stands 40 mm higher.
func TestPlaces(t *testing.T) {
	item := placed()
	item.At = geometry.Affine{U: geometry.Vec2{Y: 40}, V: geometry.Vec2{X: -30}, Origin: geometry.Vec2{X: 100, Y: 20}}
	item.Copies = []geometry.Vec2{{X: 1}, {X: -0.5, Y: 2}}
	want := []geometry.Vec2{{X: 100, Y: 20}, {X: 100, Y: 60}, {X: 40, Y: 0}}
	places := item.Places()
	if len(places) != len(want) {
		t.Fatalf("%d places, want %d", len(places), len(want))
	}
	for i, place := range places {
		if !place.Origin.Near(want[i]) || place.U != item.At.U || place.V != item.At.V {
			t.Errorf("place %d is %v, want it at %v", i, place, want[i])
		}
	}
}

// Files that cannot hold artwork show all but it.
func TestFilesWithoutArtwork(t *testing.T) {
	sheet := geometry.RectAt(0, 0, 100, 80)
	bare := scene.Drawing{Title: "Bare", Media: sheet, Bleed: sheet, Trim: sheet, Items: []scene.Item{
		scene.Stroke{Role: scene.Cutting, Path: sheet.Inset(5).Path(), Width: 0.35},
	}}
	with := bare
	with.Items = append([]scene.Item{placed()}, bare.Items...)
	for name, write := range map[string]func(w io.Writer, d scene.Drawing) error{
		"svg":  func(w io.Writer, d scene.Drawing) error { return svg.Write(w, []scene.Drawing{d}) },
		"dxf":  func(w io.Writer, d scene.Drawing) error { return dxf.Write(w, []scene.Drawing{d}) },
		"flat": func(w io.Writer, d scene.Drawing) error { return flat.WritePNG(w, d, 4) },
	} {
		var first, second bytes.Buffer
		if err := write(&first, bare); err != nil {
			t.Fatal(err)
		}
		if err := write(&second, with); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		// An empty layer may stand for it.
		if grown := second.Len() - first.Len(); grown < 0 || grown > 200 {
			t.Errorf("%s: %d bytes without artwork and %d with it", name, first.Len(), second.Len())
		}
	}
}
