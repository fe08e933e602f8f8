package scene_test

import (
	"fmt"
	"slices"
	"testing"

	"gussetwright/geometry"
	"gussetwright/render/scene"
)

func TestRow(t *testing.T) {
	page := func(x, y, width, height float64) scene.Drawing {
		return scene.Drawing{Media: geometry.RectAt(x, y, width, height)}
	}
	cases := []struct {
		name  string
		pages []scene.Drawing
		want  []geometry.Vec2
		whole geometry.Rect
	}{
		{"none", nil, []geometry.Vec2{}, geometry.Rect{}},
		{"one", []scene.Drawing{page(-10, -5, 100, 50)}, []geometry.Vec2{{}}, geometry.RectAt(-10, -5, 100, 50)},
		{
			"equal margins",
			[]scene.Drawing{page(-10, -10, 100, 50), page(-10, -10, 70, 50), page(-10, -10, 30, 50)},
			[]geometry.Vec2{{}, {X: 100 + 20}, {X: 100 + 20 + 70 + 20}},
			geometry.RectAt(-10, -10, 100+20+70+20+30, 50),
		},
		{
			"other margins",
			[]scene.Drawing{page(-10, -10, 100, 50), page(-25, -30, 70, 120)},
			[]geometry.Vec2{{}, {X: 90 + 20 + 25}},
			geometry.RectAt(-10, -30, 100+20+70, 120),
		},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if got := scene.Row(c.pages); !slices.Equal(got, c.want) {
				t.Errorf("moves %v, want %v", got, c.want)
			}
			if got := scene.RowMedia(c.pages); got != c.whole {
				t.Errorf("whole page %v, want %v", got, c.whole)
			}
		})
	}
}

func ExampleRow() {
	half := scene.Drawing{Media: geometry.RectAt(-30, -30, 400, 500)}
	fmt.Println(scene.Row([]scene.Drawing{half, half}))
	// Output: [{0 0} {420 0}]
}
