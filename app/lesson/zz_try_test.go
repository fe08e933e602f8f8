package lesson

import (
	"fmt"
	"image/png"
	"os"
	"testing"
	"time"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/solid"
)

func TestTry(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Cards.Top, spec.Cards.Base = true, true
	for name, s := range map[string]bag.Spec{"we": spec, "pinch": func() bag.Spec { s := spec; s.Body.Base = bag.BasePinch; s.Cards.Base = false; return s }()} {
		laid := blank.Lay(s)
		start := time.Now()
		l := fold.Fold(&laid)
		fmt.Println("fold", time.Since(start), len(l.Stages), l.Foldable, l.Obstacle)
		for i, st := range l.Stages {
			start = time.Now()
			for k := range 20 {
				l.Pose(i, float64(k)/20)
			}
			b := l.Pose(i, 0.5)
			lo, hi := b.Bounds()
			fmt.Println(i, st.Name, st.Title, len(st.Creases), st.Glue, st.Schematic, time.Since(start)/20, lo, hi)
			v := solid.View{Width: 500, Height: 500, Samples: 2, Camera: solid.Isometric, Model: solid.NewModel(b), Look: solid.LightLook(), Paper: solid.PaperOf(s.Paper)}
			var r solid.Renderer
			f, _ := os.Create(fmt.Sprintf("/tmp/l1/%s-%02d.png", name, i))
			png.Encode(f, r.Draw(v))
			f.Close()
		}
	}
}
