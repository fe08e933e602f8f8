package scene_test

import (
	"fmt"
	"testing"

	"gussetwright/render/scene"
)

func TestByRole(t *testing.T) {
	first := scene.Label{Role: scene.Legend, Text: "first"}
	cut := scene.Stroke{Role: scene.Cutting, Width: 0.35}
	last := scene.Label{Role: scene.Legend, Text: "last"}
	groups := scene.Drawing{Items: []scene.Item{first, cut, last}}.ByRole()
	if len(groups) != 2 || len(groups[scene.Cutting]) != 1 {
		t.Fatalf("groups %v, want legend and cutting", groups)
	}
	if got := groups[scene.Legend]; len(got) != 2 || got[0] != first || got[1] != last {
		t.Errorf("legend %v, want first and last", got)
	}
}

func ExampleRole_Spelled() {
	fmt.Println(scene.ReverseCreasing.Spelled("-"), scene.Cutting.Spelled("-"), scene.ContentArea.Spelled("_"))
	// Output: reverse-creasing cutting content_area
}
