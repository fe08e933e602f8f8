package scene_test

import (
	"math"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/render/scene"
)

// An L of cuts stands upright and turned by a quarter. Places worked out by hand:
// a quarter turn takes (x, y) to (−y, x).
func TestSinglesStandWhereThePartIs(t *testing.T) {
	path := geometry.Path{Vertices: []geometry.Vertex{{Vec2: geometry.Vec2{X: 4}, Bulge: 0.5}, {}, {Vec2: geometry.Vec2{Y: 7}}}}
	part := &scene.Part{Role: scene.Cutting, Items: []scene.Item{
		scene.Stroke{Role: scene.Cutting, Path: path, Width: 0.35},
		scene.Label{Role: scene.Cutting, Text: "L", At: geometry.Vec2{X: 1, Y: 2}, Size: 3},
	}}
	turned := geometry.Shift(geometry.Vec2{X: 20, Y: 5}).After(geometry.Rotation(math.Pi / 2))
	plain := scene.Label{Role: scene.Legend, Text: "stays", Size: 3}
	drawing := scene.Drawing{Title: "L", Media: geometry.RectAt(0, 0, 50, 50), Items: []scene.Item{
		scene.Repeated{Part: part, Places: []scene.Place{{At: geometry.Identity()}, {At: turned}}}, plain,
	}}
	if err := drawing.Check(); err != nil {
		t.Fatal(err)
	}
	items := scene.Singles([]scene.Drawing{drawing})[0].Items
	if len(items) != 5 || items[4] != plain {
		t.Fatalf("%d items, want two strokes, two labels and the one that stays", len(items))
	}
	stroke := items[2].(scene.Stroke)
	for i, want := range []geometry.Vec2{{X: 20, Y: 9}, {X: 20, Y: 5}, {X: 13, Y: 5}} {
		if got := stroke.Path.Vertices[i]; !got.Near(want) || got.Bulge != path.Vertices[i].Bulge {
			t.Errorf("vertex %d is %v, want %v", i, got, want)
		}
	}
	label := items[3].(scene.Label)
	if !label.At.Near(geometry.Vec2{X: 18, Y: 6}) || math.Abs(label.Turn-math.Pi/2) > 1e-12 {
		t.Errorf("the label stands at %v, turned by %g", label.At, label.Turn)
	}
	if !path.Vertices[0].Near(geometry.Vec2{X: 4}) {
		t.Error("the part itself was moved")
	}
}

func TestCheckRepeated(t *testing.T) {
	cut := scene.Label{Role: scene.Cutting, Text: "x", Size: 3}
	inner := scene.Repeated{Part: &scene.Part{Role: scene.Cutting}}
	for says, repeated := range map[string]scene.Repeated{
		"give the part": {},
		"its role is Cutting, that of the part Legend": {Part: &scene.Part{Role: scene.Legend, Items: []scene.Item{cut}}},
		"itself repeated": {Part: &scene.Part{Role: scene.Cutting, Items: []scene.Item{inner}}},
		"size is 0":       {Part: &scene.Part{Role: scene.Cutting, Items: []scene.Item{scene.Label{Role: scene.Cutting}}}},
		"x is NaN":        {Part: inner.Part, Places: []scene.Place{{At: geometry.Shift(geometry.Vec2{X: math.NaN()})}}},
		"x is +Inf":       {Part: &scene.Part{Role: scene.Cutting, Clip: []geometry.Path{geometry.Polygon(geometry.Vec2{X: math.Inf(1)})}}},
	} {
		err := (scene.Drawing{Media: geometry.RectAt(0, 0, 9, 9), Items: []scene.Item{repeated}}).Check()
		if err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("error %v, want one that says %q", err, says)
		}
	}
}

func TestEveryRoleHasAStyle(t *testing.T) {
	names := map[string]bool{}
	for _, role := range scene.AllRoles() {
		style := role.Style()
		if style.Name == "" || names[style.Name] {
			t.Errorf("role %d is called %q", role, style.Name)
		}
		names[style.Name] = true
	}
	if len(names) != len(scene.Roles())+len(scene.SheetRoles()) {
		t.Errorf("%d names", len(names))
	}
}
