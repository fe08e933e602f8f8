package scene_test

import (
	"math"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/render/scene"
)

func TestCheck(t *testing.T) {
	line := geometry.Polygon(geometry.Vec2{X: 1}, geometry.Vec2{Y: 2})
	far := geometry.Polygon(geometry.Vec2{X: 1}, geometry.Vec2{Y: 1.1e6})
	cases := []struct {
		name string
		item scene.Item
		says string // empty where the item is right
	}{
		{"stroke", scene.Stroke{Role: scene.Cutting, Path: line, Width: 0.35, Dash: []float64{0, 3}}, ""},
		{"empty path", scene.Fill{Role: scene.Artwork}, ""},
		{"label", scene.Label{Role: scene.Legend, Size: 3, Turn: -7}, ""},
		{"far", scene.Fill{Role: scene.Cutting, Path: far}, "vertex 1: y is 1.1e+06"},
		{"width", scene.Stroke{Role: scene.Cutting, Path: line, Width: -0.1}, "width is -0.1"},
		{"dash", scene.Stroke{Role: scene.Cutting, Path: line, Dash: []float64{1, math.NaN()}}, "dash is NaN"},
		{"no size", scene.Label{Role: scene.Legend}, "size is 0"},
		{"role", scene.Fill{Role: -1}, "role -1 is not known"},
		{"pointer", &scene.Label{Role: scene.Legend, Size: 3}, "it is a *scene.Label"},
		{"nothing", nil, "it is a <nil>"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			drawing := scene.Drawing{Title: "Front", Media: geometry.RectAt(0, 0, 10, 10), Items: []scene.Item{c.item}}
			err := drawing.Check()
			if c.says == "" && err != nil {
				t.Errorf("got the error %v", err)
			}
			if c.says != "" && (err == nil || !strings.Contains(err.Error(), `drawing "Front", item 0: `+c.says)) {
				t.Errorf("got the error %v, want one that says %q", err, c.says)
			}
		})
	}
}

func TestCheckPage(t *testing.T) {
	for _, media := range []geometry.Rect{{}, geometry.RectAt(0, 0, 10, -1), geometry.RectAt(math.NaN(), 0, 10, 10), geometry.RectAt(0, 0, math.Inf(1), 10)} {
		if err := (scene.Drawing{Media: media}).Check(); err == nil || !strings.Contains(err.Error(), "page") {
			t.Errorf("page %v: got the error %v, want one about the page", media, err)
		}
	}
	if err := scene.CheckAll(nil); err == nil {
		t.Error("no drawings: no error")
	}
}

func TestStraight(t *testing.T) {
	chord := func(length, bulge float64) geometry.Edge {
		return geometry.Edge{To: geometry.Vec2{X: length}, Bulge: bulge}
	}
	// A bulge of 1 is a half circle, which rises by half its chord.
	cases := []struct {
		edge geometry.Edge
		want bool
	}{
		{chord(1000, 0), true},
		{chord(1000, 1e-9), true},
		{chord(1000, -1e-6), false},
		{chord(1, 1e-6), true},
		{chord(1e-5, 1), true},
		{chord(1, -1), false},
	}
	for _, c := range cases {
		if got := scene.Straight(c.edge); got != c.want {
			t.Errorf("%v: straight is %t, want %t", c.edge, got, c.want)
		}
	}
}
