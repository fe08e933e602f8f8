package dxf_test

import (
	"bytes"
	"math"
	"testing"

	"gussetwright/geometry"
	"gussetwright/render/dxf"
	"gussetwright/render/scene"
)

// sample is a small drawing with everything that a DXF file must hold.
func sample() scene.Drawing {
	slot := geometry.Path{Closed: true, Vertices: []geometry.Vertex{
		{Vec2: geometry.Vec2{X: 40, Y: 60}},
		{Vec2: geometry.Vec2{X: 60, Y: 60}, Bulge: 1},
		{Vec2: geometry.Vec2{X: 60, Y: 70}},
		{Vec2: geometry.Vec2{X: 40, Y: 70}, Bulge: 1},
	}}
	clockwise := geometry.Path{Vertices: []geometry.Vertex{
		{Vec2: geometry.Vec2{X: 10, Y: 40}, Bulge: -0.3},
		{Vec2: geometry.Vec2{X: 30, Y: 45}, Bulge: 0.7},
		{Vec2: geometry.Vec2{X: 30, Y: 30}, Bulge: 1e-9},
		{Vec2: geometry.Vec2{X: 12, Y: 28}},
	}}
	crease := geometry.Path{Vertices: []geometry.Vertex{{Vec2: geometry.Vec2{Y: 1.0 / 3}}, {Vec2: geometry.Vec2{X: 100, Y: 1.0 / 3}}}}
	dashed := []float64{4, 1.5}
	return scene.Drawing{
		Title: "Sample & trial",
		Media: geometry.RectAt(-10, -10, 120, 100),
		Bleed: geometry.RectAt(-3, -3, 106, 86),
		Trim:  geometry.RectAt(0, 0, 100, 80),
		Items: []scene.Item{
			scene.Stroke{Role: scene.Cutting, Path: geometry.RectAt(0, 0, 100, 80).Path(), Width: 0.35},
			scene.Stroke{Role: scene.Cutting, Path: slot, Width: 0.35},
			scene.Stroke{Role: scene.Cutting, Path: clockwise, Width: 0.5},
			scene.Stroke{Role: scene.Creasing, Path: crease, Width: 0.25, Dash: dashed},
			scene.Stroke{Role: scene.Creasing, Path: crease.Translate(geometry.Vec2{Y: 20}), Width: 0.25},
			scene.Stroke{Role: scene.ReverseCreasing, Path: crease.Translate(geometry.Vec2{Y: 50}), Width: 0.25, Dash: []float64{6, 1, 1}},
			scene.Stroke{Role: scene.Punching, Path: geometry.Circle(geometry.Vec2{X: 20, Y: 75}, 2.5), Width: 0.25},
			scene.Fill{Role: scene.Dimensions, Path: geometry.Polygon(geometry.Vec2{X: 0, Y: -5}, geometry.Vec2{X: 3, Y: -5.5}, geometry.Vec2{X: 3, Y: -4.5})},
			scene.Fill{Role: scene.Gluing, Path: geometry.RectAt(80, 5, 15, 60).Path()},
			scene.Fill{Role: scene.Legend, Path: geometry.Circle(geometry.Vec2{X: 5, Y: 84}, 1)},
			scene.Fill{Role: scene.Legend, Path: geometry.Polygon(geometry.Vec2{X: 60, Y: 82}, geometry.Vec2{X: 70, Y: 85}, geometry.Vec2{X: 60, Y: 88}, geometry.Vec2{X: 62, Y: 85})},
			scene.Label{Role: scene.Dimensions, Text: "100 mm", At: geometry.Vec2{X: 50, Y: -4}, Size: 3.5, Anchor: scene.Middle},
			scene.Label{Role: scene.Legend, Text: `Größe ^ \U+0041 纸 <&>`, At: geometry.Vec2{X: -2, Y: 10}, Size: 5, Anchor: scene.End, Turn: math.Pi / 2, Bold: true},
		},
	}
}

// second is a piece with a page of another size.
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
	if err := dxf.Write(&out, pieces); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}
