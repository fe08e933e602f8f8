package fold_test

import (
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"os"
	"testing"
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/fold"
	"gussetwright/render/solid"
)

func TestLook(t *testing.T) {
	all := styles()
	want := os.Getenv("LOOK")
	spec := all[want]
	if want == "default" { spec = bag.Default() }
	laid := lay(t, spec)
	l := fold.Fold(laid)
	// frame over all
	var lo, hi geometry.Vec3
	first := true
	for i := range l.Stages {
		for _, m := range []float64{0, .25, .5, .75, 1} {
			b := l.Pose(i, m)
			a, c := b.Bounds()
			if first { lo, hi, first = a, c, false }
			lo = geometry.Vec3{X: min(lo.X, a.X), Y: min(lo.Y, a.Y), Z: min(lo.Z, a.Z)}
			hi = geometry.Vec3{X: max(hi.X, c.X), Y: max(hi.Y, c.Y), Z: max(hi.Z, c.Z)}
		}
	}
	frame := solid.Frame{Middle: lo.Mid(hi), Radius: math.Hypot(hi.X-lo.X, hi.Y-lo.Y) / 2, Rise: (hi.Z - lo.Z) / 2}
	_ = frame
	const w, h = 380, 320
	from, to := 0, len(l.Stages)
	picture := func(name string, from, to int) {
		out := image.NewRGBA(image.Rect(0, 0, 5*w, (to-from)*h))
		draw.Draw(out, out.Bounds(), image.NewUniform(color.White), image.Point{}, draw.Src)
		var r solid.Renderer
		for i := from; i < to; i++ {
			for k, m := range []float64{0, .25, .5, .75, 1} {
				body := l.Pose(i, m)
				model := solid.NewModel(body)
				cam := solid.Camera{Azimuth: 0.55, Elevation: 0.5, Zoom: 1}
				if os.Getenv("ANGLE") == "2" { cam = solid.Camera{Azimuth: 0.55 + math.Pi*0.8, Elevation: 0.9, Zoom: 1} }
				v := solid.View{Width: w, Height: h, Samples: 2, Camera: cam, Look: solid.LightLook(), Paper: solid.PaperOf(spec.Paper), Model: model}
				names := map[string]string{"front": "Front", "back": "Back", "gusset-left": "Left", "gusset-right": "Right"}
				for p := range laid.Pieces { v.Textures = append(v.Textures, solid.Sample(&laid.Pieces[p], v.Paper, v.Look.Ink, 1, func(p string) string { return names[p] })) }
				img := r.Draw(v)
				draw.Draw(out, image.Rect(k*w, (i-from)*h, k*w+w, (i-from)*h+h), img, image.Point{}, draw.Src)
			}
		}
		f, _ := os.Create(name)
		png.Encode(f, out)
		f.Close()
	}
	half := (from + to + 1) / 2
	picture("/tmp/look-"+want+os.Getenv("ANGLE")+"-a.png", from, half)
	picture("/tmp/look-"+want+os.Getenv("ANGLE")+"-b.png", half, to)
}
