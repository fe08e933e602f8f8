package svg_test

import (
	"bytes"
	"math"
	"testing"

	"gussetwright/geometry"
	"gussetwright/render/scene"
	"gussetwright/render/svg"
)

// sample is a small drawing with everything that an SVG file must hold. Its page
// is 120 mm × 100 mm with its lower left corner at (−10, −10).
func sample() scene.Drawing {
	slot := geometry.Path{Closed: true, Vertices: []geometry.Vertex{
		{Vec2: geometry.Vec2{X: 40, Y: 60}},
		{Vec2: geometry.Vec2{X: 60, Y: 60}, Bulge: 1},
		{Vec2: geometry.Vec2{X: 60, Y: 70}},
		{Vec2: geometry.Vec2{X: 40, Y: 70}, Bulge: 1},
	}}
	curves := geometry.Path{Vertices: []geometry.Vertex{
		{Vec2: geometry.Vec2{X: 10, Y: 40}, Bulge: -0.3},
		{Vec2: geometry.Vec2{X: 30, Y: 45}, Bulge: 0.7},
		{Vec2: geometry.Vec2{X: 30, Y: 30}, Bulge: 1e-9},
		{Vec2: geometry.Vec2{X: 12, Y: 28}},
	}}
	crease := geometry.Path{Vertices: []geometry.Vertex{{Vec2: geometry.Vec2{Y: 10.0 / 3}}, {Vec2: geometry.Vec2{X: 100, Y: 10.0 / 3}}}}
	return scene.Drawing{
		Title: "Sample <&> trial",
		Media: geometry.RectAt(-10, -10, 120, 100),
		Bleed: geometry.RectAt(-3, -3, 106, 86),
		Trim:  geometry.RectAt(0, 0, 100, 80),
		Items: []scene.Item{
			scene.Stroke{Role: scene.Cutting, Path: geometry.RectAt(0, 0, 100, 80).Path(), Width: 0.35},
			scene.Stroke{Role: scene.Cutting, Path: slot, Width: 0.35},
			scene.Stroke{Role: scene.Cutting, Path: curves, Width: 0.5},
			scene.Stroke{Role: scene.ReverseCreasing, Path: crease, Width: 0.25, Dash: []float64{8, 4}},
			scene.Stroke{Role: scene.Creasing, Path: crease.Translate(geometry.Vec2{Y: 47}), Width: 0.25},
			scene.Stroke{Role: scene.Punching, Path: geometry.Circle(geometry.Vec2{X: 20, Y: 75}, 2.5), Width: 0.25},
			scene.Fill{Role: scene.Gluing, Path: geometry.RectAt(80, 5, 15, 60).Path()},
			scene.Fill{Role: scene.Legend, Path: geometry.Circle(geometry.Vec2{X: 5, Y: 84}, 1)},
			scene.Label{Role: scene.Dimensions, Text: "100 mm", At: geometry.Vec2{X: 50, Y: -4}, Size: 3.5, Anchor: scene.Middle},
			scene.Label{Role: scene.Legend, Text: `Größe 纸 <&> "a"`, At: geometry.Vec2{X: -2, Y: 10}, Size: 5, Turn: math.Pi / 2, Bold: true},
		},
	}
}

// second is a piece with a page of another size, 50 mm × 40 mm.
func second() scene.Drawing {
	return scene.Drawing{
		Title: "Second",
		Media: geometry.RectAt(-5, -8, 50, 40),
		Items: []scene.Item{scene.Stroke{Role: scene.Cutting, Path: geometry.RectAt(0, 0, 40, 30).Path(), Width: 0.35}},
	}
}

func written(t testing.TB, pieces ...scene.Drawing) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := svg.Write(&out, pieces); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}
