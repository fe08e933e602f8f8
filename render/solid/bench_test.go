package solid_test

import (
	"testing"

	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/solid"
)

func benchmarkDraw(b *testing.B, samples int) {
	v := viewOf(geomtest.WorkedExample(), 2)
	v.Samples = samples
	var r solid.Renderer
	b.ReportAllocs()
	for b.Loop() {
		v.Camera.Azimuth += 0.01 // a new shadow for each picture, as while turning
		r.Recycle(r.Draw(v))
	}
}

func BenchmarkDraft(b *testing.B) { benchmarkDraw(b, 1) }
func BenchmarkFine(b *testing.B)  { benchmarkDraw(b, 2) }

func BenchmarkModel(b *testing.B) {
	laid := blank.Lay(geomtest.WorkedExample())
	b.ReportAllocs()
	for b.Loop() {
		solid.NewModel(fold.Standing(&laid))
	}
}

func BenchmarkSample(b *testing.B) {
	laid := blank.Lay(geomtest.WorkedExample())
	look := solid.LightLook()
	b.ReportAllocs()
	for b.Loop() {
		solid.Sample(&laid.Pieces[0], solid.PaperOf(laid.Spec.Paper), look.Ink, 1, func(p string) string { return p })
	}
}

func BenchmarkMesh(b *testing.B) {
	laid := blank.Lay(geomtest.WorkedExample())
	model := solid.NewModel(fold.Standing(&laid))
	b.ReportAllocs()
	for b.Loop() {
		model.Mesh()
	}
}
