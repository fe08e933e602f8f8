package solid_test

import (
	"image"
	"math"
	"testing"

	"golang.org/x/image/draw"
	"golang.org/x/image/math/f64"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/solid"
)

// BenchmarkFrame draws the folded bag at 900 × 900 with a texture of 2000 × 2000
// pixels, and beside it the same facets, seen from the same side, through affine
// transforms of golang.org/x/image/draw: without depth, light, shadow or handles.
func BenchmarkFrame(b *testing.B) {
	spec := geomtest.WorkedExample()
	laid := blank.Lay(spec)
	body := fold.Standing(&laid)
	picture := image.NewRGBA(image.Rect(0, 0, 2000, 2000))
	for i := range picture.Pix {
		picture.Pix[i] = uint8(i*7 + i/8000*13)
	}
	scale := 2000 / laid.Pieces[0].Width
	v := solid.View{
		Width: 900, Height: 900, Samples: 1, Camera: solid.Isometric, Look: solid.LightLook(), Paper: solid.PaperOf(spec.Paper),
		Model: solid.NewModel(body), Textures: []*solid.Texture{solid.NewTexture(picture, scale, laid.Pieces[0].Height)},
	}
	b.Run("ours", func(b *testing.B) {
		var r solid.Renderer
		for b.Loop() {
			v.Camera.Azimuth += 0.001
			r.Recycle(r.Draw(v))
		}
	})
	b.Run("image-draw", func(b *testing.B) {
		canvas := image.NewRGBA(image.Rect(0, 0, 900, 900))
		perMM := v.Scale()
		for b.Loop() {
			for i := range body.Facets {
				drawFacet(canvas, picture, &body.Facets[i], perMM, scale, laid.Pieces[0].Height)
			}
		}
	})
}

// drawFacet draws a facet that faces a viewer at 45° to front and gusset, from above,
// by the affine map of its pose.
func drawFacet(canvas, texture *image.RGBA, f *fold.Facet, perMM, scale, height float64) {
	sinE, cosE := math.Sincos(math.Atan(math.Sqrt2 / 2))
	toward := geometry.Vec3{X: -math.Sqrt2 / 2 * cosE, Y: math.Sqrt2 / 2 * cosE, Z: -sinE}
	if f.Pose.Out().Dot(toward) >= 0 {
		return
	}
	right := geometry.Vec3{X: math.Sqrt2 / 2, Y: math.Sqrt2 / 2}
	up := geometry.Vec3{X: -math.Sqrt2 / 2 * sinE, Y: math.Sqrt2 / 2 * sinE, Z: cosE}
	screen := func(p geometry.Vec3) (x, y float64) {
		return 450 + p.Dot(right)*perMM - 120*perMM, 700 - p.Dot(up)*perMM
	}
	ox, oy := screen(f.Pose.Origin)
	rx, ry := f.Pose.Right.Dot(right)*perMM, -f.Pose.Right.Dot(up)*perMM
	ux, uy := f.Pose.Up.Dot(right)*perMM, -f.Pose.Up.Dot(up)*perMM
	// A pixel (u, v) of the texture is the point (u ÷ scale, height − v ÷ scale) of the blank.
	m := f64.Aff3{rx / scale, -ux / scale, ox + ux*height, ry / scale, -uy / scale, oy + uy*height}
	box := geometry.Rect{Min: f.Corners[0], Max: f.Corners[0]}
	for _, c := range f.Corners {
		box = box.Union(geometry.Rect{Min: c, Max: c})
	}
	from := image.Rect(int(box.Min.X*scale), int((height-box.Max.Y)*scale), int(box.Max.X*scale), int((height-box.Min.Y)*scale))
	draw.BiLinear.Transform(canvas, m, texture, from.Intersect(texture.Rect), draw.Src, nil)
}
