package turntable_test

import (
	"bytes"
	"fmt"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/render/solid"
	"gussetwright/render/turntable"
)

func ExampleWrite() {
	spec := bag.Default()
	laid := blank.Lay(spec)
	model, paper := solid.NewModel(fold.Standing(&laid)), solid.PaperOf(spec.Paper)
	var still solid.Renderer
	page := turntable.Page{
		Title: "Sample bag",
		Facts: []turntable.Fact{{Label: "Paper", Value: "Matt coated"}},
		Mesh:  model.Mesh(),
		Paper: paper,
		Still: still.Draw(solid.View{Width: 800, Height: 600, Camera: solid.Isometric, Model: model, Paper: paper, Look: solid.LightLook()}),
	}
	var file bytes.Buffer
	if err := turntable.Write(&file, page); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(file.Len() < 300_000)
	// Output: true
}
