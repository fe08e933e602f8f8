package document_test

import (
	"testing"

	"gussetwright/app/document"
	"gussetwright/geometry/bag"
)

// BenchmarkSet is an edit with one listener: history, layout, sheet, job and findings.
func BenchmarkSet(b *testing.B) {
	d := document.New()
	d.Listen(func(document.State) {})
	spec := d.Project().Spec
	b.ReportAllocs()
	for b.Loop() {
		spec.Body.Width = 501 - spec.Body.Width
		d.Set(spec)
	}
}

// BenchmarkDrag is one move of a drag with one listener.
func BenchmarkDrag(b *testing.B) {
	d := document.New()
	d.Listen(func(document.State) {})
	spec := d.Project().Spec
	b.ReportAllocs()
	for b.Loop() {
		spec.Body.Width = 501 - spec.Body.Width
		d.Drag(spec)
	}
}

// BenchmarkState asks again while nothing changes.
func BenchmarkState(b *testing.B) {
	d := document.New()
	steps(d, "a b undo")
	b.ReportAllocs()
	for b.Loop() {
		d.State()
	}
}

func BenchmarkDifference(b *testing.B) {
	from := bag.Default()
	to := from
	to.Run.Spoilage++
	b.ReportAllocs()
	for b.Loop() {
		document.Difference(&from, &to)
	}
}
